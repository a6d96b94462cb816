"""Makes strip-opencv.json: projective maps and a warped image by OpenCV, to hold ours against.

Run from this folder with Debian's python3-opencv (4.6 was used), then format the result:

    /usr/bin/python3 strip-opencv.py && npx biome format --write strip-opencv.json
"""
import json
from pathlib import Path

import cv2
import numpy as np

random = np.random.default_rng(20260514)
maps = []
for _ in range(12):
    size = random.uniform(400, 4000)
    source = np.float32([[0, 0], [size, 0], [size, size / 4], [0, size / 4]])
    target = np.float32(source + random.uniform(-0.06, 0.06, (4, 2)) * size + random.uniform(0, 300, 2))
    matrix = cv2.getPerspectiveTransform(source, target)
    points = random.uniform(0, 1, (5, 2)) * [size, size / 4]
    mapped = cv2.perspectiveTransform(points[None], matrix)[0]
    maps.append({
        "from": source.astype(float).tolist(),
        "to": target.astype(float).tolist(),
        "matrix": matrix.reshape(-1).tolist(),
        "points": points.tolist(),
        "mapped": mapped.tolist(),
    })

# More than four pairs, with noise: least squares over all of them.
source = random.uniform(0, 1000, (20, 2))
true = np.array([[0.9, 0.1, 30], [-0.05, 1.1, -20], [1e-4, -5e-5, 1]])
target = cv2.perspectiveTransform(source[None], true)[0] + random.normal(0, 0.3, (20, 2))
fitted, _ = cv2.findHomography(source, target, 0)
many = {"from": source.tolist(), "to": target.tolist(), "matrix": fitted.reshape(-1).tolist()}

# A smooth image warped with bilinear sampling.
width, height = 60, 40
x, y = np.meshgrid(np.arange(width), np.arange(height))
image = (120 + 90 * np.sin(x / 7.0) * np.cos(y / 9.0)).astype(np.uint8)
corners = np.float32([[5, 4], [53, 6], [55, 36], [3, 32]])
columns, rows = 50, 30
flat = np.float32([[0, 0], [columns - 1, 0], [columns - 1, rows - 1], [0, rows - 1]])
to_photo = cv2.getPerspectiveTransform(flat, corners)
warped = cv2.warpPerspective(image, to_photo, (columns, rows), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)
warp = {
    "width": width,
    "height": height,
    "image": image.reshape(-1).tolist(),
    "corners": corners.astype(float).tolist(),
    "columns": columns,
    "rows": rows,
    "warped": warped.reshape(-1).tolist(),
}

# Noise, and a window of a big chart seen at a steep tilt and enlarged: half a pixel's slip anywhere would show.
width, height, columns, rows = 72, 60, 90, 70
image = random.integers(0, 256, (height, width)).astype(np.uint8)
chart = np.float32([[0, 0], [1999, 0], [1999, 599], [0, 599]])
on_photo = np.float32([[212, 330], [1410, 268], [1466, 742], [148, 560]])
window = np.array([[1, 0, 1200], [0, 1, 260], [0, 0, 1]], float)
whole = cv2.getPerspectiveTransform(chart, on_photo)
seen = cv2.perspectiveTransform(np.float64([[[1200, 260], [1289, 260], [1289, 329], [1200, 329]]]), whole)[0]
back = np.eye(3)
back[:2, 2] = 3.3 - seen.min(0)
to_window = back @ whole @ window
to_window /= to_window[2, 2]
assert ((seen + back[:2, 2]).max(0) < [width - 2, height - 2]).all()
warped = cv2.warpPerspective(image, to_window, (columns, rows), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)
steep = {
    "width": width,
    "height": height,
    "image": image.reshape(-1).tolist(),
    "matrix": to_window.reshape(-1).tolist(),
    "columns": columns,
    "rows": rows,
    "warped": warped.reshape(-1).tolist(),
}

out = {"opencv": cv2.__version__, "maps": maps, "many": many, "warp": warp, "steep": steep}
Path(__file__).with_suffix(".json").write_text(json.dumps(out, separators=(",", ":")) + "\n")
