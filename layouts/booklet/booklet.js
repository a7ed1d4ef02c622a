/* What pages do beyond being read. A classic script: modules don't load from disk. Every page is whole
   without it. */
(function () {
  "use strict";

  function one(selector, within) { return (within || document).querySelector(selector); }
  function all(selector, within) { return Array.prototype.slice.call((within || document).querySelectorAll(selector)); }

  function make(name, text) {
    var element = document.createElement(name);
    if (text) { element.textContent = text; }
    return element;
  }

  /* ---- Stages ---- */

  function startStages(box) {
    var figures = all("figure", box), at = 0, timer = null;
    var still = window.matchMedia("(prefers-reduced-motion: reduce)").matches;
    if (figures.length < 2) { return; }
    var bar = make("div"), says = make("p");
    bar.className = "stage-controls";
    says.setAttribute("role", "status");
    var back = make("button", "Back"), next = make("button", "Next"), play = make("button", "Play");
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

  all("[data-stages]").forEach(startStages);
  if (document.body.hasAttribute("data-single")) { startSingle(); }
}());
