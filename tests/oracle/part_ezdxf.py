#!/usr/bin/python3
"""Drawings written by ezdxf, read by `torchside part`. usage: tests/oracle/part_ezdxf.py [TORCHSIDE]

- every entity, R12 to 2018, in millimetres and inches, against closed forms, or shapely on ezdxf's own flattening
- random parts, whole or as loose lines and arcs in any order and direction; blocks nested, scaled, turned, in arrays
- ends just within and just beyond the tolerance, pieces twice, reversed, over each other, too short
- the flange of 120 mm drawn in inches
- 20 broken drawings: each a named error, exit 2
- 100 000 lines, 16 MB: read, joined and nested at least 6 times faster than by ezdxf and shapely in the same run
Last line: N passed, N failed. Exit 1 on any failure.
"""
import json
import math
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import time

import ezdxf
from scipy.interpolate import CubicSpline
from shapely.geometry import Polygon
from shapely.ops import polygonize

import _drawings as dr

ROOT = pathlib.Path(__file__).resolve().parents[2]
FLATTEN_MM = 0.01
TOTALS = {True: 0, False: 0}
TORCHSIDE = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "build/native/torchside")


def check(good, title, detail=""):
    TOTALS[bool(good)] += 1
    if not good:
        print(f"FAILED {title}: {detail}")


def part(file, *options):
    done = subprocess.run([TORCHSIDE, "part", str(file), *options], capture_output=True, timeout=60, text=True)
    if done.returncode != 0:
        return {"error": done.stderr, "exit": done.returncode, "codes": [], "area_mm2": math.nan, "cut_mm": math.nan,
                "contours": []}
    answer = json.loads(done.stdout)
    answer["codes"] = [p["code"] for p in answer["problems"]]
    return answer


def near(a, b, relative):
    return abs(a - b) <= relative * max(abs(a), abs(b))


def agree(title, answer, area, length, relative=1e-9, codes=()):
    check(near(answer["area_mm2"], area, relative), f"{title}: area", f"{answer['area_mm2']!r}, not {area!r} {answer.get('error')}")
    check(near(answer["cut_mm"], length, relative), f"{title}: length", f"{answer['cut_mm']!r}, not {length!r}")
    check(sorted(answer["codes"]) == sorted(codes), f"{title}: problems", answer["codes"])


def natural(points):
    """The cubic through the points over chord length with natural ends: another program's may differ, the format does not say."""
    chords = [math.dist(a, b) for a, b in zip(points, points[1:])]
    at = [sum(chords[:k]) for k in range(len(points))]
    curve = CubicSpline(at, points, bc_type="natural")
    return Polygon([curve(at[-1] * k / 20_000) for k in range(20_000)])


def curve_agree(title, answer, polygons, scale, codes=()):
    """Curves: within the flattening tolerance along all of their length."""
    area = sum(p.area for p in polygons) * scale * scale
    length = sum(p.length for p in polygons) * scale
    check(abs(answer["area_mm2"] - area) <= FLATTEN_MM * length * 0.2, f"{title}: area", f"{answer['area_mm2']}, not {area}")
    check(near(answer["cut_mm"], length, 5e-4), f"{title}: length", f"{answer['cut_mm']}, not {length}")
    check(answer["codes"] == list(codes), f"{title}: problems", answer["codes"])


def entities(folder):
    slot = [(0, 0, 0), (3, 0, 1), (3, 1, 0), (0, 1, 1)]
    area, length = dr.bulge_area_length(slot)
    for number, version in enumerate(dr.VERSIONS):
        for unit, scale in (("mm", 1.0), ("inch", 25.4)):
            def saved(name, draw):
                doc, msp = dr.new(version, unit)
                entity = draw(msp)
                return part(dr.save(doc, folder, f"{name}_{version}_{unit}"), "--unit", unit), entity
            known = version != "R12" # its header has no unit
            def polyline(msp):
                add = msp.add_polyline2d if version == "R12" else msp.add_lwpolyline
                return add(slot, format="xyb", close=True)
            title = f"{version} {unit}"
            answer, _ = saved("circle", lambda m: m.add_circle((3, 4), 2.5))
            agree(f"{title} circle", answer, math.pi * (2.5 * scale)**2, math.pi * 5 * scale)
            answer, _ = saved("slot", polyline)
            agree(f"{title} polyline", answer, area * scale**2, length * scale)
            answer, _ = saved("loose", lambda m: dr.add_loose(m, random.Random(number), slot))
            agree(f"{title} lines and arcs", answer, area * scale**2, length * scale)
            if version == "R12":
                continue
            size = 40 / scale
            answer, e = saved("ellipse", lambda m: m.add_ellipse((1, 2), (size, size / 3), 0.4))
            curve_agree(f"{title} ellipse", answer, [dr.polygon_of(e)], scale)
            def half(m):
                e = m.add_ellipse((0, 0), (size, 0), 0.5, 0, math.pi)
                m.add_line((-size, 0), (size, 0))
                return e
            answer, e = saved("half", half)
            curve_agree(f"{title} half ellipse", answer, [dr.polygon_of(e)], scale)
            ring = [(size * math.cos(a), size * 0.7 * math.sin(a) + size * 0.2 * math.cos(3 * a))
                    for a in (2 * math.pi * k / 11 for k in range(11))]
            answer, e = saved("closed", lambda m: dr.add_closed_spline(m, ring))
            curve_agree(f"{title} closed spline", answer, [dr.polygon_of(e)], scale)
            answer, e = saved("rational", lambda m: dr.add_closed_spline(m, ring, 4, [1 + 0.5 * (k % 3) for k in range(11)]))
            curve_agree(f"{title} rational spline", answer, [dr.polygon_of(e)], scale)
            answer, e = saved("open", lambda m: m.add_open_spline(ring + ring[:1], degree=4))
            curve_agree(f"{title} open spline of degree 4", answer, [dr.polygon_of(e)], scale)
            answer, e = saved("fit", lambda m: m.add_spline(ring + ring[:1]))
            curve_agree(f"{title} fit points", answer, [natural(ring + ring[:1])], scale, ["fit_points"])
            if known:
                doc, msp = dr.new(version, unit)
                msp.add_circle((0, 0), 1)
                answer = part(dr.save(doc, folder, "unit"))
                agree(f"{title} unit from the header", answer, math.pi * scale**2, 2 * math.pi * scale)
                check(answer["unit"] == unit and answer["unit_known"], f"{title} unit", answer["unit"])


def units(folder):
    doc, msp = dr.new("R12")
    msp.add_circle((0, 0), 10)
    answer = part(dr.save(doc, folder, "r12"))
    check(answer["codes"] == ["unit_unknown"] and answer["unit_known"] is False, "R12 asks for its unit", answer)
    doc, msp = dr.new("R2010", None)
    msp.add_circle((0, 0), 10)
    check(part(dr.save(doc, folder, "none"))["codes"] == ["unit_unknown"], "no unit is asked for")
    for unit, scale in (("inch", 25.4), ("mm", 1.0)):
        doc, msp = dr.new("R2010", unit)
        dr.flange(msp, scale)
        answer = part(dr.save(doc, folder, "flange"), "--material", "mild_steel", "--thickness_mm", "6")
        agree(f"flange in {unit}", answer, dr.FLANGE_AREA, dr.FLANGE_LENGTH)
        check(answer["pierces"] == 6 and [c["role"] for c in answer["contours"]] == ["outer"] + ["inner"] * 5, "flange: roles")


def random_parts(folder):
    rng = random.Random(2026)
    for number in range(60):
        scale, unit = rng.choice(((1.0, "mm"), (25.4, "inch")))
        doc, msp = dr.new(rng.choice(dr.VERSIONS[1:]), unit)
        area = length = 0.0
        for cell in range(rng.randint(1, 12)):
            points = dr.rounded(rng, 100 * (cell % 4) / scale, 100 * (cell // 4) / scale, 45 / scale)
            if rng.random() < 0.5:
                dr.add_loose(msp, rng, points)
            else:
                shown = points if rng.random() < 0.5 else [
                    (*points[i][:2], -points[i - 1][2]) for i in range(len(points) - 1, -1, -1)]
                msp.add_lwpolyline(shown, format="xyb", close=True)
            a, l = dr.bulge_area_length(points)
            area, length = area + a, length + l
            for k in range(rng.randint(0, 2)): # holes
                r = rng.uniform(2, 4) / scale
                msp.add_circle((100 * (cell % 4) / scale + (10 * k - 5) / scale, 100 * (cell // 4) / scale), r * 0.8)
                area, length = area - math.pi * (0.8 * r)**2, length + 2 * math.pi * 0.8 * r
        agree(f"random part {number}", part(dr.save(doc, folder, "random")), area * scale**2, length * scale)


def blocks(folder):
    rng = random.Random(7)
    for number in range(30):
        doc, msp = dr.new(rng.choice(dr.VERSIONS[1:]))
        inner = doc.blocks.new("INNER", base_point=(rng.uniform(-5, 5), rng.uniform(-5, 5)))
        points = dr.rounded(rng, 0, 0, 3)
        dr.add_loose(inner, rng, points)
        outer = doc.blocks.new("outer block", base_point=(1, 2))
        s1, s2 = rng.uniform(0.5, 2), rng.uniform(0.5, 2)
        outer.add_blockref("INNER", (0, 0), dxfattribs={"rotation": rng.uniform(0, 360), "xscale": s1, "yscale": -s1})
        outer.add_blockref("INNER", (30, 0), dxfattribs={"rotation": 30, "xscale": s1, "yscale": s1})
        msp.add_blockref("outer block", (10, -20), dxfattribs={
            "rotation": rng.uniform(0, 360), "xscale": -s2, "yscale": s2, "column_count": 3, "row_count": 2,
            "column_spacing": 150, "row_spacing": 150})
        area, length = dr.bulge_area_length(points)
        agree(f"blocks {number}", part(dr.save(doc, folder, "blocks")), 12 * area * (s1 * s2)**2, 12 * length * s1 * s2)
    # Scaled unevenly, arcs become arcs of ellipses; a sheared square block in a turned one.
    doc, msp = dr.new()
    doc.blocks.new("DISC").add_circle((0, 0), 10)
    turned = doc.blocks.new("TURNED")
    turned.add_blockref("DISC", (0, 0), dxfattribs={"rotation": 30, "xscale": 2})
    msp.add_blockref("TURNED", (0, 0), dxfattribs={"yscale": 3})
    answer = part(dr.save(doc, folder, "uneven"))
    check(near(answer["area_mm2"], math.pi * 100 * 6, 1e-5) and answer["codes"] == [], "uneven scales", answer)


def nasty(folder):
    corners = [(0, 0), (50, 0), (50, 50), (0, 50)]

    def square(msp, gap=0.0):
        for i, (a, b) in enumerate(zip(corners, corners[1:] + corners[:1])):
            msp.add_line(a, b if i < 3 else (b[0], b[1] + gap))

    def saved(draw, *options):
        doc, msp = dr.new()
        draw(msp)
        return part(dr.save(doc, folder, "nasty"), *options)
    for tolerance in (0.01, 0.05, 0.5):
        for share, closed in ((0.999, True), (1.001, False)):
            answer = saved(lambda m: square(m, tolerance * share), "--join_mm", str(tolerance))
            wanted = [] if closed else ["open_contour"]
            check(answer["codes"] == wanted, f"gap {share} of {tolerance}", answer["codes"])
            check(answer["contours"][0]["role"] == ("outer" if closed else "open"), f"gap {share} of {tolerance}: role")
    cases = {
        "twice": (lambda m: (square(m), m.add_line((0, 0), (50, 0))), ["duplicate"], 1),
        "reversed": (lambda m: (square(m), m.add_line((50, 50), (50, 0))), ["duplicate"], 1),
        "arc twice": (lambda m: (m.add_arc((0, 0), 9, 0, 180), m.add_arc((0, 0), 9, 180, 0), m.add_arc((0, 0), 9, 180, 360)),
                      ["duplicate"], 1),
        "over each other": (lambda m: (square(m), m.add_line((10, 0), (30, 0))), ["open_contour", "overlap"], 2),
        "tiny": (lambda m: (square(m), m.add_line((9, 9), (9.01, 9))), ["short_piece"], 1),
        "open": (lambda m: (square(m), m.add_line((9, 9), (19, 9)), m.add_line((19, 9), (19, 19))), ["open_contour"], 2),
        "crossing": (lambda m: (square(m), m.add_circle((50, 25), 5)), ["crossing", "crossing"], 2),
        "branch": (lambda m: (square(m), m.add_line((50, 50), (70, 80))), ["branch", "open_contour"], 2),
        "text": (lambda m: (square(m), m.add_text("6 mm plate"), m.add_point((3, 3))), ["not_read", "not_read"], 1),
    }
    for name, (draw, codes, contours) in cases.items():
        answer = saved(draw)
        check(sorted(answer["codes"]) == codes and len(answer["contours"]) == contours, name, (answer["codes"], answer["contours"]))


def broken(folder):
    doc, msp = dr.new("R2000")
    doc.blocks.new("HOLE").add_circle((0, 0), 2)
    msp.add_blockref("HOLE", (5, 5))
    msp.add_lwpolyline([(0, 0), (50, 0), (50, 50)], close=True)
    msp.add_spline([(0, 0), (5, 8), (9, 0)]).dxf.degree = 3
    msp.add_open_spline([(100, 0), (110, 9), (120, 0), (130, 9)])
    msp.add_ellipse((200, 0), (9, 0), 0.5)
    msp.add_circle((300, 0), 5)
    good = dr.save(doc, folder, "good").read_text(encoding="utf-8").replace("\r", "")
    check("error" not in part(folder / "good.dxf"), "the drawing is good before it is broken")
    body = good.index("\nENTITIES\n")

    def after(entity, old, new, count=1):
        at = good.index(f"\n{entity}\n", body)
        assert old in good[at:], (entity, old)
        return good[:at] + good[at:].replace(old, new, count)
    cases = [
        ("cut off in the middle", good[:body + 400], "end of the file|last line"),
        ("no EOF", good[:good.rindex("  0\nEOF")], "end of the file"),
        ("an odd number of lines", good[:good.rindex("EOF")].rstrip("\n "), "end of the file|last line"),
        ("a code that is no number", after("CIRCLE", "\n 40\n", "\n 4x\n"), "is not a group code"),
        ("a code out of range", after("CIRCLE", "\n 40\n", "\n4000\n"), "is not a group code"),
        ("a line lost", after("CIRCLE", "\n 40\n", "\n"), "is not a group code|no number|no whole number"),
        ("a radius in words", after("CIRCLE", "\n 40\n5.0\n", "\n 40\nfive\n"), "no number as its value"),
        ("a radius of nan", after("CIRCLE", "\n 40\n5.0\n", "\n 40\nnan\n"), "no number as its value"),
        ("no radius", after("CIRCLE", "\n 40\n5.0\n", "\n"), "without its group 40"),
        ("far out", after("CIRCLE", "\n 10\n300.0\n", "\n 10\n3e300\n"), "farther out than 1 km"),
        ("a point without y", after("LWPOLYLINE", "\n 20\n0.0\n", "\n", 1), "without its 20|group 90"),
        ("points that are not there", after("LWPOLYLINE", "\n 90\n3\n", "\n 90\n4\n"), "group 90"),
        ("a block that is not there", after("INSERT", "\nHOLE\n", "\nHOLLOW\n"), 'block "HOLLOW", which is not there'),
        ("a scale of 0", after("INSERT", "\n 10\n5.0\n", "\n 41\n0.0\n 10\n5.0\n"), "scale of 0"),
        ("an ellipse without axis", after("ELLIPSE", "\n 11\n9.0\n", "\n 11\n0.0\n"), "axis of 0"),
        ("a knot too few", after("SPLINE", "\n 40\n1.0\n", "\n", 1), "wrong number of knots|degree"),
        ("a section without its name", good.replace("  2\nHEADER\n", "  1\nHEADER\n"), "does not name its section"),
        ("no ENTITIES", good.replace("  2\nENTITIES\n", "  2\nTHINGS\n"), "no section ENTITIES"),
        ("a section that does not end", good[:body] + good[body:].replace("  0\nENDSEC\n", "", 1), "without ENDSEC"),
        ("binary", "\0".join(good[:2000]), "not plain text"),
        ("another kind of file", "%PDF-1.4\n" + good, "neither DXF nor SVG"),
    ]
    loop = good.replace("\nCIRCLE\n", "\nINSERT\n  2\nHOLE\n", 1)
    cases.append(("a block within itself", loop, "into itself"))
    for name, text, pattern in cases:
        check(text != good, f"broken: {name}", "is the good one")
        file = folder / "broken.dxf"
        file.write_text(text, encoding="utf-8")
        answer = part(file)
        error = answer.get("error", "")
        check(answer.get("exit") == 2 and re.fullmatch(r"drawing: [^\n]+Use [^\n]+\.\n", error) and re.search(pattern, error),
              f"broken: {name}", f"{answer.get('exit')} {error!r}, wanted {pattern!r}")


def speed(folder):
    file = folder / "stars.dxf"
    dr.stars(file)
    subprocess.run([TORCHSIDE, "part", str(file)], capture_output=True, check=True) # both from the disk's cache
    best, answer = math.inf, None
    for _ in range(3):
        start = time.perf_counter()
        answer = part(file)
        best = min(best, time.perf_counter() - start)
    start = time.perf_counter()
    lines = [((e.dxf.start.x, e.dxf.start.y), (e.dxf.end.x, e.dxf.end.y))
             for e in ezdxf.readfile(file).modelspace().query("LINE")]
    rings = list(polygonize(lines))
    theirs = time.perf_counter() - start
    check(len(rings) == 250 and len(answer["contours"]) == 250, "stars: 250 outlines", (len(rings), len(answer["contours"])))
    agree("stars", answer, sum(p.area for p in rings), sum(p.length for p in rings))
    print(f"{file.stat().st_size / 1e6:.1f} MB, 100 000 lines: {best:.3f} s with start and printing; ezdxf and shapely {theirs:.2f} s: "
          f"{theirs / best:.1f} times")
    check(theirs >= 6 * best, "stars: 6 times faster", theirs / best)


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for stage in (units, entities, random_parts, blocks, nasty, broken, speed):
            stage(folder)
    print(f"{TOTALS[True]} passed, {TOTALS[False]} failed")
    return 1 if TOTALS[False] or not TOTALS[True] else 0


if __name__ == "__main__":
    sys.exit(main())
