"""Drilled stems whose remaining strength is known exactly, as case folders: a second simulator, in another language, with
other shapes, another trace and Shapely's geometry. Nothing of Standfast is used, and nothing in Standfast was fitted to it.

    python3 make_sections.py FOLDER COUNT SEED [--surface-not-noted]

Needs numpy and shapely. Each case folder holds case.json, traces/*.csv and truth.json (the true share of strength for
the directions 0, 10, ... 350 degrees). All of it is invented.
"""
import json
import os
import sys

import numpy as np
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union
from shapely.prepared import prep

TURN = 2 * np.pi
FAMILIES = ["sound", "ring", "irregular", "off-centre", "open", "pockets", "sapwood", "round hollow, lobed"]


def ring_points(radius, count=720):
    angle = np.arange(count) * TURN / count
    r = radius(angle)
    return np.c_[r * np.sin(angle), r * np.cos(angle)]


def rings_of(shape):
    parts = [shape] if shape.geom_type == "Polygon" else [p for p in shape.geoms if p.geom_type == "Polygon"]
    for part in parts:
        if part.area < 1:
            continue
        yield np.array(part.exterior.coords)[:-1], 1
        for hole in part.interiors:
            yield np.array(hole.coords)[:-1], -1


def moduli(shape):
    """Bending moment per unit of greatest fibre stress, by direction: general elastic bending of a polygon."""
    area = sx = sy = xx = yy = xy = 0.0
    corners = []
    for points, sense in rings_of(shape):
        x, y = points[:, 0], points[:, 1]
        x2, y2 = np.roll(x, -1), np.roll(y, -1)
        cross = x * y2 - x2 * y
        sign = sense * np.sign(cross.sum())
        area += sign * cross.sum() / 2
        sx += sign * ((x + x2) * cross).sum() / 6
        sy += sign * ((y + y2) * cross).sum() / 6
        xx += sign * ((x * x + x * x2 + x2 * x2) * cross).sum() / 12
        yy += sign * ((y * y + y * y2 + y2 * y2) * cross).sum() / 12
        xy += sign * ((x * y2 + 2 * x * y + 2 * x2 * y2 + x2 * y) * cross).sum() / 24
        corners.append(points)
    cx, cy = sx / area, sy / area
    second = np.array([[xx - area * cx * cx, xy - area * cx * cy], [xy - area * cx * cy, yy - area * cy * cy]])
    away = np.vstack(corners) - np.array([cx, cy])
    direction = np.radians(np.arange(0, 360, 10))
    unit = np.c_[np.sin(direction), np.cos(direction)]
    return 1 / np.abs(away @ np.linalg.inv(second) @ unit.T).max(axis=0)


def waves(rng, angle, size, low=2, high=5):
    total = np.zeros_like(angle)
    for k in range(low, high + 1):
        total += rng.normal() * np.cos(k * angle + rng.uniform(0, TURN)) / k
    return size * total


def outline_of(rng, lobed):
    """Radius by angle, and the outline as a case records it, tape errors and all."""
    mean = rng.uniform(250, 700)
    kind = "radii" if lobed else rng.choice(["circle", "ellipse", "radii"])
    if kind == "circle":
        return (lambda t: mean * np.ones_like(t)), {"kind": "circle", "diameterMm": 2 * mean}, mean
    if kind == "ellipse":
        a, b, axis = mean * rng.uniform(1, 1.2), mean * rng.uniform(0.8, 1), rng.uniform(0, 180)

        def radius(t):
            u = t - np.radians(axis)
            return a * b / np.sqrt((b * np.cos(u)) ** 2 + (a * np.sin(u)) ** 2)

        return radius, {"kind": "ellipse", "longMm": 2 * a, "shortMm": 2 * b, "longAxisDeg": axis}, mean
    lobes, depth = rng.integers(4, 8), rng.uniform(0.06, 0.16) if lobed else rng.uniform(0, 0.05)
    turn, seed = rng.uniform(0, TURN), rng.integers(10**9)

    def radius(t):
        return mean * (1 + depth * np.cos(lobes * t - turn) + waves(np.random.default_rng(seed), t, 0.02))

    azimuth = np.arange(0, 360, 10.0)
    measured = radius(np.radians(azimuth)) * (1 + rng.normal(0, 0.01, len(azimuth)))
    radii = [{"azimuthDeg": float(a), "radiusMm": float(r)} for a, r in zip(azimuth, measured)]
    return radius, {"kind": "radii", "radii": radii}, mean


def decay_of(rng, family, radius, bark, mean):
    wood = mean - bark

    def blob(x, y, r, ragged):
        seed = rng.integers(10**9)
        points = ring_points(lambda t: r * np.maximum(0.3, 1 + waves(np.random.default_rng(seed), t, ragged)), 360)
        return Polygon(points + np.array([x, y])).buffer(0)

    def wedge(middle, width, depth):
        angles = np.linspace(middle - width / 2, middle + width / 2, 60)
        rounded = np.clip(np.sin((angles - middle + width / 2) / width * np.pi), 0, 1) ** 0.5
        inner = wood * (1 - depth * rounded)
        outer = 2 * mean
        return Polygon(
            [(outer * np.sin(a), outer * np.cos(a)) for a in angles]
            + [(r * np.sin(a), r * np.cos(a)) for a, r in zip(angles[::-1], inner[::-1])]
        ).buffer(0)

    if family == "sound":
        return []
    if family == "ring":
        share = rng.uniform(0.3, 0.88)
        return [Polygon(ring_points(lambda t: (radius(t) - bark) * share))]
    if family == "irregular":
        return [blob(0, 0, wood * rng.uniform(0.35, 0.75), 0.12)]
    if family == "off-centre":
        share = rng.uniform(0.25, 0.7)
        away, angle = rng.uniform(0.1, min(0.95 - share, 0.5)) * wood, rng.uniform(0, TURN)
        return [blob(away * np.sin(angle), away * np.cos(angle), share * wood, 0.06)]
    if family == "open":
        return [blob(0, 0, wood * rng.uniform(0.3, 0.7), 0.08), wedge(rng.uniform(0, TURN), np.radians(rng.uniform(15, 90)), 1.0)]
    if family == "pockets":
        found = []
        for _ in range(rng.integers(1, 5)):
            r, away, angle = wood * rng.uniform(0.08, 0.25), wood * rng.uniform(0.1, 0.8), rng.uniform(0, TURN)
            found.append(blob(away * np.sin(angle), away * np.cos(angle), r, 0.1))
        return found
    if family == "sapwood":
        return [wedge(rng.uniform(0, TURN), np.radians(rng.uniform(30, 130)), rng.uniform(0.1, 0.5))]
    return [blob(0, 0, wood * rng.uniform(0.3, 0.8), 0.08)]


def stem(rng, family):
    radius, outline, mean = outline_of(rng, "lobed" in family)
    bark = rng.uniform(6, 30)
    over_bark = Polygon(ring_points(radius))
    wood = over_bark.buffer(-bark)
    regions = decay_of(rng, family, radius, bark, mean)
    bad = unary_union(regions).intersection(wood) if regions else Polygon()
    left = wood.difference(bad).buffer(0)
    if left.geom_type != "Polygon":
        # Loose pieces carry nothing: they count as lost.
        left = max(left.geoms, key=lambda part: part.area)
        bad = wood.difference(left)
    shell = rng.uniform(3, 25) if rng.random() < 0.7 else 0
    empty = bad.buffer(-shell) if shell else (bad if rng.random() < 0.5 else Polygon())
    reach = rng.uniform(5, 25) if rng.random() < 0.35 else 0
    incipient = bad.buffer(reach).difference(bad) if reach and not bad.is_empty else Polygon()
    return dict(radius=radius, outline=outline, mean=mean, bark=bark, over_bark=over_bark, wood=wood, bad=bad, left=left, empty=empty, incipient=incipient)


def trace(rng, s, azimuth, off_radial, length, drill, spacing):
    a = np.radians(azimuth)
    r = s["radius"](np.array([a]))[0]
    entry = np.array([r * np.sin(a), r * np.cos(a)])
    heading = np.radians(azimuth + 180 + off_radial)
    unit = np.array([np.sin(heading), np.cos(heading)])
    lead = rng.uniform(0, 12) if rng.random() < 0.5 else 0
    inside = {name: None if s[name].is_empty else prep(s[name]) for name in ("wood", "bad", "empty", "incipient", "over_bark")}
    met = lambda name, point: inside[name] is not None and inside[name].contains(point)
    coarse = []
    for depth in np.arange(0, length, 0.5):
        along = depth - lead
        point = Point(*(entry + unit * along))
        if along < 0:
            coarse.append("air")
        elif met("wood", point):
            bad = "void" if met("empty", point) else "decayed"
            coarse.append(bad if met("bad", point) else "incipient" if met("incipient", point) else "sound")
        elif met("over_bark", point) or along < 1:
            coarse.append("bark")
        else:
            coarse.append("air" if along > s["mean"] * 0.5 else "bark")
    x = np.arange(0, length, spacing)
    kind = np.array(coarse)[np.minimum((x / 0.5).astype(int), len(coarse) - 1)]
    share = np.select([kind == "sound", kind == "incipient", kind == "decayed"], [1.0, drill["incipient"], drill["decayed"]], 0.0)
    level = share * drill["sound"] * (1 + drill["trend"] * (x / length - 0.5))
    rings = 1 + drill["ring"] * np.sin(TURN * x / drill["ring_mm"] + rng.uniform(0, 6) + 0.8 * np.sin(x / 37))
    level = level * np.where(kind == "sound", rings, 1 + 0.15 * (rings - 1))
    level = level + np.where(kind == "bark", drill["bark"] * (1 + 0.4 * np.sin(x / 2.3 + rng.uniform(0, 6))), 0)
    tip = max(1, int(2 / spacing))
    level = np.convolve(np.pad(level, (tip, tip), "edge"), np.ones(tip) / tip, "same")[tip:-tip]
    friction = drill["friction"] * np.cumsum(np.isin(kind, ["sound", "incipient", "decayed"])) * spacing
    noise = rng.normal(0, 1, len(x))
    kernel = max(1, int(1 / spacing))
    if kernel > 1:
        noise = np.convolve(noise, np.ones(kernel) / np.sqrt(kernel), "same")
    sd = np.select([kind == "sound", kind == "incipient", kind == "decayed", kind == "bark"], [1, 1, 0.6, 0.8], 0.0) * drill["noise"]
    return x, np.clip(drill["zero"] + friction + level + np.maximum(sd, 0.3) * noise, 0, 100)


def surface_of(rng, s):
    """What is noted on walking round: nine openings in ten and seven in ten soft places, ends to some degrees."""
    azimuth = np.arange(360)
    reach = s["bad"].buffer(2)
    soft = prep(reach) if not reach.is_empty else None
    hollow = prep(s["empty"].buffer(30)) if not s["empty"].is_empty else None
    state = np.array(["sound"] * 360, dtype=object)
    edge = s["wood"].exterior
    at = []
    for a in azimuth:
        u = np.array([np.sin(np.radians(a)), np.cos(np.radians(a))])
        far = s["radius"](np.array([np.radians(float(a))]))[0]
        p = edge.interpolate(edge.project(Point(*(u * (far - s["bark"] - 1)))))
        at.append("sound" if soft is None or not soft.contains(p) else "open" if hollow is not None and hollow.contains(p) else "decayed")
    starts = [k for k in range(360) if at[k] != at[k - 1]]
    for i, k in enumerate(starts):
        if at[k] == "sound":
            continue
        span = (starts[(i + 1) % len(starts)] - k) % 360 or 360
        if rng.random() > (0.9 if at[k] == "open" else 0.7):
            continue
        first, last = int(round(k + rng.normal(0, 5))), int(round(k + span + rng.normal(0, 5)))
        for j in range(first, max(first + 2, last)):
            state[j % 360] = at[k]
    if rng.random() < 0.2:
        first, width = rng.integers(360), rng.integers(20, 120)
        for j in range(first, first + width):
            state[j % 360] = None
    starts = [k for k in range(360) if state[k] != state[k - 1]] or [0]
    arcs = []
    for i, k in enumerate(starts):
        if state[k] is not None:
            arcs.append({"fromDeg": int(k), "toDeg": int(starts[(i + 1) % len(starts)]), "state": state[k]})
    return arcs


def write_case(rng, family, path, noted):
    s = stem(rng, family)
    count = int(rng.choice([4, 6, 8]))
    drill = dict(sound=rng.uniform(25, 60), incipient=rng.uniform(0.6, 0.8), decayed=rng.uniform(0.1, 0.4), trend=rng.uniform(-0.2, 0.2),
                 ring=rng.uniform(0.02, 0.2), ring_mm=rng.uniform(1.5, 6), friction=rng.uniform(0, 0.05), noise=rng.uniform(0.8, 3.5),
                 bark=rng.uniform(2, 8), zero=rng.uniform(0, 4))
    spacing, length = rng.choice([0.05, 0.1, 0.2, 0.5, 1.0]), rng.choice([300, 400, 500, 500])
    os.makedirs(f"{path}/traces", exist_ok=True)
    start = rng.uniform(0, 360)
    drillings = []
    for i in range(count):
        azimuth, off = (start + 360 * i / count + rng.normal(0, 8)) % 360, float(rng.normal(0, 6))
        x, y = trace(rng, s, azimuth, off, length, drill, spacing)
        name = f"traces/d{i + 1}.csv"
        np.savetxt(f"{path}/{name}", np.c_[x, y], fmt="%.3f", delimiter=",", header="depth_mm,resistance", comments="")
        drillings.append({"id": f"d{i + 1}", "azimuthDeg": float(azimuth), "offRadialDeg": off, "trace": name})
    section = {"id": "s1", "heightM": 0.3, "outline": s["outline"], "barkMm": float(round(s["bark"] * rng.uniform(0.85, 1.15), 1)), "drillings": drillings}
    surface = surface_of(rng, s)
    if noted:
        section["surface"] = surface
    case = {
        "format": "standfast-case", "version": 1, "invented": True, "visitedOn": "2026-05-14",
        "client": {"name": "invented"}, "assessor": {"name": "invented", "credential": "none"},
        "tree": {"label": "invented", "species": "Fagus sylvatica", "stemDiameterMm": 1.8 * s["mean"], "heightM": 20, "leanDeg": 0, "leanTowardDeg": 0,
                 "crown": {"baseHeightM": 5, "widthM": 12, "shape": "ellipse", "inLeaf": True}},
        "site": {"windCode": "EN 1991-1-4", "basicWindSpeedMs": 25, "terrain": "III"},
        "sections": [section], "flares": [], "signs": [], "targets": [],
    }
    with open(f"{path}/case.json", "w") as file:
        json.dump(case, file)
    with open(f"{path}/truth.json", "w") as file:
        json.dump({"family": family, "drillings": count, "remaining": (moduli(s["left"]) / moduli(s["wood"])).tolist()}, file)


if __name__ == "__main__":
    folder, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    for i in range(count):
        write_case(np.random.default_rng([seed, i]), FAMILIES[i % len(FAMILIES)], f"{folder}/c{i:04d}", "--surface-not-noted" not in sys.argv)
