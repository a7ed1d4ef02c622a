/* What is in my hand: the conductors that agree with all that was found, and why the others do not. A classic
   script, run after lookup.js and tools.js. */
(function () {
  "use strict";

  var tools = window.bookletTools, lookup = window.bookletLookup, typed = tools.typed, make = tools.make, say = tools.say;
  var NUMBERS = ["one", "two", "tolerance", "wires", "outer", "wire"], WHOLE = ["wires", "outer"];
  var COUNTED = ["wires", "outer", "wire"], SEEN = ["shape", "magnet", "scratch"];
  var FOUND = ["one", "two"].concat(COUNTED, SEEN);
  /* With more candidates, what tells them apart is behind a tap. */
  var MANY = 6;

  function fittings(conductor) {
    return conductor.fittings.map(function (fitting) {
      var entry = make("li", "Fitting "), text = fitting.number + " " + fitting.name;
      entry.appendChild(tools.link({ href: fitting.href, text: text }));
      if (fitting.status) {
        entry.appendChild(document.createTextNode(" "));
        entry.appendChild(make("strong", fitting.status));
      }
      return entry;
    });
  }

  /* How to tell a conductor from the others that agree. */
  function toldApart(conductor, found, common) {
    var others = found.filter(function (other) { return other !== conductor; });
    return others.map(function (other) {
      var entry = make("li", "Or is it " + other.text + "? ");
      entry.className = "apart";
      entry.setAttribute("data-from", other.id);
      entry.appendChild(make("span", lookup.apart(conductor.signs, other.signs, common)));
      return entry;
    });
  }

  function put(list, entries) { entries.forEach(function (entry) { list.appendChild(entry); }); }

  function candidate(conductor, found, read, common) {
    var item = make("li"), list = make("ul"), apart = toldApart(conductor, found, common);
    item.appendChild(tools.link(conductor));
    item.appendChild(document.createTextNode(", " + conductor.measure));
    lookup.remarks(conductor, read).forEach(function (remark) { list.appendChild(make("li", remark)).className = "remark"; });
    put(list, fittings(conductor));
    if (found.length <= MANY) { put(list, apart); }
    if (list.firstChild) { item.appendChild(list); }
    if (found.length > MANY) {
      var more = make("details"), others = make("ul");
      more.appendChild(make("summary", "What tells it from the others"));
      put(others, apart);
      more.appendChild(others);
      item.appendChild(more);
    }
    return item;
  }

  function candidates(found, read, common) {
    var list = make("ol");
    put(list, found.map(function (conductor) { return candidate(conductor, found, read, common); }));
    return list;
  }

  function ruledOut(out) {
    var list = make("ul");
    list.className = "ruled-out";
    out.forEach(function (entry) {
      var item = make("li"), name = make("s");
      name.appendChild(tools.link(entry.conductor));
      item.appendChild(name);
      item.appendChild(document.createTextNode(" – " + entry.reasons.join("; ")));
      list.appendChild(item);
    });
    return list;
  }

  /* What to do with several that agree: to go on where that helps, else to stop. */
  function next(found, common) {
    var pairs = [];
    found.forEach(function (one, index) {
      found.slice(index + 1).forEach(function (other) { pairs.push(lookup.differ(one.signs, other.signs, common)); });
    });
    var twins = pairs.filter(function (pair) { return !pair.by_hand; });
    var read = twins.every(function (pair) { return pair.labels; }) ? "read the drum tag or the line record." : "read the line record.";
    var many = found.length + " conductors fit";
    if (twins.length === pairs.length) { return [make("strong", "Stop: " + many + ", and nobody can tell them apart by hand."), " " + tools.sentence(read)]; }
    return [make("strong", many), "; go on until one is left." + (twins.length ? " Some of them nobody can tell apart by hand: there, " + read : "")];
  }

  /* The answer in one line, which stays in sight while fields are filled. */
  function tally(found, all) {
    if (!found.length) { return [make("strong", "No conductor of this catalogue: stop.")]; }
    if (found.length === 1) { return [make("strong", "One fits: " + found[0].text)]; }
    var names = found.length <= 3 ? ": " + found.map(function (conductor) { return conductor.text; }).join(", or ") : "";
    return [make("strong", found.length + " of " + all + " fit" + names)];
  }

  function said(words) {
    var line = make("p", tools.sentence(words));
    line.className = "told";
    line.setAttribute("data-says", words);
    return line;
  }

  function startHand(form) {
    var table = tools.data(form), answer = form.querySelector(".answer"), counted = form.querySelector(".tally"), fields = form.elements;
    var usual = tools.tolerance(fields.tolerance);

    function asked() {
      var readings = [typed(fields.one), typed(fields.two)].filter(function (reading) { return reading !== null; });
      var read = lookup.sizes(readings), tolerance = tools.tolerance(fields.tolerance);
      read.tolerance = tolerance === null ? usual : tolerance;
      COUNTED.forEach(function (name) { if (typed(fields[name]) !== null) { read[name] = typed(fields[name]); } });
      SEEN.forEach(function (name) { if (fields[name].value) { read[name] = fields[name].value; } });
      return read;
    }

    function stop(words) {
      say(answer, [words]);
      say(counted, [make("strong", words)]);
    }

    function show() {
      var odd = NUMBERS.map(function (name) {
        return tools.odd(fields[name], name === "tolerance" ? tools.tolerance(fields[name]) : typed(fields[name]), WHOLE.indexOf(name) >= 0);
      }).filter(Boolean);
      if (odd.length) { stop(odd[0]); return; }
      if (!FOUND.some(function (name) { return tools.filled(fields[name]); })) {
        say(answer, []);
        say(counted, ["All " + table.conductors.length + " conductors fit so far."]);
        return;
      }
      var read = asked(), refused = lookup.against(table.limits, read, table.mark);
      if (refused.length) { stop(tools.sentence(refused[0])); return; }
      answered(read);
    }

    function answered(read) {
      var nearest = lookup.sorted(table.conductors, function (conductor) { return lookup.distance(conductor, read); });
      var all = nearest.map(function (conductor) { return { conductor: conductor, reasons: lookup.against(conductor.tests, read, table.mark) }; });
      var found = all.filter(function (entry) { return !entry.reasons.length; }).map(function (entry) { return entry.conductor; });
      var out = all.filter(function (entry) { return entry.reasons.length; });
      var remarks = lookup.against(table.remarks, read, table.mark).concat(found.length ? [] : [table.none]);
      var one = [make("strong", "One conductor fits"), "; the drum tag or the line record must agree."];
      var head = found.length > 1 ? next(found, table.apart) : one;
      say(counted, tally(found, all.length));
      say(answer, remarks.map(said).concat(
        found.length ? head.concat([candidates(found, read, table.apart)]) : [],
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
