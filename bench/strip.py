"""The comparable steps of reading a strip in OpenCV, on one thread, for bench/strip.ts.

Reads one JSON document on standard input, prints {"warp": ms, "paper": ms} on standard output.
"""
import json
import sys
import time

import cv2
import numpy as np

cv2.setNumThreads(1)
given = json.load(sys.stdin)
columns, rows = given["columns"], given["rows"]
photo = np.random.default_rng(1).integers(0, 255, (given["height"], given["width"], 3), np.uint8)
flat = np.float32([[0, 0], [columns - 1, 0], [columns - 1, rows - 1], [0, rows - 1]])


def median_ms(work, runs=5):
    work()
    times = []
    for _ in range(runs):
        start = time.process_time()
        work()
        times.append((time.process_time() - start) * 1000)
    return sorted(times)[len(times) // 2]


def warp():
    matrix = cv2.getPerspectiveTransform(flat, np.float32(given["corners"]))
    return cv2.warpPerspective(photo, matrix, (columns, rows), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)


laid = warp()


def paper():
    """The usual recipe: a closing wider than any stroke, smoothed, and a division."""
    closed = cv2.morphologyEx(laid, cv2.MORPH_CLOSE, np.ones((33, 33), np.uint8))
    return cv2.divide(laid, cv2.GaussianBlur(closed, (0, 0), 11), scale=200)


print(json.dumps({"warp": median_ms(warp), "paper": median_ms(paper)}))
