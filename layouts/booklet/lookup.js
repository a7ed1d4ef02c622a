/* Readings held against what things take, which stands in tables that the program made: the command looks the same
   tables up. Ranges, lists and their words alone; nothing here knows conductors or fittings. A classic script. */
(function () {
  "use strict";

  /* A nanometre: a reading at the limit counts, whatever the last binary digits. */
  var NEAR = 1e-6;

  function meets(need, read) {
    var seen = read[need.of], off = (need.widened || 0) * (read.tolerance || 0) + NEAR;
    if (seen === undefined) { return false; }
    if (need.among) { return need.among.indexOf(seen) >= 0; }
    return (need.least === null || seen >= need.least - off) && (need.most === null || seen <= need.most + off);
  }

  /* The first way in which a test agrees. */
  function way(test, read) {
    return test.ways.filter(function (one) { return one.needs.every(function (need) { return meets(need, read); }); })[0];
  }

  function written(number, places, mark) {
    return number.toFixed(places).replace(/^-(0\.?0*)$/, "$1").replace(".", mark);
  }

  /* What is said of each test that a reading does not pass; one that was not taken passes. */
  function against(tests, read, mark) {
    var failed = tests.filter(function (test) { return read[test.of] !== undefined && !way(test, read); });
    return failed.map(function (test) {
      var seen = read[test.of];
      return typeof seen === "number" ? test.otherwise.replace("{}", written(seen + NEAR, 2, mark)) : test.otherwise;
    });
  }

  function agreed(entry, read) { return entry.tests.map(function (test) { return way(test, read); }).filter(Boolean); }

  /* How far from the readings something is. */
  function distance(entry, read) {
    var own = agreed(entry, read).filter(function (one) { return one.at; })[0];
    var at = own ? own.at : entry.at;
    return at && read[at.of] !== undefined ? Math.abs(read[at.of] - at.mm) : Infinity;
  }

  function remarks(entry, read) {
    return agreed(entry, read).map(function (one) { return one.remark; }).filter(Boolean);
  }

  /* In the order of a number of each, those with the same in the order that they have. */
  function sorted(list, number) {
    var pairs = list.map(function (entry, order) { return { entry: entry, number: number(entry), order: order }; });
    pairs.sort(function (a, b) { return a.number === b.number ? a.order - b.order : a.number - b.number; });
    return pairs.map(function (pair) { return pair.entry; });
  }

  /* What one or two readings of a size come to. */
  function sizes(readings) {
    if (!readings.length) { return {}; }
    var low = Math.min.apply(null, readings), high = Math.max.apply(null, readings);
    var sum = readings.reduce(function (all, one) { return all + one; }, 0);
    return { count: readings.length, mean: sum / readings.length, low: low, high: high, apart: high - low };
  }

  function named(signs, what) { return signs.filter(function (sign) { return sign.what === what; })[0]; }

  /* Signs that two things show and that differ, in words. */
  function differing(these, those, caliper) {
    function differ(one, other) {
      return one.mm !== null && other.mm !== null ? Math.abs(one.mm - other.mm) >= caliper - NEAR : one.says !== other.says;
    }
    function counts(sign) {
      var one = named(these, sign.within), other = named(those, sign.within);
      return sign.within === null || Boolean(one && other && one.says === other.says);
    }
    var found = these.filter(counts).map(function (sign) {
      var other = named(those, sign.what);
      return other && differ(sign, other) ? sign.what + ": " + sign.says + ", not " + other.says : "";
    });
    return found.filter(Boolean);
  }

  /* Whether something tells two things apart by hand, and whether their labels do. */
  function differ(one, other, common) {
    return {
      by_hand: differing(one.by_hand, other.by_hand, common.caliper).length > 0,
      labels: differing(one.labels, other.labels, common.caliper).length > 0
    };
  }

  /* What tells one thing from another: by hand, else that nothing does; then by labels. */
  function apart(one, other, common) {
    var words = differing(one.by_hand, other.by_hand, common.caliper);
    var labels = differing(one.labels, other.labels, common.caliper);
    var tagged = named(one.labels, common.label) && named(other.labels, common.label);
    var stop = tagged && !labels.length ? common.same_labels : common.unlike_labels;
    if (!words.length) { words.push(one.metal && other.metal && one.metal !== other.metal ? stop.alike : stop.nothing); }
    return words.concat(labels).join("; ");
  }

  window.bookletLookup = {
    against: against, distance: distance, remarks: remarks, sorted: sorted, sizes: sizes, apart: apart, differ: differ, written: written
  };
}());
