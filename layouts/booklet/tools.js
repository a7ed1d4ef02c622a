/* The calculators. They look up tables that were computed when the booklet was made; no formula is
   written here. A classic script: modules don't load from disk. */
(function () {
  "use strict";

  function data(form) { return JSON.parse(document.getElementById(form.getAttribute("data-table")).textContent); }

  /* A number as typed, with either decimal mark; null where there is none. */
  function typed(field) {
    var text = field.value.trim().replace(",", ".").replace("\u2212", "-");
    var number = Number(text);
    return text === "" || !isFinite(number) ? null : number;
  }

  function make(name, text) {
    var element = document.createElement(name);
    if (text) { element.textContent = text; }
    return element;
  }

  function link(record) {
    var element = make("a", record.text);
    element.href = record.href;
    return element;
  }

  function say(answer, pieces) {
    answer.textContent = "";
    pieces.forEach(function (piece) {
      answer.appendChild(typeof piece === "string" ? document.createTextNode(piece) : piece);
    });
  }

  function written(number, places, mark) { return number.toFixed(places).replace(".", mark); }

  /* ---- Wear: rows of height, flat, section, percent, from new downwards ---- */

  function between(rows, column, value) {
    for (var index = 1; index < rows.length; index += 1) {
      var above = rows[index - 1], below = rows[index];
      if ((above[column] - value) * (below[column] - value) <= 0 && above[column] !== below[column]) {
        var share = (value - above[column]) / (below[column] - above[column]);
        return above.map(function (from, place) { return from + share * (below[place] - from); });
      }
    }
    return null;
  }

  function reached(limits, height) {
    var worst = "";
    limits.forEach(function (limit) { if (height <= limit.height + 1e-9) { worst = limit.text; } });
    return worst;
  }

  function startWear(form) {
    var table = data(form), answer = form.querySelector(".answer");
    var height = form.elements.height, flat = form.elements.flat;

    function show(field, column, other) {
      var value = typed(field);
      if (field.value !== "") { other.value = ""; }
      if (value === null) { say(answer, [field.value === "" ? "" : "This is not a number."]); return; }
      var row = between(table.rows, column, value);
      if (!row) { say(answer, [column === 0 && value > table.rows[0][0] ? table.above : table.below]); return; }
      var limit = reached(table.limits, row[0]);
      say(answer, [
        make("strong", "Section left " + written(row[2], 1, table.mark) + "\u00a0mm²"),
        ", worn " + written(row[3], 1, table.mark) + "\u00a0% " + table.basis + ", height " + written(row[0], 2, table.mark) +
        "\u00a0mm, flat " + written(row[1], 2, table.mark) + "\u00a0mm. ", make("strong", limit || table.none)
      ]);
    }
    height.addEventListener("input", function () { show(height, 0, flat); });
    flat.addEventListener("input", function () { show(flat, 1, height); });
  }

  /* ---- What is in my hand ---- */

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

  /* What is not known of a conductor, or was not looked at, excludes nothing. */
  function fits(conductor, asked) {
    function agree(known, seen, alike) { return seen === null || seen === "" || known === null || alike(seen, known); }
    function same(seen, known) { return seen === known; }
    function near(seen, known) { return within(seen, known, asked.tolerance + conductor.wireTolerance); }
    return measuresAlike(conductor, asked) && agree(conductor.wires, asked.wires, same) && agree(conductor.outer, asked.outer, same) &&
      agree(conductor.wire, asked.wire, near) && agree(conductor.shape, asked.shape, same) &&
      agree(conductor.magnet, asked.magnet, pullsAlike) && agree(conductor.colour, asked.colour, same);
  }

  function startHand(form) {
    var table = data(form), answer = form.querySelector(".answer"), fields = form.elements;

    function asked() {
      var readings = [typed(fields.one), typed(fields.two)].filter(function (reading) { return reading !== null; });
      return {
        readings: readings, tolerance: Math.abs(typed(fields.tolerance) || 0), wires: typed(fields.wires), outer: typed(fields.outer),
        wire: typed(fields.wire), shape: fields.shape.value, magnet: fields.magnet.value, colour: fields.colour.value
      };
    }

    function line(conductor, others) {
      var item = make("li");
      item.appendChild(link(conductor));
      item.appendChild(document.createTextNode(", " + conductor.measure));
      var list = make("ul");
      conductor.fittings.forEach(function (fitting) {
        var entry = make("li", "Fitting ");
        entry.appendChild(link(fitting));
        list.appendChild(entry);
      });
      others.forEach(function (other) {
        var apart = table.apart[conductor.id + "|" + other.id] || "overall diameter";
        list.appendChild(make("li", "Or is it " + other.text + "? " + apart));
      });
      if (list.firstChild) { item.appendChild(list); }
      return item;
    }

    function show() {
      var odd = ["one", "two", "tolerance", "wires", "outer", "wire"].filter(function (name) { return fields[name].value.trim() !== "" && typed(fields[name]) === null; });
      if (odd.length) { say(answer, ["“" + fields[odd[0]].value + "” is not a number."]); return; }
      var query = asked();
      var given = query.readings.length || [query.wires, query.outer, query.wire].some(function (value) { return value !== null; }) || query.shape || query.magnet || query.colour;
      if (!given) { say(answer, []); return; }
      var found = table.conductors.filter(function (conductor) { return fits(conductor, query); });
      if (query.readings.length) {
        var reading = mean(query.readings);
        found.sort(function (a, b) { return Math.abs(a.diameter - reading) - Math.abs(b.diameter - reading); });
      }
      if (!found.length) { say(answer, [make("strong", "No conductor of this catalogue."), " Stop: measure again, read the drum tag or the line record."]); return; }
      var list = make("ol");
      found.forEach(function (conductor) {
        list.appendChild(line(conductor, found.length > 6 ? [] : found.filter(function (other) { return other !== conductor; })));
      });
      say(answer, [make("strong", found.length === 1 ? "One conductor fits" : found.length + " conductors fit"), found.length === 1 ? "; the drum tag or the line record must agree." : "; go on until one is left.", list]);
    }
    form.addEventListener("input", show);
    fields.clear.addEventListener("click", function () {
      ["one", "two", "wires", "outer", "wire", "shape", "magnet", "colour"].forEach(function (name) { fields[name].value = ""; });
      show();
      fields.one.focus();
    });
  }

  /* ---- What is inside a closed fitting ---- */

  function startClosed(form) {
    var table = data(form), answer = form.querySelector(".answer"), fields = form.elements;
    table.cases.forEach(function (entry, index) {
      var option = make("option", entry.text);
      option.value = String(index);
      fields["case"].appendChild(option);
    });

    function show() {
      var reading = typed(fields.reading), tolerance = Math.abs(typed(fields.tolerance) || 0);
      if (reading === null) { say(answer, [fields.reading.value === "" ? "" : "This is not a number."]); return; }
      var chosen = table.cases[Number(fields["case"].value)], inside = chosen.inside;
      var state = fields.state.value;
      var within = function (ends) {
        return ends === null || ((ends[0] === null || reading + tolerance >= ends[0] - 1e-9) && reading - tolerance <= ends[1] + 1e-9);
      };
      var can = inside.filter(function (part) {
        return (state !== "tensioned" && within(part.seated)) || (state !== "seated" && within(part.tensioned));
      });
      can = can.filter(function (part, index) {
        return can.findIndex(function (other) { return other.text === part.text; }) === index;
      });
      if (!can.length) { say(answer, [make("strong", "Stop."), " " + chosen.none.charAt(0).toUpperCase() + chosen.none.slice(1) + "."]); return; }
      var list = make("ul");
      can.forEach(function (part) {
        var item = make("li");
        item.appendChild(link(part));
        item.appendChild(document.createTextNode(" – " + part.words));
        list.appendChild(item);
      });
      var wrong = can.some(function (part) { return !part.right; });
      say(answer, [make("strong", wrong ? "It can be a wrong part" : "Only the right part stands out like this"), wrong ? ": read its stamp or mark; where neither can be seen, treat it as wrong: " + chosen.under_load + "." : "; that does not prove that it grips.", list]);
    }
    form.addEventListener("input", show);
  }

  /* ---- Is my card current ---- */

  function startCurrent(form) {
    var table = data(form), answer = form.querySelector(".answer"), fields = form.elements;

    /* Letters that look like digits are those digits; signs and spaces count for nothing. */
    function code(text) {
      return text.toUpperCase().replace(/[^0-9A-Z]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");
    }
    function number(text) { return text.toUpperCase().replace(/\s/g, ""); }

    function show() {
      var asked = number(fields.number.value), typed = code(fields.code.value);
      if (!asked || !fields.code.value.trim()) { say(answer, [""]); return; }
      if (/draft/i.test(fields.code.value)) { say(answer, [make("strong", table.draft)]); return; }
      var found = table.cards.filter(function (card) { return number(card.number) === asked && card.code === typed; })[0];
      if (!found) { say(answer, [make("strong", typed.length < 6 ? "A check code has six characters." : table.unknown)]); return; }
      say(answer, [make("strong", found.number + " issue " + found.issue + ": "), found.words]);
    }
    form.addEventListener("input", show);
  }

  var start = { current: startCurrent, wear: startWear, hand: startHand, closed: startClosed };
  Array.prototype.forEach.call(document.querySelectorAll("[data-tool]"), function (form) {
    start[form.getAttribute("data-tool")](form);
    form.hidden = false;
  });
}());
