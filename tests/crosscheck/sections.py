"""Sections of many conductors, by the program and by unions and cuts of polygons.

The polygons are built here from the meaning of the numbers alone: layers of touching circles, a circle less two
rounded wedges, what lies above a line. A seed is fixed, so that every run compares the same conductors.
"""

import json
import math
import random
import subprocess
import sys
import tempfile
from pathlib import Path

from shapely import Point, Polygon, box, union_all

FAR = 1000.0
WITHIN = 2e-4
seed = random.Random(20261125)


def program(*arguments):
    """What the program answers as JSON; `None` where it refuses."""
    command = [sys.argv[1], "section", *arguments, "--format", "json"]
    done = subprocess.run(command, capture_output=True, text=True)
    return json.loads(done.stdout) if done.returncode == 0 else None


def disc(x, y, radius, quarter=256):
    """A circle as a polygon of the same area."""
    step = math.pi / 2 / quarter
    return Point(x, y).buffer(radius * math.sqrt(step / math.sin(step)), quad_segs=quarter)


def ring(count, radius, wire):
    """Wires on a circle."""
    angles = [2 * math.pi * index / count for index in range(count)]
    return [disc(radius * math.cos(a), radius * math.sin(a), wire / 2) for a in angles]


def touching(count, wire):
    """Radius of the circle through the centres of wires that touch in a ring."""
    return 0.0 if count == 1 else wire / (2 * math.sin(math.pi / count))


def strand(counts, wire, inner=None):
    """Wires in layers from the centre out, or round a core of radius `inner`; and the radius round them."""
    wires = []
    for count in counts:
        radius = touching(count, wire) if inner is None else max(inner + wire / 2, touching(count, wire))
        wires += ring(count, radius, wire)
        inner = radius + wire / 2
    return wires, inner


USUAL = {1: [1], 2: [2], 3: [3], 4: [4], 7: [1, 6], 12: [3, 9], 19: [1, 6, 12], 37: [1, 6, 12, 18],
         61: [1, 6, 12, 18, 24], 91: [1, 6, 12, 18, 24, 30]}
COMPOSITES = {(6, 1): [6], (12, 7): [12], (18, 1): [6, 12], (24, 7): [9, 15], (26, 7): [10, 16], (30, 7): [12, 18],
              (45, 7): [9, 15, 21], (54, 7): [12, 18, 24], (54, 19): [12, 18, 24]}


def rounded_wedge(wire, side):
    """One groove: the wedge between the flanks, rounded at its root."""
    half_height = wire["height"] / 2
    x, y = wire["apex_width"] / 2, half_height - wire["apex_depth"]
    down, up = math.radians(wire["lower"]), math.radians(wire["upper"])
    wedge = Polygon([
        (x, y),
        (x + FAR * math.cos(down), y - FAR * math.sin(down)),
        (x + FAR * math.cos(up), y + FAR * math.sin(up)),
    ])
    # Rolling a disc inside the wedge leaves its root rounded and its flanks where they are.
    rounded = wedge.buffer(-wire["fillet"], join_style="mitre").buffer(wire["fillet"], quad_segs=512)
    return rounded if side > 0 else Polygon([(-px, py) for px, py in rounded.exterior.coords])


def contact_wire(wire):
    """The metal of a grooved contact wire."""
    circle = disc(0, 0, wire["height"] / 2, 2048)
    return circle.difference(rounded_wedge(wire, 1)).difference(rounded_wedge(wire, -1))


def random_contact_wire():
    height = round(seed.uniform(9.5, 15.5), 2)
    return {
        "height": height,
        "apex_width": round(height * seed.uniform(0.47, 0.62), 2),
        "apex_depth": round(height * seed.uniform(0.31, 0.43), 2),
        "fillet": round(seed.uniform(0.2, 0.5), 2),
        "lower": round(seed.uniform(22, 35), 1),
        "upper": round(seed.uniform(45, 58), 1),
    }


RECORD = """id: wire-{index}
name: Wire {index}
duty: contact
material: copper-silver-0.1
construction: {{ grooved: {{ height_mm: {height}, width_mm: {height}, apex_width_mm: {apex_width},
  apex_depth_mm: {apex_depth}, fillet_mm: {fillet}, lower_flank_deg: {lower}, upper_flank_deg: {upper} }} }}
"""
CATALOGUE = """title: Cross-check
owner: Cross-check
edition: "1"
date: 2026-01-01
caution: Not for use.
"""


class Comparison:
    """Counts what agrees and prints what does not."""

    def __init__(self):
        self.agree, self.wrong = 0, 0

    def hold(self, name, what, found, expected, within=WITHIN):
        if found is not None and abs(found - expected) <= within * max(abs(expected), 1e-9):
            self.agree += 1
        else:
            self.wrong += 1
            print(f"{name}: {what}: the program says {found}, shapely {expected}", file=sys.stderr)


def compare_round_wires(comparison):
    for _ in range(60):
        wires = seed.choice(list(USUAL))
        diameter = round(seed.uniform(1.0, 5.0), 2)
        answer = program("--stranded", f"{wires}/{diameter}") or {}
        metal, radius = strand(USUAL[wires], diameter)
        name = f"{wires}/{diameter}"
        comparison.hold(name, "section", answer.get("section_mm2"), union_all(metal).area)
        around = union_all(metal + [Point(0, 0).buffer(1e-9)]).bounds
        comparison.hold(name, "overall diameter", answer.get("overall_diameter_mm"), 2 * radius)
        assert max(abs(bound) for bound in around) <= radius * (1 + 1e-4), name


def compare_composites(comparison):
    for _ in range(40):
        (outer, core), counts = seed.choice(list(COMPOSITES.items()))
        diameter = round(seed.uniform(1.5, 4.5), 2)
        inside = diameter if core in (1, 7) else round(diameter * 3 / 5, 2)
        name = f"{outer}/{diameter}+{core}/{inside}"
        answer = program("--stranded", name) or {}
        core_wires, inner = strand(USUAL[core], inside)
        outer_wires, radius = strand(counts, diameter, inner)
        comparison.hold(name, "section", answer.get("section_mm2"), union_all(core_wires + outer_wires).area)
        comparison.hold(name, "core", answer.get("core_section_mm2"), union_all(core_wires).area)
        comparison.hold(name, "outer group", answer.get("outer_section_mm2"), union_all(outer_wires).area)
        comparison.hold(name, "overall diameter", answer.get("overall_diameter_mm"), 2 * radius)


def compare_shapes(comparison):
    for _ in range(20):
        outside, wall = round(seed.uniform(20, 120), 1), round(seed.uniform(1, 9), 1)
        answer = program("--tube", f"{outside}x{wall}") or {}
        tube = disc(0, 0, outside / 2).difference(disc(0, 0, outside / 2 - wall))
        comparison.hold(f"tube {outside}x{wall}", "section", answer.get("section_mm2"), tube.area)
        width, thickness = round(seed.uniform(10, 100), 1), round(seed.uniform(3, 20), 1)
        answer = program("--bar", f"{width}x{thickness}") or {}
        name = f"bar {width}x{thickness}"
        comparison.hold(name, "section", answer.get("section_mm2"), box(0, 0, width, thickness).area)


def compare_contact_wires(comparison):
    wires = [random_contact_wire() for _ in range(60)]
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "conductors").mkdir()
        Path(folder, "catalogue.yaml").write_text(CATALOGUE, encoding="utf-8")
        records = [RECORD.format(index=index, **wire) for index, wire in enumerate(wires)]
        Path(folder, "conductors", "wires.yaml").write_text("---\n".join(records), encoding="utf-8")
        for index, wire in enumerate(wires):
            compare_contact_wire(comparison, folder, index, wire)


def compare_contact_wire(comparison, folder, index, wire):
    metal, name = contact_wire(wire), f"contact wire {wire}"
    height = round(wire["height"] * seed.uniform(0.4, 0.98), 2)
    record = ("--catalogue", folder, "--conductor", f"wire-{index}", "--worn-height", str(height))
    answer = program(*record) or {}
    comparison.hold(name, "section", answer.get("section_mm2"), metal.area)
    level = wire["height"] / 2 - height
    left = metal.intersection(box(-FAR, level, FAR, FAR))
    worn = answer.get("worn", {})
    comparison.hold(name, f"section left at {height}", worn.get("section_mm2"), left.area)
    flat = metal.intersection(box(-FAR, level, FAR, level + 1e-7)).bounds
    comparison.hold(name, f"flat at {height}", worn.get("flat_width_mm"), flat[2] - flat[0], 1e-3)
    neck = min(width_at(metal, wire["height"] * (0.5 - part / 2000)) for part in range(400, 1200))
    comparison.hold(name, "neck", answer.get("neck_mm"), neck, 1e-3)


def width_at(metal, y):
    low, _, high, _ = metal.intersection(box(-FAR, y, FAR, y + 1e-6)).bounds
    return high - low


def main():
    comparison = Comparison()
    compare_round_wires(comparison)
    compare_composites(comparison)
    compare_shapes(comparison)
    compare_contact_wires(comparison)
    print(f"{comparison.agree} figures agree with shapely, {comparison.wrong} do not")
    sys.exit(1 if comparison.wrong else 0)


if __name__ == "__main__":
    main()
