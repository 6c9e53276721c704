#!/usr/bin/python3
"""SVG drawings, read by `torchside part`, against shapely on finely divided curves of this script's own.
usage: tests/oracle/part_svg.py [TORCHSIDE]

Random paths with every command, absolute and relative, in random transforms and viewports; curves are evaluated here by their
definitions, arcs by the end point conditions alone (no centre formula), and measured by shapely.
Last line: N passed, N failed. Exit 1 on any failure.
"""
import json
import math
import pathlib
import random
import subprocess
import sys
import tempfile

import numpy as np
from shapely.geometry import LinearRing, Polygon
from shapely.ops import polygonize, unary_union

ROOT = pathlib.Path(__file__).resolve().parents[2]
FLATTEN_MM = 0.01
STEPS = 400
TOTALS = {True: 0, False: 0}
TORCHSIDE = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "build/native/torchside")


def check(good, title, detail=""):
    TOTALS[bool(good)] += 1
    if not good:
        print(f"FAILED {title}: {detail}")


def bezier(points):
    t = np.linspace(0, 1, STEPS + 1)[1:, None]
    points = [np.array(p, float) for p in points]
    while len(points) > 1: # de Casteljau
        points = [a + t * (b - a) for a, b in zip(points, points[1:])]
    return points[0]


def arc(start, end, rx, ry, turn, large, sweep):
    """The ellipse through both ends: in the frame where it is a unit circle the chord's half is the sine of half the sweep."""
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    to_circle = np.array([[c / rx, s / rx], [-s / ry, c / ry]])
    a, b = to_circle @ np.array(start), to_circle @ np.array(end)
    chord = math.dist(a, b)
    radius = max(1.0, chord / 2)
    half = math.asin(min(1.0, chord / 2 / radius))
    if large:
        half = math.pi - half
    # The arc bulges to the left or right of the chord: its points are found by turning about no known centre, but by the angle
    # that the chord is seen under: half the sweep less what is left of it.
    t = np.linspace(0, 1, STEPS + 1)[1:]
    side = 1 if sweep else -1
    reach = 2 * radius * np.sin(half * t)
    angle = side * half * (t - 1)
    u = (b - a) / chord
    points = np.stack([a[0] + reach * (u[0] * np.cos(angle) - u[1] * np.sin(angle)),
                       a[1] + reach * (u[0] * np.sin(angle) + u[1] * np.cos(angle))], 1)
    return points @ np.linalg.inv(to_circle).T


def random_contour(rng, cx, cy, size):
    """Path data and points of one closed contour about (cx, cy)."""
    n = rng.randint(4, 8)
    corners = [(cx + size * rng.uniform(0.6, 0.8) * math.cos(a), cy + size * rng.uniform(0.6, 0.8) * math.sin(a))
               for a in (2 * math.pi * (k + rng.uniform(0, 0.3)) / n for k in range(n))]
    corners = [(round(x, 4), round(y, 4)) for x, y in corners]
    data, points, at = [f"M{corners[0][0]} {corners[0][1]}"], [np.array([corners[0]])], corners[0]
    handle = {}
    for to in corners[1:] + corners[:1]:
        kind, relative = rng.choice("LHCSQTA"), rng.random() < 0.5
        off = lambda p: (p[0] - at[0], p[1] - at[1]) if relative else p
        text = lambda *ps: " ".join(f"{v:.9f}".rstrip("0").rstrip(".") if abs(v) > 1e-12 else "0" for p in ps for v in off(p))
        near = lambda: tuple(at[i] + (to[i] - at[i]) * rng.uniform(0.2, 0.8) + size * rng.uniform(-0.06, 0.06) for i in (0, 1))
        if kind == "H":
            points.append(np.array([(to[0], at[1]), to]))
            data.append(f"{'h' if relative else 'H'}{off(to)[0]:.9f}{'v' if relative else 'V'}{off(to)[1]:.9f}")
            handle = {}
        elif kind == "L":
            points.append(np.array([to]))
            data.append(f"{'l' if relative else 'L'}{text(to)}")
            handle = {}
        elif kind in "CS":
            c1, c2 = near(), near()
            if kind == "S":
                c1 = handle.get("cubic", at)
            points.append(bezier([at, c1, c2, to]))
            data.append((kind.lower() if relative else kind) + (text(c1, c2, to) if kind == "C" else text(c2, to)))
            handle = {"cubic": (2 * to[0] - c2[0], 2 * to[1] - c2[1])}
        elif kind in "QT":
            q = near()
            if kind == "T":
                q = handle.get("quadratic", at)
            points.append(bezier([at, q, to]))
            data.append((kind.lower() if relative else kind) + (text(q, to) if kind == "Q" else text(to)))
            handle = {"quadratic": (2 * to[0] - q[0], 2 * to[1] - q[1])}
        else:
            chord = math.dist(at, to)
            rx, ry, turn = chord * rng.uniform(0.8, 3), chord * rng.uniform(0.8, 3), rng.randint(-180, 180)
            sweep = rng.randint(0, 1)
            points.append(arc(at, to, rx, ry, turn, 0, sweep))
            data.append(f"{'a' if relative else 'A'}{rx:.12f} {ry:.12f},{turn} 0{sweep}{text(to)}")
            handle = {}
        at = to
    return "".join(data) + rng.choice("zZ"), np.concatenate(points)


def transform(rng):
    """Text and matrix."""
    x, y, k, a = rng.uniform(-20, 20), rng.uniform(-20, 20), rng.uniform(0.5, 2), rng.uniform(-180, 180)
    c, s = math.cos(math.radians(a)), math.sin(math.radians(a))
    move = lambda dx, dy: np.array([[1, 0, dx], [0, 1, dy], [0, 0, 1.0]])
    turn = np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]])
    choices = [(f"translate({x!r},{y!r})", move(x, y)), (f"translate({x!r})", move(x, 0)), (f"scale({k!r})", np.diag([k, k, 1])),
               (f"scale({k!r} {-1 / k!r})", np.diag([k, -1 / k, 1])), (f"rotate({a!r})", turn),
               (f"rotate({a!r} {x!r},{y!r})", move(x, y) @ turn @ move(-x, -y)),
               (f"skewX({a / 6!r})", np.array([[1, math.tan(math.radians(a / 6)), 0], [0, 1, 0], [0, 0, 1]])),
               (f"skewY({a / 6!r})", np.array([[1, 0, 0], [math.tan(math.radians(a / 6)), 1, 0], [0, 0, 1]])),
               (f"matrix({k!r} 0.1 -0.2 {1 / k!r} {x!r} {y!r})", np.array([[k, -0.2, x], [0.1, 1 / k, y], [0, 0, 1]]))]
    return rng.choice(choices)


def one(rng, number, folder):
    unit, mm = rng.choice((("mm", 1.0), ("cm", 10.0), ("in", 25.4), ("pt", 25.4 / 72), ("pc", 25.4 / 6), ("Q", 0.25)))
    wide, vx = rng.uniform(100, 300) / mm, rng.uniform(100, 500)
    scale = wide * mm / vx
    data, points = random_contour(rng, vx / 2, vx / 2, vx * 0.3)
    whole, texts = np.eye(3), []
    for _ in range(rng.randint(0, 3)):
        text, matrix = transform(rng)
        texts.append(text)
        whole = whole @ matrix
    inside = f'<path d="{data}"/>'
    for k, text in enumerate(reversed(texts)):
        inside = f'<g transform="{text}">{inside}</g>' if k else inside.replace("<path ", f'<path transform="{text}" ', 1)
    head = f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide!r}{unit}" height="{wide!r}{unit}" viewBox="{rng.uniform(-9, 9)!r} 0 {vx!r} {vx!r}">'
    file = folder / "drawing.svg"
    file.write_text(head + inside + "</svg>\n")
    placed = (np.c_[points, np.ones(len(points))] @ whole.T)[:, :2] * scale
    polygon = Polygon(placed)
    done = subprocess.run([TORCHSIDE, "part", str(file)], capture_output=True, text=True, timeout=60)
    if done.returncode:
        return check(False, f"path {number}", f"{done.stderr} {data}")
    answer = json.loads(done.stdout)
    if not polygon.is_valid: # shapely also calls two points that are a rounding apart a crossing: then there is one area only
        areas = sorted(polygonize(unary_union(LinearRing(placed))), key=lambda p: p.area)
        polygon = areas[-1] if sum(p.area for p in areas[:-1]) < 1e-6 else polygon
    if not polygon.is_valid: # a random contour that crosses itself must be named
        codes = [p["code"] for p in answer["problems"]]
        return check("crossing" in codes or "overlap" in codes, f"path {number} crosses itself", f"{codes} {data}")
    check(len(answer["contours"]) == 1 and abs(answer["area_mm2"] - polygon.area) <= FLATTEN_MM * polygon.length * 0.25,
          f"path {number}: area", f"{answer['area_mm2']}, not {polygon.area}: {inside}")
    check(abs(answer["cut_mm"] - polygon.length) <= 1e-3 * polygon.length, f"path {number}: length", f"{answer['cut_mm']}, not {polygon.length}: {inside}")
    return check(answer["unit_known"], f"path {number}: unit")


def main():
    rng = random.Random(11)
    with tempfile.TemporaryDirectory() as name:
        for number in range(300):
            one(rng, number, pathlib.Path(name))
    print(f"{TOTALS[True]} passed, {TOTALS[False]} failed")
    return 1 if TOTALS[False] or not TOTALS[True] else 0


if __name__ == "__main__":
    sys.exit(main())
