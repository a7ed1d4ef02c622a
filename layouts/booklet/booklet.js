/* What pages do beyond being read. A classic script: modules don't load from disk. Every page is whole
   without it. */
(function () {
  "use strict";

  function one(selector, within) { return (within || document).querySelector(selector); }
  function all(selector, within) { return Array.prototype.slice.call((within || document).querySelectorAll(selector)); }

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

  /* ---- Find ---- */

  /* Letters that Unicode does not take apart into a letter and an accent. */
  var PLAIN = { "\u00df": "ss", "\u00e6": "ae", "\u0153": "oe", "\u00f8": "o", "\u0111": "d", "\u0142": "l", "\u0131": "i", "\u00fe": "th" };

  /* Text as it is compared: no case, no accents; O and 0 are one, so are I, l and 1. */
  function plain(text) {
    return text.normalize("NFD").replace(/[\u00ad\u0300-\u036f]/g, "").toLowerCase()
      .replace(/[\u00df\u00e6\u0153\u00f8\u0111\u0142\u0131\u00fe]/g, function (letter) { return PLAIN[letter]; })
      .replace(/o/g, "0").replace(/[il]/g, "1").replace(/[-\u00a0\u2010-\u2015\u2212]/g, " ");
  }

  /* Numbers and stamps as they are typed with gloves on: no spaces, hyphens, dots, commas. */
  function tight(text) { return plain(text).replace(/[\s.,:;_/'"()]/g, ""); }

  function prepare(entry) {
    return {
      kind: entry[0], number: entry[1], name: entry[2], href: entry[3], stamp: entry[4], status: entry[5], standing: entry[7], mark: entry[8],
      numbers: [tight(entry[1]), tight(entry[4])],
      words: plain([entry[0], entry[1], entry[2], entry[4], entry[5], entry[6]].join(" "))
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
    return hits.map(function (hit) { return hit.entry; });
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
    if (entry.stamp) { link.appendChild(make("span", "found-more", "stamp " + entry.stamp)); }
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

  /* ---- Stages ---- */

  function startStages(box) {
    var figures = all("figure", box), at = 0, timer = null;
    var still = window.matchMedia("(prefers-reduced-motion: reduce)").matches;
    if (figures.length < 2) { return; }
    var bar = make("div", "stage-controls"), says = make("p");
    says.setAttribute("role", "status");
    var back = make("button", "", "Back"), next = make("button", "", "Next"), play = make("button", "", "Play");
    [back, next].concat(still ? [] : [play]).forEach(function (button) {
      button.type = "button";
      bar.appendChild(button);
    });
    bar.appendChild(says);

    function show(number) {
      at = number;
      figures.forEach(function (figure, index) { figure.hidden = index !== at; });
      back.disabled = at === 0;
      next.disabled = at === figures.length - 1;
      says.textContent = "Stage " + (at + 1) + " of " + figures.length;
    }
    function stop() {
      window.clearInterval(timer);
      timer = null;
      play.textContent = "Play";
    }
    function tick() {
      if (at === figures.length - 1) { stop(); } else { show(at + 1); }
    }
    back.addEventListener("click", function () { stop(); show(at - 1); });
    next.addEventListener("click", function () { stop(); show(at + 1); });
    play.addEventListener("click", function () {
      if (timer !== null) { stop(); return; }
      if (at === figures.length - 1) { show(0); }
      play.textContent = "Pause";
      timer = window.setInterval(tick, 1600);
    });
    box.insertBefore(bar, box.firstChild);
    box.classList.add("stepped");
    show(0);
  }

  /* ---- One file that holds all pages: show the one that the address names ---- */

  function startSingle() {
    var pages = all(".page"), shown = pages[0];
    function show() {
      var name = decodeURIComponent(location.hash.slice(1).split("?")[0]);
      var target = (name && document.getElementById(name)) || pages[0];
      /* What stands outside all pages, such as the start of the main part, leaves the page that is shown. */
      shown = target.closest(".page") || shown;
      pages.forEach(function (other) { other.hidden = other !== shown; });
      all("nav a", one("header")).forEach(function (link) {
        if (link.getAttribute("href") === "#" + shown.id) { link.setAttribute("aria-current", "page"); } else { link.removeAttribute("aria-current"); }
      });
      all("details", one("header")).forEach(function (more) { more.open = false; });
      document.title = shown.getAttribute("data-title");
      if (target === shown) { window.scrollTo(0, 0); } else { target.scrollIntoView(); }
    }
    window.addEventListener("hashchange", show);
    show();
  }

  all(".find").forEach(startFind);
  all("[data-stages]").forEach(startStages);
  if (document.body.hasAttribute("data-single")) { startSingle(); }
}());
