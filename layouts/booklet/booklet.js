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

  function plain(text) {
    return text.normalize("NFD").replace(/[\u00ad\u0300-\u036f]/g, "").toLowerCase();
  }

  /* Numbers and stamps as they are typed with gloves on: no spaces, hyphens, dots. */
  function tight(text) { return plain(text).replace(/[^a-z0-9]/g, ""); }

  function prepare(entry) {
    return {
      kind: entry[0], number: entry[1], name: entry[2], href: entry[3], stamp: entry[4], status: entry[5],
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
      if (at > 0 && /[a-z0-9]/.test(entry.words.charAt(at - 1))) { place = 3; }
    }
    return place;
  }

  function search(entries, query) {
    var words = plain(query).split(/\s+/).filter(Boolean);
    var hits = [];
    entries.forEach(function (entry, order) {
      var place = rank(entry, query, words);
      if (place !== null) { hits.push({ entry: entry, place: place, order: order }); }
    });
    hits.sort(function (a, b) { return a.place - b.place || a.order - b.order; });
    return hits.map(function (hit) { return hit.entry; });
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
    var more = [entry.stamp ? "stamp " + entry.stamp : "", entry.status].filter(Boolean).join(" · ");
    if (more) { link.appendChild(make("span", "found-more", more)); }
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
      var name = decodeURIComponent(location.hash.slice(1));
      var target = (name && document.getElementById(name)) || pages[0];
      /* What stands outside all pages, such as the start of the main part, leaves the page that is shown. */
      shown = target.closest(".page") || shown;
      pages.forEach(function (other) { other.hidden = other !== shown; });
      all("nav a", one("header")).forEach(function (link) {
        if (link.getAttribute("href") === "#" + shown.id) { link.setAttribute("aria-current", "page"); } else { link.removeAttribute("aria-current"); }
      });
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
