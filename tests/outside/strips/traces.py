"""Invented resistance traces: bark, wood with rings, decay, voids. Level in percent of full scale against depth in mm."""
import numpy as np

STEP_MM = 0.1


def invented_trace(rng, length_mm, to_air=False):
    """A needle's pass through an invented stem.

    Returns depth (mm, every 0.1) and level (percent). With to_air the needle comes out at the far side.
    """
    depth = np.arange(0.0, length_mm + STEP_MM / 2, STEP_MM)
    n = depth.size
    air = rng.uniform(2, 7)
    bark = rng.uniform(5, 22)
    sound = rng.uniform(28, 72)
    soundness = np.ones(n)
    for _ in range(rng.integers(1, 4)):
        middle = rng.uniform(0.25, 0.85) * length_mm
        half = rng.uniform(6, 34)
        worst = rng.choice([0.55, 0.3, 0.12, 0.0])
        edge = rng.uniform(1.0, 9.0) if worst > 0.2 else rng.uniform(0.3, 3.0)
        inside = 1 / (1 + np.exp((np.abs(depth - middle) - half) / edge))
        soundness *= 1 - (1 - worst) * inside
    rings = ring_pattern(rng, depth, soundness)
    slow = smooth(rng.normal(0, 1, n), 18 / STEP_MM)
    slow *= 0.07 / max(1e-9, slow.std())
    level = sound * soundness * rings * (1 + slow)
    for _ in range(rng.integers(0, 3)):
        knot = rng.uniform(0.2, 0.9) * length_mm
        level *= 1 + rng.uniform(0.15, 0.5) * np.exp(-(((depth - knot) / rng.uniform(2, 6)) ** 2)) * soundness
    level += rng.uniform(0, 0.035) * depth + rng.uniform(0.5, 2.5)
    bark_level = rng.uniform(5, 16) * (1 + 0.4 * smooth(rng.normal(0, 1, n), 1.2 / STEP_MM) * 3)
    level = blend(level, bark_level, depth, air + bark, 0.8)
    level = blend(level, 0.6 + 0 * depth, depth, air, 0.5)
    if to_air:
        end = length_mm - rng.uniform(3, 9)
        level = blend(1.5 + 0 * depth, blend(bark_level, level, depth, end - bark, 0.8), depth, end, 0.4)
    rough = rng.uniform(0.15, 0.6) * smooth(rng.normal(0, 1, n), 2)
    return depth, np.clip(smooth(level + rough, 2.0), 0.3, 98.0)


def ring_pattern(rng, depth, soundness):
    """A factor round 1: light early wood rising to dense late wood, then a fall; weaker where wood is decayed."""
    width = rng.uniform(1.6, 7.0)
    contrast = rng.uniform(0.08, 0.42)
    sharp = rng.uniform(1.0, 3.5)
    widths = width * np.exp(rng.normal(0, 0.3, int(depth[-1] / width * 3) + 8))
    edges = np.concatenate([[0.0], np.cumsum(np.maximum(0.6, widths))])
    ring = np.searchsorted(edges, depth, side="right") - 1
    phase = (depth - edges[ring]) / (edges[ring + 1] - edges[ring])
    wave = phase**sharp - 1 / (sharp + 1)
    late = np.exp(rng.normal(0, 0.35, edges.size))[ring]
    return 1 + contrast * 1.6 * wave * late * (0.3 + 0.7 * soundness)


def blend(beyond, before, depth, at, width):
    """`before` up to a depth, `beyond` after it, over a soft edge."""
    share = 0.5 + 0.5 * np.tanh((depth - at) / width)
    return before + (beyond - before) * share


def smooth(values, sd):
    """A Gaussian mean over samples."""
    reach = int(np.ceil(3 * sd))
    kernel = np.exp(-0.5 * (np.arange(-reach, reach + 1) / sd) ** 2)
    padded = np.pad(values, reach, mode="edge")
    return np.convolve(padded, kernel / kernel.sum(), mode="valid")
