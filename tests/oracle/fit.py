#!/usr/bin/python3
"""The fitted constants still follow from the published rows, and the check would notice if they did not.

1. tools/fit agrees with the data tables; it complains about each of three tables changed on purpose;
2. published_cuts.csv is whole: 70 rows, known columns, every row seen or from memory;
3. the kerf regression on its 42 kerf rows gives the worked values.
Last line: N passed, N failed. Exit 1 on any failure.
"""
import csv
import json
import math
import pathlib
import shutil
import subprocess
import sys
import tempfile

import numpy

ROOT = pathlib.Path(__file__).resolve().parents[2]
DATA = ROOT / "assets" / "data"
results = []


def check(name, holds):
    results.append(bool(holds))
    if not holds:
        print(f"failed: {name}", file=sys.stderr)


def fit(data):
    return subprocess.run([ROOT / "tools" / "fit", "--data", data], capture_output=True, text=True, check=False)


def drifted(change_terms=None, change_rows=None):
    """The exit code of tools/fit on a changed copy of the tables."""
    with tempfile.TemporaryDirectory() as folder:
        copy = pathlib.Path(folder)
        for name in ("cut_terms.json", "metals.json", "published_cuts.csv"):
            shutil.copy(DATA / name, copy)
        if change_terms:
            metals = json.loads((copy / "metals.json").read_text(encoding="utf-8"))
            change_terms(metals["tables"]["metal_terms"]["rows"])
            (copy / "metals.json").write_text(json.dumps(metals), encoding="utf-8")
        if change_rows:
            text = (copy / "published_cuts.csv").read_text(encoding="utf-8")
            (copy / "published_cuts.csv").write_text(change_rows(text), encoding="utf-8")
        return fit(copy).returncode


def set_value(field, metal, value):
    def change(rows):
        for row in rows:
            if row["field"] == field and row["metal"] == metal and row["set"] in (None, "small_air_torch"):
                row["value"] = value

    return change


kept = fit(DATA)
print(kept.stdout, end="")
print(kept.stderr, end="", file=sys.stderr)
check("tools/fit agrees with the tables", kept.returncode == 0)
check("a changed efficiency is noticed", drifted(set_value("efficiency", "stainless", 0.46)) == 1)
check("a changed burnt share is noticed", drifted(set_value("burnt_share", "mild_steel", 0.15)) == 1)
check("a changed published feed is noticed", drifted(change_rows=lambda t: t.replace(",5080,", ",6080,")) == 1)

with open(DATA / "published_cuts.csv", newline="", encoding="utf-8") as file:
    rows = list(csv.DictReader(file))
check("70 rows", len(rows) == 70)
check("every row seen or from memory", all(r["status"] in ("seen", "memory") for r in rows))
ss02 = next(r for r in rows if r["id"] == "SS02")
check("100 in/min is 2540 mm/min; 60 kW over 300 A is 200 V", (ss02["feed_mm_min"], ss02["arc_v"]) == ("2540", "200"))

# ln w = a + b ln(I/120) + c ln(v/1400) + d ln(p/5) + e [treated nozzle], key senthilkumar_2023; the worked values are own.
kerf_rows = [r for r in rows if r["use"] == "kerf_fit"]
x = [
    [
        1.0,
        math.log(float(r["current_a"]) / 120),
        math.log(float(r["feed_mm_min"]) / 1400),
        math.log(float(r["pressure_bar"]) / 5),
        1.0 if r["id"].startswith("S235T") else 0.0,
    ]
    for r in kerf_rows
]
y = [math.log(float(r["kerf_mm"])) for r in kerf_rows]
a, b, c, d, e = numpy.linalg.lstsq(numpy.array(x), numpy.array(y), rcond=None)[0]
print(f"kerf, {len(kerf_rows)} rows: ln w = {a:.3f} {b:+.3f} ln(I/120) {c:+.3f} ln(v/1400) {d:+.3f} ln(p/5) {e:+.3f} treated")
for got, wanted in zip((a, b, c, d, e), (0.314, 1.637, 0.217, -0.491, -0.065)):
    check(f"kerf coefficient {wanted}", abs(got - wanted) <= 0.0006)
for current, wanted in ((110, 1.187), (120, 1.369), (130, 1.561)):
    check(f"kerf at {current} A", abs(math.exp(a + b * math.log(current / 120)) - wanted) <= 0.001)
at = math.exp(a + b * math.log(110 / 120) + c * math.log(1000 / 1400) + d * math.log(4 / 5))
check("kerf at 110 A, 1000 mm/min, 4 bar", abs(at - 1.231) <= 0.001)

print(f"{sum(results)} passed, {len(results) - sum(results)} failed")
sys.exit(0 if all(results) else 1)
