"""Mix-ups of random catalogues, by the program and by rules written a second time.

Every tenth catalogue is audited too, for the tapers that do not draw themselves in.

usage: mixups.py PROGRAM [CATALOGUES [SEED]]
"""

import json
import random
import subprocess
import sys
import tempfile
from pathlib import Path

import rules
from invented import invent, save

LIMITS = {"closure_reserve_mm": 0.3, "visible_stand_out_mm": 2.0, "holding_percent": 95.0,
          "wire_friction": 0.30, "seat_friction": 0.12}
CONTRADICTED = ["tip-contact", "closes-without-gripping", "core-not-held", "will-not-enter"]
GRIPS = ("cone", "wedge", "sleeve", "ferrule", "rope-grip")
# What a termination keeps of a rope: EN 13411-3 and -5; -6 from memory.
KEEPS = {"ferrule": 0.9, "rope-grip": 0.8, "wedge": 0.8}
SUMMARY = {"will-not-enter": "will not go in", "stands-proud": "stands proud", "core-not-held": "inner wires not held",
           "closes-without-gripping": "closes, holds nothing", "tip-contact": "touches at one end only",
           "marginal": "may or may not hold", "grips": "fits, looks right, not proven",
           "unknown": "not known: treat as wrong"}


class World:
    """A catalogue, and what is asked of it."""

    def __init__(self, wires, parts, fittings):
        self.wires, self.parts, self.fittings = wires, parts, fittings

    def grips(self, numbers):
        return [number for number in numbers if self.parts[number]["role"] in GRIPS]

    def decides(self, number):
        return self.parts[number]["role"] in (*GRIPS, "socket")

    def sets(self, numbers, wire, height=None):
        """What the gripping part of these parts can do on a conductor, the likeliest first; on one worn to a height."""
        gripping = self.parts[self.grips(numbers)[0]]
        seat = {}
        for number in numbers:
            if self.parts[number]["role"] in ("body", "socket"):
                for kind, values in (self.parts[number]["geometry"] or {}).items():
                    seat.setdefault(kind, values)
        wire = self.wires[wire] if height is None else {**self.wires[wire], "height": height}
        if not gripping["geometry"]:
            return [rules.verdict("unknown", missing=["geometry"])]
        ((kind, values),) = gripping["geometry"].items()
        if kind == "collet":
            return [rules.collet(values, seat.get("body", {}), wire, LIMITS)]
        if kind == "spreading_cone":
            return rules.spreading_cone(values, seat.get("socket", {}), wire)
        if kind == "wedge":
            return [rules.wedge(values, seat.get("wedge_body", {}), wire)]
        if kind == "rope_grip":
            return [rules.rope_grip(values, wire)]
        return [rules.pressed(kind, values, wire)]

    def visible(self, out, fitting):
        if out["verdict"] == "will-not-enter":
            return True
        window = fitting["window"]
        if fitting["from"] in ("none", "screw-gap") or window is None or "interval" not in out:
            return False
        low, high = min(out["interval"]), max(out["interval"])
        by = LIMITS["visible_stand_out_mm"]
        return not rules.less(window[0] - by, high) or not rules.less(low, window[1] + by)

    def rank(self, out, fitting):
        return (out["verdict"] == "will-not-enter") + self.visible(out, fitting)

    def worst(self, numbers, wire, fitting, height=None):
        """Hidden before visible, visible before what won't go in; among equals the first."""
        return min(self.sets(numbers, wire, height), key=lambda out: self.rank(out, fitting))

    def like_the_right_one(self, numbers, wire, fitting):
        """The height of a worn wire at which a wedge stands in the middle of its fitting's window."""
        gripping, sizes = self.parts[self.grips(numbers)[0]], {}
        for number in numbers:
            sizes |= (self.parts[number]["geometry"] or {}).get("wedge_body", {})
        wedge = (gripping["geometry"] or {}).get("wedge", {})
        known = [sizes.get("mouth_mm"), wedge.get("thickness_mm"), wedge.get("taper_deg"), fitting["window"]]
        if None in known:
            return None
        mouth, thickness, taper, window = known
        height = mouth - thickness + sum(window) / 2 * rules.tan(taper)
        return height if wire["lowest"] < height < wire["height"] else None

    def over_wear(self, numbers, name, fitting, proven):
        """The worst on new wire, where it would look right, and on wire as worn as it may be; and at which height."""
        wire = self.wires[name]
        if not wire.get("lowest"):
            return self.worst(numbers, name, fitting), None
        heights = [None, self.like_the_right_one(numbers, wire, fitting), wire["lowest"]]
        found = [(self.worst(numbers, name, fitting, height), height) for height in heights if height or height is heights[0]]

        def weight(entry):
            out = entry[0]
            refuted = proven and out["verdict"] in CONTRADICTED
            return out["verdict"] == "will-not-enter", not refuted, self.visible(out, fitting)

        worst = min(found, key=weight)
        self.check_between(numbers, name, fitting, proven, weight(worst), weight)
        return worst

    def check_between(self, numbers, name, fitting, proven, worst, weight):
        """At no height between may it be worse: tried in steps of 0.05 mm."""
        near, wire = rules.MEETS["near"], self.wires[name]
        steps = round((wire["height"] - wire["lowest"]) / 0.05)
        for step in range(1, steps):
            height = wire["height"] - 0.05 * step
            if weight((self.worst(numbers, name, fitting, height), height)) < worst:
                sys.exit(f"{numbers} on {name}: worse at {height} mm than {worst}, by the second way itself")
        rules.MEETS["near"] = near

    def built(self, fitting, part):
        """The fitting's parts with one in the place of its own."""
        own = fitting["parts"]
        if part in own:
            return own
        role, interface = self.parts[part]["role"], self.parts[part]["interface"]
        alike = [p for p in own if self.parts[p]["role"] == role and self.parts[p]["interface"] == interface]
        alike += [p for p in own if self.parts[p]["role"] == role]
        return [part if p == alike[0] else p for p in own]

    def counterpart(self, fitting, part):
        own, built = fitting["parts"], self.built(fitting, part)
        return next((mine for mine, there in zip(own, built) if there == part), part)

    def approved(self, part, wire, body, out):
        return self.proof_counts(part, wire, body) and out["verdict"] not in CONTRADICTED

    def proof_counts(self, part, wire, body):
        keeps = KEEPS.get(self.parts[part]["role"], 1.0) if self.wires[wire]["kind"] == "rope" else 1.0
        asked = LIMITS["holding_percent"] / 100 * keeps
        for proof in self.parts[part].get("proven_on", []):
            load = proof["holding_load_kN"]
            if proof["conductor"] == wire and proof["report"] and proof["body"] in (body, body or proof["body"]) and load:
                if not rules.less(load, asked * self.wires[wire]["load"]):
                    return True
        return False

    def case(self, body, part, name, wire):
        fitting = self.fittings[name]
        right = part in fitting["parts"]
        built, height = self.built(fitting, part), None
        out = self.worst(built, wire, fitting)
        if not right:
            out, height = self.over_wear(built, wire, fitting, self.proof_counts(part, wire, body))
        best = self.worst(fitting["parts"], wire, fitting, height)
        said = self.said(out, fitting, right, self.approved(part, wire, body, out), part)
        both = "stand_out_mm" in out and "stand_out_mm" in best
        said["stand_out_shift_mm"] = out["stand_out_mm"] - best["stand_out_mm"] if both else None
        said["missing"] = sorted(out["missing"])
        said["worn_to_mm"] = height
        one, two = self.parts[part]["mark"], self.parts[self.counterpart(fitting, part)]["mark"]
        said["marks_distinct"] = bool(one and two and one["colour"] != two["colour"])
        seen = bool(one and one["seen_after_assembly"])
        said["seen_by"] = "measurement" if said["visible"] else "mark" if seen else "nothing"
        return said

    def said(self, out, fitting, right, approved, part):
        said = {key: out.get(key) for key in ("verdict", "forced", "clearance_mm", "closure_mm", "stand_out_mm")}
        said |= {"right": right, "approved": approved, "visible": self.visible(out, fitting)}
        said["danger"] = not right and not approved and out["verdict"] != "will-not-enter"
        said["hidden"] = said["danger"] and not said["visible"]
        withdrawn = self.parts[part].get("status") == "withdrawn" if part else False
        said["summary"] = summary(out, right, approved, withdrawn)
        return said

    def kit(self, body, kit, name, wire):
        """A fitting built with everything of another that decides."""
        fitting, other = self.fittings[name], self.fittings[kit]
        deciding = [part for part in other["parts"] if self.decides(part)]
        parts = [part for part in fitting["parts"] if not self.decides(part)] + deciding
        proven = all(self.proof_counts(part, wire, body) for part in deciding)
        out = self.worst(parts, wire, fitting)
        right = sorted(deciding) == sorted(part for part in fitting["parts"] if self.decides(part))
        height = None
        if not right:
            out, height = self.over_wear(parts, wire, fitting, proven)
        approved = proven and out["verdict"] not in CONTRADICTED
        withdrawn = next((part for part in deciding if self.parts[part].get("status") == "withdrawn"), None)
        return self.said(out, fitting, right, approved, withdrawn) | {"worn_to_mm": height}


def summary(out, right, approved, withdrawn):
    word = out["verdict"]
    if withdrawn and (right or approved or word in ("grips", "marginal")):
        return "withdrawn: do not use"
    if right:
        return "right part"
    if approved:
        return "proven here too"
    if word == "stands-proud" and out["forced"]:
        return "goes in by force, stands proud"
    return SUMMARY[word]


def expected(world):
    """Every case and every kit, each with whether it lies on the border of a rule."""
    cases, kits = {}, {}
    fittings, parts = world.fittings, world.parts
    places = {}
    for name, fitting in sorted(fittings.items()):
        body = next((part for part in fitting["parts"] if parts[part]["role"] == "body"), None)
        places.setdefault(body, []).append(name)
    for body in sorted(name for name in places if name):
        names = places[body]
        for part in going(world, names):
            keep(cases, world, (body, part), names, lambda *at: world.case(*at))
        for kit in names:
            others = [name for name in names if name != kit]
            keep(kits, world, (body, kit), others, lambda *at: world.kit(*at), set(fittings[kit]["conductors"]))
    gripping = {name: parts[world.grips(fittings[name]["parts"])[0]] for name in places[None]}
    seats = {(GRIPS.index(part["role"]), part["interface"]) for part in gripping.values() if part["interface"]}
    for role, interface in sorted(seats):
        seat = (GRIPS[role], interface)
        names = [name for name in places[None] if (gripping[name]["role"], gripping[name]["interface"]) == seat]
        for part in sorted(part for part in parts if (parts[part]["role"], parts[part].get("interface")) == seat):
            keep(cases, world, (None, part), names, lambda *at: world.case(*at))
    return cases, kits


def going(world, names):
    own = {part for name in names for part in world.fittings[name]["parts"] if world.decides(part)}
    seats = {(world.parts[part]["role"], world.parts[part]["interface"]) for part in own if world.parts[part]["interface"]}
    alike = {part for part in world.parts
             if world.decides(part) and (world.parts[part]["role"], world.parts[part]["interface"]) in seats}
    return sorted(own | alike)


def keep(kept, world, place, names, make, without=frozenset()):
    for name in names:
        for wire in world.fittings[name]["conductors"]:
            if wire not in without:
                rules.MEETS["near"] = False
                said = make(*place, name, wire)
                kept[*place, name, wire] = said | {"near": rules.MEETS["near"]}


def differs(key, found, wanted):
    if wanted is None:
        return key in found
    if key not in found:
        return True
    if isinstance(wanted, float):
        return abs(found[key] - wanted) > rules.BORDER
    return (sorted(found[key]) if key == "missing" else found[key]) != wanted


def ask(program, folder, *words):
    done = subprocess.run([program, *words, "--catalogue", folder, "--format", "json"], capture_output=True, text=True)
    return json.loads(done.stdout) if done.stdout else sys.exit(f"{words}: {done.stderr}")


def answered(answer):
    places = answer["bodies"] + answer["without_body"]
    cases = {(place.get("body"), case["part"], case["fitting"], case["conductor"]): case
             for place in places for case in place["cases"]}
    kits = {(body["body"], kit["kit"], kit["fitting"], kit["conductor"]): kit
            for body in answer["bodies"] for kit in body["kits"]}
    return cases, kits


def compare(nth, found, wanted, tally):
    if list(found) != list(wanted):
        odd = set(found) ^ set(wanted)
        tally["wrong"].append(f"catalogue {nth}: other cases, or in another order: {sorted(map(str, odd))[:6]}")
        return
    for place, case in wanted.items():
        if case.pop("near"):
            tally["near"] += 1
            continue
        tally["compared"] += 1
        tally["summaries"][case["summary"]] = tally["summaries"].get(case["summary"], 0) + 1
        tally["forced"] += case["forced"]
        tally["worn"] += case["worn_to_mm"] is not None
        tally["wrong"] += [f"catalogue {nth} {place} {key}: {found[place].get(key)} instead of {case[key]}"
                           for key in case if differs(key, found[place], case[key])]


def steep(parts):
    """The parts whose taper does not draw itself in, with the angle that would do."""
    found = {}
    for number, part in parts.items():
        for kind, values in (part["geometry"] or {}).items():
            angle = values.get("taper_deg" if kind == "wedge" else "half_angle_deg")
            if kind in ("collet", "spreading_cone", "wedge") and angle is not None:
                good, steepest = rules.self_holding(angle, LIMITS["seat_friction"], LIMITS["wire_friction"])
                if not good:
                    found[number] = steepest
    return found


def compare_tapers(nth, program, folder, parts, tally):
    done = subprocess.run([program, "audit", "--catalogue", folder, "--format", "json"], capture_output=True, text=True)
    findings = [finding for finding in json.loads(done.stdout)["findings"] if finding["code"] == "taper-not-self-holding"]
    wanted = steep(parts)
    tally["tapers"] += len(wanted)
    if sorted(finding["record"] for finding in findings) != sorted(wanted):
        tally["wrong"].append(f"catalogue {nth}: other tapers than {sorted(wanted)} are said to be too steep")
    for finding in findings:
        said = float(finding["expected"].split()[2].rstrip("°"))
        if not wanted[finding["record"]] - 0.01 < said <= wanted[finding["record"]]:
            tally["wrong"].append(f"catalogue {nth}: {finding['record']} may have {said}°, it is said")


def main():
    program, count, seed = sys.argv[1], int((sys.argv[2:] or ["200"])[0]), int((sys.argv[3:] or ["411"])[0])
    chance = random.Random(seed)
    tally = {"compared": 0, "near": 0, "forced": 0, "worn": 0, "tapers": 0, "summaries": {}, "wrong": []}
    for nth in range(count):
        made = invent(chance)
        with tempfile.TemporaryDirectory() as folder:
            save(Path(folder), *made)
            answer = ask(program, folder, "mixups")
            if nth % 10 == 0:
                compare_tapers(nth, program, folder, made[1], tally)
        for found, wanted in zip(answered(answer), expected(World(*made))):
            compare(nth, found, wanted, tally)
    print(f"mix-ups: {tally['compared']} cases compared, {tally['forced']} by force, {tally['worn']} on worn wire alone, {tally['near']} on a border, "
          f"{tally['tapers']} steep tapers; {tally['summaries']}")
    if tally["wrong"]:
        sys.exit("\n".join(tally["wrong"][:40]))
    if not tally["worn"]:
        sys.exit("no case came to more on worn wire than on new")
    lacking = set(SUMMARY.values()) - set(tally["summaries"])
    if lacking:
        sys.exit(f"no case came to: {sorted(lacking)}")


if __name__ == "__main__":
    main()
