"""Measures the sheets of the demo, and of small catalogues whose layouts draw what can be measured."""

import csv
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from pdf import MM, Pdf, extent, run

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
# ISO 216 and ANSI/ASME Y14.1 sheets, ISO 216 and ISO/IEC 7810 cards: millimetres, short edge first.
SHEETS = {"A4": (210, 297), "A3": (297, 420), "Letter": (215.9, 279.4)}
CARDS = {"A7": (74, 105), "A6": (105, 148), "ID-1": (53.98, 85.6)}
DPI = 600
DARK = 128

passed, failed = 0, 0


def check(what, good, found=""):
    """Counts a check; says what failed."""
    global passed, failed
    if good:
        passed += 1
    else:
        failed += 1
        print(f"FAILED {what}{': ' if str(found) else ''}{found}")


def near(what, found, expected, tolerance):
    check(what, abs(found - expected) <= tolerance, f"{found:.4f} is not {expected} ± {tolerance}")


def same_box(what, found, expected, tolerance=0.1):
    good = found is not None and all(abs(a - b) <= tolerance for a, b in zip(found, expected))
    check(what, good, f"{found} is not {expected}")


def sound(name, pdf):
    """What holds for every PDF that is printed from."""
    try:
        run("qpdf", "--check", pdf.path)
        check(f"{name}: qpdf finds no fault", True)
    except RuntimeError as error:
        check(f"{name}: qpdf finds no fault", False, error)
    fonts = pdf.fonts()
    check(f"{name}: has fonts", bool(fonts))
    for font, embedded, subset in fonts:
        check(f"{name}: {font} is embedded and subset", (embedded, subset) == ("yes", "yes"), (embedded, subset))
    information = run("pdfinfo", pdf.path).decode()
    check(f"{name}: is tagged", re.search(r"Tagged:\s+yes", information) is not None)
    check(f"{name}: has a title", re.search(r"Title:\s+\S", information) is not None)
    check(f"{name}: names its language", bool(pdf.resolve(pdf.catalogue.get("/Lang"))))
    metadata = run("pdfinfo", "-meta", pdf.path).decode()
    level = re.search(r'pdfaid:part[>="]+2', metadata) and re.search(r'pdfaid:conformance[>="]+B', metadata)
    check(f"{name}: says that it is PDF/A-2b (ISO 19005-2)", level is not None)


def bars(name, pdf):
    """A bar of 50 mm stands on every page, in the margin below the cards."""
    for page in range(len(pdf.pages)):
        trim = pdf.boxes(page)["TrimBox"]
        fills = [extent(points) for how, points in pdf.paths(page) if how == "fill"]
        below = [box for box in fills if box[3] < trim[1] and box[2] - box[0] > 25]
        check(f"{name}: page {page + 1} has a bar", len(below) == 1, below)
        for left, _, right, _ in below:
            near(f"{name}: page {page + 1}: the bar in millimetres", right - left, 50.0, 0.1)


def cut_lines(pdf, page):
    """Where the crop marks say that cards are cut: positions across and up."""
    trim = pdf.boxes(page)["TrimBox"]
    across, up = set(), set()
    for how, points in pdf.paths(page):
        if how != "stroke" or len(points) % 2:
            continue
        for (x1, y1), (x2, y2) in zip(points[::2], points[1::2]):
            outside = max(y1, y2) < trim[1] or min(y1, y2) > trim[3]
            beside = max(x1, x2) < trim[0] or min(x1, x2) > trim[2]
            if outside and abs(x1 - x2) < 1e-3:
                across.add(round(x1, 3))
            if beside and abs(y1 - y2) < 1e-3:
                up.add(round(y1, 3))
    return sorted(across), sorted(up)


def marked_cards(name, pdf, cut):
    """The crop marks stand a card apart."""
    for page in range(len(pdf.pages)):
        for positions, size in zip(cut_lines(pdf, page), cut):
            check(f"{name}: page {page + 1} has crop marks", len(positions) >= 2, positions)
            for near_side, far_side in zip(positions[::2], positions[1::2]):
                near(f"{name}: page {page + 1}: a card between crop marks", far_side - near_side, size, 0.1)


def boxes(name, pdf, sheet, bleed):
    """MediaBox the sheet, TrimBox inside it, BleedBox that and the bleed."""
    for page in range(len(pdf.pages)):
        found = pdf.boxes(page)
        same_box(f"{name}: page {page + 1}: MediaBox", found.get("MediaBox"), (0, 0, *sheet))
        trim = found.get("TrimBox")
        check(f"{name}: page {page + 1} has a TrimBox", trim is not None)
        if trim:
            grown = (trim[0] - bleed, trim[1] - bleed, trim[2] + bleed, trim[3] + bleed)
            same_box(f"{name}: page {page + 1}: BleedBox", found.get("BleedBox"), grown, 0.01)
            inside = trim[0] > 0 and trim[1] > 0 and trim[2] < sheet[0] and trim[3] < sheet[1]
            check(f"{name}: page {page + 1}: TrimBox lies in the sheet", inside, trim)


def demo(output):
    """The demo catalogue: A7 cards on A4."""
    pdf = Pdf(output / "sheets" / "cards.pdf")
    sound("demo", pdf)
    bars("demo", pdf)
    marked_cards("demo", pdf, CARDS["A7"])
    boxes("demo", pdf, SHEETS["A4"], 2.0)
    with open(output / "data" / "cards.csv", encoding="utf-8", newline="") as file:
        cards = list(csv.DictReader(file))
    check("demo: has cards", len(cards) >= 12, len(cards))
    text, structure = pdf.text("-layout"), pdf.structure()
    sections = re.split(r"^  Sect$", structure, flags=re.MULTILINE)[1:]
    check("demo: every card is a section", len(sections) == len(cards), len(sections))
    for card, section in zip(cards, sections):
        number = card["number"]
        check(f"demo: the text has {number}", number in text)
        headings = re.findall(r'^    H\d.*\n\s+"(.*)"', section, flags=re.MULTILINE)
        named = [heading for heading in headings if heading.startswith(f"{number} ")]
        check(f"demo: a heading of its section names {number}", bool(named), headings)
    check("demo: figures have alternative texts", "Figure" in structure and "/Alt" in str(pdf.objects))
    outline = pdf.resolve(pdf.catalogue.get("/Outlines")) or {}
    check("demo: the outline has every card", outline.get("/Count") == len(cards), outline)
    check("demo: sheets come in pairs", len(pdf.pages) % 2 == 0, len(pdf.pages))
    proof = Pdf(output / "sheets" / "proof.pdf")
    sound("proof", proof)
    bars("proof", proof)
    boxes("proof", proof, SHEETS["A4"], 2.0)


def catalogue(folder, card, sheet):
    """A copy of the plain catalogue with ten fittings and other sizes."""
    shutil.copytree(ROOT / "tests" / "cases" / "plain" / "in", folder)
    fitting = folder / "fittings" / "end.yaml"
    first = fitting.read_text(encoding="utf-8")
    fitting.write_text("---\n".join(first.replace("F-1", f"F-{number}") for number in range(1, 11)), encoding="utf-8")
    path = folder / "catalogue.yaml"
    kept = [line for line in path.read_text(encoding="utf-8").splitlines() if not re.match(r"(card|sheet):", line)]
    path.write_text("\n".join([*kept, f"card: {card}", f"sheet: {sheet}", ""]), encoding="utf-8")


def layouts(folder):
    """The measuring layout in the place of every face's."""
    face = (HERE / "layouts" / "cards" / "measured.svg").read_text(encoding="utf-8")
    (folder / "cards").mkdir(parents=True)
    for size in ("a7", "a6", "id1"):
        for orientation in ("portrait", "landscape"):
            for kind in ("fitting", "body"):
                for side in ("front", "back"):
                    name = f"{size}-{orientation}-{kind}-{side}.svg"
                    (folder / "cards" / name).write_text(face, encoding="utf-8")


def rendered(program, work, name, card, sheet):
    """The sheets of a small catalogue; None where the program refuses."""
    folder = work / name
    catalogue(folder / "content", card, sheet)
    layouts(folder / "layouts")
    command = [program, "render", "--quiet", "--catalogue", folder / "content", "--layouts", folder / "layouts"]
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


def frame_at(raster, cut, bounds):
    """The outer edges of the frame that the layout draws at the cut, near where it is expected."""
    left, top, right, bottom = bounds
    sides = [run for run in raster.across(top + 10) if left - 1 < run[0] and run[1] < right + 1]
    ends = [run for run in raster.down(left + 10) if top - 1 < run[0] and run[1] < bottom + 1]
    if len(sides) < 2 or len(ends) < 2:
        return None
    return sides[0][0], ends[0][0], sides[-1][1], ends[-1][1]


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
            one, other = frame_at(front, cut, there), frame_at(back, cut, behind)
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
    demo(output)
    with tempfile.TemporaryDirectory() as work:
        formats(program, Path(work))
    print(f"print: {passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
