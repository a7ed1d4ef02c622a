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

  function prepare(entry) {
    return {
      kind: entry[0], number: entry[1], name: entry[2], href: entry[3], stamp: entry[4], status: entry[5], standing: entry[7], mark: entry[8],
      asks: entry[9], holds: entry[10],
      numbers: [tight(entry[1]), tight(entry[4])].concat(entry[10].map(tight)),
      words: plain([entry[0], entry[1], entry[2], entry[4], entry[5], entry[6]].concat(entry[10]).join(" "))
    };
  }

  /* Lower is better; null is no hit. */
  function rank(entry, query, words) {
    var typed = tight(query);
    if (typed && entry.numbers.indexOf(typed) >= 0) { return 0; }
    if (typed.length > 1 && entry.numbers.some(function (number) { return number.indexOf(typed) === 0; })) { return 1; }
    var place = 2;
    for (var index = 0; index < words.length; index += 1) {
      var at = entry.words.indexOf(words[index]);
      if (at < 0) {
        return typed.length > 2 && entry.numbers.some(function (number) { return number.indexOf(typed) >= 0; }) ? 4 : null;
      }
      if (at > 0 && /[^\s]/.test(entry.words.charAt(at - 1))) { place = 3; }
    }
    return place;
  }

  /* What is replaced or withdrawn, after what may be used. */
  function stale(hit) { return /^(superseded|withdrawn)$/.test(hit.entry.standing) ? 1 : 0; }

  function search(entries, query) {
    var words = plain(query).split(/\s+/).filter(Boolean);
    var hits = [];
    entries.forEach(function (entry, order) {
      var place = rank(entry, query, words);
      if (place !== null) { hits.push({ entry: entry, place: place, order: order }); }
    });
    /* What was typed in full comes first; after it, what must not be used is last. */
    function out(hit) { return hit.place > 0 ? stale(hit) : 0; }
    hits.sort(function (a, b) { return out(a) - out(b) || a.place - b.place || stale(a) - stale(b) || a.order - b.order; });
    /* A look-up comes after what was typed in full, and before all else. */
    var full = hits.filter(function (hit) { return hit.place === 0; }).length;
    var found = hits.map(function (hit) { return hit.entry; });
    return found.slice(0, full).concat(asks.asked(query, entries), found.slice(full));
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
    var entries = null, most = 30;

    function show() {
      var query = box.value.trim();
      list.textContent = "";
      if (!query || !entries) { count.textContent = ""; return; }
      var hits = search(entries, query);
      hits.slice(0, most).forEach(function (entry) { list.appendChild(hitLine(entry)); });
      count.textContent = hits.length === 0 ? "Nothing found" : hits.length + " found" + (hits.length > most ? ", the first " + most + " shown" : "");
    }

    function ready() {
      if (entries) { return; }
      load("index.js", "bookletIndex", function (index) { entries = index.map(prepare); show(); });
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
      if (event.target.closest("a")) { box.value = ""; window.setTimeout(show, 0); }
    });
    form.hidden = false;
  }

  all(".find", document).forEach(startFind);
}());
