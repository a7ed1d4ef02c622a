"""The tags of a PDF with their texts, read in one go: poppler draws the page anew for every tag, which takes seconds.

That both read alike is checked where poppler reads too.
"""

import re

from measure import check
from pdf import TOKEN

ESCAPES = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}


def structure(pdf):
    """The tags in reading order as `pdfinfo -struct-text` lists them: a line a tag, its texts below it."""
    texts = {name: marked_texts(pdf, page) for page, name in enumerate(pdf.names)}
    root = pdf.resolve(pdf.catalogue["/StructTreeRoot"])
    return "\n".join(line for child in children(root) for line in listed(pdf, pdf.resolve(child), 0, None, texts))


def read_alike(name, pdf):
    """What is read here is what poppler reads."""
    theirs = re.sub(r" \((?:block|inline)\)$", "", pdf.structure(), flags=re.MULTILINE)
    theirs = re.sub(r'"\n\s*"', "", theirs)
    check(f"{name}: tags are read as poppler reads them", structure(pdf).split() == theirs.split())


def children(element):
    found = element.get("/K", [])
    return found if isinstance(found, list) else [found]


def listed(pdf, element, depth, page, texts):
    page = element.get("/Pg", page)
    yield "  " * depth + element["/S"][1:]
    said = [texts[page].get(child, "") for child in children(element) if isinstance(child, int)]
    if said:
        yield "  " * (depth + 1) + f'"{"".join(said)}"'
    for child in children(element):
        if not isinstance(child, int):
            yield from listed(pdf, pdf.resolve(child), depth + 1, page, texts)


def marked_texts(pdf, page):
    """What stands in each marked piece of a page, by its number (ISO 32000-1, 14.7.4)."""
    letters = fonts(pdf, page)
    texts, open_pieces, before, font = {}, [], [], {}
    for token in TOKEN.findall(pdf.content(page)):
        if token in (b"BDC", b"BMC"):
            number = before[before.index(b"/MCID") + 1] if b"/MCID" in before else None
            open_pieces.append(int(number) if number else None)
        elif token == b"EMC":
            open_pieces.pop()
        elif token == b"Tf":
            font = letters[before[-2].decode()]
        elif token in (b"Tj", b"TJ"):
            codes = b"".join(string(each) for each in before if each[:1] in b"(<")
            said = "".join(font[codes[at : at + 2]] for at in range(0, len(codes), 2))
            inside = next((number for number in reversed(open_pieces) if number is not None), None)
            texts[inside] = texts.get(inside, "") + said
        if token.isalpha() or token in (b"f*", b"B*"):
            before = []
        else:
            before.append(token)
    return texts


def string(token):
    """The bytes of a string as it is written (ISO 32000-1, 7.3.4)."""
    if token[:1] == b"<":
        return bytes.fromhex(token[1:-1].decode())
    return re.sub(rb"\\([0-7]{1,3}|.)", lambda found: escaped(found[1]), token[1:-1], flags=re.DOTALL)


def escaped(letters):
    return bytes([int(letters, 8)]) if letters.isdigit() else ESCAPES.get(letters, letters)


def fonts(pdf, page):
    """What the two-byte codes of each font of a page stand for."""
    resources = pdf.resolve(pdf.pages[page]["/Resources"])
    named = pdf.resolve(resources.get("/Font", {}))
    return {name: code_texts(pdf, pdf.resolve(font)) for name, font in named.items()}


def code_texts(pdf, font):
    """The table of a font that says what its codes stand for (ISO 32000-1, 9.10.3)."""
    table = pdf.stream(font["/ToUnicode"])
    found = {}
    for block in re.findall(rb"beginbfchar(.*?)endbfchar", table, flags=re.DOTALL):
        for code, text in re.findall(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
            found[bytes.fromhex(code.decode())] = bytes.fromhex(text.decode()).decode("utf-16-be")
    for block in re.findall(rb"beginbfrange(.*?)endbfrange", table, flags=re.DOTALL):
        for first, last, text in re.findall(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
            for nth, code in enumerate(range(int(first, 16), int(last, 16) + 1)):
                found[code.to_bytes(2, "big")] = chr(int(text, 16) + nth)
    return found
