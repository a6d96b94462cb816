"""Makes section-shapely.json: sections cut out and integrated without any code of ours.

Run from this folder with Debian's python3-shapely (1.8) and python3-numpy, then format the result:

    /usr/bin/python3 section-shapely.py > section-shapely.json && npx biome format --write section-shapely.json

Cutting out, area and centroid are Shapely's (GEOS). Second moments are integrated over vertical slabs with Gauss's
rule, not by the boundary formula under test. Greatest stresses come from solving for the plane of stress a + b x + c y
that carries a unit moment, over Shapely's own corners.
"""

import json
import math

import numpy as np
from shapely.affinity import translate
from shapely.geometry import Polygon
from shapely.ops import unary_union

rng = np.random.default_rng(20260514)
GAUSS_X, GAUSS_W = np.polynomial.legendre.leggauss(4)


def blob(cx, cy, radius, corners, rough):
    """A star-shaped ring with uneven radii and azimuths."""
    azimuths = np.sort((np.arange(corners) + rng.uniform(-0.35, 0.35, corners)) * 2 * math.pi / corners)
    radii = radius * np.exp(rough * rng.standard_normal(corners))
    ring = [(cx + r * math.sin(a), cy + r * math.cos(a)) for a, r in zip(azimuths, radii)]
    return [(round(x, 3), round(y, 3)) for x, y in ring]


def edges(wood):
    polygons = wood.geoms if wood.geom_type == "MultiPolygon" else [wood]
    for polygon in polygons:
        for ring in [polygon.exterior, *polygon.interiors]:
            points = np.array(ring.coords)
            yield from zip(points[:-1], points[1:])


def integrals(wood):
    """Integrals of 1, x, y, x^2, y^2, xy over vertical slabs between neighbouring corners."""
    sides = np.array([np.concatenate(pair) for pair in edges(wood)])
    cuts = np.unique(np.concatenate([sides[:, 0], sides[:, 2]]))
    totals = [[] for _ in range(6)]
    for left, right in zip(cuts[:-1], cuts[1:]):
        low = np.minimum(sides[:, 0], sides[:, 2])
        high = np.maximum(sides[:, 0], sides[:, 2])
        across = sides[(low <= left) & (high >= right) & (high > low)]
        for node, weight in zip(GAUSS_X, GAUSS_W):
            x = (left + right) / 2 + node * (right - left) / 2
            w = weight * (right - left) / 2
            share = (x - across[:, 0]) / (across[:, 2] - across[:, 0])
            ys = np.sort(across[:, 1] + share * (across[:, 3] - across[:, 1]))
            y0, y1 = ys[0::2], ys[1::2]
            first = np.sum(y1**2 - y0**2) / 2
            for k, value in enumerate(
                [np.sum(y1 - y0), x * np.sum(y1 - y0), first, x * x * np.sum(y1 - y0), np.sum(y1**3 - y0**3) / 3, x * first]
            ):
                totals[k].append(w * value)
    return [math.fsum(terms) for terms in totals]


def moduli(wood, sums):
    a, sx, sy, sxx, syy, sxy = sums
    normal = np.array([[a, sx, sy], [sx, sxx, sxy], [sy, sxy, syy]])
    scale = np.diag([1.0, 1e-2, 1e-2])
    corners = np.array([point for pair in edges(wood) for point in pair])
    values = []
    for direction in range(0, 360, 10):
        d = math.radians(direction)
        load = np.array([0.0, math.sin(d), math.cos(d)])
        plane = scale @ np.linalg.solve(scale @ normal @ scale, scale @ load)
        stress = plane[0] + corners @ plane[1:]
        values.append(1 / np.max(np.abs(stress)))
    return values


def shred(wood):
    """Whether a piece is a hair thin: those are left out by design and not compared here."""
    pieces = wood.geoms if wood.geom_type == "MultiPolygon" else [wood]
    return any(2 * p.area / p.exterior.length < 0.01 * math.sqrt(wood.area) for p in pieces)


cases = []
while len(cases) < 40:
    # Off the origin too, so that a far-off centroid is looked at.
    shift = rng.choice([0, 0, 300, -5000])
    outline = blob(shift, -shift / 2, rng.uniform(150, 800), rng.integers(5, 36), rng.uniform(0, 0.22))
    size = math.sqrt(Polygon(outline).area)
    voids = []
    for _ in range(rng.integers(1, 5)):
        away = rng.uniform(0, 0.7) * size
        towards = rng.uniform(0, 2 * math.pi)
        voids.append(
            blob(
                shift + away * math.sin(towards),
                -shift / 2 + away * math.cos(towards),
                rng.uniform(0.05, 0.3) * size,
                rng.integers(3, 24),
                rng.uniform(0, 0.3),
            )
        )
    whole = Polygon(outline)
    hollow = [Polygon(ring) for ring in voids]
    if not (whole.is_valid and all(h.is_valid for h in hollow)):
        continue
    wood = whole.difference(unary_union(hollow))
    if wood.is_empty or wood.area < 0.1 * whole.area or shred(wood):
        continue
    sums = integrals(wood)
    assert abs(sums[0] / wood.area - 1) < 1e-11, "slabs and Shapely differ in area"
    area = wood.area
    cx, cy = wood.centroid.x, wood.centroid.y
    # About the centroid, by moving the origin there before integrating.
    central = integrals(translate(wood, -cx, -cy))
    pieces = len(wood.geoms) if wood.geom_type == "MultiPolygon" else 1
    cases.append(
        {
            "outline": outline,
            "voids": voids,
            "pieces": pieces,
            "opens": bool(any(h.intersects(whole.exterior) for h in hollow)),
            "areaMm2": area,
            "centroidMm": [cx, cy],
            "ixxMm4": central[4],
            "iyyMm4": central[3],
            "ixyMm4": central[5],
            "modulusMm3": moduli(translate(wood, -cx, -cy), central),
            "soundModulusMm3": moduli(
                translate(whole, -whole.centroid.x, -whole.centroid.y),
                integrals(translate(whole, -whole.centroid.x, -whole.centroid.y)),
            ),
            "movedInMm": round(float(rng.uniform(0.02, 0.08) * size), 3),
        }
    )
    # The outline moved in by a bark's thickness, with sharp corners where it bulges, as GEOS does it.
    inner = whole.buffer(-cases[-1]["movedInMm"], resolution=64)
    parts = inner.geoms if inner.geom_type == "MultiPolygon" else [inner]
    cases[-1]["movedInAreaMm2"] = max(p.area for p in parts)

print(json.dumps({"madeWith": "Shapely 1.8 (GEOS), NumPy 1.24", "cases": cases}))
