"""Masses, loads and resistances of random conductors, by the program and by the rules written a second time.

The rules are written from their statement alone, in plain numbers, without a look at the program. The catalogue states
its own materials, so that no built-in figure is needed. Factors of stranding and of ropes are read from the published
tables. A seed is fixed.
"""

import csv
import json
import math
import random
import subprocess
import sys
import tempfile
from pathlib import Path

WITHIN = 1e-9
PUBLISHED = Path(__file__).parent.parent / "published"
seed = random.Random(50182)

USUAL = {1: [1], 2: [2], 3: [3], 4: [4], 7: [1, 6], 12: [3, 9], 19: [1, 6, 12], 37: [1, 6, 12, 18],
         61: [1, 6, 12, 18, 24], 91: [1, 6, 12, 18, 24, 30]}
COMPOSITES = {(6, 1): [6], (12, 7): [12], (14, 7): [14], (18, 1): [6, 12], (24, 7): [9, 15], (26, 7): [10, 16],
              (30, 7): [12, 18], (45, 7): [9, 15, 21], (48, 7): [10, 16, 22], (54, 7): [12, 18, 24],
              (14, 19): [14], (54, 19): [12, 18, 24]}
# Core wire over outer wire, so that the outer layers are full.
RATIO = {(14, 7): 1.2, (24, 7): 2 / 3, (26, 7): 0.778, (45, 7): 2 / 3, (48, 7): 0.78, (14, 19): 0.726, (54, 19): 0.6}


def table(name):
    with open(PUBLISHED / name, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


INCREMENTS = {(int(row["n_outer"]), int(row["n_core"])): (
    float(row["resistance_factor"]), float(row["mass_factor"] or row["resistance_factor"]))
    for row in table("stranding_increments.csv")}


def material(name, group, low, high, **keys):
    """A material that the catalogue states, with a strength by diameter."""
    rows = [(round(2.0 + 0.5 * step, 2), seed.randrange(low, high)) for step in range(8)]
    return {
        "id": name, "name": name, "group": group, "density": seed.randrange(2600, 9000),
        "resistivity": round(seed.uniform(15, 60), 2), "alpha": round(seed.uniform(0.002, 0.006), 5),
        "rows": rows, "efficiency": round(seed.uniform(0.85, 1.0), 3),
        "core": [(diameter, strength - 150) for diameter, strength in rows], "standard": "", **keys,
    }


def materials():
    made = [material("m-copper", "copper", 300, 450), material("m-bronze", "bronze", 450, 700)]
    made.append(material("m-aluminium", "aluminium", 150, 330))
    made.append(material("m-zinc-coated", "steel", 1100, 1600, resistivity=round(seed.uniform(160, 210), 1)))
    made.append(material("m-clad", "steel", 1000, 1400, resistivity=round(seed.uniform(50, 123), 1)))
    made.append(material("m-contact", "copper", 300, 500, standard="EN 50149"))
    return {one["id"]: one for one in made}


def record_of_material(one):
    rows = ", ".join(f"{{ up_to_mm: {d}, strength: {s} }}" for d, s in one["rows"])
    core = ", ".join(f"{{ up_to_mm: {d}, strength: {s} }}" for d, s in one["core"])
    if one["standard"]:
        rows = None
        strength = one["rows"][0][1]
    return "\n".join([
        f"id: {one['id']}", f"name: {one['name']}", f"group: {one['group']}",
        f"density_kg_per_m3: {one['density']}", f"resistivity_20c_nohm_m: {one['resistivity']}",
        f"temperature_coefficient_per_k: {one['alpha']}",
        f"strength_N_per_mm2: [{rows}]" if rows else f"strength_N_per_mm2: {strength}",
        f"strand_efficiency: {one['efficiency']}", f"strength_as_core_N_per_mm2: [{core}]",
        f"source: {{ standard: {one['standard'] or 'invented'} }}", ""])


def of_wire(rows, diameter):
    """Strength of a wire; `None` beyond the last row."""
    return next((strength for up_to, strength in rows if diameter <= up_to + 1e-9), None)


def laid(counts, wire, inside=None):
    """Pitch radius and outer radius of each layer, from the centre out or round a core."""
    layers = []
    for count in counts:
        touching = 0.0 if count == 1 else wire / (2 * math.sin(math.pi / count))
        pitch = touching if inside is None else max(inside + wire / 2, touching)
        inside = pitch + wire / 2
        layers.append((count, pitch, inside))
    return layers


def by_lay(layers, ratios):
    """Factors on resistance and mass of layers with these lay ratios."""
    wires = sum(count for count, _, _ in layers)
    factors = [math.hypot(1, math.pi * 2 * pitch / (ratio * 2 * outer)) for (_, pitch, outer), ratio
               in zip(layers, ratios)]
    longer = sum(count * factor for (count, _, _), factor in zip(layers, factors))
    conducting = sum(count / factor for (count, _, _), factor in zip(layers, factors))
    return wires / conducting, longer / wires


def area(count, wire):
    return count * math.pi * wire * wire / 4


def stranded(known):
    """A stranded conductor: by number, by layers, with lay ratios or without."""
    wires = seed.choice(list(USUAL))
    counts, wire = USUAL[wires], round(seed.uniform(1.2, 5.0), 2)
    one = known[seed.choice(["m-copper", "m-bronze", "m-aluminium", "m-zinc-coated"])]
    layers = laid(counts, wire)
    round_centre = len(counts) - 1
    ratios = [round(seed.uniform(9, 17), 1) for _ in range(round_centre)]
    keys = f"wires: {wires}" if seed.random() < 0.5 else f"layers: {counts}"
    if ratios and seed.random() < 0.5:
        keys += f", lay_ratios: {ratios}"
        resistance, mass = by_lay(layers, [12.5] + ratios)
    elif (wires, 0) in INCREMENTS:
        resistance, mass = INCREMENTS[wires, 0]
    else:
        resistance, mass = by_lay(layers, [12.5] * len(layers))
    section = area(wires, wire)
    strength = of_wire(one["rows"], wire)
    efficiency = one["efficiency"] if wires > 1 else 1.0
    return {
        "construction": f"{{ stranded: {{ {keys}, wire_diameter_mm: {wire} }} }}",
        "material": one,
        "section_mm2": section,
        "mass_kg_per_km": section * one["density"] / 1000 * mass,
        "resistance_20c_ohm_per_km": one["resistivity"] / section * resistance,
        "breaking_load_kN": strength and section * strength * efficiency / 1000,
        "alpha": one["alpha"],
    }


def composite(known):
    """A core of zinc-coated steel that does not conduct, or of clad steel that does."""
    (outer, core), counts = seed.choice(list(COMPOSITES.items()))
    wire = round(seed.uniform(1.6, 4.0), 2)
    inner = round(wire * RATIO.get((outer, core), 1.0), 2)
    metal, steel = known["m-aluminium"], known[seed.choice(["m-zinc-coated", "m-clad"])]
    core_layers = laid(USUAL[core], inner)
    layers = laid(counts, wire, core_layers[-1][2])
    factor = INCREMENTS[outer, core][0] if (outer, core) in INCREMENTS else None
    resistance, mass = (factor, factor) if factor else by_lay(layers, [12.5] * len(layers))
    core_resistance, core_mass = by_lay(core_layers, [19] * len(core_layers))
    outer_section, core_section = area(outer, wire), area(core, inner)
    conductance = outer_section / (metal["resistivity"] * resistance)
    clad = steel["id"] == "m-clad"
    if clad:
        conductance += core_section / (steel["resistivity"] * core_resistance)
    loads = of_wire(metal["rows"], wire), of_wire(steel["core"], inner)
    load = None if None in loads else (
        outer_section * loads[0] * metal["efficiency"] + core_section * loads[1]) / 1000
    return {
        "construction": f"{{ composite: {{ core: {{ wires: {core}, wire_diameter_mm: {inner}, material: {steel['id']} }},"
                        f" outer: {{ wires: {outer}, wire_diameter_mm: {wire} }} }} }}",
        "material": metal,
        "section_mm2": outer_section + core_section,
        "mass_kg_per_km": (outer_section * metal["density"] * mass + core_section * steel["density"] * core_mass) / 1000,
        "resistance_20c_ohm_per_km": 1 / conductance,
        "breaking_load_kN": load,
        "alpha": None if clad else metal["alpha"],
    }


def bar_or_tube(known):
    one = known[seed.choice(["m-copper", "m-aluminium"])]
    if seed.random() < 0.5:
        width, thickness = round(seed.uniform(20, 100), 1), round(seed.uniform(4, 12), 1)
        corner = round(seed.uniform(0, thickness / 2), 1)
        section = width * thickness - (4 - math.pi) * corner ** 2
        construction = f"{{ bar: {{ width_mm: {width}, thickness_mm: {thickness}, corner_radius_mm: {corner or 0.1} }} }}"
        section = section if corner else width * thickness - (4 - math.pi) * 0.01
    else:
        outside, wall = round(seed.uniform(20, 120), 1), round(seed.uniform(1, 9), 1)
        section = math.pi * (outside - wall) * wall
        construction = f"{{ tube: {{ outside_diameter_mm: {outside}, wall_mm: {wall} }} }}"
    return {
        "construction": construction, "material": one, "section_mm2": section,
        "mass_kg_per_km": section * one["density"] / 1000,
        "resistance_20c_ohm_per_km": one["resistivity"] / section,
        # Its material's strength is that of round wires.
        "breaking_load_kN": None, "alpha": one["alpha"],
    }


def rope(known):
    """First row of a class with its core; seven strands are six round a strand core."""
    first = {}
    for row in table("wire_rope_factors.csv"):
        core = {"FC": "fibre", "IWRC": "iwrc", "steel core": "iwrc", "WSC": "wsc"}.get(row["core"])
        values = [row["W_mass_factor_kg_per_100m_mm2"], row["C_area_factor"], row["K_breaking_factor"]]
        if core and all(values):
            # EN 12385-2 writes the compound lay N; the reprint has it as M.
            rope_class = row["rope_class"].replace("6x35M", "6x35N")
            first.setdefault((rope_class, core), [float(value) for value in values])
    first["7x7", "wsc"], first["7x19", "wsc"] = first["6x7", "wsc"], first["6x19M", "wsc"]
    (rope_class, core), (mass, metal, breaking) = seed.choice(list(first.items()))
    diameter, grade = round(seed.uniform(4, 40), 1), seed.choice([1570, 1770, 1960])
    return {
        "construction": f"{{ rope: {{ construction: {rope_class}, core: {core}, diameter_mm: {diameter}, grade_N_per_mm2: {grade} }} }}",
        "material": known["m-zinc-coated"],
        "section_mm2": metal * diameter ** 2,
        "mass_kg_per_km": 10 * mass * diameter ** 2,
        "resistance_20c_ohm_per_km": None,
        "breaking_load_kN": breaking * diameter ** 2 * grade / 1000,
        "alpha": None,
    }


def contact_wire(known):
    """A grooved wire: of EN 50149 by 0.97 of its nominal section, of another material by its computed one."""
    one = known[seed.choice(["m-contact", "m-copper"])]
    nominal = seed.choice([80, 100, 107, 120, 150])
    height = round(math.sqrt(nominal * 1.38), 2)
    standard = bool(one["standard"])
    strength = one["rows"][0][1] if standard else of_wire(one["rows"], height)
    return {
        "construction": f"{{ grooved: {{ height_mm: {height}, width_mm: {height}, apex_width_mm: 5.7, apex_depth_mm: 4.1,"
                        " fillet_mm: 0.4, lower_flank_deg: 27, upper_flank_deg: 51 } }",
        "material": one, "nominal": nominal, "standard": standard, "strength": strength,
        "worn_height": round(height * seed.uniform(0.6, 0.95), 2), "alpha": one["alpha"],
    }


def with_computed_section(wire, answer):
    """What follows from the section that the program computes: polygons are held against that elsewhere."""
    one, metal = wire["material"], answer["section_mm2"]
    size, part = (wire["nominal"], 0.97) if wire["standard"] else (metal, 1.0)
    return {
        "section_mm2": metal,
        "mass_kg_per_km": metal * one["density"] / 1000,
        "resistance_20c_ohm_per_km": one["resistivity"] / (part * size),
        "breaking_load_kN": wire["strength"] and part * size * wire["strength"] / 1000,
    }, part


class Comparison:
    """Counts what agrees and prints what does not."""

    def __init__(self):
        self.agree, self.wrong = 0, 0

    def hold(self, name, what, found, expected):
        near = (found is None and expected is None) or (
            None not in (found, expected) and abs(found - expected) <= WITHIN * abs(expected))
        if near:
            self.agree += 1
        else:
            self.wrong += 1
            print(f"{name}: {what}: the program says {found}, the rules {expected}", file=sys.stderr)


def ask(folder, *arguments):
    command = [sys.argv[1], *arguments, "--catalogue", folder, "--format", "json"]
    done = subprocess.run(command, capture_output=True, text=True)
    assert done.returncode == 0, (arguments, done.stderr)
    return json.loads(done.stdout)


def compare(comparison, folder, name, wire):
    celsius = seed.choice([-20, 40, 80])
    arguments = ["section", "--conductor", name, "--temperature", str(celsius)]
    if "worn_height" in wire:
        arguments += ["--worn-height", str(wire["worn_height"])]
    answer = ask(folder, *arguments)
    expected, part = with_computed_section(wire, answer) if "nominal" in wire else (wire, None)
    label = f"{name} {wire['construction']} of {wire['material']['id']}"
    for what in ["section_mm2", "mass_kg_per_km", "resistance_20c_ohm_per_km", "breaking_load_kN"]:
        comparison.hold(label, what, answer.get(what), expected[what])
    if wire["alpha"]:
        hotter = 1 + wire["alpha"] * (celsius - 20)
        comparison.hold(label, "resistance", answer.get("resistance_ohm_per_km"),
                        expected["resistance_20c_ohm_per_km"] * hotter)
        if part:
            worn, one = answer["worn"], wire["material"]
            left = part * worn["section_mm2"]
            load = wire["strength"] and left * wire["strength"] / 1000
            comparison.hold(label, "worn load", worn.get("breaking_load_kN"), load)
            comparison.hold(label, "worn resistance", worn.get("resistance_ohm_per_km"),
                            one["resistivity"] / left * hotter)


def loose_layers(known):
    """Strands with wires missing from a layer, and the layers that have room for more than one beyond their own."""
    counts = seed.choice([[1, 6, 12], [3, 9], [4, 10], [1, 6, 12, 18], [1, 5], [1, 6, 10], [3, 8, 14]])
    counts = [counts[0]] + [max(1, count - seed.choice([0, 0, 1, 2, 3])) for count in counts[1:]]
    wire = round(seed.uniform(1.5, 4.0), 2)
    layers = laid(counts, wire)
    rooms = {}
    for index in range(1, len(counts)):
        inside = layers[index - 1][2]
        full = max(count for count in range(1, 60)
                   if count == 1 or wire / (2 * math.sin(math.pi / count)) <= 1.005 * (inside + wire / 2))
        if full > counts[index] + 1:
            rooms[f"construction.stranded.layers.{index}"] = full
    return {"construction": f"{{ stranded: {{ layers: {counts}, wire_diameter_mm: {wire} }} }}",
            "material": known["m-copper"], "rooms": rooms}


def write(folder, known, wires):
    Path(folder, "catalogue.yaml").write_text(
        'title: Cross-check\nowner: Cross-check\nedition: "1"\ndate: 2026-01-01\ncaution: Not for use.\n', encoding="utf-8")
    for kind in ["materials", "conductors"]:
        Path(folder, kind).mkdir()
    Path(folder, "materials", "all.yaml").write_text(
        "---\n".join(record_of_material(one) for one in known.values()), encoding="utf-8")
    for name, wire in wires.items():
        nominal = f"nominal_size_mm2: {wire['nominal']}\n" if "nominal" in wire else ""
        duty = "contact" if "nominal" in wire else "other"
        Path(folder, "conductors", f"{name}.yaml").write_text(
            f"id: {name}\nname: {name}\nduty: {duty}\nmaterial: {wire['material']['id']}\n{nominal}"
            f"construction: {wire['construction']}\n", encoding="utf-8")


def compare_rooms(comparison, folder, wires):
    findings = [one for one in ask(folder, "audit")["findings"] if one["code"] == "layer-not-full"]
    for name, wire in wires.items():
        found = {one["field"]: one["expected"] for one in findings if one["record"] == name}
        expected = {field: f"{full} wires make this layer full" for field, full in wire.get("rooms", {}).items()}
        if found == expected:
            comparison.agree += 1
        else:
            comparison.wrong += 1
            print(f"{name} {wire['construction']}: the program says {found}, the rules {expected}", file=sys.stderr)


def main():
    comparison = Comparison()
    known = materials()
    kinds = [stranded] * 40 + [composite] * 40 + [contact_wire] * 25 + [rope] * 20 + [bar_or_tube] * 15
    wires = {f"wire-{index}": kind(known) for index, kind in enumerate(kinds)}
    loose = {f"loose-{index}": loose_layers(known) for index in range(40)}
    with tempfile.TemporaryDirectory() as folder:
        write(folder, known, wires)
        for name, wire in wires.items():
            compare(comparison, folder, name, wire)
    with tempfile.TemporaryDirectory() as folder:
        write(folder, known, loose)
        compare_rooms(comparison, folder, loose)
    print(f"{comparison.agree} figures agree with the rules written a second time, {comparison.wrong} do not")
    sys.exit(1 if comparison.wrong else 0)


if __name__ == "__main__":
    main()
