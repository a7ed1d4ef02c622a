/* What is inside a closed fitting: what to do, the parts that it could be with the dangers first, and a ruler of all
   their windows with the reading on it. A classic script, run after tools.js. */
(function () {
  "use strict";

  var tools = window.bookletTools, make = tools.make, link = tools.link, say = tools.say, typed = tools.typed;
  var ORDER = ["hidden-danger", "seen-danger", "", "right-part"];
  var CALLED = { "hidden-danger": "Danger", "seen-danger": "Danger", "": "Other part", "right-part": "Right part" };

  /* Whether a window takes a reading; one that is not known takes any, one without a least is open below. */
  function takes(ends, reading, tolerance) {
    return ends === null || ((ends[0] === null || reading + tolerance >= ends[0] - 1e-9) && reading - tolerance <= ends[1] + 1e-9);
  }

  /* The worst first. */
  function ranked(parts) {
    return parts.slice().sort(function (a, b) { return ORDER.indexOf(a["class"]) - ORDER.indexOf(b["class"]); });
  }

  function possible(inside, reading, tolerance, state) {
    var can = inside.filter(function (part) {
      return (state !== "tensioned" && takes(part.seated, reading, tolerance)) || (state !== "seated" && takes(part.tensioned, reading, tolerance));
    });
    /* A part that is right for one fitting of the body and not for another is named once, as what it is right for. */
    return ranked(can.filter(function (part, index) {
      return can.findIndex(function (other) { return other.text === part.text; }) === index;
    }));
  }

  function listed(can) {
    var list = make("ul");
    list.className = "verdicts";
    can.forEach(function (part) {
      var item = make("li");
      item.className = part["class"];
      item.appendChild(make("strong", CALLED[part["class"]] + (part.noticed ? ", " + part.noticed : "")));
      item.appendChild(document.createTextNode(": "));
      item.appendChild(link(part));
      item.appendChild(document.createTextNode(" – " + part.words));
      list.appendChild(item);
    });
    return list;
  }

  /* ---- The ruler ---- */

  var WIDE = 320, ROW = 34, EDGE = 12;

  function drawn(name, attributes, text) {
    var element = document.createElementNS("http://www.w3.org/2000/svg", name);
    Object.keys(attributes).forEach(function (key) { element.setAttribute(key, String(attributes[key])); });
    if (text) { element.textContent = text; }
    return element;
  }

  function windows(part, state) {
    return [["seated", part.seated], ["tensioned", part.tensioned]].filter(function (pair) {
      return pair[1] !== null && (state === "unknown" || state === pair[0]);
    });
  }

  /* What a row of the ruler shows; a part that does the same in several fittings has one row. */
  function looks(part) { return JSON.stringify([part.text, part["class"], part.seated, part.tensioned]); }

  /* Least and most of all that the ruler shows, with room beside them. */
  function reach(inside, state, reading) {
    var ends = [reading];
    inside.forEach(function (part) {
      windows(part, state).forEach(function (pair) {
        ends.push(pair[1][1]);
        if (pair[1][0] !== null) { ends.push(pair[1][0]); }
      });
    });
    var least = Math.min.apply(null, ends), most = Math.max.apply(null, ends), room = Math.max(1, (most - least) * 0.08);
    return [least - room, most + room];
  }

  function row(svg, part, top, place, state, low) {
    var name = part.text.indexOf("all parts") === 0 ? part.text : part.text.split(" ")[0];
    svg.appendChild(drawn("text", { x: EDGE, y: top + 11 }, name + " – " + CALLED[part["class"]].toLowerCase()));
    windows(part, state).forEach(function (pair) {
      var from = place(pair[1][0] === null ? low : pair[1][0]), to = place(pair[1][1]);
      svg.appendChild(drawn("rect", { x: from, y: top + (pair[0] === "seated" ? 15 : 23), width: Math.max(2, to - from), height: 6, "class": "window-" + pair[0] }));
    });
  }

  function ruler(inside, reading, tolerance, state) {
    var parts = ranked(inside.filter(function (part) { return windows(part, state).length; }));
    parts = parts.filter(function (part, index) { return parts.findIndex(function (other) { return looks(other) === looks(part); }) === index; });
    var high = EDGE + parts.length * ROW, ends = reach(parts, state, reading);
    function place(mm) { return EDGE + (mm - ends[0]) / (ends[1] - ends[0]) * (WIDE - 2 * EDGE); }
    var svg = drawn("svg", { viewBox: "0 0 " + WIDE + " " + (high + 24), "class": "ruler", role: "img", "aria-label": "The reading on the windows of all parts; the list says the same in words" });
    svg.appendChild(drawn("rect", { x: place(reading - tolerance), y: 0, width: Math.max(1, place(reading + tolerance) - place(reading - tolerance)), height: high, "class": "reading-band" }));
    parts.forEach(function (part, index) { row(svg, part, EDGE + index * ROW - 6, place, state, ends[0]); });
    svg.appendChild(drawn("line", { x1: place(reading), x2: place(reading), y1: 0, y2: high, "class": "reading" }));
    var step = [0.5, 1, 2, 5, 10, 20, 50, 100].filter(function (size) { return (ends[1] - ends[0]) / size <= 8; })[0] || 200;
    for (var mm = Math.ceil(ends[0] / step) * step; mm <= ends[1]; mm += step) {
      svg.appendChild(drawn("line", { x1: place(mm), x2: place(mm), y1: high, y2: high + 5, "class": "tick" }));
      svg.appendChild(drawn("text", { x: place(mm), y: high + 18, "text-anchor": "middle" }, String(mm).replace("-", "\u2212")));
    }
    return svg;
  }

  function startClosed(form) {
    var table = tools.data(form), answer = form.querySelector(".answer"), fields = form.elements;
    table.cases.forEach(function (entry, index) {
      var option = make("option", entry.text);
      option.value = String(index);
      fields["case"].appendChild(option);
    });

    function show() {
      var reading = typed(fields.reading), tolerance = Math.abs(typed(fields.tolerance) || 0), state = fields.state.value;
      if (reading === null) { say(answer, [fields.reading.value === "" ? "" : "This is not a number."]); return; }
      var chosen = table.cases[Number(fields["case"].value)];
      var can = possible(chosen.inside, reading, tolerance, state);
      var picture = ruler(chosen.inside, reading, tolerance, state);
      var key = make("p", "Thick line: the reading, with what it may be off by. Filled: seated. Outlined: tensioned. In mm.");
      key.className = "faint";
      var wrong = can.some(function (part) { return part["class"] !== "right-part"; });
      var told = make("p");
      told.className = !can.length || wrong ? "told stop" : "told";
      if (!can.length) {
        say(told, [make("strong", "Stop."), " No known part stands out like this. " + chosen.none + "."]);
      } else if (wrong) {
        say(told, [make("strong", "Stop: it can be a wrong part."), " Read its stamp or mark. Where neither can be seen, treat it as wrong. " + chosen.none + "."]);
      } else {
        say(told, [make("strong", "Only the right part stands out like this"), "; that does not prove that it grips."]);
      }
      say(answer, can.length ? [told, listed(can), picture, key] : [told, picture, key]);
    }
    form.addEventListener("input", show);
  }

  tools.start("closed", startClosed);
}());
