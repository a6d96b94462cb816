"""The comparable steps in NumPy, SciPy and Shapely, on one thread, for bench/peers.ts.

Reads one JSON document on standard input, prints {"ms": {step: median}, "answer": {…}} on standard output.
"""
import io
import json
import math
import sys
import time

import numpy as np
import scipy.linalg
import scipy.ndimage
from shapely.geometry import MultiPolygon, Polygon
from shapely.ops import unary_union

given = json.load(sys.stdin)


def median_ms(work, runs=7):
    """Processor time, as on the other side."""
    work()
    times = []
    for _ in range(runs):
        start = time.process_time()
        work()
        times.append((time.process_time() - start) * 1000)
    return sorted(times)[len(times) // 2]


def read_table():
    return np.loadtxt(io.StringIO(given["table"]), delimiter=",", skiprows=1)


def even_grid(depth, level, step=0.25):
    """Means within steps, gaps interpolated, values far out of their neighbours' median replaced by it."""
    bins = ((depth - depth[0]) / step).astype(np.int64)
    steps = bins[-1] + 1
    total = np.bincount(bins, weights=level, minlength=steps)
    count = np.bincount(bins, minlength=steps)
    filled = np.flatnonzero(count)
    values = total[filled] / count[filled]
    middle = scipy.ndimage.median_filter(values, size=9, mode="nearest")
    off = np.abs(values - middle)
    spread = scipy.ndimage.median_filter(off, size=9, mode="nearest")
    values = np.where(off > 6 * np.maximum(1.0, 1.4826 * spread), middle, values)
    fine = np.interp(np.arange(steps), filled, values)
    cells = steps // 4
    return fine[: cells * 4].reshape(cells, 4).mean(axis=1)


def section_moments(polygon):
    """Area, first and second moments about the origin by Green's theorem, over exteriors and interiors."""
    sums = np.zeros(6)
    parts = polygon.geoms if isinstance(polygon, MultiPolygon) else [polygon]
    corners = []
    for part in parts:
        for ring, sign in [(part.exterior, 1.0)] + [(hole, -1.0) for hole in part.interiors]:
            xy = np.asarray(ring.coords)
            corners.append(xy)
            x0, y0, x1, y1 = xy[:-1, 0], xy[:-1, 1], xy[1:, 0], xy[1:, 1]
            cross = x0 * y1 - x1 * y0
            ring_sums = np.array(
                [
                    cross.sum() / 2,
                    (cross * (x0 + x1)).sum() / 6,
                    (cross * (y0 + y1)).sum() / 6,
                    (cross * (y0 * y0 + y0 * y1 + y1 * y1)).sum() / 12,
                    (cross * (x0 * x0 + x0 * x1 + x1 * x1)).sum() / 12,
                    (cross * (x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0)).sum() / 24,
                ]
            )
            sums += sign * math.copysign(1.0, ring_sums[0]) * ring_sums
    return sums, np.concatenate(corners)


def moduli(polygon):
    (area, sx, sy, ixx, iyy, ixy), corners = section_moments(polygon)
    cx, cy = sx / area, sy / area
    j = np.array([[iyy - area * cx * cx, ixy - area * cx * cy], [ixy - area * cx * cy, ixx - area * cy * cy]])
    turn = np.radians(np.arange(0, 360, 10))
    u = np.stack([np.sin(turn), np.cos(turn)], axis=1)
    stress = np.abs((u @ np.linalg.inv(j)) @ (corners - [cx, cy]).T)
    return area, j, 1 / stress.max(axis=1)


def section_properties():
    outline = Polygon(given["section"]["outline"])
    wood = outline.difference(unary_union([Polygon(v) for v in given["section"]["voids"]]))
    area, j, modulus = moduli(wood)
    _, _, sound = moduli(outline)
    return area, j, modulus, modulus / sound


size = given["choleskySize"]
grid = np.arange(size)
matrix = np.exp(-np.abs(grid[:, None] - grid[None, :]) / 30.0) + 1e-6 * np.eye(size)


def cholesky():
    return scipy.linalg.cholesky(matrix, lower=True, check_finite=False)


RAYS, SHELLS, DRAWS = 72, 33, given["draws"]


def kernel(a, b):
    """Across: squared exponential in relative radius; around: periodic squared exponential."""
    dr = (a[:, None, 0] - b[None, :, 0]) / 0.25
    da = np.sin((a[:, None, 1] - b[None, :, 1]) / 2) / 0.35
    return np.exp(-0.5 * dr * dr - 0.5 * da * da)


def field():
    """Gaussian process on the polar mesh, draws conditioned on the needles by Matheron's rule, then mechanics."""
    rng = np.random.default_rng(1)
    shell, ray = np.meshgrid(np.arange(SHELLS) / (SHELLS - 1), 2 * np.pi * np.arange(RAYS) / RAYS)
    mesh = np.stack([shell.ravel(), ray.ravel()], axis=1)
    sites = np.array(given["sites"])
    seen = np.array(given["seen"])
    noise = 0.3
    points = np.concatenate([mesh, sites])
    factor = scipy.linalg.cholesky(
        kernel(points, points) + 1e-6 * np.eye(len(points)), lower=True, check_finite=False
    )
    prior = factor @ rng.standard_normal((len(points), DRAWS))
    observed = kernel(sites, sites) + noise * noise * np.eye(len(sites))
    solve = scipy.linalg.cho_factor(observed, lower=True)
    jitter = noise * rng.standard_normal((len(sites), DRAWS))
    gap = seen[:, None] - prior[len(mesh):] - jitter
    drawn = prior[: len(mesh)] + kernel(mesh, sites) @ scipy.linalg.cho_solve(solve, gap)
    sound = np.clip(drawn, 0.0, 1.0)
    area = (shell.ravel() + 1e-3) / (SHELLS * RAYS)
    x, y = shell.ravel() * np.sin(ray.ravel()), shell.ravel() * np.cos(ray.ravel())
    basis = np.stack([area, area * x, area * y, area * x * x, area * y * y, area * x * y])
    a, sx, sy, sxx, syy, sxy = basis @ sound
    cx, cy = sx / a, sy / a
    jxx, jyy, jxy = sxx - a * cx * cx, syy - a * cy * cy, sxy - a * cx * cy
    det = jxx * jyy - jxy * jxy
    turn = np.radians(np.arange(0, 360, 10))
    carries = sound > 0.05
    out = np.empty((DRAWS, 36))
    for k, (s, c) in enumerate(zip(np.sin(turn), np.cos(turn))):
        gx, gy = (jyy * s - jxy * c) / det, (jxx * c - jxy * s) / det
        stress = np.abs(gx * (x[:, None] - cx) + gy * (y[:, None] - cy))
        out[:, k] = 1 / np.where(carries, stress, 0).max(axis=0)
    return out


table = read_table()
area, j, modulus, remaining = section_properties()
print(
    json.dumps(
        {
            "ms": {
                "table": median_ms(read_table),
                "grid": median_ms(lambda: even_grid(table[:, 0], table[:, 1])),
                "section": median_ms(section_properties),
                "cholesky": median_ms(cholesky),
                "field": median_ms(field, runs=3),
            },
            "answer": {
                "lastDepthMm": float(table[-1, 0]),
                "areaMm2": float(area),
                "remaining": remaining.tolist(),
                "levels": even_grid(table[:, 0], table[:, 1]).tolist(),
                "cholesky": float(cholesky()[-1, 0]),
            },
        }
    )
)
