/* What is in my hand: the conductors that agree with all that was found, and why the others do not. A classic
   script, run after tools.js. */
(function () {
  "use strict";

  var tools = window.bookletTools, typed = tools.typed, make = tools.make, link = tools.link, say = tools.say;
  var NUMBERS = ["one", "two", "tolerance", "wires", "outer", "wire"];
  var FOUND = ["one", "two", "wires", "outer", "wire", "shape", "magnet", "colour"];
  var PULLS = { no: "a magnet does not pull it", slight: "a magnet pulls it a little", yes: "a magnet holds it" };
  var SHAPES = { round: "it is round", grooved: "it is grooved", rope: "it is a rope of strands", tube: "it is a tube", bar: "it is a bar" };
  var SCRATCHES = { copper: "a fresh scratch is copper or bronze", grey: "a fresh scratch is grey" };

  function within(one, other, most) { return Math.abs(one - other) <= most + 1e-9; }

  function mean(readings) { return readings.reduce(function (sum, reading) { return sum + reading; }, 0) / readings.length; }

  /* A worn grooved wire keeps its width; its height is anything down to its lowest. */
  function wornAlike(worn, asked, most) {
    var low = Math.min.apply(null, asked.readings), high = Math.max.apply(null, asked.readings);
    var stands = low >= worn.lowest - most && low <= worn.height + most;
    if (asked.readings.length === 2) { return within(high, worn.width, most) && stands; }
    return within(low, worn.width, most) || (asked.shape === "grooved" && stands);
  }

  function measuresAlike(conductor, asked) {
    var most = asked.tolerance + conductor.tolerance;
    if (!asked.readings.length || within(mean(asked.readings), conductor.diameter, most)) { return true; }
    return conductor.worn !== null && wornAlike(conductor.worn, asked, most);
  }

  /* A slight pull is told from none and from a strong one only with luck. */
  function pullsAlike(seen, known) { return seen === known || known === "slight" || (seen === "slight" && known === "yes"); }

  /* What rules a conductor out, in words. What is not known of it, or was not looked at, rules nothing out. */
  function against(conductor, asked, mark) {
    var reasons = [];
    function same(seen, known) { return seen === known; }
    function near(seen, known) { return within(seen, known, asked.tolerance + conductor.wireTolerance); }
    function look(known, seen, alike, words) {
      if (seen !== null && seen !== "" && known !== null && !alike(seen, known)) { reasons.push(words); }
    }
    function mm(length) { return String(length).replace(".", mark) + "\u00a0mm"; }
    if (!measuresAlike(conductor, asked)) { reasons.push("it measures " + mm(conductor.diameter)); }
    look(conductor.wires, asked.wires, same, "it has " + conductor.wires + " wires in all");
    look(conductor.outer, asked.outer, same, "its outer layer has " + conductor.outer + " wires");
    look(conductor.wire, asked.wire, near, "one wire of it measures " + mm(conductor.wire));
    look(conductor.shape, asked.shape, same, SHAPES[conductor.shape]);
    look(conductor.magnet, asked.magnet, pullsAlike, PULLS[conductor.magnet]);
    look(conductor.colour, asked.colour, same, SCRATCHES[conductor.colour]);
    return reasons;
  }

  /* A conductor that agrees: its fittings, and how to tell it from the others that do. */
  function candidate(conductor, others, apart) {
    var item = make("li"), list = make("ul");
    item.appendChild(link(conductor));
    item.appendChild(document.createTextNode(", " + conductor.measure));
    conductor.fittings.forEach(function (fitting) {
      var entry = make("li", "Fitting ");
      entry.appendChild(link(fitting));
      list.appendChild(entry);
    });
    others.forEach(function (other) {
      list.appendChild(make("li", "Or is it " + other.text + "? " + (apart[conductor.id + "|" + other.id] || "overall diameter")));
    });
    if (list.firstChild) { item.appendChild(list); }
    return item;
  }

  function candidates(found, apart) {
    var list = make("ol");
    found.forEach(function (conductor) {
      list.appendChild(candidate(conductor, found.length > 6 ? [] : found.filter(function (other) { return other !== conductor; }), apart));
    });
    return list;
  }

  function ruledOut(out) {
    var list = make("ul");
    list.className = "ruled-out";
    out.forEach(function (entry) {
      var item = make("li"), name = make("s");
      name.appendChild(link(entry.conductor));
      item.appendChild(name);
      item.appendChild(document.createTextNode(" – " + entry.reasons.join("; ")));
      list.appendChild(item);
    });
    return list;
  }

  /* The answer in one line, which stays in sight while fields are filled. */
  function tally(found, all) {
    if (!found.length) { return [make("strong", "No conductor of this catalogue: stop.")]; }
    if (found.length === 1) { return [make("strong", "One fits: " + found[0].text)]; }
    var names = found.length <= 3 ? ": " + found.map(function (conductor) { return conductor.text; }).join(", or ") : "";
    return [make("strong", found.length + " of " + all + " fit" + names)];
  }

  function startHand(form) {
    var table = tools.data(form), answer = form.querySelector(".answer"), counted = form.querySelector(".tally"), fields = form.elements;

    function asked() {
      var readings = [typed(fields.one), typed(fields.two)].filter(function (reading) { return reading !== null; });
      return {
        readings: readings, tolerance: Math.abs(typed(fields.tolerance) || 0), wires: typed(fields.wires), outer: typed(fields.outer),
        wire: typed(fields.wire), shape: fields.shape.value, magnet: fields.magnet.value, colour: fields.colour.value
      };
    }

    function judged(query) {
      var all = table.conductors.map(function (conductor) { return { conductor: conductor, reasons: against(conductor, query, table.mark) }; });
      if (query.readings.length) {
        var reading = mean(query.readings);
        all.sort(function (a, b) { return Math.abs(a.conductor.diameter - reading) - Math.abs(b.conductor.diameter - reading); });
      }
      return all;
    }

    function show() {
      var odd = NUMBERS.filter(function (name) { return fields[name].value.trim() !== "" && typed(fields[name]) === null; });
      if (odd.length) {
        var wrong = "“" + fields[odd[0]].value + "” is not a number.";
        say(answer, [wrong]);
        say(counted, [make("strong", wrong)]);
        return;
      }
      if (!FOUND.some(function (name) { return fields[name].value.trim() !== ""; })) {
        say(answer, []);
        say(counted, ["All " + table.conductors.length + " conductors fit so far."]);
        return;
      }
      var all = judged(asked());
      var found = all.filter(function (entry) { return !entry.reasons.length; }).map(function (entry) { return entry.conductor; });
      var out = all.filter(function (entry) { return entry.reasons.length; });
      var first = "; go on until one is left.";
      if (!found.length) { first = "Stop: measure again, read the drum tag or the line record."; }
      if (found.length === 1) { first = "; the drum tag or the line record must agree."; }
      var head = found.length === 1 ? "One conductor fits" : found.length + " conductors fit";
      say(counted, tally(found, all.length));
      say(answer, (found.length ? [make("strong", head), first, candidates(found, table.apart)] : [make("strong", first)]).concat(
        out.length ? [make("h3", "Ruled out: " + out.length), ruledOut(out)] : []));
    }
    form.addEventListener("input", show);
    fields.clear.addEventListener("click", function () {
      FOUND.forEach(function (name) { fields[name].value = ""; });
      show();
      fields.one.focus();
    });
    show();
  }

  tools.start("hand", startHand);
}());
