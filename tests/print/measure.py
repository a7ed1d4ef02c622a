"""What holds for every sheet that is printed from: fonts, tags, boxes, bars and crop marks."""

import re

from pdf import extent, run

# ISO 216 and ANSI/ASME Y14.1 sheets, ISO 216 and ISO/IEC 7810 cards: millimetres, short edge first.
SHEETS = {"A4": (210, 297), "A3": (297, 420), "Letter": (215.9, 279.4)}
CARDS = {"A7": (74, 105), "A6": (105, 148), "ID-1": (53.98, 85.6)}

tally = {"passed": 0, "failed": 0}


def check(what, good, found=""):
    """Counts a check; says what failed."""
    if good:
        tally["passed"] += 1
    else:
        tally["failed"] += 1
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
    """The crop marks stand a card apart, and the TrimBox lies round all cuts."""
    for page in range(len(pdf.pages)):
        across, up = cut_lines(pdf, page)
        if across and up:
            round_all = (across[0], up[0], across[-1], up[-1])
            same_box(f"{name}: page {page + 1}: TrimBox", pdf.boxes(page).get("TrimBox"), round_all, 0.01)
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
