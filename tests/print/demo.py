"""The demo on sheets: every text of every face, in reading order, in every size that the demo prints in."""

import csv
import re
import shutil
import subprocess
import xml.etree.ElementTree as ET
from pathlib import Path

from measure import CARDS, SHEETS, bars, boxes, check, cut_lines, marked_cards, sound
from pdf import Pdf, run
from structure import structure

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
SVG = "{http://www.w3.org/2000/svg}"
# pdftotext takes whole pixels: at this resolution they are a hundredth of a millimetre.
FINE = 2540


def demo_as_rendered(output):
    """The demo as it is rendered from `content`: A7 upright on A4, over the long edge."""
    measured("demo", output, ("A7", "portrait"), "long-edge")


def demo_in_every_size(program, work):
    """The demo in every size of `sizes.csv`, upright and lying cards over both edges in turn: the small catalogues have each
    size over both, and the demo as it is has A7 upright over the long edge."""
    with open(HERE / "sizes.csv", encoding="utf-8", newline="") as file:
        sizes = [(row["size"], row["orientation"]) for row in csv.DictReader(file)]
    flips = ("short-edge", "long-edge")
    for index, size in enumerate(sizes):
        flip = flips[(index + index // 2) % 2]
        name = f"demo in {' '.join(size)} over the {flip}"
        folder = work / name.replace(" ", "-")
        content(folder / "content", size, flip)
        command = [program, "render", "--quiet", "--preview-dpi", "20", "--catalogue", folder / "content"]
        done = subprocess.run([*command, "--output", folder / "output"], capture_output=True, check=False)
        check(f"{name}: renders, preflight clean", done.returncode == 0, done.stderr.decode(errors="replace"))
        if done.returncode == 0:
            measured(name, folder / "output", size, flip)
        shutil.rmtree(folder)


def content(folder, size, flip):
    """A copy of the demo with other cards and another flip edge."""
    shutil.copytree(ROOT / "content", folder)
    path = folder / "catalogue.yaml"
    text = path.read_text(encoding="utf-8")
    text = re.sub(r"(?m)^card:.*$", f"card: {{ size: {size[0]}, orientation: {size[1]} }}", text)
    text = re.sub(r"(?m)^sheet:.*$", f"sheet: {{ size: A4, flip: {flip}, bleed_mm: 2 }}", text)
    path.write_text(text, encoding="utf-8")


def measured(name, output, size, flip):
    """The sheets of a rendered demo."""
    pdf = Pdf(output / "sheets" / "cards.pdf")
    media = pdf.boxes(0)["MediaBox"]
    lies_across = media[2] > media[3]
    sheet = tuple(reversed(SHEETS["A4"])) if lies_across else SHEETS["A4"]
    cut = CARDS[size[0]] if size[1] == "portrait" else tuple(reversed(CARDS[size[0]]))
    sound(name, pdf)
    bars(name, pdf)
    marked_cards(name, pdf, cut)
    boxes(name, pdf, sheet, 2.0)
    with open(output / "data" / "cards.csv", encoding="utf-8", newline="") as file:
        cards = [row["number"] for row in csv.DictReader(file)]
    check(f"{name}: has cards", len(cards) >= 12, len(cards))
    faces = {number: [Face(output, number, side) for side in ("front", "back")] for number in cards}
    tagged(name, pdf, faces)
    outline = pdf.resolve(pdf.catalogue.get("/Outlines")) or {}
    check(f"{name}: the outline has every card", outline.get("/Count") == len(cards), outline)
    check(f"{name}: sheets come in pairs", len(pdf.pages) % 2 == 0, len(pdf.pages))
    printed(name, pdf, faces, sheet, (flip == "long-edge") != lies_across)
    proof = Pdf(output / "sheets" / "proof.pdf")
    sound(f"{name}: proof", proof)
    bars(f"{name}: proof", proof)
    boxes(f"{name}: proof", proof, sheet, 2.0)


class Face:
    """What a face says, by the SVG that is given out beside the sheets."""

    def __init__(self, output, number, side):
        self.name = f"{number} {side}"
        root = ET.parse(output / "cards" / f"{number}-{side}.svg").getroot()
        blocks = [group for group in root if group.tag == SVG + "g"]
        self.blocks = [["".join(text.itertext()) for text in group.iter(SVG + "text")] for group in blocks]
        self.figures = [group.get("aria-label") for group in blocks if group.get("role") == "img"]
        self.texts = [text for block in self.blocks for text in block]


def bare(text):
    """A text without its spaces: where lines break and how wide a gap is printed is no part of what it says."""
    return re.sub(r"\s", "", text)


def tagged(name, pdf, faces):
    """The tags read as the faces do: card by card, front before back, block by block."""
    sections = re.split(r"^  Sect$", structure(pdf), flags=re.MULTILINE)[1:]
    check(f"{name}: every card is a section", len(sections) == len(faces), len(sections))
    for (number, both), section in zip(faces.items(), sections):
        read = "".join(re.findall(r'^ +"(.*)"$', section, flags=re.MULTILINE))
        said = "".join(text for face in both for text in face.texts)
        check(f"{name}: the tags of {number} read as its faces do", bare(read) == bare(said), apart(read, said))
        headings = re.findall(r'^    H\d.*\n\s+"(.*)"', section, flags=re.MULTILINE)
        named = [heading for heading in headings if heading.startswith(number)]
        check(f"{name}: a heading of its section names {number}", bool(named), headings)
        figures = [figure for face in both for figure in face.figures]
        check(f"{name}: every drawing of {number} is a figure", section.count("    Figure") == len(figures), figures)
    wanted = sum(len(face.figures) for both in faces.values() for face in both)
    spoken = sum(1 for item in pdf.objects.values() if is_figure(item.get("value")) and item["value"].get("/Alt"))
    check(f"{name}: every figure has an alternative text", spoken == wanted, f"{spoken} of {wanted}")


def is_figure(value):
    return isinstance(value, dict) and value.get("/S") == "/Figure"


def printed(name, pdf, faces, sheet, upright_flip):
    """Every card where its place on the sheet is, with all of its texts in reading order."""
    waiting = list(faces.items())
    for page in range(0, len(pdf.pages), 2):
        fronts, backs = [], []
        for left, top, right, bottom in places(pdf, page, sheet)[: len(waiting)]:
            _, (front, back) = waiting.pop(0)
            if upright_flip:
                behind = (sheet[0] - right, top, sheet[0] - left, bottom)
            else:
                behind = (left, sheet[1] - bottom, right, sheet[1] - top)
            fronts.append((front, (left, top, right, bottom)))
            backs.append((back, behind))
        in_order(f"{name}: page {page + 1}", pdf, page, fronts)
        in_order(f"{name}: page {page + 2}", pdf, page + 1, backs)
    check(f"{name}: every card lies on a sheet", not waiting, [number for number, _ in waiting])


def places(pdf, page, sheet):
    """Where cards lie on a front, from the upper left corner of the sheet, row by row."""
    across, up = cut_lines(pdf, page)
    columns, rows = list(zip(across[::2], across[1::2])), list(zip(up[::2], up[1::2]))
    return [(left, sheet[1] - top, right, sheet[1] - bottom) for bottom, top in reversed(rows) for left, right in columns]


def cropped(pdf, page, place, mode):
    """The text within a rectangle of a page."""
    left, top, right, bottom = (round(side * FINE / 25.4) for side in place)
    at = ("-x", left, "-y", top, "-W", right - left, "-H", bottom - top)
    options = [str(option) for option in (mode, "-r", FINE, "-f", page + 1, "-l", page + 1, *at)]
    return run("pdftotext", *options, pdf.path, "-").decode()


def in_order(name, pdf, page, placed):
    """All texts of a page's faces and nothing else, in reading order, each face where its card is cut.

    `-raw` keeps the order of the page's content, which is what a reader of the page meets: it must be that of
    the faces, text by text. `-layout` orders by place: cells of a row share a line, and so do blocks beside each
    other, so there every text must stand whole in a line, and lines of one block must follow each other down.
    """
    ends = list(zip(*(place for _, place in placed)))
    raw = cropped(pdf, page, (min(ends[0]), min(ends[1]), max(ends[2]), max(ends[3])), "-raw")
    said = "".join(text for face, _ in placed for text in face.texts)
    check(f"{name}: its texts come in reading order", bare(raw) == bare(said), apart(raw, said))
    for face, place in placed:
        in_place(f"{name}: {face.name}", pdf, page, place, face)


def in_place(name, pdf, page, place, face):
    """The texts of one face where its card is cut."""
    layout = cropped(pdf, page, place, "-layout")
    lines = [bare(line) for line in layout.splitlines()]
    here, said = sorted(bare(layout)), sorted(bare("".join(face.texts)))
    check(f"{name}: where it is cut stand its letters alone", here == said, apart("".join(here), "".join(said)))
    for block in face.blocks:
        lost = [text for text in block if not any(bare(text) in line for line in lines)]
        check(f"{name}: every text stands whole in a line", not lost, lost)
    firsts = [next((index for index, line in enumerate(lines) if bare(block[0]) in line), -1) for block in face.blocks if block]
    check(f"{name}: its first block stands above its last", not firsts or firsts[0] <= firsts[-1], firsts)


def apart(one, two):
    """Where two texts part."""
    one, two = bare(one), bare(two)
    at = next((index for index, (a, b) in enumerate(zip(one, two)) if a != b), min(len(one), len(two)))
    return f"…{one[max(0, at - 20):at + 30]}… is not …{two[max(0, at - 20):at + 30]}…"
