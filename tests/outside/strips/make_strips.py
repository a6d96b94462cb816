"""Draws and photographs strips whose truth is known: a second simulator, which shares no code with the one in TypeScript.

    python3 make_strips.py FOLDER [--set tuning|judging] [--style NAME] [--count N] [--seed FIRST] [--long PX]

For each style and seed NAME-SEED.jpg and NAME-SEED.json are written: the photo, and what is on it. Needs numpy and OpenCV
(Debian: python3-numpy, python3-opencv); letters come from the machine's fonts through Pillow where there is one.
Places on the photo are pixels, the centre of the top left one at (0, 0); corners run clockwise from the chart's own top left.
"""
import argparse
import json
import sys
import zlib
from pathlib import Path

import cv2
import numpy as np

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).parent))
from camera import photograph  # noqa: E402


def styles_of(name):
    """The styles of a set. Only the set that is asked for is opened."""
    if name == "tuning":
        from tuning_styles import STYLES
    else:
        from judging_styles import STYLES
    return STYLES


def make(style, name, seed, long_px=None):
    """One photo: its JPEG as bytes, and its truth. With long_px its longer side is so many pixels."""
    rng = np.random.default_rng([zlib.crc32(name.encode()), seed])
    sheet, charts, view = style(rng)
    if long_px:
        share = long_px / max(view.width_px, view.height_px)
        view.width_px, view.height_px = round(view.width_px * share), round(view.height_px * share)
    picture, camera = photograph(rng, sheet, view)
    ok, jpeg = cv2.imencode(".jpg", picture, [cv2.IMWRITE_JPEG_QUALITY, view.quality])
    if not ok:
        raise RuntimeError("OpenCV could not write a JPEG")
    truth = {
        "style": name,
        "about": " ".join(style.__doc__.split()),
        "seed": seed,
        "sizePx": [view.width_px, view.height_px],
        "quality": view.quality,
        "tiltDeg": round(float(np.degrees(np.arccos(camera.turn[2, 2]))), 2),
        "charts": [chart_truth(rng, chart, camera) for chart in charts],
    }
    return jpeg.tobytes(), truth


HAND_PX = 1.0
"""How far from a mark a person taps, standard deviation."""


def chart_truth(rng, chart, camera):
    corners = camera.project(chart.corners)
    middle = (chart.level[0] + chart.level[1]) / 2
    # Two marks of a ruler beside it, or where there is none two depths half-way up the chart.
    tapped = [chart.depth[0] + share * (chart.depth[1] - chart.depth[0]) for share in (0.1, 0.9)]
    marks = camera.project(chart.ruler or [chart.place(depth, middle)[0] for depth in tapped])
    taps = np.round(marks + rng.normal(0, HAND_PX, (2, 2)), 1).tolist()
    return {
        "cornersPx": np.round(corners, 3).tolist(),
        "depthMm": list(chart.depth),
        "resistance": list(chart.level),
        "depthNumbers": chart.depth_numbers,
        "levelNumbers": chart.level_numbers,
        "pxPerMm": round(float(np.hypot(*(corners[1] - corners[0]))) / abs(chart.depth[1] - chart.depth[0]), 4),
        "taps": taps,
        "tapsMm": None if chart.ruler else tapped,
        "rulerMm": float(np.hypot(*np.subtract(*chart.ruler))) if chart.ruler else None,
        "lines": [
            {
                "depthMm": np.round(line["depthMm"], 2).tolist(),
                "levelPct": np.round(line["levelPct"], 2).tolist(),
                "gapsMm": line["gapsMm"],
                "px": np.round(camera.project(chart.place(line["depthMm"], line["levelPct"]))[::20], 2).tolist(),
            }
            for line in chart.lines
        ],
    }


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("folder", type=Path)
    ask.add_argument("--set", default="tuning", choices=["tuning", "judging"])
    ask.add_argument("--style")
    ask.add_argument("--count", type=int, default=3)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--long", type=int)
    given = ask.parse_args()
    cv2.setNumThreads(1)
    given.folder.mkdir(parents=True, exist_ok=True)
    styles = styles_of(given.set)
    if given.style and given.style not in styles:
        ask.error(f"no style {given.style!r} in {given.set}: {', '.join(styles)}")
    for name, style in styles.items():
        if given.style and name != given.style:
            continue
        for seed in range(given.seed, given.seed + given.count):
            jpeg, truth = make(style, name, seed, given.long)
            file = given.folder / f"{name.replace(' ', '-').replace(',', '')}-{seed}"
            file.with_suffix(".jpg").write_bytes(jpeg)
            file.with_suffix(".json").write_text(json.dumps(truth, separators=(",", ":")))


if __name__ == "__main__":
    main()
