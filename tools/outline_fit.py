"""Outlines with fewer curves, within a tolerance: fit_contour(). Used by tools/embed_font."""
import math

CORNER = math.cos(math.radians(12))
LONGEST = 8  # pieces that one curve may replace


def bezier(p, t):
    s = 1 - t
    a, b, c, d = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
    return (a * p[0][0] + b * p[1][0] + c * p[2][0] + d * p[3][0], a * p[0][1] + b * p[1][1] + c * p[2][1] + d * p[3][1])


def unit(x, y):
    size = math.hypot(x, y)
    return (x / size, y / size) if size > 0 else (0.0, 0.0)


def leaving(s):
    """Direction in which a segment leaves its first point."""
    for point in s[1:]:
        if point != s[0]:
            return unit(point[0] - s[0][0], point[1] - s[0][1])
    return (0.0, 0.0)


def arriving(s):
    """Direction in which it arrives at its last one."""
    x, y = leaving(s[::-1])
    return -x, -y


def one_curve(run, start, end, tolerance):
    """One cubic for a run of cubics, with these directions at its ends, or None when it would stray further than tolerance."""
    points = [run[0][0]]
    for s in run:
        points += [bezier(s, t) for t in (0.25, 0.5, 0.75)] + [s[3]]
    along = [0.0]
    for a, b in zip(points, points[1:]):
        along.append(along[-1] + math.hypot(b[0] - a[0], b[1] - a[1]))
    at = [x / along[-1] for x in along]
    (x0, y0), (x3, y3) = points[0], points[-1]
    curve = None
    for _ in range(4):
        # Handles along the given directions: least squares in their two lengths (Schneider's method).
        c00 = c01 = c11 = d0 = d1 = 0.0
        for (x, y), t in zip(points, at):
            s = 1 - t
            b0, b1, b2, b3 = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
            ax, ay, bx, by = start[0] * b1, start[1] * b1, -end[0] * b2, -end[1] * b2
            rx, ry = x - (b0 + b1) * x0 - (b2 + b3) * x3, y - (b0 + b1) * y0 - (b2 + b3) * y3
            c00 += ax * ax + ay * ay
            c01 += ax * bx + ay * by
            c11 += bx * bx + by * by
            d0 += ax * rx + ay * ry
            d1 += bx * rx + by * ry
        det = c00 * c11 - c01 * c01
        if abs(det) < 1e-9:
            return None
        l0, l1 = (d0 * c11 - d1 * c01) / det, (c00 * d1 - c01 * d0) / det
        if l0 <= 0 or l1 <= 0:
            return None
        curve = ((x0, y0), (x0 + start[0] * l0, y0 + start[1] * l0), (x3 - end[0] * l1, y3 - end[1] * l1), (x3, y3))
        # Each point's nearest place on the curve, by one step of Newton's.
        worst = 0.0
        (px, py), (qx, qy) = curve[1], curve[2]
        for i, (x, y) in enumerate(points):
            t = at[i]
            s = 1 - t
            dx, dy = bezier(curve, t)
            dx, dy = dx - x, dy - y
            vx = 3 * (s * s * (px - x0) + 2 * s * t * (qx - px) + t * t * (x3 - qx))
            vy = 3 * (s * s * (py - y0) + 2 * s * t * (qy - py) + t * t * (y3 - qy))
            speed = vx * vx + vy * vy
            if speed > 0:
                step = (dx * vx + dy * vy) / speed
                at[i] = min(max(t - step, 0.0), 1.0)
                worst = max(worst, abs(dx * vy - dy * vx) / math.sqrt(speed))
        if worst <= tolerance:
            return curve
        if worst > 20 * tolerance:
            return None
    return None


def fit_run(run, start, end, tolerance):
    """A smooth run of cubics with fewer of them: from its start, always the longest stretch that one curve can follow."""
    out, i = [], 0
    while i < len(run):
        for j in range(min(len(run), i + LONGEST), i, -1):
            first = start if i == 0 else through(run[i - 1], run[i])
            last = end if j == len(run) else through(run[j - 1], run[j])
            curve = run[i] if j == i + 1 else one_curve(run[i:j], first, last, tolerance)
            if curve:
                out.append(curve)
                i = j
                break
    return out


def through(before, after):
    """The one direction in which a smooth outline goes through the point between two segments."""
    a, b = arriving(before), leaving(after)
    return unit(a[0] + b[0], a[1] + b[1])


def smooth(before, after):
    """Both are curves, and no corner lies between them."""
    if len(before) == 2 or len(after) == 2:
        return False
    a, b = arriving(before), leaving(after)
    return a[0] * b[0] + a[1] * b[1] > CORNER


def fit_contour(segments, tolerance):
    """The same closed contour with fewer cubics, nowhere further than tolerance from it. Lines (pairs of points) stay."""
    n = len(segments)
    breaks = [i for i in range(n) if not smooth(segments[i - 1], segments[i])]
    if not breaks: # round: begin where it goes straight up or down, so that its width stays
        breaks = [max(range(n), key=lambda i: segments[i][0][0])]
        joint = through(segments[breaks[0] - 1], segments[breaks[0]])
    else:
        joint = None
    out = []
    for k, i in enumerate(breaks):
        size = (breaks[(k + 1) % len(breaks)] - i) % n or n
        run = [segments[(i + m) % n] for m in range(size)]
        if len(run[0]) == 2:
            out += run
        else:
            out += fit_run(run, joint or leaving(run[0]), joint or arriving(run[-1]), tolerance)
    return out
