#!/usr/bin/env python3
"""What a plain script takes for a face: records by PyYAML, SVG by Jinja2, PNG and PDF by CairoSVG, a page by markdown-it.

    tests/bench/script.py CATALOGUE [FITTINGS]

It checks nothing, fits nothing and draws nothing but lines of text in boxes: the least that anybody would write. Compare
it with `cargo bench --bench faces`. Needs: pip install pyyaml jinja2 markdown-it-py cairosvg (and libcairo2).
"""
import io
import pathlib
import sys
import time

import cairosvg
import jinja2
import markdown_it
import yaml

FACE = """<svg xmlns="http://www.w3.org/2000/svg" width="{{ w }}mm" height="{{ h }}mm" viewBox="0 0 {{ w }} {{ h }}"
 font-family="DejaVu Sans Condensed" font-size="2.6">
<rect width="{{ w }}" height="{{ h }}" fill="#fff"/>
<rect width="{{ w }}" height="9" fill="{{ paint }}"/>
<text x="4" y="6" font-size="4" font-weight="bold">{{ number }} {{ name }}</text>
{% for line in lines %}<text x="4" y="{{ 14 + 4 * loop.index0 }}">{{ line }}</text>
<line x1="4" y1="{{ 15 + 4 * loop.index0 }}" x2="{{ w - 4 }}" y2="{{ 15 + 4 * loop.index0 }}" stroke="#999" stroke-width="0.15"/>
{% endfor %}<circle cx="60" cy="90" r="8" fill="none" stroke="#000" stroke-width="0.3"/>
{% for x in range(19) %}<circle cx="{{ 54 + x % 5 * 3 }}" cy="{{ 85 + x // 5 * 3 }}" r="1.4" fill="#c96"/>{% endfor %}
</svg>
"""
PAGE = "<!DOCTYPE html><html><head><title>{{ number }}</title></head><body><h1>{{ name }}</h1>{{ note }}{{ face }}</body></html>"


def records(folder):
    for file in sorted(pathlib.Path(folder).glob("**/*.yaml")):
        yield from (record for record in yaml.load_all(file.read_text(), Loader=LOADER) if record)


# The parser in C where PyYAML has it: the faster of its two.
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def lines_of(fitting):
    """Everything that the record says, one line each, as much as a face has room for."""
    lines = []
    for key, value in fitting.items():
        values = value if isinstance(value, list) else [value]
        lines += [f"{key}: {value}"[:60] for value in values]
    return lines[:19]


def faces(fitting, templates, markdown):
    svg_of, page_of = templates
    lines = lines_of(fitting)
    for half in (lines[::2], lines[1::2]):
        svg = svg_of.render(w=74, h=105, paint="#3b6", number=fitting["number"], name=fitting["name"], lines=half)
        png, pdf = io.BytesIO(), io.BytesIO()
        cairosvg.svg2png(svg.encode(), write_to=png, scale=300 / 96)
        cairosvg.svg2pdf(svg.encode(), write_to=pdf)
        note = markdown.render("\n".join(f"- {line}" for line in half))
        page_of.render(number=fitting["number"], name=fitting["name"], note=note, face=svg)


def main():
    start = time.process_time()
    fittings = [record for record in records(sys.argv[1]) if "family" in record]
    fittings = fittings[: int(sys.argv[2])] if len(sys.argv) > 2 else fittings
    read = time.process_time()
    environment = jinja2.Environment(autoescape=True)
    templates = environment.from_string(FACE), environment.from_string(PAGE)
    markdown = markdown_it.MarkdownIt()
    for fitting in fittings:
        faces(fitting, templates, markdown)
    count = 2 * len(fittings)
    print(f"{count} faces: {1e3 * (time.process_time() - read) / count:.2f} ms a face, reading {1e3 * (read - start) / count:.2f} ms")


main()
