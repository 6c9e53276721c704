#!/usr/bin/python3
"""Test coupons' programs, run by an independent interpreter. usage: tests/oracle/coupon_program.py [TORCHSIDE]

Every kind of coupon x metal x thickness x unit, and several choices of controller words, printed by the command line and run
by a general library from npm (tests/oracle/gcode). What it did is compared with the coupon's own geometry (--format json):
  - with the torch on it moves only along a leg or straight down at the leg's start, never in a rapid;
  - no feed exceeds the table's, and each leg is cut at its own (rounded down to 0.1 of the unit);
  - the path is the coupon's within 0.002 mm, arcs sampled all along and in their own direction;
  - pierce and cut heights, dwell and moves between legs at the safe height;
  - the torch is off at the start, after every leg and at the end, and nothing follows the end.
What the command refuses it refuses with one line and without a program. Last line: N passed, N failed.
"""
import concurrent.futures
import json
import math
import pathlib
import subprocess
import sys

from _metals import METALS

ROOT = pathlib.Path(__file__).resolve().parents[2]
COMMAND = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "build/native/torchside")
CUT_THIN = ("mild_steel", "stainless", "aluminium", "galvanised", "wear_plate") # up to 8 mm at any current asked for
KINDS = ["ladder", "heights", "kerf", "swirl"]
THICKNESSES = [0.5, 0.8, 1.2, 2, 3, 4.7625, 6, 8, 10, 12.7, 20, 40]
WITHIN = 0.002
WORDS = [{}, {"dwell_unit": "ms", "safe_height_mm": 40}, {"height_on": "M64 P2", "height_off": "M65 P2"},
         {"z_words": False, "height_on": "M64 P2", "height_off": "M65 P2"}]
PASSED, FAILED = [], []


def cases():
    for kind in KINDS:
        for metal in METALS:
            for n, thickness in enumerate(THICKNESSES):
                for units in ("metric", "inch"):
                    words = WORDS[(n + len(metal) + (units == "inch")) % len(WORDS)]
                    # A fast table and slow ones, whose limit the legs of thin plate meet.
                    table = {"max_feed_mm_min": [30000, 2540, 7600][n % 3]}
                    yield kind, units, {"torchside": 1, "shop": {"controller": words, "table": table},
                                        "job": {"material": metal, "thickness_mm": thickness}}


def call(kind, units, workbook, form):
    done = subprocess.run([COMMAND, "coupon", "-", "--kind", kind, "--units", units, "--format", form],
                          input=json.dumps(workbook).encode(), capture_output=True, timeout=60)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def near(a, b, within=WITHIN):
    return math.dist(a, b) <= within


def sampled(move, start):
    """Points of a move as the interpreter knows it."""
    end = (move["to"]["x"], move["to"]["y"])
    if not move["centre"]:
        return [(start[0] + (end[0] - start[0]) * i / 8, start[1] + (end[1] - start[1]) * i / 8) for i in range(9)]
    cx, cy = move["centre"]["x"], move["centre"]["y"]
    a, b = math.atan2(start[1] - cy, start[0] - cx), math.atan2(end[1] - cy, end[0] - cx)
    turn = (a - b if move["motion"] == "G2" else b - a) % (2 * math.pi)
    turn = (turn or 2 * math.pi) * (-1 if move["motion"] == "G2" else 1)
    r = math.dist(start, (cx, cy))
    return [(cx + r * math.cos(a + turn * i / 32), cy + r * math.sin(a + turn * i / 32)) for i in range(33)] + [end]


def wanted(piece, start):
    """Distance of a point from the coupon's piece, and where on it (0 to 1) it is."""
    end = piece["to_mm"]
    if piece["kind"] == "line":
        length = math.dist(start, end)
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length

        def place(p):
            along = (p[0] - start[0]) * ux + (p[1] - start[1]) * uy
            return abs((p[0] - start[0]) * uy - (p[1] - start[1]) * ux), along / length
        return place
    cx, cy = piece["centre_mm"]
    r, a = math.dist(start, (cx, cy)), math.atan2(start[1] - cy, start[0] - cx)
    sign = -1 if piece["kind"] == "clockwise" else 1
    whole = (sign * (math.atan2(end[1] - cy, end[0] - cx) - a)) % (2 * math.pi) or 2 * math.pi

    def place(p):
        turn = (sign * (math.atan2(p[1] - cy, p[0] - cx) - a) + 0.01) % (2 * math.pi) - 0.01
        return abs(math.dist(p, (cx, cy)) - r), turn / whole
    return place


def flat(place):
    return place["x"], place["y"]


class Check:
    """Follows one program against its coupon; what is wrong is kept."""

    def __init__(self, coupon, workbook, units):
        self.coupon, self.wrong = coupon, []
        self.words = workbook["shop"]["controller"]
        self.fastest = workbook["shop"]["table"]["max_feed_mm_min"]
        self.unit = 25.4 if units == "inch" else 1.0
        self.code = "G20" if units == "inch" else "G21"
        self.heights = self.words.get("z_words", True)
        self.safe = self.words.get("safe_height_mm", 15)
        self.leg, self.piece, self.dwelt, self.controlled = -1, 0, False, False

    def say(self, step, what):
        self.wrong.append(f"{step['line']}: {what}")

    def run(self, steps):
        for step in steps:
            if self.leg >= 0 and step.get("end"):
                break
            self.step(step)
        last = steps[-1]
        if not last.get("end") or sum(1 for s in steps if s.get("end")) != 1:
            self.say(last, "not ended once, at the end")
        if last.get("torch") != "M5":
            self.say(last, "ends with the torch on")
        if self.leg + 1 != len(self.coupon["legs"]):
            self.say(last, f"{self.leg + 1} legs were cut")
        return self.wrong

    def step(self, step):
        if "switched" in step:
            self.switch(step)
        elif "dwell" in step:
            seconds = step["dwell"] / (1000 if self.words.get("dwell_unit") == "ms" else 1)
            if step["torch"] != "M3" or self.dwelt or abs(seconds - self.coupon["dwell_s"]) > 0.00501:
                self.say(step, "dwell")
            self.dwelt = True
        elif "other" in step:
            self.height_control(step)
        else:
            self.move(step)

    def switch(self, step):
        if step["switched"] == "M3":
            self.leg, self.piece, self.dwelt, self.controlled = self.leg + 1, 0, False, False
            if self.leg >= len(self.coupon["legs"]):
                self.say(step, "one leg too many")
        elif self.leg >= 0 and self.piece != len(self.coupon["legs"][self.leg]["pieces"]):
            self.say(step, f"torch off after {self.piece} pieces")

    def height_control(self, step):
        on = step["other"] == 64
        leg = self.coupon["legs"][self.leg] if self.leg >= 0 else {"height_control": False, "pieces": []}
        if on and not (step["torch"] == "M3" and leg["height_control"] and self.piece == 0):
            self.say(step, "height control on")
        if not on and self.leg >= 0 and not (self.controlled and self.piece == len(leg["pieces"])):
            self.say(step, "height control off")
        self.controlled = on

    def move(self, step):
        if (step["units"], step["plane"], step["distance"], step["mode"]) != (self.code, "G17", "G90", "G94"):
            self.say(step, "modes")
        if step["torch"] == "M5":
            if step["motion"] != "G0":
                self.say(step, "a cutting move without the torch")
            across = not near(flat(step["from"]), flat(step["to"]), 1e-9)
            if across and self.heights and step["from"]["z"] < self.safe - WITHIN:
                self.say(step, "across below the safe height")
            return
        leg = self.coupon["legs"][self.leg]
        if step["motion"] == "G0" or not self.dwelt:
            self.say(step, "a rapid with the torch on, or no dwell")
        if not 0 < step["feed"] <= self.fastest + 1e-9:
            self.say(step, "feed past the table's")
        if near(flat(step["from"]), flat(step["to"]), 1e-9):
            if not self.heights or self.piece or not near(flat(step["to"]), leg["start_mm"]) or \
                    abs(step["from"]["z"] - self.coupon["pierce_height_mm"]) > WITHIN or \
                    abs(step["to"]["z"] - leg["cut_height_mm"]) > WITHIN:
                self.say(step, "plunge")
            return
        self.cut(step, leg)

    def cut(self, step, leg):
        if self.piece >= len(leg["pieces"]):
            return self.say(step, "goes past the leg with the torch on")
        start = leg["pieces"][self.piece - 1]["to_mm"] if self.piece else leg["start_mm"]
        piece = leg["pieces"][self.piece]
        if {"G1": "line", "G2": "clockwise", "G3": "counter_clockwise"}[step["motion"]] != piece["kind"]:
            self.say(step, "kind of piece")
        if not near(flat(step["from"]), start) or not near(flat(step["to"]), piece["to_mm"]):
            self.say(step, f"ends: wanted {start} to {piece['to_mm']}")
        place, before = wanted(piece, start), -0.01
        for point in sampled(step, flat(step["from"])):
            off, along = place(point)
            if off > WITHIN or not before - 1e-3 <= along <= 1.01:
                self.say(step, f"off the path by {off}, at {along}")
                break
            before = along
        if self.heights and abs(step["to"]["z"] - leg["cut_height_mm"]) > WITHIN:
            self.say(step, "height")
        tenth = 0.1 * self.unit
        if not leg["feed_mm_min"] - tenth <= step["feed"] <= leg["feed_mm_min"] + 1e-6:
            self.say(step, f"feed, wanted {leg['feed_mm_min']}")
        if "height_on" in self.words and self.controlled != leg["height_control"]:
            self.say(step, "height control")
        self.piece += 1


def main():
    todo = list(cases())
    with concurrent.futures.ThreadPoolExecutor(4) as pool:
        programs = list(pool.map(lambda case: call(*case, "program"), todo))
        coupons = list(pool.map(lambda case: call(*case, "json"), todo))
    made = [i for i, (code, _, _) in enumerate(programs) if code == 0]
    node = subprocess.run(["node", str(ROOT / "tests/oracle/gcode/interpret.cjs")], check=True, capture_output=True,
                          input=json.dumps([programs[i][1] for i in made]).encode())
    steps = dict(zip(made, json.loads(node.stdout)))
    for i, (kind, units, workbook) in enumerate(todo):
        code, out, err = programs[i]
        if code == 0:
            wrong = Check(json.loads(coupons[i][1]), workbook, units).run(steps[i])
        else:
            words = workbook["shop"]["controller"]
            known = err.startswith(("job.thickness_mm: ", "pierce_delay_s: ")) or \
                (kind == "heights" and not words.get("z_words", True) and err.startswith("shop.controller.z_words: "))
            thin = workbook["job"]["material"] in CUT_THIN and workbook["job"]["thickness_mm"] <= 8
            wrong = [] if code == 2 and not out and err.count("\n") == 1 and known and \
                not (thin and not err.startswith("shop.")) else [f"exit {code}: {err}"]
        (FAILED if wrong else PASSED).append(i)
        if wrong:
            print(f"FAILED {kind} {units} {workbook['job']} {workbook['shop']}: {len(wrong)} faults, first: {wrong[0]}")
    counts = {kind: sum(1 for i in made if todo[i][0] == kind) for kind in KINDS}
    print(f"programs made and followed: {counts}")
    if min(counts.values()) < 50:
        FAILED.append("too few programs")
    print(f"{len(PASSED)} passed, {len(FAILED)} failed")
    return bool(FAILED)


sys.exit(main())
