"""Kit tags on sheets: every part of every fitting that may be built, with what its record states, in reading order and along its row."""

import json
import re
import subprocess

from demo import ROOT, bare, cropped, places
from measure import CARDS, SHEETS, bars, boxes, check, marked_cards, sound
from pdf import Pdf
from structure import read_alike, structure

GRIPPING = ("cone", "wedge", "sleeve", "ferrule", "rope-grip")


def tags_as_rendered(output):
    """The demo's tags as they lie in the output."""
    measured("tags of the demo", output)


def tags_of_long_names(program, work):
    """Fittings of twelve parts with long names, which go on over several tags."""
    output, content = work / "long-names", ROOT / "tests" / "cases" / "long-names" / "in"
    command = [program, "render", "--quiet", "--preview-dpi", "20", "--catalogue", content, "--output", output]
    done = subprocess.run(command, capture_output=True, check=False)
    check("tags of long names: renders", done.returncode == 0, done.stderr.decode(errors="replace"))
    if done.returncode == 0:
        most = measured("tags of long names", output)
        read_alike("tags of long names", Pdf(output / "sheets" / "tags.pdf"))
        read_alike("cards of long names", Pdf(output / "sheets" / "cards.pdf"))
        check("tags of long names: a kit goes on over several tags", most > 1, most)


def measured(name, output):
    """The sheets of tags of a rendered catalogue; the most tags that one kit has."""
    pdf = Pdf(output / "sheets" / "tags.pdf")
    media = pdf.boxes(0)["MediaBox"]
    sheet = tuple(reversed(SHEETS["A4"])) if media[2] > media[3] else SHEETS["A4"]
    sound(name, pdf)
    bars(name, pdf)
    boxes(name, pdf, sheet, 2.0)
    marked_cards(name, pdf, tuple(reversed(CARDS["A7"])))
    catalogue = json.loads((output / "data" / "catalogue.json").read_text(encoding="utf-8"))
    found = [(page, place) for page in range(len(pdf.pages)) for place in places(pdf, page, sheet)]
    found = [Tag(pdf, page, place) for page, place in found]
    tags = [tag for tag in found if tag.text]
    # Nobody kits what must not be built.
    built = [fitting for fitting in catalogue["fittings"] if fitting["status"] == "current"]
    most, kits = 0, [Kit(fitting, catalogue) for fitting in built]
    for kit in kits:
        own = tags[: tags[0].of if tags else 0]
        del tags[: len(own)]
        whole(f"{name}: {kit.number}", kit, own, catalogue)
        most = max(most, len(own))
    check(f"{name}: no tag is left over", not tags, [tag.text for tag in tags])
    in_all = len([tag for tag in found if tag.text])
    in_each = len(places(pdf, 0, sheet))
    check(f"{name}: one side of as few sheets as hold them", len(pdf.pages) == -(-in_all // in_each), len(pdf.pages))
    check(f"{name}: the margin says what is cut", pdf.text().count("· tags") == len(pdf.pages))
    outline = pdf.resolve(pdf.catalogue.get("/Outlines")) or {}
    check(f"{name}: the outline has every tag", outline.get("/Count") == in_all, outline)
    tags_read = structure(pdf)
    sections = re.findall(r"^  Sect$", tags_read, flags=re.MULTILINE)
    check(f"{name}: every tag is a section", len(sections) == in_all, len(sections))
    headings = re.findall(r'^    H\d.*\n\s+"(\S+) ', tags_read, flags=re.MULTILINE)
    lacking = [kit.number for kit in kits if kit.number not in headings]
    check(f"{name}: a heading names every fitting", not lacking, lacking)
    return most


class Tag:
    """What is printed where one tag is cut."""

    def __init__(self, pdf, page, place):
        self.text = bare(cropped(pdf, page, place, "-raw"))
        self.lines = [bare(line) for line in cropped(pdf, page, place, "-layout").splitlines()]
        turn = re.search(r"tag(\d+)of(\d+)", self.text)
        self.number, self.of = (int(turn[1]), int(turn[2])) if turn else (1, 1)


class Kit:
    """What the records state of a fitting and its parts."""

    def __init__(self, fitting, catalogue):
        parts = {part["number"]: part for part in catalogue["parts"]}
        materials = {material["id"]: material["name"] for material in catalogue["materials"]}
        names = {conductor["id"]: conductor["name"] for conductor in catalogue["conductors"]}
        self.number = fitting["number"]
        self.parts = [(item["quantity"], parts[item["part"]]) for item in fitting["parts"]]
        self.materials = [materials[part["material"]] for _, part in self.parts]
        stamps = [part["stamp"] for _, part in self.parts if part["role"] in GRIPPING and part.get("stamp")]
        pieces = sum(quantity for quantity, _ in self.parts)
        mark = fitting.get("mark") or {}
        conductors = " and ".join(names[conductor] for conductor in fitting["conductors"])
        self.head = [mark.get("text", ""), *dict.fromkeys(stamps), f"{self.number} {fitting['name']}"]
        self.head += [f"for {conductors}", f"{pieces} piece"]

    def rows(self):
        """The texts of each part, line by line; what is lacking is empty."""
        for item, ((quantity, part), material) in enumerate(zip(self.parts, self.materials), 1):
            first = [f"{quantity} ×", part["number"], part["name"], part.get("stamp", "")]
            yield first, [f"item {item}", part.get("drawing", ""), material]


def read(first, second):
    """The texts of a part's two lines cell by cell, as they are read."""
    (quantity, number, part, stamp), (item, drawing, material) = first, second
    return [quantity, item, number, part, drawing, material, stamp]


def whole(name, kit, tags, catalogue):
    """Each tag carries head and foot; over all of them, every part stands once, in its order."""
    check(f"{name}: its tags are counted", [tag.number for tag in tags] == list(range(1, len(tags) + 1)))
    foot = [catalogue["caution"], kit.number, *standing(kit.number, catalogue)]
    for tag in tags:
        follows(f"{name}: tag {tag.number}: head and foot", tag.text, [*turned(kit.head, tag), *foot])
    rows = [text for first, second in kit.rows() for text in read(first, second)]
    follows(f"{name}: its parts", "".join(tag.text for tag in tags), rows)
    lines = [line for tag in tags for line in tag.lines]
    for first, _ in kit.rows():
        along = [text for text in (first[0], first[1], first[3]) if text]
        found = any(all(bare(text) in line for text in along) for line in lines)
        check(f"{name}: quantity, number and stamp of {first[1]} share a line", found, along)


def standing(number, catalogue):
    """What says whether the card of the kit's fitting is in force."""
    card = next(card for card in catalogue["cards"] if card["number"] == number)
    if "issue" not in card:
        return ["draft, not issued", f"edition {catalogue['edition']}"]
    return [f"issue {card['issue']}", f"edition {card['edition']}", card["check_code"]]


def turned(head, tag):
    """The head without the fitting's name where that is broken by the turn that stands beside it."""
    return [text for text in head if tag.of == 1 or len(text) < 30]


def follows(name, text, wanted):
    """Texts that must come one after the other, however their lines break."""
    at = 0
    for each in wanted:
        at = text.find(bare(each), at)
        check(f"{name}: “{each}” has its place", at >= 0, text)
        if at < 0:
            return
        at += len(bare(each))
