#!/usr/bin/python3
"""The circuit's solved voltage and the most it delivers, against SciPy's root finder. The highest current: circuit_rules.py.

usage: supply_line.py [CORE_LIBRARY]     libtorchside_core.a, build/native/libtorchside_core.a when absent

10 000 random circuits, fixed seed. Resistances come from assets/data/conductors.json again; nothing of the closed forms
of core/supply is repeated here: the voltage at the machine is the root of  V + wires * R * I(V) = source,  I = S / V,
between the voltage of most power and the source; currents are roots over the output. 1e-9 relative; next to the point of
most power, where the root is double and a rounding of e in the power moves it by sqrt(e), what that costs is allowed on top.
Last line: N passed, N failed. Exit 1 on any failure.
"""
import json
import math
import os
import pathlib
import random
import subprocess
import sys
import tempfile

from scipy.optimize import brentq

ROOT = pathlib.Path(__file__).resolve().parents[2]
CIRCUITS = 10_000
TOLERANCE = 1e-9
TIGHT = dict(xtol=1e-300, rtol=8.9e-16, maxiter=500)
RUNS, CORDS = (14, 12, 10, 8, 6, 4, 3, 2), (18, 16, 14, 12, 10, 8, 6, 4, 2)


def probe(library, folder):
    program = pathlib.Path(folder) / "supply_probe"
    subprocess.run([os.environ.get("CXX", "g++"), "-std=c++20", "-O1", "-ffp-contract=off", f"-I{ROOT}", f"-I{ROOT}/build/native/generated",
                    str(ROOT / "tests/oracle/supply_probe.cpp"), str(library), "-o", str(program)], check=True)
    return program


class Circuit:
    def __init__(self, rng, ohm_per_m):
        self.line = rng.choice((120, 208, 230, 240, 400)) * rng.uniform(0.95, 1.05)
        self.phases = rng.choice((1, 1, 3))
        self.run_awg, self.run = rng.choice(RUNS), rng.uniform(0, 200)
        self.cord_awg, self.cord = (rng.choice(CORDS), rng.uniform(0, 100)) if rng.random() < 0.5 else (0, 0.0)
        self.other = rng.choice((0.0, rng.uniform(0, 30)))
        self.share = rng.uniform(0.3, 0.95)
        self.offset, self.per_a = rng.uniform(60, 140), rng.uniform(0.0, 1.5)
        self.output, self.breaker = rng.uniform(5, 120), rng.uniform(10, 100)
        # One wire of a single-phase circuit carries the current there, the other back; three phases need none back, and
        # a voltage between lines is sqrt(3) times that of a phase.
        wires = 2 if self.phases == 1 else math.sqrt(3)
        self.r_run = wires * ohm_per_m[self.run_awg] * self.run
        self.r_all = self.r_run + (wires * ohm_per_m[self.cord_awg] * self.cord if self.cord_awg else 0.0)
        self.source = self.line - self.r_run * self.other
        self.root = 1 if self.phases == 1 else math.sqrt(3)

    def text(self):
        return " ".join(repr(x) for x in (self.line, self.phases, self.run_awg, self.run, self.cord_awg, self.cord, self.other,
                                          self.share, self.offset, self.per_a, self.output, self.breaker))

    def power(self, output):
        return (self.offset + self.per_a * output) * output / self.share

    def current(self, output):
        """Input current for an output, or None where the wires cannot bring it."""
        power = self.power(output) / self.root

        def excess(volts):
            return volts + self.r_all * power / volts - self.source

        lowest = math.sqrt(self.r_all * power) if self.r_all > 0 else 1e-9 * self.source  # where excess is least
        if self.source <= 0 or lowest > self.source or excess(lowest) > 0:
            return None
        volts = brentq(excess, lowest, self.source, **TIGHT)
        return power / volts

    def nearness(self, output):
        """0 at the point of most power, 1 far from it."""
        return 1 - 4 * self.r_all * self.power(output) / self.root / self.source**2 if self.source > 0 else 0

    def largest(self):
        low, high = 0.0, self.output
        for _ in range(200):
            middle = (low + high) / 2
            low, high = (middle, high) if self.current(middle) is not None else (low, middle)
        return low


def off(found, wanted):
    return abs(found - wanted) / max(abs(wanted), 1e-12)


def faults(circuit, delivered, current, outlet, machine, largest):
    wanted = circuit.current(circuit.output)
    nearness = circuit.nearness(circuit.output)
    if abs(nearness) < 1e-13:
        return  # either answer is right
    if (wanted is not None) != bool(delivered):
        yield f"delivered {delivered}, oracle {wanted}"
        return
    if wanted is not None:
        allowed = max(TOLERANCE, 4e-15 / nearness)
        volts = circuit.source - circuit.r_all * wanted
        for name, found, right in (("input", current, wanted), ("machine", machine, volts),
                                   ("outlet", outlet, circuit.source - circuit.r_run * wanted)):
            if off(found, right) > allowed:
                yield f"{name} {found!r}, oracle {right!r}, nearness {nearness:.1e}"
    elif off(largest, circuit.largest()) > TOLERANCE and circuit.source > 0:
        yield f"largest {largest!r}, oracle {circuit.largest()!r}"


def main():
    library = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / "build/native/libtorchside_core.a")
    if not library.exists():
        sys.exit(f"{library}: not there; build the native preset first")
    table = json.loads((ROOT / "assets/data/conductors.json").read_text(encoding="utf-8"))["rows"]
    ohm_per_m = {row["awg"]: row["ohm_per_kft"] / 304.8 for row in table}
    rng = random.Random(20240501)
    circuits = [Circuit(rng, ohm_per_m) for _ in range(CIRCUITS)]
    with tempfile.TemporaryDirectory() as folder:
        answer = subprocess.run([probe(library, folder)], input="\n".join(c.text() for c in circuits) + "\n",
                                capture_output=True, text=True, check=True).stdout.splitlines()
    if len(answer) != CIRCUITS:
        sys.exit(f"{len(answer)} answers for {CIRCUITS} circuits")
    failed = 0
    solved = 0
    for circuit, line in zip(circuits, answer):
        found = [float(word) for word in line.split()]
        solved += bool(found[0])
        wrong = list(faults(circuit, *found))
        failed += bool(wrong)
        if wrong and failed <= 20:
            print(circuit.text(), *wrong, sep="\n  ")
    print(f"{solved} of {CIRCUITS} circuits deliver")
    print(f"{CIRCUITS - failed} passed, {failed} failed")
    sys.exit(1 if failed or not 0.3 < solved / CIRCUITS < 0.95 else 0)


main()
