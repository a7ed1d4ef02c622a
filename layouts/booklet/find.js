/* Find: one box for numbers, stamps, marks, names, words, and readings that are to be looked up. A classic script, run
   after asks.js. */
(function () {
  "use strict";

  function one(selector, within) { return within.querySelector(selector); }
  function all(selector, within) { return Array.prototype.slice.call(within.querySelectorAll(selector)); }

  function make(name, className, text) {
    var element = document.createElement(name);
    if (className) { element.className = className; }
    if (text) { element.textContent = text; }
    return element;
  }

  /* Loads a script beside this page once, and hands on the global that it sets. */
  function load(file, global, then) {
    if (window[global]) { then(window[global]); return; }
    var script = make("script");
    script.src = file;
    script.onload = function () { then(window[global] || []); };
    document.head.appendChild(script);
  }

  var asks = window.bookletAsks, plain = asks.plain, tight = asks.tight;

  /* A row of the index; a mark that several have stands in the first of them, and is named by its place. */
  function prepare(entry, order, rows) {
    var mark = typeof entry[8] === "number" ? rows[entry[8]][8] : entry[8];
    return {
      kind: entry[0], number: entry[1], name: entry[2], href: entry[3], stamp: entry[4], status: entry[5], standing: entry[7], mark: mark,
      asks: entry[9], holds: entry[10],
      numbers: [tight(entry[1]), tight(entry[4])].concat(entry[10].map(tight)),
      words: " " + plain([entry[0], entry[1], entry[2], entry[4], entry[5], entry[6]].concat(entry[10]).join(" ")),
      /* What is replaced or withdrawn comes after what may be used. */
      stale: entry[7] === "superseded" || entry[7] === "withdrawn"
    };
  }

  /* From how many letters on a number is found by what stands within it. */
  var WITHIN = 3;

  /* Where a number has what was typed: in full, at its beginning, within; -1 where nowhere. */
  function numbered(numbers, typed) {
    var best = -1;
    for (var index = 0; index < numbers.length; index += 1) {
      if (numbers[index] === typed) { return 0; }
      var at = numbers[index].indexOf(typed);
      if (at === 0 && typed.length > 1) { best = 1; } else if (at >= 0 && best < 0) { best = 4; }
    }
    return best === 4 && typed.length < WITHIN ? -1 : best;
  }

  /* Lower is better; -1 is no hit. */
  function rank(entry, typed, words) {
    var number = typed ? numbered(entry.numbers, typed) : -1;
    if (number === 0 || number === 1) { return number; }
    var place = 2;
    for (var index = 0; index < words.length; index += 1) {
      var at = entry.words.indexOf(words[index]);
      if (at < 0) { return number; }
      if (entry.words.charCodeAt(at - 1) !== 32) { place = 3; }
    }
    return place;
  }

  /* What agrees with a query, in the order of the index: of longer and longer queries, what agreed with the one before. */
  function agreeing(entries, query, before) {
    var typed = tight(query), words = plain(query).split(/\s+/).filter(Boolean);
    var narrower = before !== null && before.typed.length >= WITHIN && query.indexOf(before.query) === 0;
    var hits = [], from = narrower ? before.hits : entries;
    for (var index = 0; index < from.length; index += 1) {
      var entry = narrower ? from[index].entry : from[index], place = rank(entry, typed, words);
      if (place >= 0) { hits.push({ entry: entry, place: place }); }
    }
    return { query: query, typed: typed, hits: hits };
  }

  /* What was typed in full comes first, then look-ups; after them, what must not be used is last. */
  function ordered(hits, lookUps) {
    var heaps = [];
    for (var heap = 0; heap < 12; heap += 1) { heaps.push([]); }
    hits.forEach(function (hit) {
      var stale = hit.entry.stale ? 1 : 0;
      heaps[hit.place === 0 ? stale : 2 + 5 * stale + hit.place].push(hit.entry);
    });
    return [].concat(heaps[0], heaps[1], lookUps, heaps.slice(2).reduce(function (all, heap) { return all.concat(heap); }, []));
  }

  function drawn(name, attributes) {
    var element = document.createElementNS("http://www.w3.org/2000/svg", name);
    Object.keys(attributes).forEach(function (key) { element.setAttribute(key, attributes[key]); });
    return element;
  }

  /* A mark as pages draw it: paint with its notches and text, and the same in words. */
  function markLine(mark) {
    var line = make("span", "mark"), swatch = drawn("svg", { "class": "swatch", viewBox: "0 0 48 26", "aria-hidden": "true", focusable: "false" });
    swatch.appendChild(drawn("path", { d: mark.outline, fill: mark.fill }));
    var text = drawn("text", { x: "24", y: "15", "text-anchor": "middle", fill: mark.ink });
    text.textContent = mark.text;
    swatch.appendChild(text);
    line.appendChild(swatch);
    line.appendChild(make("span", "", mark.words));
    return line;
  }

  function hitLine(entry) {
    var item = make("li");
    var link = make("a");
    link.href = entry.href;
    link.appendChild(make("span", "found-kind", entry.kind));
    var what = make("span");
    if (entry.number) { what.appendChild(make("span", "number", entry.number)); }
    what.appendChild(document.createTextNode((entry.number ? " " : "") + entry.name));
    link.appendChild(what);
    var stamped = entry.stamp ? ["stamp " + entry.stamp] : [];
    if (entry.holds && entry.holds.length) { stamped.push("gripping part " + entry.holds.join(", ")); }
    if (stamped.length) { link.appendChild(make("span", "found-more", stamped.join("; "))); }
    if (entry.mark) { link.appendChild(markLine(entry.mark)); }
    if (entry.status) {
      var standing = make("span", "found-more");
      standing.appendChild(make("strong", "standing standing-" + entry.standing, entry.status));
      link.appendChild(standing);
    }
    item.appendChild(link);
    return item;
  }

  function startFind(form) {
    var box = one("input", form), count = one(".find-count", form), list = one(".find-list", form);
    var entries = null, known = null, before = null, most = 30;

    function show() {
      var query = box.value.trim();
      list.textContent = "";
      if (!query || !entries) { count.textContent = ""; before = null; return; }
      before = agreeing(entries, query, before);
      var hits = ordered(before.hits, asks.asked(query, known));
      hits.slice(0, most).forEach(function (entry) { list.appendChild(hitLine(entry)); });
      count.textContent = hits.length === 0 ? "Nothing found" : hits.length + " found" + (hits.length > most ? ", the first " + most + " shown" : "");
    }

    function ready() {
      if (entries) { return; }
      load("index.js", "bookletIndex", function (index) {
        entries = index.map(prepare);
        known = asks.known(entries);
        show();
      });
    }

    function move(by) {
      var links = all("a", list), at = links.indexOf(document.activeElement) + by;
      if (at < 0) { box.focus(); } else if (links[at]) { links[at].focus(); }
    }

    box.addEventListener("focus", ready);
    box.addEventListener("input", function () { ready(); show(); });
    form.addEventListener("submit", function (event) {
      event.preventDefault();
      var first = one("a", list);
      if (first) { first.click(); }
    });
    form.addEventListener("keydown", function (event) {
      if (event.key === "ArrowDown") { event.preventDefault(); move(document.activeElement === box ? 1 + all("a", list).indexOf(box) : 1); }
      if (event.key === "ArrowUp") { event.preventDefault(); move(-1); }
      if (event.key === "Escape") { box.value = ""; show(); box.focus(); }
    });
    list.addEventListener("click", function (event) {
      var link = event.target.closest("a");
      if (!link) { return; }
      box.value = "";
      window.setTimeout(show, 0);
      /* The address that is open already changes nothing, but what was looked up is looked up again. */
      if (link.href === location.href) { window.dispatchEvent(new Event("hashchange")); }
    });
    form.hidden = false;
  }

  all(".find", document).forEach(startFind);
}());
