/* What is inside a closed fitting: what to do, the parts that it could be with the dangers first, and a ruler of all
   their windows with the reading on it. A classic script, run after tools.js. */
(function () {
  "use strict";

  var tools = window.bookletTools, lookup = window.bookletLookup, make = tools.make, link = tools.link, say = tools.say;
  var CALLED = { "hidden-danger": "Danger", "seen-danger": "Danger", "": "Other part", "right-part": "Right part" };

  /* What each part or kit would be: as it agrees with the reading, else as it is in the first of its fittings. */
  function judged(inside, read) {
    return inside.map(function (part) {
      var fits = part.ways.filter(function (way) { return !lookup.against(way.tests, read).length; })[0];
      return { text: part.text, href: part.href, way: fits || part.ways[0], fits: Boolean(fits) };
    });
  }

  /* The worst first; among those that are as bad, the nearest to the reading. */
  function ranked(parts, read) {
    var nearest = lookup.sorted(parts, function (part) { return lookup.distance(part.way, read); });
    return lookup.sorted(nearest, function (part) { return part.way.found; });
  }

  function listed(can) {
    var list = make("ul");
    list.className = "verdicts";
    can.forEach(function (part) {
      var item = make("li"), way = part.way;
      item.className = way["class"];
      item.appendChild(make("strong", CALLED[way["class"]] + (way.noticed ? ", " + way.noticed : "")));
      item.appendChild(document.createTextNode(": "));
      item.appendChild(link(part));
      item.appendChild(document.createTextNode(" – " + way.words));
      list.appendChild(item);
    });
    return list;
  }

  /* What is to be thought of where the right part agrees, each once: that the reading is no go, or what its fitting's
     status says. */
  function thoughtOf(can, read) {
    var all = can.reduce(function (all, part) { return all.concat(lookup.remarks(part.way, read)); }, []);
    return all.filter(function (remark, at) { return all.indexOf(remark) === at; }).sort();
  }

  function remarked(remark) {
    var line = make("p", tools.sentence(remark));
    line.className = "told stop remark";
    return line;
  }

  /* What the reading rules out, each with where it would stand. */
  function ruledOut(parts, read) {
    var list = make("ul");
    list.className = "ruled-out";
    parts.forEach(function (part) {
      var item = make("li"), name = make("s");
      name.appendChild(link(part));
      item.appendChild(name);
      item.appendChild(document.createTextNode(" – " + lookup.against(part.way.tests, read).join("; ")));
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
    return [["seated", part.way.seated], ["tensioned", part.way.tensioned]].filter(function (pair) {
      return pair[1] !== null && (state === "unknown" || state === pair[0]);
    });
  }

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

  function name(svg, part, top) {
    var called = part.text.indexOf("all parts") === 0 ? part.text : part.text.split(" ")[0];
    svg.appendChild(drawn("text", { x: EDGE, y: top + 11 }, called + " – " + CALLED[part.way["class"]].toLowerCase()));
  }

  function bars(svg, part, top, place, state, low) {
    windows(part, state).forEach(function (pair) {
      var from = place(pair[1][0] === null ? low : pair[1][0]), to = place(pair[1][1]);
      svg.appendChild(drawn("rect", { x: from, y: top + (pair[0] === "seated" ? 15 : 23), width: Math.max(2, to - from), height: 6, "class": "window-" + pair[0] }));
    });
  }

  /* The body's face, and what lies on each side of it. */
  function sides(svg, ends, place, high) {
    if (ends[0] < 0 && ends[1] > 0) {
      svg.appendChild(drawn("line", { x1: place(0), x2: place(0), y1: 0, y2: high + 5, "class": "face" }));
    }
    if (ends[0] < 0) { svg.appendChild(drawn("text", { x: EDGE, y: high + 34 }, "\u2190 sunk")); }
    if (ends[1] > 0) { svg.appendChild(drawn("text", { x: WIDE - EDGE, y: high + 34, "text-anchor": "end" }, "stands out \u2192")); }
  }

  function ruler(inside, reading, tolerance, state) {
    var parts = inside.filter(function (part) { return windows(part, state).length; });
    var high = EDGE + parts.length * ROW, ends = reach(parts, state, reading);
    function place(mm) { return EDGE + (mm - ends[0]) / (ends[1] - ends[0]) * (WIDE - 2 * EDGE); }
    var svg = drawn("svg", { viewBox: "0 0 " + WIDE + " " + (high + 40), "class": "ruler", role: "img", "aria-label": "The reading on the windows of all parts; the list says the same in words" });
    svg.appendChild(drawn("rect", { x: place(reading - tolerance), y: 0, width: Math.max(1, place(reading + tolerance) - place(reading - tolerance)), height: high, "class": "reading-band" }));
    function top(index) { return EDGE + index * ROW - 6; }
    parts.forEach(function (part, index) { bars(svg, part, top(index), place, state, ends[0]); });
    sides(svg, ends, place, high);
    svg.appendChild(drawn("line", { x1: place(reading), x2: place(reading), y1: 0, y2: high, "class": "reading" }));
    parts.forEach(function (part, index) { name(svg, part, top(index)); });
    var step = [0.5, 1, 2, 5, 10, 20, 50, 100].filter(function (size) { return (ends[1] - ends[0]) / size <= 8; })[0] || 200;
    for (var mm = Math.ceil(ends[0] / step) * step; mm <= ends[1]; mm += step) {
      svg.appendChild(drawn("line", { x1: place(mm), x2: place(mm), y1: high, y2: high + 5, "class": "tick" }));
      svg.appendChild(drawn("text", { x: place(mm), y: high + 18, "text-anchor": "middle" }, String(Math.abs(mm))));
    }
    return svg;
  }

  function startClosed(form) {
    var table = tools.data(form), answer = form.querySelector(".answer"), fields = form.elements, usual = tools.tolerance(fields.tolerance);
    var body = null;

    /* The conductors of a body that is named in the address stand first. Of several, none is taken for the one that is meant:
       who types a reading alone would get the answer for another fitting. */
    function choices() {
      if (body === fields.body.value) { return; }
      body = fields.body.value;
      fields["case"].textContent = "";
      var own = table.cases.filter(function (entry) { return entry.body === body; });
      if (own.length !== 1 && table.cases.length > 1) { fields["case"].appendChild(make("option", own.length ? "Choose the conductor in " + body : "Choose body and conductor")).value = ""; }
      own.concat(table.cases.filter(function (entry) { return entry.body !== body; })).forEach(function (entry) {
        fields["case"].appendChild(make("option", entry.text)).value = String(table.cases.indexOf(entry));
      });
    }

    function stop(words) { say(answer, [words]); }

    function show() {
      choices();
      var reading = tools.sized(fields.reading), off = tools.tolerance(fields.tolerance), state = fields.state.value;
      var odd = tools.odd(fields.reading, reading) || tools.odd(fields.tolerance, off);
      if (odd || reading === null) { stop(odd); return; }
      var read = { stand_out: reading, tolerance: off === null ? usual : off, state: state };
      var refused = lookup.against(table.limits, read, table.mark);
      if (refused.length) { stop(tools.sentence(refused[0])); return; }
      if (fields["case"].value === "") { stop(body ? "Choose the conductor." : "Choose body and conductor."); return; }
      answered(table.cases[Number(fields["case"].value)], read);
    }

    function answered(chosen, read) {
      var all = ranked(judged(chosen.inside, read), read);
      var can = all.filter(function (part) { return part.fits; }), out = all.filter(function (part) { return !part.fits; });
      var words = can.length ? table.says[can[0].way.found] : table.none;
      var right = can.length > 0 && can[0].way["class"] === "right-part", remarks = thoughtOf(can, read);
      var told = make("p");
      told.className = right && !remarks.length ? "told" : "told stop";
      told.setAttribute("data-says", words);
      say(told, right ? [make("strong", (remarks.length ? "Stop. " : "") + tools.sentence(words))] : [make("strong", "Stop."), " " + tools.sentence(words)]);
      if (!right && chosen.card) { say(told, [make("strong", "Stop."), " " + tools.sentence(words) + " The card says: " + tools.sentence(chosen.card)]); }
      var scale = ruler(all, read.stand_out, read.tolerance, read.state);
      var face = scale.querySelector(".face") ? " Dashed: the face of the body." : "";
      var key = make("p", "Thick line: the reading, with what it may be off by. Filled: seated. Outlined: tensioned." + face + " In mm.");
      key.className = "faint";
      var first = (chosen.unmeasured ? [make("p"), told] : [told]).concat(remarks.map(remarked));
      if (chosen.unmeasured) { say(first[0], [make("strong", chosen.unmeasured)]); }
      say(answer, first.concat(can.length ? [listed(can)] : [], [scale, key],
        out.length ? [make("h3", "Ruled out: " + out.length), ruledOut(out, read)] : []));
    }
    form.addEventListener("input", show);
    choices();
  }

  tools.start("closed", startClosed);
}());
