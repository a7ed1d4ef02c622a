"""The sheets to print again after an edition: those cards that it changed, as often as their holders get them.

Expected from the two newest editions' files, which hold each value as JSON on a line of its own.
"""

import json
import re
from collections import Counter

from demo import ROOT, cropped, places
from measure import CARDS, SHEETS, bars, boxes, check, marked_cards, sound
from pdf import Pdf

NOT_IN_USE = ("withdrawn", "superseded")


def print_again(output):
    """The demo's `register/print-again.pdf`."""
    name = "print again"
    pdf = Pdf(output / "register" / "print-again.pdf")
    media = pdf.boxes(0)["MediaBox"]
    sheet = tuple(reversed(SHEETS["A4"])) if media[2] > media[3] else SHEETS["A4"]
    sound(name, pdf)
    bars(name, pdf)
    boxes(name, pdf, sheet, 2.0)
    marked_cards(name, pdf, CARDS["A7"])
    expected = copies(*editions(ROOT / "content" / "register"))
    check(f"{name}: the newest edition changed cards that somebody holds", sum(expected.values()) > 10, expected)
    found, fronts = Counter(), range(0, len(pdf.pages), 2)
    in_all, in_each = 0, 0
    for page in fronts:
        on_page = places(pdf, page, sheet)
        in_each = max(in_each, len(on_page))
        for place in on_page:
            text = " ".join(cropped(pdf, page, place, "-layout").split())
            if text:
                in_all += 1
                number = re.search(r"\bST-\d{4}\b", text)
                copy = re.search(r"\bcopy (\d+)/(\d+) (\S+)", text)
                issue = re.search(r"\bissue (\d+)\b", text)
                if number and copy and issue:
                    found[(number.group(), int(issue.group(1)), *copy.groups())] += 1
    check(f"{name}: as many copies as holders get", in_all == sum(expected.values()), f"{in_all}, not {sum(expected.values())}")
    check(f"{name}: each copy once, with its number", found == expected, sorted((found - expected) + (expected - found)))
    check(f"{name}: two sides of as few sheets as hold them", len(pdf.pages) == 2 * -(-in_all // in_each), len(pdf.pages))


def editions(folder):
    """The two newest editions: name, cards and holders."""
    read = [edition(path.read_text(encoding="utf-8").splitlines()) for path in folder.glob("*.yaml")]
    return sorted(read, key=lambda one: one["date"])[-2:]


def edition(lines):
    heading = {key: json.loads(value) for key, value in (line.split(": ", 1) for line in lines if re.match(r'(edition|date): "', line))}
    first, second, third = (lines.index(part) for part in ("holders:", "cards:", "prints:"))
    holders, cards = ([json.loads(line[2:]) for line in part] for part in (lines[first + 1:second], lines[second + 1:third]))
    return {**heading, "holders": holders, "cards": {card["number"]: card for card in cards}}


def copies(before, newest):
    """Every copy that is to be printed: all of a card of a new issue, of others those that are more than before."""
    wanted = Counter()
    had = {holder["id"]: holder["copies"] for holder in before["holders"]}
    for holder in newest["holders"]:
        for number, card in newest["cards"].items():
            if card["status"] in NOT_IN_USE:
                continue
            most = given(holder["copies"], number)
            old = before["cards"].get(number)
            same = old is not None and old["issue"] == card["issue"]
            least = given(had.get(holder["id"], {}), number) if same else 0
            for nth in range(least + 1, most + 1):
                wanted[(number, card["issue"], str(nth), str(most), holder["id"])] += 1
    return wanted


def given(of_holder, number):
    return of_holder.get(number, of_holder.get("*", 0))
