"""The schemas that `fittingcards schema` gives out, by another library: they are JSON Schemas, the records of the demo
and of the starting catalogue hold to them, and those of wrecked catalogues do not.
usage: schemas.py PROGRAM"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import yaml
from jsonschema import Draft202012Validator

# Wrecked catalogues whose records have a wrong shape, as opposed to contradicting each other.
WRECKED = ["absurd", "bad-id", "bad-language", "empty-list", "list-too-long", "missing-key", "negative", "not-exactly-one",
           "not-whole", "status-contradiction", "too-many-lines", "too-many-steps", "unknown-key", "unknown-word",
           "wrong-number-of-conductors", "wrong-type", "zero"]


class Core(yaml.SafeLoader):
    """YAML as version 1.2 reads it: `no` is a word, a date is a text, only `true` and `false` are truth values."""


Core.yaml_implicit_resolvers = {}
for name, pattern, first in [
    ("bool", r"^(true|True|TRUE|false|False|FALSE)$", "tTfF"),
    ("int", r"^[-+]?[0-9]+$", "-+0123456789"),
    ("float", r"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?$", "-+.0123456789"),
    ("null", r"^(~|null|Null|NULL|)$", ["~", "n", "N", ""]),
]:
    Core.add_implicit_resolver(f"tag:yaml.org,2002:{name}", re.compile(pattern), list(first))


def records(catalogue, kinds):
    """Each record of a catalogue with its kind and file."""
    for file in sorted(catalogue.rglob("*.yaml")):
        below = file.relative_to(catalogue)
        kind = "catalogue" if str(below) == "catalogue.yaml" else below.parts[0]
        if kind in kinds:
            for record in yaml.load_all(file.read_text(encoding="utf-8"), Core):
                if record is not None:
                    yield kind, file, record


def faults(catalogue, schemas):
    """What is wrong with the records of a catalogue, by their schemas; and how many records there are."""
    count, wrong = 0, []
    for kind, file, record in records(catalogue, schemas):
        count += 1
        for error in schemas[kind].iter_errors(record):
            wrong.append(f"{file}: {error.json_path}: {error.message}")
    return count, wrong


def main(program):
    told = subprocess.run([program, "schema"], capture_output=True, check=True).stdout
    texts = json.loads(told)
    assert len(texts) == 9, list(texts)
    for text in texts.values():
        Draft202012Validator.check_schema(text)
    schemas = {kind: Draft202012Validator(text) for kind, text in texts.items()}

    with tempfile.TemporaryDirectory() as folder:
        started = Path(folder, "content")
        subprocess.run([program, "start", str(started)], capture_output=True, check=True)
        for catalogue, least in [(Path("content"), 70), (started, 10)]:
            count, wrong = faults(catalogue, schemas)
            assert count >= least, f"{catalogue}: {count} records"
            assert not wrong, "\n".join(wrong)
            print(f"schemas: {count} records of {catalogue.name} hold to them")
    for code in WRECKED:
        _, wrong = faults(Path("tests/findings", code), schemas)
        assert wrong, f"tests/findings/{code}: its records hold to the schemas"
    for kind, text in texts.items():
        examples(kind, text, text)
    print(f"schemas: {len(WRECKED)} wrecked catalogues do not")


def examples(kind, node, whole):
    """Every example and default in a schema is valid where it stands."""
    if isinstance(node, dict):
        here = {**node, "$defs": whole.get("$defs", {})}
        for value in [*node.get("examples", []), *([node["default"]] if "default" in node else [])]:
            if isinstance(node.get("examples", []), list):
                wrong = list(Draft202012Validator(here).iter_errors(value))
                assert not wrong, f"{kind}: {value}: {wrong[0].message}"
        for part in node.values():
            examples(kind, part, whole)
    elif isinstance(node, list):
        for part in node:
            examples(kind, part, whole)


if __name__ == "__main__":
    main(sys.argv[1])
