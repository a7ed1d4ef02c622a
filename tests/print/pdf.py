"""What a PDF holds, as poppler and qpdf see it: boxes, paths in the page's own coordinates, texts, pixels."""

import base64
import functools
import json
import re
import subprocess

MM = 72 / 25.4


def run(*command):
    """Standard output of a command; its fault is raised."""
    done = subprocess.run(command, capture_output=True, check=False)
    if done.returncode != 0:
        raise RuntimeError(f"{' '.join(map(str, command))}: {done.stderr.decode(errors='replace').strip()}")
    return done.stdout


class Pdf:
    """One file."""

    def __init__(self, path):
        self.path = str(path)
        answer = json.loads(
            run("qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", self.path)
        )
        self.objects = answer["qpdf"][1]
        self.names = [page["object"] for page in answer["pages"]]
        self.pages = [self.objects["obj:" + name]["value"] for name in self.names]
        self.catalogue = self.resolve(self.objects["trailer"]["value"]["/Root"])

    def resolve(self, value):
        """The object that a reference leads to."""
        if isinstance(value, str) and re.fullmatch(r"\d+ \d+ R", value):
            found = self.objects["obj:" + value]
            return found.get("value", found.get("stream"))
        return value

    def boxes(self, page):
        """The boxes of a page in millimetres: name to (left, bottom, right, top)."""
        names = ("MediaBox", "TrimBox", "BleedBox")
        found = {name: self.resolve(self.pages[page].get("/" + name)) for name in names}
        return {name: tuple(side / MM for side in box) for name, box in found.items() if box}

    def content(self, page):
        """The bytes of a page's content."""
        contents = self.resolve(self.pages[page]["/Contents"])
        parts = contents if isinstance(contents, list) else [self.pages[page]["/Contents"]]
        return b"\n".join(self.stream(part) for part in parts)

    def stream(self, reference):
        """The bytes of a stream."""
        return base64.b64decode(self.resolve(reference)["data"])

    @functools.cache
    def paths(self, page):
        """Every path of the page itself in millimetres from its lower left corner: (painted how, points)."""
        return list(paths(self.content(page)))

    def text(self, *options):
        """Its text."""
        return run("pdftotext", *options, self.path, "-").decode()

    def structure(self):
        """The tags with their texts, in reading order."""
        return run("pdfinfo", "-struct-text", self.path).decode()

    def fonts(self):
        """Rows of the table of fonts: (name, embedded, subset)."""
        rows = run("pdffonts", self.path).decode().splitlines()[2:]
        return [(row.split()[0], row.split()[-5], row.split()[-4]) for row in rows]

    def gray(self, page, dpi):
        """A page in pixels: width, height, rows of bytes."""
        number = str(page + 1)
        picture = run("pdftoppm", "-gray", "-r", str(dpi), "-f", number, "-l", number, self.path)
        head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", picture)
        width, height = int(head[1]), int(head[2])
        pixels = memoryview(picture)[head.end() :]
        return width, height, [bytes(pixels[row * width : (row + 1) * width]) for row in range(height)]


DIGITS = b"+-.0123456789"
TOKEN = re.compile(rb"\((?:[^()\\]|\\.)*\)|<<|>>|<[0-9A-Fa-f\s]*>|\[|\]|/[^\s/\[\]()<>]+|[^\s/\[\]()<>]+")
NUMBER = re.compile(rb"[-+]?(?:\d+\.?\d*|\.\d+)$")


def paths(content):
    """Follows the operators that move, draw and transform."""
    matrix, saved, numbers, points = (1, 0, 0, 1, 0, 0), [], [], []
    for token in TOKEN.findall(content):
        if token[0] in DIGITS and NUMBER.match(token):
            numbers.append(float(token))
            continue
        if token == b"q":
            saved.append(matrix)
        elif token == b"Q":
            matrix = saved.pop()
        elif token == b"cm":
            matrix = times(numbers[-6:], matrix)
        elif token in (b"m", b"l"):
            points.append(moved(matrix, *numbers[-2:]))
        elif token == b"c":
            points.append(moved(matrix, *numbers[-2:]))
        elif token == b"re":
            x, y, width, height = numbers[-4:]
            points += [moved(matrix, x, y), moved(matrix, x + width, y + height)]
        elif token in (b"f", b"f*", b"F", b"S", b"s", b"B", b"B*", b"n"):
            if points and token != b"n":
                yield ("stroke" if token in (b"S", b"s") else "fill", points)
            points = []
        numbers = []


def times(one, other):
    a, b, c, d, e, f = one
    p, q, r, s, t, u = other
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def moved(matrix, x, y):
    a, b, c, d, e, f = matrix
    return ((a * x + c * y + e) / MM, (b * x + d * y + f) / MM)


def extent(points):
    """(left, bottom, right, top) of points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)
