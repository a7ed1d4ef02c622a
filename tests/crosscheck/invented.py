"""Catalogues by chance: bodies with collets, spreading cones and sockets, wedges; sleeves, ferrules and rope grips that need no body.

Sizes are off their round values by a little, so that hardly any lies on the border of a rule. Records lack measurements
at random, so that what is missing is compared too.
"""

import json
import math

MATERIALS = ["copper-hard-drawn", "bronze-2"]
COLOURS = ["BU", "OG", "BK", "WH", "PK", "BN"]
SEATS = {"body": "body", "socket": "socket", "wedge": "wedge_body"}


class Chance:
    """What a seed makes up."""

    def __init__(self, seed):
        self.seed = seed

    def maybe(self, value, chance=0.93):
        return value if self.seed.random() < chance else None

    def size(self, low, high):
        return round(self.seed.uniform(low, high), 5)

    def one(self, *values):
        return self.seed.choice(values)

    def tolerance(self):
        return self.one(None, None, 0, 0.03, 0.05, 0.1)


def conductors(chance):
    made = {}
    for nth in range(7):
        wires, layers = chance.one((7, [1, 6]), (19, [1, 6, 12]), (37, [1, 6, 12, 18]))
        wire = chance.size(1.8, 2.9)
        made[f"wire-{nth}"] = {
            "kind": "stranded", "layers": layers, "wire": wire, "D": wire * (2 * len(layers) - 1),
            "tolerance": chance.one(0, 0.05, 0.1), "wire_tolerance": chance.one(0, 0, 0.02, 0.04),
            "yaml": f"construction: {{ stranded: {{ wires: {wires}, wire_diameter_mm: {wire} }} }}",
        }
    for nth in range(2):
        size = chance.size(8, 14)
        made[f"rod-{nth}"] = {
            "kind": "solid", "layers": [1], "wire": size, "D": size, "tolerance": 0, "wire_tolerance": 0,
            "yaml": f"construction: {{ solid: {{ diameter_mm: {size} }} }}",
        }
    made["rope-0"] = {
        "kind": "rope", "D": 8.0, "tolerance": 0, "wire_tolerance": 0,
        "yaml": "construction: { rope: { construction: 7x19, core: wsc, diameter_mm: 8.0, grade_N_per_mm2: 1570 } }",
    }
    made["rope-1"] = {
        "kind": "rope", "D": 9.0, "tolerance": 0.2, "wire_tolerance": 0,
        "yaml": "construction: { rope: { construction: 6x19M, core: fibre, diameter_mm: 9.0, grade_N_per_mm2: 1770 } }",
    }
    lowest = chance.one(None, 9.0, 11.0)
    wear = f", wear: {{ limit_percent: 20, basis: computed, stop_height_mm: {lowest} }}" if lowest else ""
    made["contact-0"] = {
        "kind": "grooved", "D": 12.34, "height": 12.34, "width": 12.34, "tolerance": 0.1, "wire_tolerance": 0,
        "lowest": lowest,
        "yaml": "construction: { grooved: { height_mm: 12.34, width_mm: 12.34, apex_width_mm: 6.8, apex_depth_mm: 4.47, "
                f"fillet_mm: 0.4, lower_flank_deg: 27, upper_flank_deg: 51{wear} }} }}",
    }
    for wire in made.values():
        wire["load"] = chance.size(20, 90)
    return made


def with_metal(cone, round):
    """A cone whose slits take no more than half of its bore or hole: a wider one is refused."""
    if cone[round] and cone["slits"] and cone["slit_width_mm"]:
        widest = math.floor(math.pi * cone[round] / 2 / cone["slits"] * 1000) / 1000
        cone["slit_width_mm"] = min(cone["slit_width_mm"], widest)
    return cone


def collet(chance, size):
    return with_metal({
        "bore_mm": chance.maybe(round(size + chance.size(-1.4, 1.6), 5), 0.97),
        "bore_tolerance_mm": chance.tolerance(),
        "pieces": chance.one(None, None, 1, 3),
        "slits": chance.maybe(chance.one(0, 2, 3, 3, 4, 5)),
        "slit_width_mm": chance.maybe(chance.size(0.6, 1.4)),
        "slit_width_tolerance_mm": chance.one(None, None, 0.05),
        "half_angle_deg": chance.maybe(chance.one(5, 5, 5, 5.2, 7, 10.5)),
        "length_mm": chance.maybe(60),
        "stand_out_at_bore_mm": chance.maybe(chance.size(4, 9)),
        "stand_out_at_bore_tolerance_mm": chance.one(None, None, 0.2),
    }, "bore_mm")


def spreading_cone(chance, size):
    return with_metal({
        "large_diameter_mm": chance.maybe(round(size + chance.size(1, 6), 5)),
        "large_diameter_tolerance_mm": chance.tolerance(),
        "half_angle_deg": chance.maybe(chance.one(8, 8, 8, 8.2, 9)),
        "length_mm": 24,
        "hole_diameter_mm": chance.maybe(chance.size(1.4, size + 1), 0.97),
        "hole_diameter_tolerance_mm": chance.tolerance(),
        "slits": chance.one(None, 0, 2, 3),
        "slit_width_mm": chance.maybe(chance.size(0.3, 1.6)),
    }, "hole_diameter_mm")


def socket(chance, size):
    return {
        "large_diameter_mm": chance.maybe(round(size + chance.size(7, 12), 5)),
        "large_diameter_tolerance_mm": chance.tolerance(),
        "half_angle_deg": chance.maybe(chance.one(8, 8, 8, 8, 9)),
        "throat_diameter_mm": chance.maybe(round(size + chance.size(-0.3, 1.5), 5), 0.97),
        "throat_diameter_tolerance_mm": chance.tolerance(),
        "travel_mm": chance.maybe(chance.size(4, 10)),
        "travel_tolerance_mm": chance.one(None, None, 0.3),
    }


def wedge(chance, size):
    return {
        "thickness_mm": chance.maybe(round(26 - size + chance.size(-1.2, 1.4), 5)),
        "thickness_tolerance_mm": chance.tolerance(),
        "taper_deg": chance.maybe(chance.one(6, 6, 6, 6.2, 8)),
        "length_mm": chance.maybe(chance.one(8, 80), 0.97),
    }


def sleeve(chance, size):
    return {
        "bore_mm": chance.maybe(round(size + chance.size(-0.4, 1.2), 5), 0.97),
        "bore_tolerance_mm": chance.tolerance(),
        "die": chance.maybe("8"),
        "pressed_mm": chance.maybe({"min": 22.0, "max": 22.4}),
    }


def ferrule(chance, size):
    legs = chance.one(None, 1, 2, 2, 2)
    wide, high = size + chance.size(-0.4, 1.2), size * (legs or 1) + chance.size(-0.5, 2.0)
    round_bore, oval = round(high, 5), {"width": round(wide, 5), "height": round(high, 5)}
    return {
        "bore_mm": chance.maybe(oval if chance.seed.random() < 0.6 else round_bore, 0.97),
        "bore_tolerance_mm": chance.tolerance(),
        "legs": legs,
        "die": chance.maybe("8"),
        "pressed_mm": chance.maybe({"min": 22.0, "max": 22.4}),
    }


def rope_grip(chance, size):
    low = round(size + chance.size(-1.0, 0.4), 5)
    return {"rope_mm": chance.maybe({"min": low, "max": round(low + chance.size(0.2, 1.5), 5)}, 0.97)}


def body_geometry(chance, kind):
    if kind == "collet":
        return {"body": {"half_angle_deg": chance.maybe(5), "length_mm": 70}}
    if kind == "wedge":
        return {"wedge_body": {
            "mouth_mm": chance.maybe(27.0), "mouth_tolerance_mm": chance.tolerance(), "taper_deg": chance.maybe(6),
            "travel_mm": chance.maybe(chance.one(chance.size(8, 14), chance.size(20, 40))),
            "bears_on": chance.maybe(chance.one("width", "height"), 0.8)}}
    return {"body": {"length_mm": 95}}


GRIPPING = {"collet": ("cone", "collet", collet), "spreading": ("cone", "spreading_cone", spreading_cone),
            "wedge": ("wedge", "wedge", wedge), "sleeve": ("sleeve", "sleeve", sleeve),
            "ferrule": ("ferrule", "ferrule", ferrule), "grip": ("rope-grip", "rope_grip", rope_grip)}
OPEN = ("sleeve", "ferrule", "grip")


def unlike(rows):
    """Each row once: two that say the same are refused."""
    return [row for nth, row in enumerate(rows) if row not in rows[:nth]]


def proof(chance, wires, body, bodies):
    wire = chance.one(*sorted(wires))
    share = chance.one(0.5, 0.94, 0.96, 1.1)
    return {"conductor": wire, "body": chance.one(None, body, body, body, *bodies), "report": chance.one("T-1", "T-1", "T-1", None),
            "holding_load_kN": chance.maybe(round(wires[wire]["load"] * share, 4), 0.95)}


def marked(chance, nth):
    if chance.seed.random() > 0.9:
        return None
    return {"colour": COLOURS[nth], "text": f"{'ACEKRT'[nth]}{nth + 1}", "notches": nth + 1,
            "seen_after_assembly": chance.one(None, True, False)}


def invent(seed):
    chance = Chance(seed)
    wires, parts, fittings = conductors(chance), {}, {}
    kinds = ["collet", "spreading", "wedge", "sleeve", "spreading", "ferrule", "grip"]
    bodies = [f"B-{nth}" for nth, kind in enumerate(kinds) if kind not in OPEN]
    for nth, kind in enumerate(kinds):
        body = f"B-{nth}"
        if kind not in OPEN:
            parts[body] = {"role": "body", "geometry": body_geometry(chance, kind)}
        role, name, make = GRIPPING[kind]
        for item in range(3):
            ropes = [name for name in sorted(wires) if wires[name]["kind"] == "rope"]
            wire = chance.one(*ropes) if kind in ("ferrule", "grip") and chance.seed.random() < 0.8 else chance.one(*sorted(wires))
            if kind == "wedge" and chance.seed.random() < 0.5:
                wire = "contact-0"
            number = f"C-{nth}-{item}"
            parts[number] = {
                "role": role, "geometry": {name: make(chance, wires[wire]["D"])} if chance.seed.random() < 0.95 else None,
                "interface": chance.one("", f"seat-{kind}", f"seat-{kind}"), "mark": marked(chance, item),
                "status": chance.one("current", "current", "current", "withdrawn"),
                "proven_on": unlike([proof(chance, wires, body if kind not in OPEN else None, bodies) for _ in range(3)])
                if chance.seed.random() < 0.5 else [],
            }
            listed = [body, number] if kind not in OPEN else [number]
            if kind == "spreading":
                seat = f"S-{nth}-{item}"
                parts[seat] = {"role": "socket", "geometry": {"socket": socket(chance, wires[wire]["D"])},
                               "interface": chance.one("", "bore"), "mark": marked(chance, 3 + item)}
                listed.insert(1, seat)
            held = [wire]
            if kind in OPEN and chance.seed.random() < 0.5:
                held = sorted({wire, chance.one(*sorted(wires))})
            window = None
            if chance.seed.random() < 0.7:
                low = chance.size(-6, 5)
                window = (low, round(low + chance.size(1, 3), 5))
            fittings[f"F-{nth}-{item}"] = {
                "conductors": held, "parts": listed, "window": window,
                "from": chance.one("cone-face" if role == "cone" else "wedge-end", "none", "screw-gap", None, None),
            }
    return wires, parts, fittings


def line(key, value):
    """A key of a record with its value; JSON is YAML."""
    return f"{key}: {json.dumps(value)}\n"


def without_none(values):
    return {key: value for key, value in values.items() if value is not None}


def save(folder, wires, parts, fittings):
    head = 'title: A\nowner: B\nedition: "1"\ndate: 2026-01-01\ncaution: C\n'
    (folder / "catalogue.yaml").write_text(head, encoding="utf-8")
    texts = {"conductors": [], "parts": [], "fittings": []}
    for nth, (name, wire) in enumerate(wires.items()):
        text = f"id: {name}\nname: {name}\nduty: other\nmaterial: {MATERIALS[nth % 2]}\n{wire['yaml']}\n"
        known = {"overall_diameter_mm": wire["tolerance"], "wire_diameter_mm": wire["wire_tolerance"]}
        known = {key: value for key, value in known.items() if value}
        text += line("stated", {"breaking_load_kN": wire["load"]})
        texts["conductors"].append(text + (line("tolerance", known) if known else ""))
    for name, part in parts.items():
        text = f"number: {name}\nname: {name}\nrole: {part['role']}\nmaterial: bronze-soft\n"
        if part["geometry"]:
            text += line("geometry", {kind: without_none(values) for kind, values in part["geometry"].items()})
        for key in ("interface", "status"):
            text += line(key, part[key]) if part.get(key) else ""
        text += line("mark", without_none(part["mark"])) if part.get("mark") else ""
        text += line("proven_on", [without_none(one) for one in part["proven_on"]]) if part.get("proven_on") else ""
        texts["parts"].append(text)
    for name, fitting in fittings.items():
        text = f"number: {name}\nname: {name}\nfamily: other\n"
        text += line("conductors", fitting["conductors"]) + line("parts", fitting["parts"])
        window = fitting["window"]
        stand_out = without_none({"from": fitting["from"], "seated_mm":
                                  {"min": window[0], "max": window[1]} if window else None})
        texts["fittings"].append(text + (line("stand_out", stand_out) if stand_out else ""))
    for kind, list_of in texts.items():
        (folder / kind).mkdir()
        (folder / kind / "all.yaml").write_text("---\n".join(list_of), encoding="utf-8")
