"""Mix-ups of random catalogues, by the program and by the rules written a second time.

The rules here are written from their statement alone, in plain numbers, without a look at the program. Records lack
measurements at random, so that what is missing is compared too. A seed is fixed.
"""

import json
import math
import random
import subprocess
import sys
import tempfile
from pathlib import Path

WITHIN = 1e-6
CATALOGUES = 40
seed = random.Random(411)

LIMITS = {"closure_reserve_mm": 0.3, "visible_stand_out_mm": 2.0}
MATERIALS = ["copper-hard-drawn", "bronze-2"]


def maybe(value, chance=0.93):
    return value if seed.random() < chance else None


def pick(low, high, step):
    return round(low + step * seed.randrange(int((high - low) / step) + 1), 4)


def written(key, value):
    """A record as YAML: JSON without what is not known."""
    return json.dumps({key: {name: at for name, at in value.items() if at is not None}})[1:-1]


# What is made up


def conductors():
    made = {}
    for nth in range(9):
        wires, layers = seed.choice([(7, [1, 6]), (19, [1, 6, 12]), (37, [1, 6, 12, 18])])
        wire = pick(1.8, 2.9, 0.05)
        made[f"wire-{nth}"] = {
            "kind": "stranded", "layers": layers, "wire": wire, "D": wire * (2 * len(layers) - 1),
            "tolerance": seed.choice([None, 0.05, 0.1]),
            "yaml": f"construction: {{ stranded: {{ wires: {wires}, wire_diameter_mm: {wire} }} }}",
        }
    for nth in range(2):
        size = pick(8, 14, 0.5)
        made[f"rod-{nth}"] = {
            "kind": "solid", "layers": [1], "wire": size, "D": size, "tolerance": None,
            "yaml": f"construction: {{ solid: {{ diameter_mm: {size} }} }}",
        }
    made["rope-0"] = {
        "kind": "rope", "D": 8.0, "tolerance": None,
        "yaml": "construction: { rope: { construction: 7x19, core: wsc, diameter_mm: 8.0, grade_N_per_mm2: 1570 } }",
    }
    made["contact-0"] = {
        "kind": "grooved", "D": 12.34, "height": 12.34, "width": 12.34, "tolerance": 0.1,
        "yaml": "construction: { grooved: { height_mm: 12.34, width_mm: 12.34, apex_width_mm: 6.8, apex_depth_mm: 4.47, "
                "fillet_mm: 0.4, lower_flank_deg: 27, upper_flank_deg: 51 } }",
    }
    return made


def collet(size):
    return {
        "bore_mm": maybe(round(size + seed.choice([-0.5, -0.04, 0, 0.2, 0.3, 0.5, 0.8, 1.4]), 3), 0.97),
        "bore_tolerance_mm": seed.choice([None, 0.05]),
        "pieces": seed.choice([None, None, 1, 3]),
        "slits": maybe(seed.randrange(2, 6)),
        "slit_width_mm": maybe(pick(0.6, 1.4, 0.1)),
        "half_angle_deg": maybe(seed.choice([5, 5, 5, 5.2, 7])),
        "length_mm": maybe(60),
        "stand_out_at_bore_mm": maybe(pick(4, 9, 0.5)),
    }


def spreading(size):
    return {
        "large_diameter_mm": maybe(round(size + pick(2, 5, 0.2), 3)),
        "half_angle_deg": maybe(seed.choice([8, 8, 8, 8.2, 9])),
        "length_mm": 24,
        "hole_diameter_mm": maybe(pick(1.6, size + 1, 0.1), 0.97),
        "slits": seed.choice([None, 2, 3]),
        "slit_width_mm": maybe(pick(0.3, 1.2, 0.1)),
    }


def wedge(size):
    return {
        "thickness_mm": maybe(round(26 - size + pick(-1, 1, 0.1), 3)),
        "taper_deg": maybe(seed.choice([6, 6, 6, 6.2, 8])),
        "length_mm": maybe(seed.choice([8, 80]), 0.97),
    }


def body_geometry(kind):
    if kind == "collet":
        return {"body": {"half_angle_deg": maybe(5), "length_mm": 70}}
    if kind == "wedge":
        return {"wedge_body": {"mouth_mm": maybe(27.0), "taper_deg": maybe(6), "travel_mm": maybe(pick(8, 14, 1)),
                               "bears_on": maybe(seed.choice(["width", "height"]), 0.8)}}
    return {"body": {"length_mm": 95}}


def socket(size):
    return {"socket": {"large_diameter_mm": maybe(round(size + pick(8, 11, 0.2), 3)), "half_angle_deg": maybe(8),
                       "throat_diameter_mm": maybe(round(size + seed.choice([-0.2, 0.3, 0.5]), 3), 0.97),
                       "travel_mm": maybe(pick(4, 9, 1))}}


COLOURS = ["BU", "OG", "BK", "WH"]


def invent():
    wires, parts, fittings = conductors(), {}, {}
    for nth, kind in enumerate(["collet", "spreading", "wedge", "collet"]):
        body = f"B-{nth}"
        parts[body] = {"role": "body", "geometry": body_geometry(kind)}
        for item in range(3):
            wire = seed.choice(sorted(wires))
            size, number = wires[wire]["D"], f"C-{nth}-{item}"
            made = {"collet": collet, "spreading": spreading, "wedge": wedge}[kind](size)
            name = {"collet": "collet", "spreading": "spreading_cone", "wedge": "wedge"}[kind]
            parts[number] = {
                "role": "wedge" if kind == "wedge" else "cone",
                "geometry": {name: made} if seed.random() < 0.95 else None,
                "interface": seed.choice(["", f"seat-{kind}", f"seat-{kind}"]),
                "mark": (COLOURS[item], f"{'ACEK'[item]}{item + 1}", item + 1) if seed.random() < 0.9 else None,
                "proven_on": [seed.choice(sorted(wires))] if seed.random() < 0.3 else [],
            }
            window = None
            if seed.random() < 0.5:
                low = pick(-6, 5, 0.5)
                window = (low, low + pick(1, 3, 0.5))
            listed = [body, number]
            if kind == "spreading":
                parts[f"S-{nth}-{item}"] = {"role": "socket", "geometry": socket(size)}
                listed.insert(1, f"S-{nth}-{item}")
            fittings[f"F-{nth}-{item}"] = {
                "conductor": wire, "parts": listed, "window": window,
                "from": seed.choice([None, "cone-face", "cone-face", "none"]),
            }
    return wires, parts, fittings


def save(folder, wires, parts, fittings):
    (folder / "catalogue.yaml").write_text(
        'title: A\nowner: B\nedition: "1"\ndate: 2026-01-01\ncaution: C\n', encoding="utf-8")
    texts = {"conductors": [], "parts": [], "fittings": []}
    for nth, (name, wire) in enumerate(wires.items()):
        tolerance = wire["tolerance"]
        texts["conductors"].append(
            f"id: {name}\nname: {name}\nduty: other\nmaterial: {MATERIALS[nth % 2]}\n{wire['yaml']}\n"
            + (f"tolerance: {{ overall_diameter_mm: {tolerance} }}\n" if tolerance else ""))
    for name, part in parts.items():
        text = f"number: {name}\nname: {name}\nrole: {part['role']}\nmaterial: bronze-soft\n"
        if part["geometry"]:
            ((key, value),) = part["geometry"].items()
            text += f"geometry: {{ {written(key, value)} }}\n"
        if part.get("interface"):
            text += f"interface: {part['interface']}\n"
        if part.get("mark"):
            text += 'mark: {{ colour: {}, text: "{}", notches: {} }}\n'.format(*part["mark"])
        for proof in part.get("proven_on", []):
            text += f"proven_on: [{{ conductor: {proof}, report: T-1 }}]\n"
        texts["parts"].append(text)
    for name, fitting in fittings.items():
        text = (f"number: {name}\nname: {name}\nfamily: other\nconductor: {fitting['conductor']}\n"
                f"parts: [{', '.join(fitting['parts'])}]\n")
        if fitting["from"]:
            window = fitting["window"]
            seated = f", seated_mm: {{ min: {window[0]}, max: {window[1]} }}" if window else ""
            text += f"stand_out: {{ from: {fitting['from']}{seated} }}\n"
        texts["fittings"].append(text)
    for kind, list_of in texts.items():
        (folder / kind).mkdir()
        (folder / kind / "all.yaml").write_text("---\n".join(list_of), encoding="utf-8")


# The rules


def tan(degrees):
    return math.tan(math.radians(degrees))


def lacking(prefix, values, names):
    return [f"geometry.{prefix}.{name}" for name in names if values.get(name) is None]


def judge_collet(cone, body, wire):
    t = (cone.get("bore_tolerance_mm") or 0) + (wire["tolerance"] or 0)
    out = {"missing": []}
    known = cone["slits"] is not None and cone["slit_width_mm"] is not None
    closure = cone["slits"] * cone["slit_width_mm"] / math.pi if known else None
    if known:
        out["closure_mm"] = closure
    if cone["bore_mm"] is None:
        return out | {"verdict": "unknown", "missing": ["geometry.collet.bore_mm"]}
    c, diameter = cone["bore_mm"] - wire["D"], wire["D"]
    out["clearance_mm"] = c
    angles = cone["half_angle_deg"], body.get("half_angle_deg")
    if c + t < -0.005 * diameter - 1e-9 and (cone["pieces"] or 1) == 1:
        out["verdict"] = "will-not-enter"
    elif None not in angles and abs(angles[0] - angles[1]) > 0.25 + 1e-9:
        out["verdict"] = "tip-contact"
    elif c + t < -1e-9:
        out["verdict"] = "stands-proud"
    elif not known:
        out["verdict"] = "unknown"
        out["missing"] = lacking("collet", cone, ["slits", "slit_width_mm"])
    elif c - t > closure:
        out["verdict"] = "closes-without-gripping"
    elif c - t >= -1e-9 and c + t <= closure - LIMITS["closure_reserve_mm"]:
        out["verdict"] = "grips"
    else:
        out["verdict"] = "marginal"
    at_bore, angle = cone["stand_out_at_bore_mm"], cone["half_angle_deg"]
    if at_bore is not None and angle is not None and out["verdict"] != "will-not-enter" and (known or c + t <= 1e-9):
        def at(clearance):
            return at_bore - min(clearance, closure if known else clearance) / (2 * tan(angle))
        out["stand_out_mm"], out["interval"] = at(c), (at(c + t), at(c - t))
    return out


def judge_spreading(cone, seat, wire):
    if wire["kind"] not in ("stranded", "solid"):
        return {"verdict": "unknown", "missing": []}
    d, rings = wire["wire"], wire["layers"]
    hole, throat = cone["hole_diameter_mm"], seat.get("throat_diameter_mm")
    inner = 0
    while hole is not None and inner < len(rings) and (2 * inner + 1) * d <= hole + 1e-9:
        inner += 1
    if (throat is not None and wire["D"] > throat + 1e-9) or (hole is not None and inner == 0):
        return {"verdict": "will-not-enter", "missing": []}
    if hole is None or throat is None:
        return {"verdict": "unknown", "missing": lacking("spreading_cone", cone, ["hole_diameter_mm"])
                + lacking("socket", seat, ["throat_diameter_mm"])}
    alpha, beta = cone["half_angle_deg"], seat.get("half_angle_deg")
    ends, travel = (cone["large_diameter_mm"], seat.get("large_diameter_mm")), seat.get("travel_mm")
    out = {"missing": []}
    z = None
    if alpha is not None and None not in ends:
        g = d * (len(rings) - inner)
        z = (ends[1] / 2 - ends[0] / 2 - g / math.cos(math.radians(alpha))) / tan(alpha)
        if travel is not None:
            out["stand_out_mm"] = -min(z, travel)
            out["interval"] = (-min(z, travel),) * 2
    if alpha is None or beta is None:
        return out | {"verdict": "unknown", "missing": lacking("spreading_cone", cone, ["half_angle_deg"])
                      + lacking("socket", seat, ["half_angle_deg"])}
    if abs(alpha - beta) > 0.25 + 1e-9:
        return out | {"verdict": "tip-contact"}
    if inner == len(rings):
        return out | {"verdict": "closes-without-gripping"}
    if z is None or travel is None:
        return out | {"verdict": "unknown", "missing": lacking("spreading_cone", cone, ["large_diameter_mm"])
                      + lacking("socket", seat, ["large_diameter_mm", "travel_mm"])}
    if z > travel + 1e-9:
        return out | {"verdict": "closes-without-gripping"}
    if z < -1e-9:
        return out | {"verdict": "stands-proud"}
    if cone["slits"] is not None:
        if cone["slit_width_mm"] is None:
            return out | {"verdict": "unknown", "missing": ["geometry.spreading_cone.slit_width_mm"]}
        if hole - (2 * inner - 1) * d > cone["slits"] * cone["slit_width_mm"] / math.pi:
            return out | {"verdict": "core-not-held"}
    return out | {"verdict": "grips"}


def judge_wedge(part, body, wire):
    across = wire["D"]
    if wire["kind"] == "grooved":
        across = wire.get(body.get("bears_on")) if body.get("bears_on") else None
    w, alpha, length = part["thickness_mm"], part["taper_deg"], part["length_mm"]
    mouth, beta, travel = body.get("mouth_mm"), body.get("taper_deg"), body.get("travel_mm")
    z = None if None in (across, w, alpha, mouth) else (mouth - w - across) / tan(alpha)
    out = {"missing": []}
    if z is not None and travel is not None:
        give = (wire["tolerance"] or 0) / tan(alpha)
        out["stand_out_mm"] = -min(z, travel)
        out["interval"] = (-min(z + give, travel), -min(z - give, travel))
    if alpha is None or beta is None:
        return out | {"verdict": "unknown", "missing": lacking("wedge", part, ["taper_deg"])
                      + lacking("wedge_body", body, ["taper_deg"])}
    if abs(alpha - beta) > 0.25 + 1e-9:
        return out | {"verdict": "tip-contact"}
    if z is None or length is None:
        missing = lacking("wedge", part, ["thickness_mm", "length_mm"]) + lacking("wedge_body", body, ["mouth_mm"])
        return out | {"verdict": "unknown",
                      "missing": missing + (["geometry.wedge_body.bears_on"] if across is None else [])}
    if -z > length + 1e-9:
        return {"verdict": "will-not-enter", "missing": []}
    if travel is None:
        return out | {"verdict": "unknown", "missing": ["geometry.wedge_body.travel_mm"]}
    return out | {"verdict": "closes-without-gripping" if z > travel + 1e-9 else "stands-proud" if z < -1e-9 else "grips"}


def judge(part, fitting, parts, wire):
    mating = {}
    for other in fitting["parts"]:
        if parts[other]["role"] in ("body", "socket"):
            mating |= parts[other]["geometry"]
    if not part["geometry"]:
        return {"verdict": "unknown", "missing": ["geometry"]}
    ((kind, values),) = part["geometry"].items()
    if kind == "collet":
        return judge_collet(values, mating.get("body", {}), wire)
    if kind == "spreading_cone":
        return judge_spreading(values, mating.get("socket", {}), wire)
    return judge_wedge(values, mating.get("wedge_body", {}), wire)


def visible(out, right, fitting):
    if out["verdict"] == "will-not-enter":
        return True
    if fitting["from"] == "none" or "interval" not in out:
        return False
    window = fitting["window"] if fitting["from"] else None
    if window is None:
        if "stand_out_mm" not in right:
            return False
        window = (right["stand_out_mm"],) * 2
    least, most = min(out["interval"]), max(out["interval"])
    by = LIMITS["visible_stand_out_mm"] - 1e-9
    return most <= window[0] - by or least >= window[1] + by


def expected(wires, parts, fittings):
    cases = {}
    bodies = sorted(name for name, part in parts.items() if part["role"] == "body")
    for body in bodies:
        own = {name: next(p for p in fit["parts"] if parts[p]["role"] in ("cone", "wedge"))
               for name, fit in fittings.items() if body in fit["parts"]}
        seats = {(parts[p]["role"], parts[p]["interface"]) for p in own.values() if parts[p]["interface"]}
        going = {p for p, part in parts.items() if part["role"] in ("cone", "wedge")
                 and (p in own.values() or (part["role"], part["interface"]) in seats)}
        for part in sorted(going):
            for name in sorted(own):
                fitting, right = fittings[name], own[name]
                wire = wires[fitting["conductor"]]
                out = judge(parts[part], fitting, parts, wire)
                best = judge(parts[right], fitting, parts, wire)
                case = {key: out.get(key) for key in
                        ("verdict", "missing", "clearance_mm", "closure_mm", "stand_out_mm")}
                both = "stand_out_mm" in out and "stand_out_mm" in best
                case["stand_out_shift_mm"] = out["stand_out_mm"] - best["stand_out_mm"] if both else None
                case["right"] = part == right
                case["approved"] = fitting["conductor"] in parts[part]["proven_on"]
                case["danger"] = not case["right"] and not case["approved"] and out["verdict"] != "will-not-enter"
                case["visible"] = visible(out, best, fitting)
                case["hidden"] = case["danger"] and not case["visible"]
                one, two = parts[part]["mark"], parts[right]["mark"]
                case["marks_distinct"] = bool(one and two and one[0] != two[0])
                cases[body, part, name] = case
    return cases


def differs(key, found, wanted):
    if wanted is None:
        return key in found
    if key not in found:
        return True
    if isinstance(wanted, float):
        return abs(found[key] - wanted) > WITHIN
    if key == "missing":
        return sorted(found[key]) != sorted(wanted)
    return found[key] != wanted


def main():
    compared, wrong, verdicts = 0, [], {}
    for nth in range(CATALOGUES):
        made = invent()
        with tempfile.TemporaryDirectory() as folder:
            save(Path(folder), *made)
            done = subprocess.run([sys.argv[1], "mixups", "--catalogue", folder, "--format", "json"],
                                  capture_output=True, text=True)
        if done.returncode != 0:
            sys.exit(f"catalogue {nth}: {done.stderr}")
        answer = json.loads(done.stdout)
        found = {(body["body"], case["part"], case["fitting"]): case
                 for body in answer["bodies"] for case in body["cases"]}
        wanted = expected(*made)
        if list(found) != list(wanted):
            wrong.append(f"catalogue {nth}: other cases, or in another order")
            continue
        for place, case in wanted.items():
            compared += 1
            verdicts[case["verdict"]] = verdicts.get(case["verdict"], 0) + 1
            wrong += [f"catalogue {nth} {place} {key}: {found[place].get(key)} instead of {case[key]}"
                      for key in case if differs(key, found[place], case[key])]
    print(f"mix-ups: {compared} cases compared, {verdicts}")
    if wrong:
        sys.exit("\n".join(wrong[:40]))


main()
