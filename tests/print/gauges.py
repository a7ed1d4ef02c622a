"""Gauges for cutting: the PDF, SVG and DXF measured against the windows that the demo's records state.

Sizes of wires are worked out by hand: 19 wires lie in 1 + 6 + 12, so they are five wires across.
"""

import re
import xml.etree.ElementTree as ET
from pathlib import Path

from measure import bars, check, near, sound
from pdf import Pdf, extent

ROOT = Path(__file__).resolve().parent.parent.parent
SVG = "{http://www.w3.org/2000/svg}"
# What a gauge may be off, and its bar, in millimetres.
OFF, BAR_OFF = 0.02, 0.1
# Of a body that wires of several sizes share: wire across and its tolerance, bore and its tolerance, by gauge.
WIRES = {
    "wire-ST-4101-messenger-95-ST-4111": (5 * 2.50, 0.1, 12.80, 0.05),
    "wire-ST-4101-messenger-120-ST-4103": (5 * 2.80, 0.1, 14.30, 0.05),
}


def gauges_as_rendered(output):
    """The gauges of the demo."""
    pdf = Pdf(output / "training" / "gauges.pdf")
    sound("gauges", pdf)
    bars("gauges", pdf)
    windows = stated_windows()
    plates = drawn_plates(pdf)
    folder = output / "training" / "gauges"
    check("gauges: one for each window that a record states, then those of wires", len(plates) == len(list(folder.glob("*.dxf"))), len(plates))
    check("gauges: windows above the face and below it", len(windows) > 5 and any(low < 0 for ends in windows.values() for low, _ in ends))
    for (number, ends), plate in zip(sorted(windows.items()), plates):
        name = f"gauge of {number}"
        stepped(f"{name} in the PDF", plate, ends)
        stepped(f"{name} in the SVG", svg_plate(folder / f"stand-out-{number}.svg"), ends)
        drawing = Dxf(folder / f"stand-out-{number}.dxf")
        stepped(f"{name} in the DXF", drawing.outline(), ends)
        signed(name, drawing, pdf, number)
    for name, sizes in WIRES.items():
        drawing = Dxf(folder / f"{name}.dxf")
        gapped(f"{name} in the DXF", drawing.outline(), *sizes)
        gapped(f"{name} in the SVG", svg_plate(folder / f"{name}.svg"), *sizes)
        signed(name, drawing, pdf, "ST-4101")


def stated_windows():
    """By fitting that may be built: its windows of stand-out as its record states them, seated first."""
    windows = {}
    for path in sorted((ROOT / "content" / "fittings").glob("*.yaml")):
        for record in path.read_text(encoding="utf-8").split("\n---\n"):
            number = re.search(r"(?m)^number: (\S+)", record)[1]
            if re.search(r"(?m)^status: (?!current)", record):
                continue
            ends = re.findall(r"(?:seated|tensioned)_mm: \{ min: ([-\d.]+), max: ([-\d.]+) \}", record)
            if ends:
                windows[number] = [(float(low), float(high)) for low, high in ends]
    return windows


def drawn_plates(pdf):
    """Outlines of plates on the pages, in reading order, y upward."""
    plates = []
    for page in range(len(pdf.pages)):
        outlines = [points for how, points in pdf.paths(page) if how == "fill" and len(points) >= 12]
        plates += sorted(outlines, key=lambda points: extent(points)[0])
        trim = pdf.boxes(page)["TrimBox"]
        inside = [extent(points) for how, points in pdf.paths(page) if how == "fill"]
        within = [box for box in inside if box[1] > trim[1] and 1.5 < box[3] - box[1] < 2.5 and box[2] - box[0] > 25]
        check(f"gauges: page {page + 1}: each gauge has a bar of its own", bool(within), within)
        for left, _, right, _ in within:
            near(f"gauges: page {page + 1}: bar of a gauge", right - left, 50.0, BAR_OFF)
    return plates


def svg_plate(path):
    """The outline in an SVG, y upward."""
    root = ET.parse(path).getroot()
    width = root.get("viewBox").split()[2]
    check(f"{path.name}: a unit is a millimetre", root.get("width") == f"{width}mm", root.get("width"))
    longest = max((element.get("d") for element in root.iter(f"{SVG}path")), key=len)
    numbers = [float(number) for number in re.findall(r"-?[\d.]+", longest)]
    return [(x, -y) for x, y in zip(numbers[::2], numbers[1::2])]


class Dxf:
    """A DXF file as its format has it: pairs of lines, a group code and its value."""

    def __init__(self, path):
        lines = path.read_text(encoding="ascii").splitlines()
        self.pairs = [(int(code), value) for code, value in zip(lines[::2], lines[1::2])]
        check(f"{path.name}: begins and ends as DXF does", (self.pairs[0], self.pairs[-1]) == ((0, "SECTION"), (0, "EOF")))

    def entities(self, kind):
        """Entities of a kind, each by its group codes."""
        found, taken = [], None
        for code, value in self.pairs:
            if code == 0:
                taken = {} if value == kind else None
                found += [taken] if taken is not None else []
            elif taken is not None:
                taken[code] = value
        return found

    def outline(self):
        return [(float(corner[10]), float(corner[20])) for corner in self.entities("VERTEX") if corner[8] == "CUT"]


def signed(name, drawing, pdf, number):
    """What is engraved, and the bar."""
    texts = " ".join(text[1] for text in drawing.entities("TEXT"))
    check(f"{name}: says its card", number in texts, texts)
    code = re.search(r"issue \d+, check ([0-9A-Z]{6})", texts)
    check(f"{name}: says issue and check code, or that it is a draft", bool(code) or "draft, not issued" in texts, texts)
    if code:
        check(f"{name}: the same check code stands on its page", code[1] in pdf.text(), code[1])
    for line in drawing.entities("LINE"):
        near(f"{name}: bar in the DXF", float(line[11]) - float(line[10]), 50.0, BAR_OFF)


def levels(corners):
    """Horizontal edges: (left, right, y)."""
    joined = zip(corners, corners[1:] + corners[:1])
    return [(min(x, u), max(x, u), y) for (x, y), (u, v) in joined if abs(y - v) < 1e-3 and abs(x - u) > 1.0]


def stepped(name, corners, ends):
    """The steps on either side of the foot lie as far off it as the window says, and inside it."""
    left, low, right, high = extent(corners)
    middle = (left + right) / 2
    feet = sorted(y for x, u, y in levels(corners) if x < middle < u)
    check(f"{name}: a foot below, an edge above", len(feet) == 2, feet)
    edges = [(feet[0], 1, ends[0])] + [(feet[1], -1, end) for end in ends[1:]]
    for foot, up, (least, most) in edges:
        half = [(x, u, (y - foot) * up) for x, u, y in levels(corners) if not x < middle < u and abs(y - foot) < abs(y - feet[0] - feet[1] + foot)]
        for side, size, inward in ((-up, least, 1), (up, most, -1)):
            there = [level for x, u, level in half if ((x + u) / 2 - middle) * side > 0]
            nearest = min(there, key=lambda level: abs(level - size), default=99.0)
            near(f"{name}: {size} mm", nearest, size, OFF)
            check(f"{name}: {size} mm is not passed", (nearest - size) * inward > -0.006, nearest)


def gapped(name, corners, wire, wire_off, bore, bore_off):
    """Slots and tongues are as wide as wire and bore with their tolerances."""
    widths = [right - left for left, right, _ in levels(corners)]
    for size in (wire + wire_off, wire - wire_off, bore - bore_off, bore + bore_off):
        near(f"{name}: {size:.2f} mm", min(widths, key=lambda width: abs(width - size)), size, OFF)
