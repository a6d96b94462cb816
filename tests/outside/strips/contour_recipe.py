"""The common OpenCV recipe for a framed page: adaptive threshold, contours, the largest that is a convex quadrilateral.

    python3 contour_recipe.py FOLDER

Prints {"NAME.jpg": {"corners": [[x, y] * 4] or null, "ms": processor time}} for the photos in the folder, on one thread.
"""
import json
import sys
import time
from pathlib import Path

import cv2
import numpy as np

cv2.setNumThreads(1)
LEAST_SHARE = 0.03


def framed(photo):
    """Corners of the largest four-sided outline of ink, clockwise from the top left; None when there is none."""
    grey = cv2.cvtColor(photo, cv2.COLOR_BGR2GRAY)
    dark = cv2.adaptiveThreshold(grey, 255, cv2.ADAPTIVE_THRESH_MEAN_C, cv2.THRESH_BINARY_INV, 31, 10)
    dark = cv2.morphologyEx(dark, cv2.MORPH_CLOSE, np.ones((5, 5), np.uint8))
    contours, _ = cv2.findContours(dark, cv2.RETR_LIST, cv2.CHAIN_APPROX_NONE)
    best, most = None, LEAST_SHARE * grey.size
    for contour in contours:
        area = cv2.contourArea(contour)
        if area <= most:
            continue
        sides = cv2.approxPolyDP(contour, 0.02 * cv2.arcLength(contour, True), True)
        if len(sides) == 4 and cv2.isContourConvex(sides):
            best, most = sides, area
    if best is None:
        return None
    stop = (cv2.TERM_CRITERIA_EPS + cv2.TERM_CRITERIA_MAX_ITER, 40, 0.01)
    corners = cv2.cornerSubPix(grey, np.float32(best), (7, 7), (-1, -1), stop)[:, 0]
    middle = corners.mean(0)
    around = np.argsort(np.arctan2(*(corners - middle).T[::-1]))
    return corners[around]


def main():
    answers = {}
    for path in sorted(Path(sys.argv[1]).glob("*.jpg")):
        photo = cv2.imread(str(path))
        start = time.process_time()
        corners = framed(photo)
        ms = 1000 * (time.process_time() - start)
        answers[path.name] = {"corners": None if corners is None else corners.round(2).tolist(), "ms": ms}
    print(json.dumps(answers))


if __name__ == "__main__":
    main()
