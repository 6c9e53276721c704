#!/usr/bin/python3
"""A second implementation of the level-1 cut model, in mpmath, against the native command line.

usage: physics.py [TORCHSIDE]      the command, build/native/torchside when absent

1. every row of tests/published/conduction_rows.inc (Bessel functions, F, G) is recomputed with 60 digits;
2. `torchside physics` on 2000 random plates, fixed seed, to 1e-9 relative, refusals included.
Last line: N passed, N failed. Exit 1 on any failure.
"""
import json
import pathlib
import random
import re
import subprocess
import sys

import mpmath as mp

import _metals
from _metals import CUTS_AS, METALS

ROOT = pathlib.Path(__file__).resolve().parents[2]
PLATES = 2000
TOLERANCE = mp.mpf("1e-9")
FIT = [mp.mpf(c) for c in ("1.41169109", "0.31112078", "0.00906904", "-0.00144780", "-0.00012903")]
FIT_LOW, FIT_HIGH, HIGH_EXPONENT = mp.mpf("0.003"), mp.mpf(12), mp.mpf("0.33")
ROOM_K = 293
SLOWEST = mp.mpf("1e-3") / 60000  # m/s, below which the model refuses

mp.mp.dps = 60


def exact_shape(p):
    """F(p), by the series in the header of core/cut/conduction.hpp."""
    total = mp.mpf(0)
    for n in range(200):
        slope = -(mp.besselk(n - 1, p) + mp.besselk(n + 1, p)) / 2
        term = (1 if n == 0 else 2) * (-1) ** n * mp.besseli(n, p) ** 2 * (-slope / mp.besselk(n, p))
        total += term
        if n > p and abs(term) < abs(total) * mp.mpf(10) ** -40:
            break
    return 2 * mp.pi * p * total


def fitted_shape(p):
    log_p = mp.log(p)
    return mp.exp(sum(c * log_p**i for i, c in enumerate(FIT)))


def slow_shape(p):
    return 2 * mp.pi / (mp.log(2 / p) - mp.euler) - 4 * p


def shape(p):
    if p < FIT_LOW:
        return slow_shape(p) * fitted_shape(FIT_LOW) / slow_shape(FIT_LOW)
    if p > FIT_HIGH:
        return fitted_shape(FIT_HIGH) * (p / FIT_HIGH) ** HIGH_EXPONENT
    return fitted_shape(p)


def table(name):
    return json.loads((ROOT / "assets" / "data" / f"{name}.json").read_text(encoding="utf-8"))["rows"]


def properties(metal):
    return {r["field"]: mp.mpf(r["value"]) for r in _metals.table("metal_properties") if r["metal"] == CUTS_AS.get(metal, metal)}


def terms(metal):
    return {
        r["field"]: mp.mpf(r["value"])
        for r in (*table("cut_terms"), *_metals.table("metal_terms"))
        if r["set"] in (None, "small_air_torch") and r["metal"] in (None, CUTS_AS.get(metal, metal))
    }


def balance(metal, t_mm, i_a, arc_v, bore_mm):
    """The answer as a dict; None where the model refuses."""
    m, t = PROPERTIES[metal], TERMS[metal]
    t_mm, i_a = mp.mpf(t_mm), mp.mpf(i_a)
    arc = mp.mpf(arc_v) if arc_v is not None else t["arc_offset"] + t["arc_per_a"] * i_a + t["arc_per_mm"] * t_mm
    bore = mp.mpf(bore_mm) if bore_mm is not None else mp.sqrt(4 * i_a / (mp.pi * t["density"]))
    rise = m["melting_k"] - ROOM_K
    enthalpy = t["superheat"] * (m["heat_j_kg_k"] * rise + m["fusion_j_kg"]) - t["burnt_share"] * t["burning_heat"]
    width, thickness = t["melt_width"] * bore / 1000, t_mm / 1000
    melt = thickness * width * m["density_kg_m3"] * enthalpy
    loss = thickness * t["wall"] * m["conductivity_w_m_k"] * rise
    p_slope = width * m["density_kg_m3"] * m["heat_j_kg_k"] / (4 * m["conductivity_w_m_k"])
    heat = t["efficiency"] * arc * i_a

    def excess(v):
        return melt * v + loss * shape(p_slope * v) - heat

    if excess(SLOWEST) > 0:
        return None
    ends = (mp.log(SLOWEST), mp.log(heat / melt))
    v = mp.exp(mp.findroot(lambda u: excess(mp.exp(u)) / heat, ends, solver="anderson", tol=mp.mpf(10) ** -36))
    return {
        "feed_mm_min": v * 60000,
        "arc_v": arc,
        "kerf_mm": width * 1000,
        "kerf_to_offset_mm": t["kerf_width"] * bore,
        "power_w": arc * i_a,
        "melt_w": melt * v,
        "conduction_w": loss * shape(p_slope * v),
    }


def check_rows():
    failures, count = [], 0
    text = (ROOT / "tests" / "published" / "conduction_rows.inc").read_text(encoding="utf-8")
    for line in re.findall(r"^\{(.*)\},$", text, re.M):
        p, *kept = (mp.mpf(cell.strip()) for cell in line.split(","))
        p = mp.mpf(float(p))
        f = exact_shape(p)
        wanted = (mp.besseli(0, p), mp.besseli(3, p), mp.besselk(0, p), mp.besselk(3, p), f, f - 4 * p)
        count += 1
        if any(abs(a / b - 1) > mp.mpf(10) ** -16 for a, b in zip(kept, wanted)):
            failures.append(f"conduction_rows.inc, p = {mp.nstr(p, 8)}: not what mpmath gives")
    return count, failures


def random_plates():
    rng = random.Random(20240605)
    for _ in range(PLATES):
        metal = rng.choice(METALS)
        thickness = 0.3 * (60 / 0.3) ** rng.random()
        current = rng.uniform(10, 200)
        arc = rng.uniform(60, 250) if rng.random() < 0.5 else None
        bore = rng.uniform(0.4, 4) if rng.random() < 0.5 else None
        yield metal, thickness, current, arc, bore


def command_line(torchside, metal, thickness, current, arc, bore):
    args = [torchside, "physics", "--material", metal, "--thickness_mm", repr(thickness), "--current_a", repr(current)]
    if arc is not None:
        args += ["--arc_v", repr(arc)]
    if bore is not None:
        args += ["--bore_mm", repr(bore)]
    done = subprocess.run(args, capture_output=True, text=True, check=False)
    if done.returncode == 2:
        return None
    return json.loads(done.stdout)


def check_plates(torchside):
    failures, worst = [], mp.mpf(0)
    mp.mp.dps = 25
    for plate in random_plates():
        wanted, got = balance(*plate), command_line(torchside, *plate)
        if (wanted is None) != (got is None):
            failures.append(f"{plate}: refused by one of the two only")
            continue
        if wanted is None:
            continue
        error = max(abs(mp.mpf(got[k]) / wanted[k] - 1) for k in wanted)
        worst = max(worst, error)
        if error > TOLERANCE:
            failures.append(f"{plate}: off by {mp.nstr(error, 3)}")
    print(f"{PLATES} plates, largest relative error {mp.nstr(worst, 3)}")
    return PLATES, failures


def main():
    torchside = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "build" / "native" / "torchside")
    results = [check_rows(), check_plates(torchside)]
    failures = [f for _, found in results for f in found]
    for failure in failures[:20]:
        print(failure, file=sys.stderr)
    total = sum(n for n, _ in results)
    print(f"{total - len(failures)} passed, {len(failures)} failed")
    sys.exit(1 if failures else 0)


PROPERTIES = {metal: properties(metal) for metal in METALS}
TERMS = {metal: terms(metal) for metal in METALS}
main()
