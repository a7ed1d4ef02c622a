"""Tries one output folder in the current folder: kills runs, starts several at once, fills the disk.

What a whole output is comes from README: manifest.json lists every file with its size; what no manifest means, from
DEVELOPERS.md. Contents are compared with outputs of runs that nobody disturbed: the hash of the manifest is BLAKE3, which
Python's library lacks.
"""

import json
import os
import pathlib
import random
import shutil
import signal
import subprocess
import sys
import time

PROGRAM = sys.argv[1]
OUTPUT = pathlib.Path("output")
WORK = [pathlib.Path(".output.fittingcards"), OUTPUT / ".fittingcards"]
# Somebody with few rights runs the program where this is asked for.
USER = {"user": 65534, "group": 65534, "extra_groups": []} if "AS_NOBODY" in os.environ else {}
SOUND = pathlib.Path(os.environ.get("TMPDIR", "/tmp")) / f"sound-{os.getpid()}"


def command(output, catalogue="content"):
    return [PROGRAM, "render", "--preview-dpi", "30", "--output", str(output), "--catalogue", str(catalogue)]


def quietly(arguments):
    return subprocess.Popen(arguments, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, **USER)


def code_of(arguments):
    return quietly(arguments).wait()


def files(folder):
    """Every file that the manifest lists, with its bytes; None where there is no manifest."""
    listed = folder / "manifest.json"
    if not listed.exists():
        return None
    found = {}
    for entry in json.loads(listed.read_text())["files"]:
        path = folder / entry["path"]
        assert path.stat().st_size == entry["size"], f"{path} is not as listed"
        found[entry["path"]] = path.read_bytes()
    return found


def sound_outputs():
    """Two catalogues of different owners, with the outputs that each comes to."""
    outputs = []
    SOUND.mkdir()
    SOUND.chmod(0o777)
    for owner in ["one", "two"]:
        catalogue = SOUND / owner
        shutil.copytree("content", catalogue)
        settings = catalogue / "catalogue.yaml"
        lines = settings.read_text().splitlines()
        lines = [f"owner: Works {owner}" if line.startswith("owner:") else line for line in lines]
        settings.write_text("\n".join(lines) + "\n")
        assert code_of(command(SOUND / f"{owner}-output", catalogue)) == 0
        outputs.append((catalogue, files(SOUND / f"{owner}-output")))
    return outputs


def assert_whole(outputs, what):
    assert files(OUTPUT) in [output for _, output in outputs], f"{what}: not the output of one run"


def assert_no_litter(what):
    left = [path for path in [*WORK, OUTPUT / "manifest.being-replaced.json"] if path.exists()]
    assert not left, f"{what}: {left} left"


def render(catalogue):
    assert code_of(command(OUTPUT, catalogue)) == 0


def kill_one(catalogue, whole_run, aimed, may_be):
    """Kills a run at any moment; or, aimed, when it puts files in place."""
    run = quietly(command(OUTPUT, catalogue))
    if aimed:
        manifest, staged = OUTPUT / "manifest.json", WORK[0] / "new" / "manifest.json"
        placing = staged.exists if may_be == "whole" else lambda: not manifest.exists()
        while run.poll() is None and not placing():
            pass
        time.sleep(random.choice([0, 0.0003, 0.003]))
    else:
        time.sleep(random.uniform(0, whole_run))
    run.send_signal(signal.SIGKILL)
    run.wait()


def kills(may_be, count):
    outputs = sound_outputs()
    render(outputs[0][0])
    start = time.monotonic()
    render(outputs[1][0])
    whole_run = time.monotonic() - start
    replaced = 0
    for turn in range(count):
        catalogue, expected = outputs[turn % 2]
        kill_one(catalogue, whole_run, turn % 4 >= 2, may_be)
        if files(OUTPUT) is None:
            assert may_be == "replaced", f"kill {turn}: no manifest"
            replaced += 1
        else:
            assert_whole(outputs, f"kill {turn}")
        if turn % 3 == 2:
            render(catalogue)
            assert files(OUTPUT) == expected, f"the run after kill {turn}"
            assert_no_litter(f"the run after kill {turn}")
    render(outputs[0][0])
    assert files(OUTPUT) == outputs[0][1]
    assert_no_litter("the last run")
    print(f"{pathlib.Path.cwd().name}: {count} kills, {replaced} while files were replaced; all made good")


def together():
    outputs = sound_outputs()
    render(outputs[0][0])
    for count in [2, 4]:
        runs = [quietly(command(OUTPUT, outputs[turn % 2][0])) for turn in range(count)]
        codes = sorted(run.wait() for run in runs)
        assert codes[0] == 0 and set(codes) <= {0, 2}, codes
        assert_whole(outputs, f"{count} at once")
        assert_no_litter(f"{count} at once")
    print(f"{pathlib.Path.cwd().name}: two and four at once, whole")


def full(disk, count):
    """Leaves less and less room; whatever the run comes to, the output is one of them."""
    outputs = sound_outputs()
    render(outputs[0][0])
    filler, refused = pathlib.Path(disk) / "filler", 0
    size = sum(len(text) for text in outputs[0][1].values())
    for turn in range(count):
        status = os.statvfs(disk)
        free = status.f_bavail * status.f_frsize
        filler.write_bytes(bytes(max(0, free - int(size * 2.5 * random.random()))))
        catalogue, expected = outputs[(turn + 1) % 2]
        code = code_of(command(OUTPUT, catalogue))
        assert code in (0, 2), code
        refused += code == 2
        assert_whole(outputs, f"run {turn} on a full disk")
        assert code == 2 or files(OUTPUT) == expected
        assert_no_litter(f"run {turn} on a full disk")
        filler.unlink()
    assert refused, "the disk was never full: nothing was tried"
    render(outputs[0][0])
    assert files(OUTPUT) == outputs[0][1]
    print(f"{pathlib.Path.cwd().name}: {count} runs, {refused} found no room; the output whole every time")


def planted():
    """A link in the place of the work folder leads nowhere."""
    target = SOUND / "docs"
    target.mkdir(parents=True)
    (target / "a.txt").write_text("a")
    link = OUTPUT / ".fittingcards"
    link.symlink_to(target.resolve())
    code = code_of(command(OUTPUT))
    link.unlink()
    assert code == 2 and [path.name for path in target.iterdir()] == ["a.txt"]
    print(f"{pathlib.Path.cwd().name}: a planted link is refused")


def main():
    random.seed(1)
    try:
        match sys.argv[2:]:
            case ["kills", may_be, count]:
                kills(may_be, int(count))
            case ["together"]:
                together()
            case ["full", disk, count]:
                full(disk, int(count))
            case ["planted"]:
                planted()
    finally:
        shutil.rmtree(SOUND, ignore_errors=True)


main()
