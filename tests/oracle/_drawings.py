"""Drawings by ezdxf, and what is known of them, for part_ezdxf.py and part_svg.py."""
import math
import pathlib

import ezdxf
import ezdxf.math
from shapely.geometry import Polygon

VERSIONS = ("R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018")
INCH = 25.4


def new(version="R2010", unit="mm"):
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"] = {"mm": 4, "inch": 1, None: 0}[unit]
    doc.header["$MEASUREMENT"] = 0 if unit == "inch" else 1
    return doc, doc.modelspace()


def polygon_of(entity, distance=1e-5):
    """An ELLIPSE or SPLINE by ezdxf's own flattening (of the curve itself: its paths are Bezier approximations)."""
    return Polygon([(p[0], p[1]) for p in entity.flattening(distance, 32)])


def add_closed_spline(msp, points, order=4, weights=None):
    return msp.add_spline().apply_construction_tool(ezdxf.math.closed_uniform_bspline(points, order, weights))


def bulge_area_length(points):
    """Closed form of a closed polyline of (x, y, bulge): signed area, length."""
    area = length = 0.0
    for (x0, y0, b), (x1, y1, _) in zip(points, points[1:] + points[:1]):
        area += (x0 * y1 - x1 * y0) / 2
        chord = math.hypot(x1 - x0, y1 - y0)
        if b == 0:
            length += chord
            continue
        sweep = 4 * math.atan(b)
        radius = chord / 2 / math.sin(abs(sweep) / 2)
        area += radius * radius * (sweep - math.sin(sweep)) / 2
        length += radius * abs(sweep)
    return area, length


def flange(msp, scale):
    """120 mm outside, 40 mm bore, four holes of 11 mm on 90 mm."""
    for x, y, d in [(0, 0, 120), (0, 0, 40)] + [(45 * math.cos(k * math.pi / 2), 45 * math.sin(k * math.pi / 2), 11)
                                               for k in range(4)]:
        msp.add_circle((x / scale, y / scale), d / 2 / scale)


FLANGE_AREA = math.pi * (60**2 - 20**2 - 4 * 5.5**2)
FLANGE_LENGTH = math.pi * (120 + 40 + 44)


def rounded(rng, x, y, size):
    """A closed contour of lines and arcs about (x, y) within +-size: points with bulge, anticlockwise."""
    n = rng.randint(5, 9)
    points = []
    for k in range(n):
        a = 2 * math.pi * (k + rng.uniform(0, 0.5)) / n
        r = size * rng.uniform(0.5, 0.8)
        points.append((x + r * math.cos(a), y + r * math.sin(a), rng.choice((0, 0, rng.uniform(-0.1, 0.3)))))
    return points


def arc_of(a, b, bulge):
    """Centre, radius, start and end angle in degrees (anticlockwise) of a bulge from a to b."""
    (x0, y0), (x1, y1) = a, b
    k = (1 - bulge * bulge) / (4 * bulge)
    cx, cy = (x0 + x1) / 2 - k * (y1 - y0), (y0 + y1) / 2 + k * (x1 - x0)
    start, end = (math.degrees(math.atan2(y - cy, x - cx)) for x, y in ((x0, y0), (x1, y1)))
    return (cx, cy), math.hypot(x0 - cx, y0 - cy), *((start, end) if bulge > 0 else (end, start))


def add_loose(msp, rng, points):
    """The contour as loose LINE and ARC in any order and direction."""
    pieces = list(zip(points, points[1:] + points[:1]))
    rng.shuffle(pieces)
    for (x0, y0, b), (x1, y1, _) in pieces:
        if b:
            centre, radius, start, end = arc_of((x0, y0), (x1, y1), b)
            msp.add_arc(centre, radius, start, end)
        elif rng.random() < 0.5:
            msp.add_line((x0, y0), (x1, y1))
        else:
            msp.add_line((x1, y1), (x0, y0))


def save(doc, folder, name):
    file = pathlib.Path(folder) / f"{name}.dxf"
    doc.saveas(file)
    return file


def stars(file, outlines=250, points=400):
    """100 000 LINE entities, 16 MB: stars on a grid. Each line's ends are written once for each of its two lines."""
    doc, msp = new("R2010")
    for i in range(outlines):
        cx, cy = 120 * (i % 16), 120 * (i // 16)
        star = [(cx + r * math.cos(a), cy + r * math.sin(a)) for a, r in
                ((2 * math.pi * k / points, 50 + 5 * math.sin(14 * math.pi * k / points)) for k in range(points))]
        for a, b in zip(star, star[1:] + star[:1]):
            msp.add_line(a, b)
    doc.saveas(file)
