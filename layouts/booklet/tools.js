/* What calculators share, and those of wear and of cards. They look up tables that were computed when the booklet was made; no formula is
   written here. A classic script: modules don't load from disk. */
(function () {
  "use strict";

  function data(form) { return JSON.parse(document.getElementById(form.getAttribute("data-table")).textContent); }

  /* A number as typed, with either decimal mark; null where there is none. */
  function number(written) {
    var text = written.trim().replace(",", ".").replace("\u2212", "-");
    var value = Number(text);
    return text === "" || !isFinite(value) ? null : value;
  }

  function typed(field) { return number(field.value); }

  /* A length as it may be typed: with its unit. */
  function sized(field) { return number(field.value.replace(/mm\s*$/i, "")); }

  /* A tolerance as it may be typed: with its sign, with its unit. */
  function tolerance(field) { return number(field.value.replace(/^\s*(\u00b1|\+\/-)/, "").replace(/mm\s*$/i, "")); }

  function filled(field) { return field.value.trim() !== ""; }

  /* What is said of a field whose words are no number; a count has no fraction. Nothing where all is well. */
  function odd(field, value, whole) {
    if (filled(field) && value === null) { return "\u201c" + field.value + "\u201d is not a number."; }
    return whole && value !== null && value % 1 !== 0 ? "\u201c" + field.value + "\u201d is not a whole number: wires are counted." : "";
  }

  /* Words as a sentence: with a capital, and a full stop. */
  function sentence(words) { return words.charAt(0).toUpperCase() + words.slice(1).replace(/\.?$/, "."); }

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

  var written = window.bookletLookup.written;

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

  /* Cuts the drawn wire at a remaining height, where the flat is; whole where there is none. */
  function cut(picture, height, flat) {
    var mm = Number(picture.getAttribute("data-mm")), box = picture.viewBox.baseVal, left = picture.querySelector(".left");
    var at = height === null ? box.height : Number(picture.getAttribute("data-top")) + height * mm;
    left.setAttribute("height", String(at));
    left.setAttribute("viewBox", "0 0 " + box.width + " " + at);
    var half = height === null ? 0 : flat * mm / 2;
    picture.querySelector(".flat").setAttribute("d", half ? "M" + (box.width / 2 - half) + " " + at + "H" + (box.width / 2 + half) : "");
  }

  function startWear(form) {
    var table = data(form), answer = form.querySelector(".answer"), picture = form.querySelector(".wearing");
    var height = form.elements.height, flat = form.elements.flat;

    function show(field, column, other) {
      var value = sized(field);
      if (field.value !== "") { other.value = ""; }
      if (value === null || !between(table.rows, column, value)) { cut(picture, null, 0); }
      if (value === null) { say(answer, [field.value === "" ? "" : "This is not a number."]); return; }
      var row = between(table.rows, column, value);
      if (!row) { say(answer, [column === 0 && value > table.rows[0][0] ? table.above : table.below]); return; }
      cut(picture, row[0], row[1]);
      var limit = reached(table.limits, row[0]);
      say(answer, [
        /* Never more section left, nor less worn, than there is; as in the table. */
        make("strong", "Section left " + written(Math.floor(row[2] * 10 + 1e-6) / 10, 1, table.mark) + "\u00a0mm²"),
        ", worn " + written(Math.ceil(row[3] * 10 - 1e-6) / 10, 1, table.mark) + "\u00a0% " + table.basis + ", height " + written(row[0], 2, table.mark) +
        "\u00a0mm, flat " + written(row[1], 2, table.mark) + "\u00a0mm. ", make("strong", limit || table.none)
      ]);
    }
    height.addEventListener("input", function () { show(height, 0, flat); });
    flat.addEventListener("input", function () { show(flat, 1, height); });
  }

  /* ---- Is my card current ---- */

  var HYPHENS = /[\u00ad\u2010-\u2015\u2212]/g;

  function startCurrent(form) {
    var table = data(form), answer = form.querySelector(".answer"), fields = form.elements;
    var numbers = Array.from(new Set(table.cards.map(function (card) { return card.number; })));

    /* Letters that look like digits are those digits; signs and spaces count for nothing. */
    function code(text) {
      return text.toUpperCase().replace(/[^0-9A-Z]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");
    }

    function plain(text) { return text.trim().toUpperCase().replace(HYPHENS, "-"); }
    function bare(text) { return plain(text).replace(/[\s-]/g, ""); }
    function same(form, text) { return numbers.filter(function (number) { return form(number) === form(text); }); }

    /* The numbers that can be meant: the one that is typed as it stands; else those that are the same without hyphens and
       spaces; else, of digits alone, those that end so, one only where these are all its last digits. */
    function meant(text) {
      var end = bare(text), as = [same(plain, text), same(bare, text)].filter(function (found) { return found.length; })[0];
      if (as || /[^0-9]/.test(end)) { return as || []; }
      var ending = numbers.filter(function (number) { return bare(number).slice(-end.length) === end; });
      return ending.length === 1 && /[0-9]*$/.exec(ending[0])[0] !== end ? [] : ending;
    }

    function show() {
      var asked = meant(fields.number.value), typed = code(fields.code.value);
      if (!bare(fields.number.value) || !fields.code.value.trim()) { say(answer, [""]); return; }
      if (/draft/i.test(fields.code.value)) { say(answer, [make("strong", table.draft)]); return; }
      if (asked.length > 1) { say(answer, [make("strong", "Several cards can be meant: type the whole number as it stands.")]); return; }
      var found = table.cards.filter(function (card) { return card.number === asked[0] && card.code === typed; });
      if (!found.length) { say(answer, [make("strong", typed.length < 6 ? "A check code has six characters." : table.unknown)]); return; }
      /* A card that prints again what it printed before has the same code. */
      var several = found.length > 1 ? ["Several issues have this code: go by the issue on the card."] : [];
      say(answer, found.reduce(function (all, card) {
        return all.concat(all.length ? [" "] : [], [make("strong", card.number + " issue " + card.issue + ": "), card.words]);
      }, several));
    }
    form.addEventListener("input", show);
  }

  /* A field as it was when the page was opened. A hidden one was empty: what it is set to becomes its default. */
  function clear(field) {
    if (field.options) {
      field.selectedIndex = Math.max(0, Array.prototype.findIndex.call(field.options, function (option) { return option.defaultSelected; }));
    } else if (field.type !== "button") {
      field.value = field.type === "hidden" ? "" : field.defaultValue;
    }
  }

  function changed(field) { field.dispatchEvent(new Event("input", { bubbles: true })); }

  /* Fills in what stands in the address behind a question mark, and that alone: "#?one=14&wires=19", or with the page's
     name before it in the file that holds all pages. */
  function fillIn(form) {
    var at = location.hash.indexOf("?"), page = form.closest(".page");
    if (at < 0 || (page && page.id !== decodeURIComponent(location.hash.slice(1, at)))) { return; }
    Array.prototype.forEach.call(form.elements, clear);
    changed(form.elements[0]);
    new URLSearchParams(location.hash.slice(at + 1)).forEach(function (value, name) {
      var field = form.elements[name];
      if (!field) { return; }
      field.value = value;
      changed(field);
    });
    if (document.querySelector("[data-tool=" + form.getAttribute("data-tool") + "]") === form) { form.scrollIntoView(); }
  }

  /* Starts a calculator where the page has one; each shows itself once it works. */
  function start(name, run) {
    Array.prototype.forEach.call(document.querySelectorAll("[data-tool=" + name + "]"), function (form) {
      run(form);
      form.hidden = false;
      fillIn(form);
      window.addEventListener("hashchange", function () { fillIn(form); });
    });
  }

  window.bookletTools = {
    data: data, typed: typed, sized: sized, tolerance: tolerance, filled: filled, odd: odd, sentence: sentence, make: make, link: link, say: say, start: start
  };
  start("current", startCurrent);
  start("wear", startWear);
}());
