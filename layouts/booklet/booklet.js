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

  /* The pictures in the order of the steps: each step with the picture of its stage, a stage without any by itself. */
  function framesOf(box) {
    var last = 0, frames = [];
    all(".stage", box).forEach(function (stage) {
      var steps = all("li", stage);
      steps.forEach(function (step) {
        frames.push({ stage: stage, step: step, place: step.value });
        last = Math.max(last, step.value);
      });
      if (steps.length === 0) { frames.push({ stage: stage, step: null, place: last + 0.5 }); }
    });
    frames.sort(function (a, b) { return a.place - b.place; });
    return frames;
  }

  function startStages(box) {
    var frames = framesOf(box), at = 0, timer = null;
    var still = window.matchMedia("(prefers-reduced-motion: reduce)").matches;
    if (frames.length < 2) { return; }
    var bar = make("div"), says = make("p");
    bar.className = "stage-controls";
    says.setAttribute("role", "status");
    var back = make("button", "Back"), next = make("button", "Next"), play = make("button", "Play");
    [back, next].concat(still ? [] : [play]).forEach(function (button) {
      button.type = "button";
      bar.appendChild(button);
    });
    bar.appendChild(says);
    var counted = all("li", box).length > 0 ? "Step " : "Stage ";

    function show(number) {
      var frame = frames[number];
      at = number;
      all(".stage", box).forEach(function (stage) { stage.hidden = stage !== frame.stage; });
      all("li", box).forEach(function (step) { step.hidden = step !== frame.step; });
      /* A button that is off takes no keys: the other one has them. */
      if (at === 0 && document.activeElement === back) { next.disabled = false; next.focus(); }
      if (at === frames.length - 1 && document.activeElement === next) { back.disabled = false; back.focus(); }
      back.disabled = at === 0;
      next.disabled = at === frames.length - 1;
      says.textContent = counted + (at + 1) + " of " + frames.length;
    }
    function stop() {
      window.clearInterval(timer);
      timer = null;
      play.textContent = "Play";
    }
    function tick() {
      if (at === frames.length - 1) { stop(); } else { show(at + 1); }
    }
    back.addEventListener("click", function () { stop(); show(at - 1); });
    next.addEventListener("click", function () { stop(); show(at + 1); });
    bar.addEventListener("keydown", function (event) {
      var by = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
      if (by !== 0 && frames[at + by]) { event.preventDefault(); stop(); show(at + by); }
    });
    play.addEventListener("click", function () {
      if (timer !== null) { stop(); return; }
      if (at === frames.length - 1) { show(0); }
      play.textContent = "Pause";
      timer = window.setInterval(tick, 4000);
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
