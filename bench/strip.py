"""The comparable steps of reading a strip in OpenCV, on one thread, for bench/strip.ts.

Reads one JSON document on standard input (the photo is a file of its RGBA bytes), prints one of processor milliseconds by
step on standard output, and writes the chart laid flat beside the photo, to be compared.
"""
import json
import sys
import time
from pathlib import Path

import cv2
import numpy as np

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).parents[1] / "tests/outside/strips"))
from contour_recipe import framed  # noqa: E402

cv2.setNumThreads(1)
given = json.load(sys.stdin)
columns, rows = given["columns"], given["rows"]
rgba = np.fromfile(given["photo"], np.uint8).reshape(given["height"], given["width"], 4)
photo = np.ascontiguousarray(rgba[..., 2::-1])
flat = np.float32([[0, 0], [columns - 1, 0], [columns - 1, rows - 1], [0, rows - 1]])
corners = np.float32(given["corners"])
pairs = np.array(given["pairs"])
LEAST_MS = 20


def median_ms(work, runs=5):
    work()
    start = time.process_time()
    work()
    calls = max(1, int(np.ceil(LEAST_MS / 1000 / max(time.process_time() - start, 1e-6))))
    times = []
    for _ in range(runs):
        start = time.process_time()
        for _ in range(calls):
            work()
        times.append((time.process_time() - start) * 1000 / calls)
    return sorted(times)[len(times) // 2]


def four():
    return cv2.getPerspectiveTransform(flat, corners)


def many():
    return cv2.findHomography(pairs[:, 0], pairs[:, 1], 0)


def warp():
    return cv2.warpPerspective(photo, four(), (columns, rows), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)


laid = warp()
laid[..., ::-1].tofile(given["laid"])


def paper():
    """The usual recipe: a closing wider than any stroke, smoothed, and a division."""
    closed = cv2.morphologyEx(laid, cv2.MORPH_CLOSE, np.ones((33, 33), np.uint8))
    return cv2.divide(laid, cv2.GaussianBlur(closed, (0, 0), 11), scale=200)


def ridges():
    """A small grey copy, and its black top-hat by a window as wide as ours."""
    size = (given["width"] // given["fold"], given["height"] // given["fold"])
    grey = cv2.resize(cv2.cvtColor(photo, cv2.COLOR_BGR2GRAY), size, interpolation=cv2.INTER_AREA)
    window = 2 * round(max(size) / 140) + 1
    return cv2.morphologyEx(grey, cv2.MORPH_BLACKHAT, np.ones((window, window), np.uint8))


dark = cv2.threshold(ridges(), 20, 255, cv2.THRESH_BINARY)[1]


def lines():
    return cv2.HoughLinesP(dark, 1, np.pi / 720, 150, minLineLength=60, maxLineGap=6)


def find():
    return framed(photo)


steps = [four, many, warp, paper, ridges, lines, find]
print(json.dumps({step.__name__: median_ms(step) for step in steps}))
