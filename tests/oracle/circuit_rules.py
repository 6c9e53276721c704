#!/usr/bin/python3
"""The rules of a circuit, United States (NEC) and IEC, a second time and another way, on 100 000 random circuits.

usage: circuit_rules.py [CORE_LIBRARY]     libtorchside_core.a, build/native/libtorchside_core.a when absent

Tables are read from assets/data again; no code of core/supply is used. The core finds the highest advised current by halving on the
question whether every limit is kept; here each limit is turned into an output current by itself (closed forms; the effective current by
a root in duty), and the least of them is it. Compared: verdict and trip time, every check, the highest current to 1e-9 and which point
caps it, the least wires and cords. Where two limits lie within 1e-9, or a figure within 1e-9 of its limit, either answer is right.
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

ROOT = pathlib.Path(__file__).resolve().parents[2]
CIRCUITS = 100_000
NEAR = 1e-9
US, UK, EU, OTHER = range(4)
HOLDS, MAY_TRIP, HOUR, SOON, CANNOT = range(5)
CAPS = ("machine", "breaker", "run", "cord", "plug", "generator", "voltage")
KINDS = ("drop low_line plug_load run_device run_load cord_load welder_device welder_run generator nameplate breaker_load plug plug_fit "
         "welder_size").split()
LEAST_A = 1e-6


def rows(name):
    return json.loads((ROOT / f"assets/data/{name}.json").read_text(encoding="utf-8"))["rows"]


WIRE = {r["awg"]: r for r in rows("ampacity")}
OHM = {r["awg"]: r["ohm_per_kft"] / 304.8 for r in rows("conductors")}
CORD = {r["awg"]: r for r in rows("cords")}
METRIC, METRIC_CORD = rows("metric_wires"), rows("metric_cords")
AIR = rows("ambient_factors")
PLUGS = rows("plugs")
MOTORS, TIMES, CURVES = rows("motors"), rows("breaker_times"), rows("breaker_curves")
MULTIPLIER = rows("welder_multipliers")
STANDARD = sorted(r["rating"] for r in rows("standard_breakers"))
RUN_GAUGES, CORD_GAUGES = sorted(WIRE, reverse=True), sorted(CORD, reverse=True)


def near(a, b):
    return a == b if math.isinf(a) or math.isinf(b) else abs(a - b) <= NEAR * max(abs(a), abs(b), 1e-9)


def within(a, b):
    """a <= b: True, False, or None where they are too close to tell."""
    return None if near(a, b) and a != b else a <= b


def both(*answers):
    return False if False in answers else None if None in answers else True


def air(column, celsius):
    return next((r for r in AIR if celsius <= r["up_to_c"]), AIR[-1])[column]


def by_section(table, mm2, key):
    return max([r[key] for r in table if r["mm2"] <= mm2], default=0.0)


def next_standard(limit):
    """The largest device of 200 %: a standard rating, or the next one where the limit is none."""
    if limit in STANDARD:
        return limit
    return next((r for r in STANDARD if r > limit), limit)


class Circuit:
    def __init__(self, rng):
        r = rng
        self.country = r.randrange(4)
        self.rule = r.choice((0, 0, 1, 2, 3))
        self.line = r.choice((120.0, 208.0, 230.0, 240.0, 400.0))
        self.breaker = r.choice((10.0, 13.0, 15.0, 16.0, 20.0, 25.0, 30.0, 32.0, 40.0, 50.0, 63.0, 80.0, 100.0, r.uniform(10, 100)))
        self.awg = r.choice(RUN_GAUGES)
        self.mm2 = r.choice((1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, r.uniform(1, 70))) if r.random() < 0.45 else 0.0
        self.run = r.uniform(0, 60)
        self.marked = r.randrange(2)
        self.ambient = r.choice((20.0, 30.0, 35.0, 40.0, r.uniform(-20, 55)))
        self.plug = r.randrange(len(PLUGS)) if r.random() < 0.2 else -1
        self.cord_awg = r.choice(CORD_GAUGES) if r.random() < 0.3 else 0
        self.cord_mm2 = r.choice((0.5, 1.0, 1.5, 2.5, 4.0, r.uniform(0.5, 16))) if r.random() < 0.3 else 0.0
        self.cord = r.uniform(0, 30)
        self.other = r.choice((0.0, 0.0, r.uniform(0, 25)))
        self.hp = r.uniform(0.5, 10) if r.random() < 0.2 else 0.0
        self.va = math.exp(r.uniform(math.log(2000), math.log(60000))) if r.random() < 0.15 else 0.0
        self.dedicated = r.randrange(2)
        self.phases = 3 if self.line == 400 and r.random() < 0.8 else r.choice((1, 1, 1, 3))
        self.efficiency, self.factor, self.corrected = r.uniform(0.6, 0.95), r.uniform(0.5, 1), int(r.random() < 0.3)
        self.max_a = r.uniform(20, 120)
        self.duty, self.duty_a = r.uniform(0.05, 1), self.max_a * r.choice((1.0, r.uniform(0.5, 1)))
        self.idle = r.uniform(0, 3)
        self.i1max = r.uniform(5, 80) if r.random() < 0.2 else 0.0
        self.i1eff = r.uniform(5, 50) if r.random() < 0.2 else 0.0
        self.output = r.uniform(0.1, 1) * self.max_a
        self.offset, self.per_a = r.uniform(60, 140), r.uniform(0, 1.5)
        self.prepare()
        fitting = [b for b in (15.0, 16.0, 20.0, 30.0, 32.0, 40.0, 50.0, 63.0, 80.0) if b <= self.device]
        if fitting and r.random() < 0.67: # as most shops have it
            self.breaker = r.choice(fitting[-2:])

    def text(self):
        names = ("country rule line breaker awg mm2 run marked ambient plug cord_awg cord_mm2 cord other hp va dedicated phases efficiency "
                 "factor corrected duty duty_a max_a idle i1max i1eff output offset per_a")
        return " ".join(repr(getattr(self, name)) for name in names.split())

    def prepare(self):
        self.nec = self.country == US or (self.country == OTHER and self.rule == 0)
        self.alone = bool(self.dedicated and self.nec)  # Article 630
        three = self.phases == 3
        self.key = "three" if three else "two"
        self.root = math.sqrt(3) if three else 1.0  # volts between lines times amperes times this is the power
        wires = math.sqrt(3) if three else 2.0
        ohm = 0.0225 * self.run / self.mm2 if self.mm2 else OHM[self.awg] * self.run
        cord = 0.0225 * self.cord / self.cord_mm2 if self.cord_mm2 else OHM[self.cord_awg] * self.cord if self.cord_awg else 0.0
        self.r_run, self.r = wires * ohm, wires * (ohm + cord)
        self.motor = self.motor_a()
        self.rest = self.other + self.motor
        self.e = self.line - self.r_run * self.rest
        self.share, self.plate = self.conversion()
        column = "c70" if self.mm2 else "c75" if self.marked else "c60"
        self.factor_run, self.factor_cord = air(column, self.ambient), air("c60", self.ambient)
        wire = WIRE[self.awg]
        self.carries = self.factor_run * (by_section(METRIC, self.mm2, self.key) if self.mm2 else wire["c75" if self.marked else "c60"])
        self.cord_carries = None
        if self.cord_mm2 or self.cord_awg:
            table = by_section(METRIC_CORD, self.cord_mm2, self.key) if self.cord_mm2 else CORD[self.cord_awg][self.key]
            self.cord_carries = self.factor_cord * table
        if self.alone:
            self.device = max(2 * self.carries, next_standard(2 * self.carries))
        elif self.mm2 or not self.nec or wire["device_limit"] is None:
            self.device = self.carries
        else:
            self.device = min(self.carries, wire["device_limit"])
        self.extra = 0.25 * self.motor if self.nec else 0.0  # 430.24
        self.row = PLUGS[self.plug] if self.plug >= 0 else None

    def motor_a(self):
        if not self.hp:
            return 0.0
        row = next((m for m in MOTORS if m["hp"] >= self.hp), MOTORS[-1])
        return row["a115"] if self.line <= 150 else row["a230"] * (1.0 if 220 <= self.line <= 250 else 230 / self.line)

    def load_volts(self, output):
        return 80 + 0.4 * output if output <= 165 else 130 + 0.1 * output

    def conversion(self):
        share = self.efficiency * (0.99 if self.corrected else self.factor)
        if not self.i1max:
            return share, 0.0
        plate = self.load_volts(self.max_a) * self.max_a / (self.root * self.line * self.i1max)
        return (share if plate > 1 else plate), plate

    # ---- one output

    def current(self, output):
        """The machine's current, or None where the wires cannot bring it."""
        power = (self.offset + self.per_a * output) * output / self.share / self.root
        square = self.e * self.e - 4 * self.r * power
        if self.e <= 0 or square < 0:
            return None
        return 2 * power / (self.e + math.sqrt(square))

    def effective(self, current, output):
        if self.i1eff:
            return min(self.i1eff, current)
        duty, idle = min(1.0, self.duty * (self.duty_a / output) ** 2), min(self.idle, current)
        return math.sqrt(current * current * duty + idle * idle * (1 - duty))

    # ---- the other way round

    def output_for(self, current):
        """The output at which the machine takes this current; inf where it never does, 0 where nothing is left."""
        if self.e <= 0 or current <= 0:
            return 0.0
        if self.r > 0:
            current = min(current, self.e / (2 * self.r))
        watts = self.share * self.root * (self.e - self.r * current) * current
        return 2 * watts / (self.offset + math.sqrt(self.offset**2 + 4 * self.per_a * watts))

    def limits(self):
        """Each point's own output; none at all where the circuit is unsound."""
        spare = self.e - 0.9 * self.line
        found = {"voltage": self.output_for(spare / self.r) if self.r > 0 else math.inf,
                 "breaker": self.output_for(self.breaker - self.rest)}
        if self.va:
            found["generator"] = self.output_for(0.8 * self.va / (self.root * self.line) - self.rest)
        left = self.carries - self.rest - self.extra
        found["run"] = self.output_effective(left) if self.alone else self.output_for(left)
        if self.cord_carries is not None:
            found["cord"] = self.output_for(self.cord_carries)
        if self.row:
            found["plug"] = self.output_for(self.row["amps"])
        return found

    def output_effective(self, limit):
        if limit <= 0:
            return 0.0
        low, high = 0.0, self.max_a

        def over(output):
            now = self.current(output)
            return now is None or self.effective(now, output) > limit

        if not over(high):
            return math.inf
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (low, middle) if over(middle) else (middle, high)
        return low

    # ---- what is said

    def sound(self):
        """(breaker fits the run, plug fits supply, plug fits breaker)"""
        fits = True if not self.row else abs(self.line / self.row["volts"] - 1) <= 0.15 and self.row["phases"] == self.phases
        takes = not self.row or self.alone or self.breaker <= self.row["breaker_max"]
        return within(self.breaker, self.device), fits, takes

    def advised(self):
        """(current or None, caps that may be named)"""
        breaker, fits, takes = self.sound()
        if breaker is None:
            return "any", CAPS
        if not (breaker and fits and takes):
            return None, ("plug" if breaker else "run",)
        limits = {**self.limits(), "machine": self.max_a}
        least = min(limits.values())
        if near(least, LEAST_A):
            return "any", CAPS
        caps = tuple(name for name, value in limits.items() if value <= least * (1 + 1e-8) + 1e-12 or (least <= LEAST_A and value <= LEAST_A))
        return (None if least < LEAST_A else least), caps

    def verdict(self):
        """(verdict, seconds), None for a verdict where it is too close to tell."""
        now = self.current(self.output)
        taken = now if now is not None else (self.e / (2 * self.r) if self.e > 0 else 0.0)
        total = taken + self.rest
        m, points = total / self.breaker, self.points()
        own, seconds = HOLDS, -1.0
        if any(near(m, x) for x in (1.0, points[0]["multiple"], points[1]["multiple"])) and m != 1.0:
            return None, None
        if m > 1:
            own = MAY_TRIP
        if m >= points[0]["multiple"]:
            own, seconds = HOUR, points[0]["seconds"]
        if m >= points[1]["multiple"]:
            own, seconds = SOON, points[1]["seconds"]
            to = CURVES[self.rule]["magnetic_to"]
            if to and m >= to:
                seconds = 0.1
        full = self.va / (self.root * self.line) if self.va else math.inf
        if near(total, full) or near(total, 0.8 * full):
            return None, None
        if now is None or total > full:
            return CANNOT, -1.0
        return (max(own, MAY_TRIP) if total > 0.8 * full else own), seconds

    def points(self):
        table = [t for t in TIMES if t["family"] == ("ul489" if self.rule == 0 else "iec60898")]
        rating = min(self.breaker, max(t["up_to"] for t in table))
        return sorted((t for t in table if t["above"] < rating <= t["up_to"]), key=lambda t: t["multiple"])

    def rated(self):
        if self.i1max and self.plate <= 1:
            return self.i1max
        return self.load_volts(self.max_a) * self.max_a / self.share / (self.root * self.line)

    def welder_size(self):
        code = self.i1eff
        if not code:
            row = [m for m in MULTIPLIER if m["duty"] >= self.duty * 100 - 1e-9][-1]
            code = row["plain"] * self.load_volts(self.duty_a) * self.duty_a / self.share / (self.root * self.line)
        return code + self.rest + self.extra

    def checks(self):
        """kind -> True, False, or None where it is too close to tell."""
        now = self.current(self.output)
        power = (self.offset + self.per_a * self.output) * self.output / self.share
        asked = now if now is not None else power / (self.root * self.line)
        taken = now if now is not None else (self.e / (2 * self.r) if self.e > 0 else 0.0)
        volts = self.e - self.r * taken if self.e > 0 else 0.0
        outlet = self.e - self.r_run * taken if self.e > 0 else 0.0
        breaker, fits, takes = self.sound()
        out = {"run_device": breaker}
        run = (self.effective(taken, self.output) if self.alone else asked) + self.rest + self.extra
        out["welder_run" if self.alone else "run_load"] = within(run, self.carries)
        if self.row:
            out["plug_fit"] = fits and takes
            out["plug"] = within(asked, self.row["amps"])
        if self.cord_carries is not None:
            out["cord_load"] = within(asked, self.cord_carries)
        total = taken + self.rest
        if not self.nec:
            delivered = now is not None and (not self.va or within(total, self.va / (self.root * self.line)))
            out["breaker_load"] = both(delivered, within(total, self.breaker))
        if self.nec and not self.dedicated and self.breaker <= 30:
            most = 0.8 * min(self.breaker, self.row["amps"] if self.row else math.inf)
            out["plug_load"] = within(self.rated(), most)
        if self.va:
            out["generator"] = within(total, 0.8 * self.va / (self.root * self.line))
        low = within(0.9 * self.line, volts)
        if low is not True:
            out["low_line"] = low
        lost, lost_run = (self.line - volts) / self.line, (self.line - outlet) / self.line
        out["drop"] = both(within(lost, 0.05), within(lost_run, 0.03)) if self.nec else within(lost, 0.05)
        if self.alone:
            out["welder_size"] = within(self.welder_size(), self.carries)
            out["welder_device"] = within(self.breaker, max(2 * self.rated(), next_standard(2 * self.rated())))
        if self.i1max and (self.plate > 1 or 0 < self.plate < 0.4):
            out["nameplate"] = False
        self.asked, self.run_asked = asked, run
        return out

    def least(self):
        """Least wires: (75 C, 60 C, section or None when the run is by gauge, cord gauge, cord section); needs checks() first."""
        carries = max(self.run_asked, self.welder_size(), self.breaker / 2) if self.alone else self.run_asked

        def run(column):
            factor = air(column, self.ambient)
            for awg in RUN_GAUGES:
                wire = WIRE[awg]
                device = min(factor * wire[column], wire["device_limit"] or math.inf)
                if factor * wire[column] >= carries and (self.alone or device >= self.breaker):
                    return awg
            return 0

        def section(table, load, factor):
            return next((r["mm2"] for r in table if factor * r[self.key] >= load), 0)
        mm2 = section(METRIC, carries if self.alone else max(self.breaker, carries), air("c70", self.ambient)) if self.mm2 else 0
        cord = next((awg for awg in CORD_GAUGES if self.factor_cord * CORD[awg][self.key] >= self.asked), 0)
        return run("c75"), run("c60"), mm2, cord, section(METRIC_CORD, self.asked, self.factor_cord)


def faults(circuit, words):
    verdict, within_s, advised, cap = int(words[0]), float(words[1]), float(words[2]), CAPS[int(words[3])]
    wanted, seconds = circuit.verdict()
    if wanted is not None and (wanted != verdict or seconds != within_s):
        yield f"verdict {verdict} within {within_s}, oracle {wanted} within {seconds}"
    most, caps = circuit.advised()
    if most != "any":
        if (most is None) != (advised < 0):
            yield f"advised {advised!r}, oracle {most!r} by {caps}"
        elif most is not None and abs(advised - most) > NEAR * most:
            yield f"advised {advised!r} by {cap}, oracle {most!r} by {caps}"
        elif cap not in caps:
            yield f"capped by {cap}, oracle {caps}, at {most!r}"
    checks = circuit.checks()
    told = {KINDS[int(word.split(":")[0])]: word.endswith("1") for word in words[9:]}
    for kind in checks.keys() | told.keys():
        if kind == "low_line" and checks.get(kind, True) is None:
            continue
        if kind not in checks or kind not in told or (checks[kind] is not None and checks[kind] != told[kind]):
            yield f"check {kind}: {told.get(kind)}, oracle {checks.get(kind)}"
    least = tuple(float(word) for word in words[4:9])
    if least != tuple(float(x) for x in circuit.least()):
        yield f"least wires {least}, oracle {circuit.least()}"


def probe(library, folder):
    program = pathlib.Path(folder) / "rules_probe"
    subprocess.run([os.environ.get("CXX", "g++"), "-std=c++20", "-O1", "-ffp-contract=off", f"-I{ROOT}", f"-I{ROOT}/build/native/generated",
                    str(ROOT / "tests/oracle/rules_probe.cpp"), str(library), "-o", str(program)], check=True)
    return program


def main():
    library = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / "build/native/libtorchside_core.a")
    assert library.exists(), f"{library}: not there; build the native preset first"
    rng = random.Random(20261129)
    circuits = [Circuit(rng) for _ in range(CIRCUITS)]
    with tempfile.TemporaryDirectory() as folder:
        answer = subprocess.run([probe(library, folder)], input="\n".join(c.text() for c in circuits) + "\n",
                                capture_output=True, text=True, check=True).stdout.splitlines()
    assert len(answer) == CIRCUITS, f"{len(answer)} answers"
    failed, capped = 0, dict.fromkeys(("none",) + CAPS, 0)
    for circuit, line in zip(circuits, answer):
        words = line.split()
        capped["none" if float(words[2]) < 0 else CAPS[int(words[3])]] += 1
        wrong = list(faults(circuit, words))
        failed += bool(wrong)
        if wrong and failed <= 20:
            print(circuit.text(), line, *wrong, sep="\n  ")
    print("advised, by what caps it:", ", ".join(f"{name} {count}" for name, count in capped.items()))
    few = [name for name, count in capped.items() if count < CIRCUITS // 1000]
    print("too few:" if few else "enough of each", *few)
    print(f"{CIRCUITS - failed} passed, {failed} failed")
    sys.exit(1 if failed or few else 0)


main()
