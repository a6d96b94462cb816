"""The common OpenCV recipe for a framed page: adaptive threshold, contours, their hulls with four sides.

    python3 contour_recipe.py FOLDER

Prints {"NAME.jpg": {"quads": [[[x, y] * 4], ...] largest first, "ms": processor time}} for the photos in the folder, on one
thread. Corners run clockwise, from any of them.
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
    """Corners of the four-sided outlines of ink, largest first."""
    grey = cv2.cvtColor(photo, cv2.COLOR_BGR2GRAY)
    dark = cv2.adaptiveThreshold(grey, 255, cv2.ADAPTIVE_THRESH_MEAN_C, cv2.THRESH_BINARY_INV, 31, 10)
    dark = cv2.morphologyEx(dark, cv2.MORPH_CLOSE, np.ones((3, 3), np.uint8))
    contours, _ = cv2.findContours(dark, cv2.RETR_LIST, cv2.CHAIN_APPROX_NONE)
    quads = []
    for contour in contours:
        hull = cv2.convexHull(contour)
        area = cv2.contourArea(hull)
        if area <= LEAST_SHARE * grey.size:
            continue
        sides = cv2.approxPolyDP(hull, 0.02 * cv2.arcLength(hull, True), True)
        if len(sides) == 4:
            quads.append((area, np.float32(sides)))
    stop = (cv2.TERM_CRITERIA_EPS + cv2.TERM_CRITERIA_MAX_ITER, 40, 0.01)
    answers = []
    for _, sides in sorted(quads, key=lambda quad: -quad[0]):
        corners = cv2.cornerSubPix(grey, sides, (7, 7), (-1, -1), stop)[:, 0]
        answers.append(corners[np.argsort(np.arctan2(*(corners - corners.mean(0)).T[::-1]))])
    return answers


def main():
    answers = {}
    for path in sorted(Path(sys.argv[1]).glob("*.jpg")):
        photo = cv2.imread(str(path))
        start = time.process_time()
        quads = framed(photo)
        ms = 1000 * (time.process_time() - start)
        answers[path.name] = {"quads": [quad.round(2).tolist() for quad in quads], "ms": ms}
    print(json.dumps(answers))


if __name__ == "__main__":
    main()
