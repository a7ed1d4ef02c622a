"""Names in other scripts and names that are too long: a catalogue prints whole, or stops with the right finding."""

import json
import re
import shutil
import subprocess
import sys
import tempfile
import unicodedata
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
sys.path.insert(0, str(HERE.parent / "print"))

from pdf import Pdf, run  # noqa: E402  (the folder of the print suite is known only now)

# Debian packages fonts-lohit-deva and fonts-hosny-amiri.
FONTS = [
    "/usr/share/fonts/truetype/lohit-devanagari/Lohit-Devanagari.ttf",
    "/usr/share/fonts/opentype/fonts-hosny-amiri/Amiri-Regular.ttf",
    "/usr/share/fonts/opentype/fonts-hosny-amiri/Amiri-Slanted.ttf",
    "/usr/share/fonts/opentype/fonts-hosny-amiri/Amiri-Bold.ttf",
]
CUTS = {"A7": (74, 105), "A6": (105, 148)}
BLEED = 2
DPI = 200
# Round a face, where ink that its clip would take away is looked for: millimetres.
AROUND = 12
# Shades of grey that count as paper.
PAPER = bytes(range(250, 256))
# Marks that say which way a text runs; poppler writes its own.
MARKS = dict.fromkeys([0x61C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A)])

passed, failed = 0, 0


def check(what, good, found=""):
    """Counts a check; says what failed."""
    global passed, failed
    if good:
        passed += 1
    else:
        failed += 1
        print(f"FAILED {what}{': ' if str(found) else ''}{found}")


def catalogue(folder, card, fonts=True):
    """The case of long names with the records of this folder, and the fonts of Debian."""
    shutil.copytree(ROOT / "tests" / "cases" / "long-names" / "in", folder)
    shutil.copytree(HERE / "added", folder, dirs_exist_ok=True)
    if fonts:
        (folder / "fonts").mkdir()
        for font in FONTS:
            shutil.copy(font, folder / "fonts")
    path = folder / "catalogue.yaml"
    kept = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("card:")]
    path.write_text("\n".join([*kept, f"card: {card}", ""]), encoding="utf-8")


def render(program, folder):
    """Exit code and findings of a run; the output lies beside the catalogue."""
    command = [program, "render", "--quiet", "--preview-dpi", "20", "--format", "json", "--catalogue", folder, "--output", folder.parent / "output"]
    done = subprocess.run(command, capture_output=True, check=False)
    answers = [answer for answer in (done.stderr, done.stdout) if b'"findings"' in answer]
    findings = json.loads(answers[0])["findings"] if answers else []
    return done.returncode, [finding for finding in findings if finding["severity"] == "error"]


def squeezed(text):
    """A text by its letters alone: poppler puts spaces into long syllables, and turns lam-alef round."""
    plain = unicodedata.normalize("NFC", text).translate(MARKS).replace("لا", "ال")
    return re.sub(r"\s", "", plain)


def words(text):
    """The words of a text without the punctuation round them."""
    return [word for word in (word.strip(".,;:()।،–") for word in text.split()) if word]


def printed_texts(folder):
    """What cards of the records below a folder say: names, steps, and what a second person reads."""
    texts = []
    for path in sorted(folder.glob("*/*.yaml")):
        for line in path.read_text(encoding="utf-8").splitlines():
            found = re.match(r'(?:name|witness): (.*)$|  - "?(.*?)"?$', line)
            if found:
                texts.append(found[1] or found[2])
    return texts


def prints(name, folder, cut, texts, wanted):
    """What holds of a catalogue that prints: every text is there, fonts go with it, and nothing is cut off."""
    output = folder.parent / "output"
    sheets = Pdf(output / "sheets" / "cards.pdf")
    try:
        run("qpdf", "--check", sheets.path)
    except RuntimeError as error:
        check(f"{name}: qpdf finds no fault", False, error)
    fonts = sheets.fonts()
    for file in wanted:
        check(f"{name}: {file} is in the file", any(font.endswith(file) for font, _, _ in fonts), fonts)
    check(f"{name}: nothing is slanted", not any("Slanted" in font for font, _, _ in fonts), fonts)
    for font, embedded, subset in fonts:
        check(f"{name}: {font} is embedded and subset", (embedded, subset) == ("yes", "yes"))
    said = squeezed(sheets.text())
    for text in texts:
        missing = [word for word in words(text) if squeezed(word) not in said]
        check(f"{name}: “{text}” is in the text of the sheets", not missing, missing)
    unclipped(name, sorted((output / "cards").glob("*.svg")), cut, folder.parent)
    return said


def unclipped(name, faces, cut, work):
    """Every face drawn without its clip, by another program, has no ink outside its bleed."""
    check(f"{name}: faces are there", len(faces) >= 6, len(faces))
    width, height = (side + 2 * AROUND for side in cut)
    style = f"@page{{size:{width}mm {height}mm;margin:0}}body{{margin:0}}div{{width:{width}mm;height:{height}mm;overflow:hidden;break-after:page}}svg{{margin:{AROUND}mm;overflow:visible}}"
    drawn = "".join(f"<div>{face.read_text(encoding='utf-8')}</div>" for face in faces)
    page, pdf = work / "faces.html", work / "faces.pdf"
    page.write_text(f"<!DOCTYPE html><meta charset=utf-8><style>{style}</style>{drawn}", encoding="utf-8")
    options = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--no-pdf-header-footer"]
    run("chromium", *options, f"--user-data-dir={work / 'chromium'}", f"--print-to-pdf={pdf}", page.as_uri())
    pages = Pdf(pdf)
    check(f"{name}: a page a face", len(pages.pages) >= len(faces), len(pages.pages))
    for index, face in enumerate(faces):
        columns, _, rows = pages.gray(index, DPI)
        left, right = (round((AROUND + side) * DPI / 25.4) for side in (-BLEED - 0.2, cut[0] + BLEED + 0.2))
        top, bottom = (round((AROUND + side) * DPI / 25.4) for side in (-BLEED - 0.2, cut[1] + BLEED + 0.2))
        beside = [row[:left] + row[right:columns] for row in rows[top:bottom]]
        outside = inked(rows[:top] + beside + rows[bottom:])
        inside = inked(row[left:right] for row in rows[top:bottom])
        check(f"{name}: {face.name} is drawn", inside > 1000, inside)
        check(f"{name}: {face.name} has no ink outside its bleed", outside == 0, outside)


def inked(rows):
    """How many pixels are not paper."""
    return sum(len(row.translate(None, PAPER)) for row in rows)


def booklet(name, folder):
    """Notes and names say which way they run."""
    arabic = (folder / "fitting-KE-0102.html").read_text(encoding="utf-8")
    for piece in ('<p dir="auto">المخروط TE', 'dir="auto">عناية</', "<bdi>نهاية شد", '<li dir="auto">اقطع', "\u2066(19 × 2,80 mm)\u2069", "\u206680…90 N·m\u2069"):
        check(f"{name}: the Arabic page has {piece}", piece in arabic)
    hindi = (folder / "fitting-KE-0101.html").read_text(encoding="utf-8")
    check(f"{name}: the page in Devanagari has its note", "शंकु KA केवल एक बार लगता है।" in hindi)


def stops(name, folder, code, errors):
    """What holds of a catalogue that does not print: each finding names its card, field and excess."""
    check(f"{name}: stops", code == 1, code)
    check(f"{name}: writes nothing", not (folder.parent / "output").exists())
    for error in errors:
        said = f"{error['code']} {error['message']}"
        check(f"{name}: is too full and nothing else", error["code"] == "card-too-full", said)
        check(f"{name}: names card, field and excess", error.get("field") and re.search(rf"of card {error.get('record')}: .*\d mm too long", error["message"]), said)


def without_fonts(program, work):
    """Without the fonts, every card with a script that lacks one is named with a character."""
    name = "without fonts"
    catalogue(work / "content", "{ size: A6, orientation: portrait }", fonts=False)
    code, errors = render(program, work / "content")
    check(f"{name}: stops", code == 1, code)
    lacking = [error for error in errors if error["code"] == "glyph-missing"]
    check(f"{name}: cards are named", {"KE-0101", "KG-0101"} <= {error["record"] for error in lacking}, lacking)
    for error in lacking:
        named = re.search(r"no font has the character “(.)” \(U\+(09[0-9A-F]{2})\) of “(.*)”", error["message"])
        right = named and f"{ord(named[1]):04X}" == named[2] and named[1] in named[3]
        check(f"{name}: the character is named", right, error["message"])


def crowded(program, work, size, orientation):
    """Twelve parts, ten wrong ones and three scripts: whole on A6; on A7 it may be too much."""
    name = f"{size} {orientation}"
    folder = work / "content"
    catalogue(folder, f"{{ size: {size}, orientation: {orientation} }}")
    code, errors = render(program, folder)
    check(f"{name}: is printed", size == "A7" or not errors, [error["message"] for error in errors])
    if errors or code:
        stops(name, folder, code, errors)
        return
    cut = CUTS[size] if orientation == "portrait" else CUTS[size][::-1]
    fonts = ("Lohit-Devanagari", "Amiri-Regular", "Amiri-Bold", "DejaVuSans-Bold")
    said = prints(name, folder, cut, printed_texts(HERE / "added"), fonts)
    for whole in ("19 × 2,80 mm", "80…90 N·m", "CU 14,0", "Ø 14,0 mm", "M36x2"):
        check(f"{name}: “{whole}” stays in its order", squeezed(whole) in said)
    booklet(name, work / "output" / "booklet")


def roomy(program, work):
    """The case of two scripts, with the font that it needs, on the smaller card."""
    name, case, folder = "two scripts", ROOT / "tests" / "cases" / "scripts" / "in", work / "content"
    shutil.copytree(case, folder)
    (folder / "fonts").mkdir()
    shutil.copy(FONTS[0], folder / "fonts")
    code, errors = render(program, folder)
    check(f"{name}: is printed", code == 0, [error["message"] for error in errors])
    if code == 0:
        prints(name, folder, CUTS["A7"], printed_texts(case), ("Lohit-Devanagari", "DejaVuSans-Bold"))


def main():
    program = Path(sys.argv[1])
    sizes = [(size, orientation) for size in CUTS for orientation in ("portrait", "landscape")]
    jobs = [lambda work, one=one: crowded(program, work, *one) for one in sizes]
    jobs += [lambda work: roomy(program, work), lambda work: without_fonts(program, work)]
    for job in jobs:
        with tempfile.TemporaryDirectory() as work:
            job(Path(work))
    print(f"scripts: {passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
