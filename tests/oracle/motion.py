#!/usr/bin/python3
"""Time along random paths against fine numeric integration of the speed limit.

usage: motion.py [CORE_LIBRARY]     libtorchside_core.a, build/native/libtorchside_core.a when absent

The oracle lays a grid along the path, writes down the highest speed allowed in every cell and at every joint, and lets the
speed rise from behind and from ahead by no more than the acceleration allows (v dv = a ds), cell by cell; time is the sum of
ds / v. No trapezoid, no peak speed, no bulge formula: arcs come from three points, turns from atan2 of sampled directions.
Agreement 0.5 %, or a grid's error at rest; length 1e-9; slow share 0.005.
Last line: N passed, N failed. Exit 1 on any failure.
"""
import cmath
import math
import os
import pathlib
import random
import subprocess
import sys
import tempfile

import numpy as np

ROOT = pathlib.Path(__file__).resolve().parents[2]
PATHS = 400
CELLS = 100000


def probe(library, folder, lines):
    program = pathlib.Path(folder) / "motion_probe"
    subprocess.run([os.environ.get("CXX", "g++"), "-std=c++20", "-O1", "-ffp-contract=off", f"-I{ROOT}", f"-I{ROOT}/build/native/generated",
                    str(ROOT / "tests/oracle/motion_probe.cpp"), str(library), "-o", str(program)], check=True)
    run = subprocess.run([str(program)], input="\n".join(lines) + "\n", capture_output=True, text=True, check=True)
    return [[float(x) for x in line.split()] for line in run.stdout.splitlines()]


class Piece:
    """Straight, or an arc through two points that turns by a sweep (radians, anticlockwise positive)."""

    def __init__(self, start, end, sweep):
        chord = end - start
        self.sweep, self.radius = sweep, math.inf
        self.length = abs(chord)
        self.leave = self.arrive = cmath.phase(chord)
        if sweep:
            self.radius = abs(chord) / (2 * abs(math.sin(sweep / 2)))
            self.length = self.radius * abs(sweep)
            self.leave, self.arrive = self.leave - sweep / 2, self.arrive + sweep / 2


def corner(before, after, tolerance):
    """Radius of the circle that touches both directions and passes the corner at the tolerance, within half of either leg."""
    turn = abs((after.leave - before.arrive + math.pi) % (2 * math.pi) - math.pi)
    if turn < 1e-7:
        return math.inf
    inside = (math.pi - turn) / 2
    sine = math.sin(inside)
    by_tolerance = tolerance * sine / (1 - sine) if sine < 1 else math.inf
    return min(by_tolerance, min(before.length, after.length) / 2 / math.tan(turn / 2))


def hole_share(across, thickness):
    return float(np.interp(across / thickness, [5, 10], [0.6, 1.0])) if across else 1.0


def integrate(pieces, feed, accel, tolerance, share):
    total = sum(p.length for p in pieces)
    feed *= share
    step = total / CELLS
    edges = np.linspace(0, total, CELLS + 1)
    ends = np.cumsum([p.length for p in pieces])
    owner = np.minimum(np.searchsorted(ends, (edges[:-1] + edges[1:]) / 2), len(pieces) - 1)
    cap2 = np.array([min(feed**2, accel * p.radius) for p in pieces])
    # Limit at the grid's points: the lower of the cells around; a joint's limit reaches out at the acceleration.
    cell2 = cap2[owner]
    limit2 = np.minimum(np.append(cell2, cell2[-1]), np.append(cell2[0], cell2))
    limit2[0] = limit2[-1] = 0
    for i in range(len(pieces) - 1):
        at, joint2 = ends[i], accel * corner(pieces[i], pieces[i + 1], tolerance)
        low = max(0, int(at / step) - 1)
        near = slice(low, min(CELLS + 1, low + 4))
        limit2[near] = np.minimum(limit2[near], joint2 + 2 * accel * np.abs(edges[near] - at))
    # v^2 may change by 2 a ds from point to point: running minima of v^2 -+ 2 a s.
    slope = 2 * accel * edges
    v2 = np.minimum.accumulate(limit2 - slope) + slope
    v2 = np.minimum(np.minimum.accumulate((v2 + slope)[::-1])[::-1] - slope, v2)
    v = np.sqrt(np.maximum(v2, 0))
    # Within a cell v^2 is straight: ds over the mean of both speeds is exact.
    time = float(np.sum(step * 2 / (v[1:] + v[:-1])))
    slow = float(np.mean((v[1:] + v[:-1]) / 2 < 0.8 * feed))
    return time, total, slow


def random_path(rng):
    at, points, pieces = 0j, [], []
    heading = rng.uniform(-math.pi, math.pi)
    style = rng.choice(("mixed", "fine", "tangent", "large"))
    for _ in range(rng.randint(1, 60)):
        length = math.exp(rng.uniform(math.log(0.05), math.log(3))) if style == "fine" else math.exp(
            rng.uniform(math.log(2), math.log(300 if style == "large" else 60)))
        sweep = rng.uniform(-3, 3) if rng.random() < (0.7 if style == "tangent" else 0.3) else 0.0
        if style == "fine":
            heading += rng.gauss(0, 0.1)
            sweep = 0.0
        elif style != "tangent":
            heading += rng.choice((0, math.pi / 2, -math.pi / 2, rng.uniform(-3, 3)))
        chord = cmath.rect(length, heading + sweep / 2)
        points.append((at, sweep))
        pieces.append(Piece(at, at + chord, sweep))
        at += chord
        heading += sweep
    points.append((at, 0.0))
    return points, pieces


def main():
    library = sys.argv[1] if len(sys.argv) > 1 else ROOT / "build/native/libtorchside_core.a"
    rng, lines, oracle = random.Random(3), [], []
    for _ in range(PATHS):
        points, pieces = random_path(rng)
        feed, accel = math.exp(rng.uniform(1, 5.5)), math.exp(rng.uniform(math.log(50), math.log(5000)))
        tolerance, thickness = math.exp(rng.uniform(math.log(0.005), 0)), rng.uniform(1, 20)
        hole = rng.uniform(2, 250) if rng.random() < 0.3 else 0.0
        body = " ".join(f"{p.real!r} {p.imag!r} {math.tan(s / 4)!r}" for p, s in points)
        lines.append(f"{feed!r} {accel!r} {tolerance!r} {thickness!r} {hole!r} {len(points)} {body}")
        oracle.append(integrate(pieces, feed, accel, tolerance, hole_share(hole, thickness)))
    passed, failed, worst = 0, 0, 0.0
    with tempfile.TemporaryDirectory() as folder:
        answers = probe(library, folder, lines)
    for line, found, (time, length, slow) in zip(lines, answers, oracle):
        error = abs(found[0] - time) / time
        worst = max(worst, error)
        if error < 0.005 and abs(found[1] - length) < 1e-9 * length and abs(found[2] - slow) < 0.005:
            passed += 1
        else:
            failed += 1
            if failed <= 5:
                print(f"time {found[0]} oracle {time}; length {found[1]} {length}; slow {found[2]} {slow}: {line[:150]}")
    print(f"time off by at most {100 * worst:.3f} % on {PATHS} paths")
    print(f"{passed + (len(answers) == PATHS)} passed, {failed + (len(answers) != PATHS)} failed")
    return failed != 0 or len(answers) != PATHS


sys.exit(main())
