#!/usr/bin/python3
"""The command line as its users meet it. usage: tests/oracle/cli.py [TORCHSIDE]

Runs the command for every row of cli_cases.txt, for cases made from the printed schema, and as README.md shows it. A row is
    exit | arguments | standard input | pattern
with the pattern (a regular expression) searched in standard output (exit 0) or matched against the one line on standard
error (exit 2). In arguments and input {demo} is the demo workbook's path, {flange} the drawing's, \\n a line end. # begins a comment.
Last line: N passed, N failed.
"""
import json
import pathlib
import re
import shlex
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
HERE = pathlib.Path(__file__).resolve().parent
TOTALS = {True: 0, False: 0}


def run(command, arguments, stdin=""):
    return subprocess.run([command, *arguments], input=stdin.encode(), capture_output=True, timeout=60)


def judge(title, done, code, pattern):
    out, err = done.stdout.decode(), done.stderr.decode()
    if code == 0:
        good = done.returncode == 0 and err == "" and re.search(pattern, out, re.S)
    else:
        good = (done.returncode == code and out == "" and err.endswith("\n") and err.count("\n") == 1
                and ": " in err and re.search(pattern, err))
    TOTALS[bool(good)] += 1
    if not good:
        print(f"FAILED {title}\n  exit {done.returncode}, wanted {code}\n  stdout {out[:200]!r}\n  stderr {err[:300]!r}\n"
              f"  wanted {pattern!r}")


def rows(command):
    for number, line in enumerate((HERE / "cli_cases.txt").read_text().splitlines(), 1):
        if not line.strip() or line.startswith("#"):
            continue
        code, arguments, stdin, pattern = (part.strip() for part in line.split(" | ", 3))
        fill = lambda text: text.replace("{demo}", str(ROOT / "assets/demo.json")).replace("{flange}", str(ROOT / "assets/flange.dxf")).replace("\\n", "\n")
        done = run(command, shlex.split(fill(arguments)), fill(stdin))
        judge(f"cli_cases.txt:{number}: {arguments}", done, int(code), pattern)


def readme_cases(command):
    """What README.md shows is there and does what it says."""
    shown = re.findall(r"^    \$ build/native/torchside (.*)$", (ROOT / "README.md").read_text(), re.M)
    for line in shown:
        arguments = [str(ROOT / word) if (ROOT / word).is_file() else word for word in shlex.split(line, comments=True)]
        judge(f"README.md: {line}", run(command, arguments), 0, r"\S")
    if len(shown) < 5:
        TOTALS[False] += 1
        print("FAILED README.md: fewer than five commands were found")


def nested(path, value):
    """A workbook that gives one key, by its path of (key or '[]')."""
    for step in reversed(path):
        value = [value] if step == "[]" else {step: value}
    return {"torchside": 1, **value}


def neighbours(spec):
    """Values just outside what a key's schema accepts."""
    if "minimum" in spec:
        return [spec["minimum"] - 0.001 - abs(spec["minimum"]) * 1e-6, spec["maximum"] * 1.001 + 0.001, "1", True, []]
    if "maxLength" in spec:
        return ["x" * (spec["maxLength"] + 1), 7] + (["M3 (on)", "M3\u00b2"] if "pattern" in spec else [])
    return ["no such word", 0.5, {}]


def walk(spec, path, required):
    """(path, spec, the required keys beside it) of every single value in the schema."""
    if spec.get("type") in ("object", ["object", "null"]):
        for key, child in spec["properties"].items():
            if key != "torchside":
                yield from walk(child, path + [key], spec.get("required", []))
    elif spec.get("type") == "array":
        yield from walk(spec["items"], path + ["[]"], [])
    else:
        yield path, spec, required


def schema_cases(command):
    schema = json.loads(run(command, ["schema"]).stdout)
    for path, spec, _ in walk(schema, [], []):
        # Entries of lists need their required keys first: given by the schema's own lowest values.
        parent, name = path[:-1], path[-1]
        items = schema
        for step in parent:
            items = items["items"] if step == "[]" else items["properties"][step]
        base = {key: lowest(items["properties"][key]) for key in items.get("required", []) if key in items["properties"]}
        full = ".".join(path).replace(".[]", "[0]")
        for value in neighbours(spec):
            document = nested(parent, {**base, name: value})
            done = run(command, ["worksheet", "-"], json.dumps(document))
            judge(f"{full} = {value!r}", done, 2, "^" + re.escape(full) + ": .*accepted is ")


def lowest(spec):
    return spec["enum"][0] if "enum" in spec else spec["minimum"]


def main():
    command = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "build/native/torchside")
    rows(command)
    readme_cases(command)
    if "worksheet" in run(command, ["--help"]).stdout.decode():
        schema_cases(command)
    print(f"{TOTALS[True]} passed, {TOTALS[False]} failed")
    return TOTALS[False] != 0


sys.exit(main())
