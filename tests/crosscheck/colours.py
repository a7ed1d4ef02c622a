"""Differences between marks as four kinds of eye see them, by the program and by other means.

Brettel, Viénot, Mollon 1997 is computed by another library, Machado, Oliveira, Fernandes 2009 by the published
matrices, CIEDE2000 from its formula, which is held against the published pairs first. The printed values of the
colours are data; they are read from where they stand.
"""

import csv
import itertools
import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from daltonlens import simulate

ROOT = Path(__file__).parent.parent.parent
PUBLISHED = ROOT / "tests" / "published"
EYES = {"protan": simulate.Deficiency.PROTAN, "deutan": simulate.Deficiency.DEUTAN, "tritan": simulate.Deficiency.TRITAN}
TO_XYZ = np.array([[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750],
                   [0.0193339, 0.1191920, 0.9503041]])
D65 = TO_XYZ @ np.ones(3)


def table(name):
    with open(PUBLISHED / name, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


MACHADO = {row["deficiency"]: np.array([[float(row[f"m{i}{j}"]) for j in range(3)] for i in range(3)])
           for row in table("colour_vision_matrices.csv")}


def linear(hexadecimal):
    channels = np.array([int(hexadecimal[at:at + 2], 16) / 255 for at in (0, 2, 4)])
    return np.where(channels <= 0.04045, channels / 12.92, ((channels + 0.055) / 1.055) ** 2.4)


def encoded(rgb):
    return np.where(rgb <= 0.0031308, rgb * 12.92, 1.055 * np.maximum(rgb, 0) ** (1 / 2.4) - 0.055)


def lab(rgb):
    ratio = TO_XYZ @ rgb / D65
    f = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    return 116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])


def ciede2000(one, two):
    (l1, a1, b1), (l2, a2, b2) = one, two
    mean = ((np.hypot(a1, b1) + np.hypot(a2, b2)) / 2) ** 7
    stretch = 1.5 - 0.5 * np.sqrt(mean / (mean + 25.0 ** 7))
    c1, c2 = np.hypot(stretch * a1, b1), np.hypot(stretch * a2, b2)
    h1, h2 = (np.degrees(np.arctan2(b, stretch * a)) % 360 for a, b in ((a1, b1), (a2, b2)))
    grey = c1 * c2 == 0
    turn = 0 if grey else (h2 - h1 + 180) % 360 - 180
    hue = h1 + h2 if grey else (h1 + turn / 2) % 360
    lightness, chroma = (l1 + l2) / 2, (c1 + c2) / 2
    t = (1 - 0.17 * np.cos(np.radians(hue - 30)) + 0.24 * np.cos(np.radians(2 * hue))
         + 0.32 * np.cos(np.radians(3 * hue + 6)) - 0.20 * np.cos(np.radians(4 * hue - 63)))
    light = (l2 - l1) / (1 + 0.015 * (lightness - 50) ** 2 / np.sqrt(20 + (lightness - 50) ** 2))
    colour = (c2 - c1) / (1 + 0.045 * chroma)
    tone = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(turn / 2)) / (1 + 0.015 * chroma * t)
    rotation = (-2 * np.sqrt(chroma ** 7 / (chroma ** 7 + 25.0 ** 7))
                * np.sin(np.radians(60 * np.exp(-((hue - 275) / 25) ** 2))))
    return np.sqrt(light ** 2 + colour ** 2 + tone ** 2 + rotation * colour * tone)


def by_machado(rgb, eye):
    return np.clip(MACHADO[eye] @ rgb, 0, 1)


def by_brettel(rgb, eye):
    simulator = simulate.Simulator_Brettel1997()
    seen = simulator._simulate_dichromacy_linear_rgb(rgb.reshape(1, 1, 3), EYES[eye])
    return np.clip(np.asarray(seen, dtype=float), 0, 1).reshape(3)


def least(one, two, eye):
    """The difference that an eye sees: the least of both models."""
    if eye == "any":
        return ciede2000(lab(one), lab(two))
    return min(ciede2000(lab(model(one, eye)), lab(model(two, eye))) for model in (by_machado, by_brettel))


def printed_values():
    source = (ROOT / "src" / "colour" / "code.rs").read_text(encoding="utf-8")
    found = re.findall(r"Self::([A-Z]{2}) => 0x([0-9a-f_]+),", source)
    return {code: value.replace("_", "") for code, value in found}


HEAD = """title: Cross-check
owner: Cross-check
edition: "1"
date: 2026-01-01
limits: { mark_difference: 100 }
caution: Not for use.
"""
PARTS = """number: B-1
name: Body
role: body
material: aluminium-bronze
---
"""
PART = """number: {code}
name: Cone {code}
role: cone
material: bronze-soft
interface: seat
mark: {{ colour: {code}, text: "{code}", notches: {notches} }}
geometry: {{ collet: {{ bore_mm: {bore}, slits: 3, slit_width_mm: 1.0 }} }}
"""
WIRE = """id: wire
name: Wire
duty: other
material: copper-hard-drawn
construction: { solid: { diameter_mm: 10 } }
"""
FITTING = """number: F-1
name: End
family: cone-dead-end
conductor: wire
parts: [B-1, BK]
"""


def differences_of_the_program(program, codes):
    """By pair of codes: what the program says that each kind of eye sees."""
    parts = [PART.format(code=code, notches=nth % 12 + 1, bore=10 + nth) for nth, code in enumerate(codes)]
    files = {"catalogue.yaml": HEAD, "parts/all.yaml": PARTS + "---\n".join(parts), "conductors/wire.yaml": WIRE,
             "fittings/end.yaml": FITTING}
    with tempfile.TemporaryDirectory() as folder:
        for name, text in files.items():
            Path(folder, name).parent.mkdir(exist_ok=True)
            Path(folder, name).write_text(text, encoding="utf-8")
        command = [program, "audit", "--catalogue", folder, "--format", "json"]
        findings = json.loads(subprocess.run(command, capture_output=True, text=True).stdout)["findings"]
    pairs = {}
    for finding in (one for one in findings if one["code"] == "mark-colours-too-close"):
        other = re.search(r" of ([A-Z]{2}) to ", finding["message"]).group(1)
        seen = re.findall(r"to (?:any|a (\w+)) eye(?: \([a-z-]+\))? \(([0-9.]+)\)", finding["message"])
        pairs[frozenset((finding["record"], other))] = {eye or "any": float(value) for eye, value in seen}
    return pairs


def check_means():
    """The formula by the published pairs, and the table of the Rust tests by the library."""
    for row in table("ciede2000_pairs.csv"):
        one, two = ([float(row[f"{axis}{nth}"]) for axis in "Lab"] for nth in (1, 2))
        expected = [4.8045, 4.7461] if row["pair"] == "14" else [float(row["dE00_published_4dp"])]
        assert min(abs(ciede2000(one, two) - value) for value in expected) < 0.0001, row
    for row in table("colour_vision_brettel.csv"):
        seen = encoded(by_brettel(linear(row["input_srgb"][1:]), row["deficiency"]))
        kept = [float(row[f"brettel1997_{channel}"]) for channel in "rgb"]
        assert np.allclose(seen, kept, atol=1e-4), row


def main():
    check_means()
    values = printed_values()
    agree, wrong = 0, 0
    found = differences_of_the_program(sys.argv[1], list(values))
    for one, two in itertools.combinations(values, 2):
        for eye in ["any", *EYES]:
            expected = least(linear(values[one]), linear(values[two]), eye)
            said = found.get(frozenset((one, two)), {}).get(eye)
            if (said is None and expected >= 100) or (said is not None and abs(said - expected) <= 0.06):
                agree += 1
            else:
                wrong += 1
                print(f"{one} beside {two}, {eye}: the program says {said}, others {expected:.2f}", file=sys.stderr)
    print(f"{agree} differences between marks agree with other means, {wrong} do not")
    sys.exit(1 if wrong or len(values) != 14 else 0)


if __name__ == "__main__":
    main()
