/* Readings that are typed into Find: the look-up that answers them, already filled in. A classic script. */
(function () {
  "use strict";

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

  var METALS = { copper: "copper", bronze: "copper", red: "copper", grey: "grey", gray: "grey", aluminium: "grey", steel: "grey" };
  var SHAPES = { round: "round", grooved: "grooved", rope: "rope", tube: "tube", bar: "bar" };
  var DENIALS = ["not", "no", "never", "without", "isn't", "isn\u2019t"];
  var STATES = { seated: "seated", tensioned: "tensioned" };

  /* What says on which side of the face a stand-out lies: before its number, or anywhere; and what says nothing of it. */
  var SIGNS = { "-": "-", minus: "-", negative: "-", "+": "+", plus: "+" };
  var SIDES = { sunk: "-", below: "-", recessed: "-", above: "+", out: "+", proud: "+" };
  var SILENT = ["mm", "the", "face", "of", "body", "by", "stand", "stands", "stand-out", "standout"];

  function has(list, word) { return list.indexOf(word) >= 0; }
  function knows(known, word) { return Object.prototype.hasOwnProperty.call(known, word); }

  /* The words of a query: one sort of hyphen, which is a word of its own where a space comes after it. */
  function split(query) {
    var text = query.toLowerCase().replace(/[\u2010-\u2015\u2212]/g, "-").replace(/-(?=\s|$)/g, " - ");
    return text.split(/\s+/).map(function (word) { return word.replace(/(.)[.,;:]+$/, "$1"); }).filter(Boolean);
  }

  /* Words and numbers, in the order that they were typed. A unit counts for nothing but that a number is a size; parted
     are two sizes with a count between them. */
  function read(words) {
    var found = { sizes: [], counts: [], words: [], parted: false };
    words.forEach(function (word, at) {
      var number = /^([-+]?[0-9]+(?:[.,][0-9]+)?)(mm)?$/.exec(word);
      if (!number) { found.words.push(word); return; }
      var size = number[2] || (/[.,]/.test(word) && !/^wires?$/.test(words[at + 1])) || words[at + 1] === "mm";
      found.parted = found.parted || (!size && found.sizes.length === 1);
      found[size ? "sizes" : "counts"].push(number[1].replace(",", "."));
    });
    return found;
  }

  /* What the words name of these; nothing where they name two, or deny one: "not copper" is not copper. */
  function among(words, known) {
    var named = words.filter(function (word) { return knows(known, word); }).map(function (word) { return known[word]; });
    var sure = named.every(function (name) { return name === named[0]; }) && !DENIALS.some(function (word) { return has(words, word); });
    return named.length && sure ? named[0] : "";
  }

  /* An address with what is asked there, and the same in words. */
  function hit(asks, name, asked) {
    var told = asked.filter(function (pair) { return pair[1]; });
    var query = told.map(function (pair) { return pair[0] + "=" + encodeURIComponent(pair[1]); }).join("&");
    var words = told.map(function (pair) { return pair[2] || pair[1]; }).join(", ");
    return { kind: "Look-up", number: "", name: name + ": " + words, href: asks.href + (asks.href.indexOf("#") < 0 ? "#" : "") + "?" + query };
  }

  /* Of two readings across a conductor, the lesser is at least this share of the greater: a crushed or worn one has more
     than a half, which no wire of a strand has. Behind a count of wires stands a wire's diameter more often. */
  var ALIKE = 0.55, ALIKE_BEHIND_COUNT = 0.9;

  /* Readings of the overall diameter: both where they go together, else the first where it is the greater one; a wire's
     diameter is not. */
  function across(found) {
    var readings = found.sizes.slice(0, 2), one = Number(readings[0]), two = Number(readings[1]);
    if (readings.length < 2) { return readings; }
    if (Math.min(one, two) >= Math.max(one, two) * (found.parted ? ALIKE_BEHIND_COUNT : ALIKE)) { return readings; }
    return one > two ? [readings[0]] : [];
  }

  function hand(asks, found) {
    var readings = across(found);
    if (!readings.length) { return []; }
    var wires = found.counts[0] || "", metal = among(found.words, METALS), shape = among(found.words, SHAPES);
    return [hit(asks, "What is in my hand", [
      ["one", readings[0], readings[0] + "\u00a0mm"], ["two", readings[1], readings[1] + "\u00a0mm"],
      ["wires", wires, wires + " wires"], ["shape", shape], ["scratch", metal, metal === "copper" ? "copper or bronze" : metal]
    ])];
  }

  /* What of a worn wire was measured: one of them, so that its size is sure. */
  function worn(found) { return ["flat", "height"].filter(function (word) { return has(found.words, word); }); }

  function wear(asks, found) {
    var of = worn(found), sizes = found.sizes.length ? found.sizes : found.counts;
    if (of.length !== 1 || sizes.length !== 1) { return []; }
    return [hit(asks, "Wear of contact wire", [[of[0], sizes[0], of[0] + " " + sizes[0] + "\u00a0mm"]])];
  }

  /* A stand-out with its sign, and the line tension; null where a word leaves one of them in doubt: a lost minus would
     call a wrong part the right one. */
  function standOut(words) {
    var size = /^([-+]?)([0-9]{1,3}(?:[.,][0-9]+)?)(?:mm)?$/, sizes = [], signs = [], states = [];
    var clear = words.every(function (word, at) {
      var number = size.exec(word);
      if (number) { sizes.push(number[2].replace(",", ".")); }
      if (number && number[1]) { signs.push(number[1]); }
      if (knows(STATES, word)) { states.push(STATES[word]); }
      if (knows(SIDES, word)) { signs.push(SIDES[word]); }
      if (!knows(SIGNS, word)) { return number || knows(STATES, word) || knows(SIDES, word) || has(SILENT, word); }
      signs.push(SIGNS[word]);
      return /^[0-9]/.test(words[at + 1]);
    });
    var one = sizes.length < 2 && states.length < 2 && !(has(signs, "-") && has(signs, "+"));
    if (!clear || !one || (signs.length && !sizes.length)) { return null; }
    return { size: sizes[0] || "", sunk: signs[0] === "-", state: states[0] || "" };
  }

  function closed(asks, read) {
    if (!read || !(read.size || read.state)) { return []; }
    var size = read.size && (read.sunk ? "-" : "") + read.size;
    return [hit(asks, "What is inside a closed fitting", [
      ["body", asks.body], ["reading", size, size && (read.sunk ? "sunk " : "stand-out ") + read.size + "\u00a0mm"], ["state", read.state]
    ])];
  }

  /* No check code has a U. */
  function current(asks, number, code) {
    return /^[0-9a-tv-z]{6}$/.test(code) ? [hit(asks, "Is my card current", [["number", number], ["code", code.toUpperCase()]])] : [];
  }

  /* What queries are held against: the look-ups, and the records by their numbers, a body that is looked up first. */
  function known(entries) {
    var found = { tools: {}, numbers: new Map() };
    entries.forEach(function (entry) {
      if (entry.asks && !entry.asks.body) { found.tools[entry.asks.tool] = entry.asks; }
      if (entry.number && (entry.asks || !found.numbers.has(entry.numbers[0]))) { found.numbers.set(entry.numbers[0], entry); }
    });
    return found;
  }

  /* A number at the beginning, typed with or without spaces, and what comes after it, such as a minus. */
  function numbered(words, numbers) {
    for (var count = Math.min(3, words.length - 1); count > 0; count -= 1) {
      var entry = tight(words[count - 1]) && numbers.get(tight(words.slice(0, count).join("")));
      if (entry) { return { entry: entry, rest: words.slice(count) }; }
    }
    return null;
  }

  /* The look-ups that a query asks for. */
  function asked(query, known) {
    var words = split(query), tools = known.tools;
    if (words.length < 2 && !/[.,][0-9]|mm$/.test(query)) { return []; }
    var start = numbered(words, known.numbers);
    if (start) {
      var inside = start.entry.asks && start.entry.asks.body ? closed(start.entry.asks, standOut(start.rest)) : [];
      return inside.length || !tools.current ? inside : current(tools.current, start.entry.number, asCode(start.rest));
    }
    var found = read(words);
    if (worn(found).length) { return tools.wear ? wear(tools.wear, found) : []; }
    return tools.hand ? hand(tools.hand, found) : [];
  }

  /* A check code as it may be typed: in two halves, with a hyphen. */
  function asCode(words) { return words.join("").replace(/[^0-9a-z]/g, ""); }

  window.bookletAsks = { asked: asked, known: known, plain: plain, tight: tight };
}());
