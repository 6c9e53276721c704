#!/usr/bin/python3
"""Areas, lengths and kerf offsets of contours against Shapely (GEOS).

usage: part_shapely.py [CORE_LIBRARY]     libtorchside_core.a, build/native/libtorchside_core.a when absent

Contours of many kinds with a fixed seed: star polygons, stars with arcs, plates with slots narrower and wider than the
kerf, slots of exactly the kerf, combs, dumbbells, outlines of hundreds of short pieces, noise of a hundredth of a
millimetre. Shapely knows straight pieces only: arcs are flattened here from centre and angle, so finely that the sagitta
is below 2e-5 mm, and its round corners too. Areas may differ by what that flattening can take, lengths by twice that.
Last line: N passed, N failed. Exit 1 on any failure.
"""
import math
import os
import pathlib
import random
import subprocess
import sys
import tempfile

import shapely.geos
from shapely.geometry import Polygon

ROOT = pathlib.Path(__file__).resolve().parents[2]
SAGITTA = 2e-5
EXACT = 3  # slots of exactly the kerf: GEOS keeps seams of no width there or not, as rounding falls


def flatten(contour, sagitta=SAGITTA):
    """Points of a contour [(x, y, bulge)], arcs from their centre."""
    points = []
    for (x0, y0, bulge), (x1, y1, _) in zip(contour, contour[1:] + contour[:1]):
        points.append((x0, y0))
        if bulge == 0:
            continue
        sweep = 4 * math.atan(bulge)
        chord = math.hypot(x1 - x0, y1 - y0)
        radius = chord / (2 * math.sin(abs(sweep) / 2))
        away = math.copysign(1, bulge) * radius * math.cos(sweep / 2)
        cx, cy = (x0 + x1) / 2 - away * (y1 - y0) / chord, (y0 + y1) / 2 + away * (x1 - x0) / chord
        steps = max(2, math.ceil(abs(sweep) / (2 * math.acos(max(0.0, 1 - sagitta / radius)))))
        start = math.atan2(y0 - cy, x0 - cx)
        points += [(cx + radius * math.cos(start + sweep * k / steps), cy + radius * math.sin(start + sweep * k / steps))
                   for k in range(1, steps)]
    return points


def star(rng, count, arcs):
    contour = []
    for k in range(count):
        angle = 2 * math.pi * (k + rng.uniform(-0.3, 0.3)) / count
        radius = rng.uniform(20, 60)
        bulge = rng.choice((0, rng.uniform(-1, 1) * 2 / count)) if arcs else 0
        contour.append((70 + radius * math.cos(angle), 70 + radius * math.sin(angle), bulge))
    return contour


def slotted(rng, width):
    """A plate with slots from its upper edge, some with round or wide ends."""
    contour, x = [(0, 0, 0), (120, 0, 0), (120, 60, 0)], 110.0
    while x > 20:
        w, deep = width(rng), rng.uniform(5, 50)
        kind = rng.randrange(3)
        contour.append((x, 60, 0))
        if kind == 0:
            contour += [(x, 60 - deep, 0), (x - w, 60 - deep, 0)]
        elif kind == 1:
            contour += [(x, 60 - deep, -1), (x - w, 60 - deep, 0)]
        else:
            contour += [(x, 60 - deep, 0), (x + 2, 60 - deep, 0), (x + 2, 57 - deep, 0), (x - w - 2, 57 - deep, 0),
                        (x - w - 2, 60 - deep, 0), (x - w, 60 - deep, 0)]
        contour.append((x - w, 60, 0))
        x -= w + rng.uniform(6, 20)
    return contour + [(0, 60, 0)]


def dumbbell(rng):
    neck = rng.uniform(0.2, 4)
    r = rng.uniform(8, 15)
    half = math.asin(neck / 2 / r)
    bulge = math.tan((2 * math.pi - 2 * half) / 4)
    return [(20 + r * math.cos(half), neck / 2, bulge), (20 + r * math.cos(half), -neck / 2, 0),
            (80 - r * math.cos(half), -neck / 2, bulge), (80 - r * math.cos(half), neck / 2, 0)]


def wavy(rng, count):
    a, b, p, q = rng.uniform(1, 8), rng.uniform(0, 3), rng.randrange(2, 9), rng.randrange(9, 30)
    s = rng.uniform(0, 6)
    return [(80 + (50 + a * math.sin(p * t) + b * math.sin(q * t + s)) * math.cos(t),
             80 + (50 + a * math.sin(p * t) + b * math.sin(q * t + s)) * math.sin(t), 0)
            for t in (2 * math.pi * k / count for k in range(count))]


def noisy(rng):
    return [(60 + (40 + rng.uniform(-0.01, 0.01)) * math.cos(t), 60 + (40 + rng.uniform(-0.01, 0.01)) * math.sin(t), 0)
            for t in (2 * math.pi * k / 720 for k in range(720))]


def ring_plate(rng):
    """A rounded plate, arcs tangent to its sides, with collinear and very short pieces put in."""
    l, w, r = rng.uniform(20, 90), rng.uniform(20, 90), rng.uniform(0.1, 9.9)
    q = math.tan(math.pi / 8)
    contour = [(r, 0, 0), (l / 2, 0, 0), (l / 2 + 1e-3, 0, 0), (l - r, 0, q), (l, r, 0), (l, w - r, q), (l - r, w, 0), (r, w, q), (0, w - r, 0),
               (0, r, q)]
    return contour


def contours(rng):
    makers = [lambda: star(rng, rng.randrange(3, 40), False), lambda: star(rng, rng.randrange(3, 25), True),
              lambda: slotted(rng, lambda r: r.uniform(0.3, 4)), lambda: slotted(rng, lambda r: 1.6),
              lambda: dumbbell(rng), lambda: wavy(rng, rng.randrange(100, 800)), lambda: noisy(rng), lambda: ring_plate(rng)]
    found = []
    while len(found) < int(os.environ.get('CASES', 2000)):
        kind = len(found) % len(makers)
        contour = makers[kind]()
        if not Polygon(flatten(contour, 0.05)).is_valid:
            continue
        shape = Polygon(flatten(contour))
        if not shape.is_valid or not shape.exterior.is_ccw:
            continue
        # The drawing's own near-touches are the reader's matter: keep what is clear of itself.
        right = rng.choice((1, -1)) * rng.choice((0.8, 0.8, rng.uniform(0.05, 3)))
        found.append((kind, contour, shape, right))
    return found


def main():
    library = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / "build/native/libtorchside_core.a")
    if not library.exists():
        sys.exit(f"{library}: not there; build the native preset first")
    rng = random.Random(20240601)
    cases = contours(rng)
    with tempfile.TemporaryDirectory() as folder:
        program = pathlib.Path(folder) / "part_probe"
        subprocess.run([os.environ.get("CXX", "g++"), "-std=c++20", "-O1", "-ffp-contract=off", f"-I{ROOT}", f"-I{ROOT}/build/native/generated",
                        str(ROOT / "tests/oracle/part_probe.cpp"), str(library), "-o", str(program)], check=True)
        text = "\n".join(" ".join(map(repr, (right, *(x for v in contour for x in v)))) for _, contour, _, right in cases)
        answer = subprocess.run([program], input=text + "\n", capture_output=True, text=True, check=True).stdout.splitlines()
    if len(answer) != len(cases):
        sys.exit(f"{len(answer)} answers for {len(cases)} contours")
    failed = 0
    pieces = 0
    for (kind, contour, shape, right), line in zip(cases, answer):
        area, length, beside, beside_length, loops, whole, _ = map(float, line.split())
        wanted = shape.buffer(right, resolution=max(16, math.ceil(math.pi / 4 / math.acos(1 - SAGITTA / abs(right)))))
        parts = getattr(wanted, "geoms", [wanted])
        rings = [ring for part in parts if not part.is_empty for ring in (part.exterior, *part.interiors)]
        pieces += len(rings)
        slack = 1e-9 * shape.area
        faults = []
        if abs(area - shape.area) > slack + 2 * SAGITTA * shape.length:
            faults.append(f"area {area!r}, oracle {shape.area!r}")
        if abs(length - shape.length) > 1e-9 * shape.length + 2e-3:
            faults.append(f"length {length!r}, oracle {shape.length!r}")
        # A loop that GEOS or we find too thin to keep has no area to speak of: areas must agree, counts need not.
        if abs(beside - wanted.area) > slack + 4 * SAGITTA * (shape.length + wanted.length) + 1e-4:
            faults.append(f"offset by {right}: area {beside!r}, oracle {wanted.area!r} ({loops:.0f} loops, {len(rings)})")
        elif kind != EXACT and abs(beside_length - wanted.length) > 1e-4 * wanted.length + 0.02:
            faults.append(f"offset by {right}: length {beside_length!r}, oracle {wanted.length!r} ({loops:.0f}, {len(rings)})")
        if not whole:
            faults.append("not all loops closed")
        failed += bool(faults)
        if faults and failed <= 20:
            print(f"kind {kind}, {len(contour)} pieces", *faults, sep="\n  ")
            if os.environ.get("SHOW"):
                print(contour)
    print(f"GEOS {shapely.geos.geos_version_string}: {len(cases)} contours, {pieces} loops beside them")
    print(f"{len(cases) - failed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


main()
