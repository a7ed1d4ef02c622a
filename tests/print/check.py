"""Measures the sheets of the demo in every size, and of small catalogues whose layouts draw what can be measured."""

import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from again import print_again
from demo import demo_as_rendered, demo_in_every_size
from gauges import gauges_as_rendered
from measure import CARDS, SHEETS, bars, boxes, check, cut_lines, marked_cards, near, same_box, tally
from pdf import Pdf
from tags import tags_as_rendered, tags_of_long_names

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
DPI = 600
DARK = 128

# The faces that are measured have no room for what a card lacks.
COMPLETE = """if_wrong: { before_load: Stop., under_load: Wait. }
complete_without:
  keys: [steps, reject_if, line_tension_max_kN, holding_load_kN, proven_on, insertion_mm, tail_mm, stand_out]
  because: only the sheet is measured
"""


def catalogue(folder, card, sheet):
    """A copy of the plain catalogue with ten fittings and other sizes."""
    shutil.copytree(ROOT / "tests" / "cases" / "plain" / "in", folder)
    fitting = folder / "fittings" / "end.yaml"
    first = fitting.read_text(encoding="utf-8") + COMPLETE
    fitting.write_text("---\n".join(first.replace("F-1", f"F-{number}") for number in range(1, 11)), encoding="utf-8")
    path = folder / "catalogue.yaml"
    kept = [line for line in path.read_text(encoding="utf-8").splitlines() if not re.match(r"(card|sheet):", line)]
    path.write_text("\n".join([*kept, f"card: {card}", f"sheet: {sheet}", ""]), encoding="utf-8")


def layouts(folder):
    """The measuring layout in the place of every face's."""
    face = (HERE / "layouts" / "cards" / "measured.xml").read_text(encoding="utf-8")
    (folder / "cards").mkdir(parents=True)
    for kind in ("fitting", "body"):
        for side in ("front", "back"):
            (folder / "cards" / f"{kind}-{side}.xml").write_text(face, encoding="utf-8")


def rendered(program, work, name, card, sheet):
    """The sheets of a small catalogue; None where the program refuses."""
    folder = work / name
    catalogue(folder / "content", card, sheet)
    layouts(folder / "layouts")
    command = [program, "render", "--quiet", "--preview-dpi", "20", "--catalogue", folder / "content", "--layouts", folder / "layouts"]
    done = subprocess.run([*command, "--output", folder / "output"], capture_output=True, check=False)
    check(f"{name}: renders", done.returncode == 0, done.stderr.decode(errors="replace"))
    return Pdf(folder / "output" / "sheets" / "cards.pdf") if done.returncode == 0 else None


def runs(line):
    """Dark stretches of a line of pixels, as (first, one past the last)."""
    flags = bytes(1 if value < DARK else 0 for value in line)
    return [(found.start(), found.end()) for found in re.finditer(rb"\x01+", flags)]


def in_mm(pixels):
    return pixels * 25.4 / DPI


class Raster:
    """A page in pixels, measured in millimetres from its upper left corner."""

    def __init__(self, pdf, page):
        self.width, self.height, self.rows = pdf.gray(page, DPI)

    def across(self, y):
        return [(in_mm(a), in_mm(b)) for a, b in runs(self.rows[self.pixel(y)])]

    def down(self, x):
        column = self.pixel(x)
        return [(in_mm(a), in_mm(b)) for a, b in runs(bytes(row[column] for row in self.rows))]

    @staticmethod
    def pixel(mm):
        return round(mm * DPI / 25.4)


def cut_of(raster, bounds):
    """The cut by the frame that the layout draws 1 mm inside it, near where it is expected."""
    left, top, right, bottom = bounds
    sides = [run for run in raster.across(top + 10) if left - 1 < run[0] and run[1] < right + 1]
    ends = [run for run in raster.down(left + 10) if top - 1 < run[0] and run[1] < bottom + 1]
    if len(sides) < 2 or len(ends) < 2:
        return None
    return sides[0][0] - 1, ends[0][0] - 1, sides[-1][1] + 1, ends[-1][1] + 1


def registration(name, pdf, cut, sheet, upright_flip):
    """Fronts and backs of the first sheet in pixels: turned over, each back's cut meets its front's."""
    front, back = Raster(pdf, 0), Raster(pdf, 1)
    across, up = cut_lines(pdf, 0)
    columns, rows = list(zip(across[::2], across[1::2])), list(zip(up[::2], up[1::2]))
    seen = 0
    for left, right in columns:
        for bottom, top in rows:
            there = (left, sheet[1] - top, right, sheet[1] - bottom)
            if upright_flip:
                behind = (sheet[0] - right, sheet[1] - top, sheet[0] - left, sheet[1] - bottom)
            else:
                behind = (left, bottom, right, top)
            one, other = cut_of(front, there), cut_of(back, behind)
            check(f"{name}: a card is found on both sides", bool(one) == bool(other), (one, other))
            if not one or not other:
                continue
            seen += 1
            near(f"{name}: width of a card in pixels", one[2] - one[0], cut[0], 0.1)
            near(f"{name}: height of a card in pixels", one[3] - one[1], cut[1], 0.1)
            if upright_flip:
                turned = (sheet[0] - other[2], other[1], sheet[0] - other[0], other[3])
            else:
                turned = (other[0], sheet[1] - other[3], other[2], sheet[1] - other[1])
            same_box(f"{name}: the back lies behind its front", turned, one)
    check(f"{name}: every place of the first sheet is taken", seen == min(11, len(columns) * len(rows)), seen)
    square(name, front, columns[0][0], sheet[1] - rows[-1][1])


def square(name, raster, left, top):
    """The square of 20 × 20 mm that the layout draws 12 mm right of and 25 mm below the cut's corner."""
    for direction, line, start in (("across", raster.across(top + 35), left + 12), ("down", raster.down(left + 22), top + 25)):
        found = [run for run in line if abs(run[0] - start) < 1]
        check(f"{name}: the square {direction}", len(found) == 1, found)
        for first, last in found:
            near(f"{name}: the square {direction} in millimetres", last - first, 20.0, 0.05)


def formats(program, work):
    """Every card on every sheet over every edge."""
    for card, (short, long) in CARDS.items():
        for orientation in ("portrait", "landscape"):
            cut = (short, long) if orientation == "portrait" else (long, short)
            for sheet, edges in SHEETS.items():
                for flip in ("long-edge", "short-edge"):
                    name = f"{card} {orientation} on {sheet} over the {flip}"
                    card_text = f"{{ size: {card}, orientation: {orientation} }}"
                    sheet_text = f"{{ size: {sheet}, flip: {flip}, bleed_mm: 2 }}"
                    pdf = rendered(program, work, name.replace(" ", "-"), card_text, sheet_text)
                    if not pdf:
                        continue
                    media = pdf.boxes(0)["MediaBox"]
                    lies_across = media[2] > media[3]
                    lying = tuple(reversed(edges)) if lies_across else edges
                    boxes(name, pdf, lying, 2.0)
                    bars(name, pdf)
                    marked_cards(name, pdf, cut)
                    registration(name, pdf, cut, lying, (flip == "long-edge") != lies_across)


def main():
    program, output = Path(sys.argv[1]), Path(sys.argv[2])
    demo_as_rendered(output)
    tags_as_rendered(output)
    print_again(output)
    gauges_as_rendered(output)
    with tempfile.TemporaryDirectory() as work:
        tags_of_long_names(program, Path(work))
        demo_in_every_size(program, Path(work))
        formats(program, Path(work))
    print(f"print: {tally['passed']} passed, {tally['failed']} failed")
    sys.exit(1 if tally["failed"] else 0)


main()
