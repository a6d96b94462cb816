"""Makes glyphs.ts: the ten digits as printed charts write them, on a mesh of 8 by 12 with 16 greys.

Run from this folder with Debian's python3-pil and python3-opencv, then format the result:

    /usr/bin/python3 glyphs.py && npx biome check --write glyphs.ts

Fonts are Debian's (fonts-dejavu, fonts-liberation, fonts-urw-base35, fonts-freefont-ttf where there), OpenCV's
stroke font, and that of our own reports.
"""
from pathlib import Path

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

WIDE, HIGH = 8, 12
FONTS = [
    "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
    "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf",
    "/usr/share/fonts/truetype/dejavu/DejaVuSansMono.ttf",
    "/usr/share/fonts/truetype/dejavu/DejaVuSerif.ttf",
    "/usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf",
    "/usr/share/fonts/truetype/liberation/LiberationSans-Bold.ttf",
    "/usr/share/fonts/truetype/liberation/LiberationSerif-Regular.ttf",
    "/usr/share/fonts/truetype/liberation/LiberationMono-Regular.ttf",
    "/usr/share/fonts/opentype/urw-base35/NimbusSansNarrow-Regular.otf",
    "/usr/share/fonts/opentype/urw-base35/URWGothic-Book.otf",
    "../../../../../node_modules/@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf",
]


def cropped(ink):
    rows = np.flatnonzero(ink.max(axis=1) > 127)
    columns = np.flatnonzero(ink.max(axis=0) > 127)
    return ink[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1]


def meshed(ink):
    """The glyph as high as the mesh, its width in proportion, in the middle."""
    high, wide = ink.shape
    width = min(WIDE, max(1, round(WIDE * 4 * wide / high * HIGH / WIDE) / 4))
    cells = max(1, int(round(width)))
    small = cv2.resize(ink, (cells, HIGH), interpolation=cv2.INTER_AREA)
    out = np.zeros((HIGH, WIDE))
    start = (WIDE - cells) // 2
    out[:, start : start + cells] = small
    return out


rows = []
for digit in "0123456789":
    for path in FONTS:
        if not Path(path).exists():
            continue
        image = Image.new("L", (200, 200), 0)
        ImageDraw.Draw(image).text((50, 30), digit, 255, ImageFont.truetype(path, 96))
        rows.append((digit, meshed(cropped(np.array(image)))))
    for thickness in (4, 9):
        image = np.zeros((200, 200), np.uint8)
        cv2.putText(image, digit, (50, 150), cv2.FONT_HERSHEY_SIMPLEX, 4, 255, thickness, cv2.LINE_AA)
        rows.append((digit, meshed(cropped(image))))

lines = []
for digit, mesh in rows:
    cells = "".join("0123456789abcdef"[int(round(v / 255 * 15))] for v in mesh.reshape(-1))
    lines.append(f"  ['{digit}', '{cells}'],")
text = f"""/** Made by glyphs.py: digits on a mesh of {WIDE} by {HIGH}, a hexadecimal grey a cell, row after row. */
export const GLYPH_WIDE = {WIDE};
export const GLYPH_HIGH = {HIGH};
export const GLYPHS: readonly (readonly [digit: string, cells: string])[] = [
""" + "\n".join(lines) + "\n];\n"
Path(__file__).with_suffix(".ts").write_text(text)
