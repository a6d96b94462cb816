"""A sheet of paper in mm: rules, lines, words and ink on it, drawn with OpenCV. Reflectance in sRGB, 0 to 1, blue first."""
import functools
from pathlib import Path

import cv2
import numpy as np

SHIFT = 4
FONT_FOLDERS = [Path("/usr/share/fonts"), Path("/usr/local/share/fonts")]
HERSHEY = {
    "plotter": cv2.FONT_HERSHEY_SIMPLEX,
    "plotter serif": cv2.FONT_HERSHEY_COMPLEX,
    "plotter small": cv2.FONT_HERSHEY_PLAIN,
    "hand": cv2.FONT_HERSHEY_SCRIPT_SIMPLEX,
}


class Sheet:
    """A blank sheet. Places are in mm from the top left; `res` is pixels a mm, a pixel's centre at whole numbers."""

    def __init__(self, rng, width_mm, height_mm, colour=(0.93, 0.95, 0.96), res=11.0, fibre=0.012):
        self.width_mm, self.height_mm, self.res = width_mm, height_mm, res
        self.columns = int(round(width_mm * res)) + 1
        self.rows = int(round(height_mm * res)) + 1
        grain = rng.normal(0, 1, (self.rows // 3 + 2, self.columns // 3 + 2)).astype(np.float32)
        grain = cv2.resize(cv2.GaussianBlur(grain, (0, 0), 1.2), (self.columns, self.rows))
        self.paper = np.float32(colour) * (1 + np.float32(fibre * 2) * grain[..., None])

    def layer(self):
        return np.zeros((self.rows, self.columns), np.uint8)

    def ink(self, mask, colour, strength=1.0, bleed_mm=0.0, uneven=None):
        """Lays ink on: what it takes of the light is the mask's, times strength, times `uneven` (sheet-sized)."""
        rows = np.flatnonzero(mask.any(1))
        columns = np.flatnonzero(mask.any(0))
        if not rows.size:
            return
        edge = int(np.ceil(3 * bleed_mm * self.res)) + 1
        y0, y1 = max(0, rows[0] - edge), min(self.rows, rows[-1] + edge + 1)
        x0, x1 = max(0, columns[0] - edge), min(self.columns, columns[-1] + edge + 1)
        amount = mask[y0:y1, x0:x1].astype(np.float32) / 255 * np.float32(strength)
        if bleed_mm > 0:
            amount = cv2.GaussianBlur(amount, (0, 0), bleed_mm * self.res)
        if uneven is not None:
            amount *= uneven[y0:y1, x0:x1]
        self.paper[y0:y1, x0:x1] *= 1 - amount[..., None] * (1 - np.float32(colour))

    def fixed(self, points_mm):
        return np.round(np.asarray(points_mm, float) * self.res * 2**SHIFT).astype(np.int32)

    def rule(self, mask, a, b, width_mm):
        """A straight line of exact width."""
        a, b = np.asarray(a, float), np.asarray(b, float)
        along = (b - a) / max(1e-9, np.hypot(*(b - a)))
        side = np.array([-along[1], along[0]]) * max(width_mm - 1 / self.res, 0.5 / self.res) / 2
        cv2.fillConvexPoly(mask, self.fixed([a + side, b + side, b - side, a - side]), 255, cv2.LINE_AA, SHIFT)

    def box(self, mask, x, y, width, height, line_mm):
        half = line_mm / 2
        for a, b in [
            ((x - half, y), (x + width + half, y)),
            ((x - half, y + height), (x + width + half, y + height)),
            ((x, y - half), (x, y + height + half)),
            ((x + width, y - half), (x + width, y + height + half)),
        ]:
            self.rule(mask, a, b, line_mm)

    def filled(self, mask, points_mm, value=255):
        cv2.fillPoly(mask, [self.fixed(points_mm)], value, cv2.LINE_AA, SHIFT)

    def stroke(self, mask, points_mm, width_mm):
        """A pen's line with a round tip."""
        thick = max(1, int(round(width_mm * self.res)))
        cv2.polylines(mask, [self.fixed(points_mm)], False, 255, thick, cv2.LINE_AA, SHIFT)

    def words(self, mask, text, x, y, high_mm, font="plain", anchor="cm", turn=0):
        """Text whose digits are high_mm tall. Anchor: l, c or r and t, m or b of its box; turn in quarters clockwise."""
        glyphs = rendered(text, max(4, int(round(high_mm * self.res))), font)
        glyphs = np.ascontiguousarray(np.rot90(glyphs, -turn))
        high, wide = glyphs.shape
        left = round(x * self.res) - {"l": 0, "c": wide // 2, "r": wide}[anchor[0]]
        top = round(y * self.res) - {"t": 0, "m": high // 2, "b": high}[anchor[1]]
        x0, y0 = max(0, left), max(0, top)
        x1, y1 = min(self.columns, left + wide), min(self.rows, top + high)
        if x1 > x0 and y1 > y0:
            part = mask[y0:y1, x0:x1]
            np.maximum(part, glyphs[y0 - top : y1 - top, x0 - left : x1 - left], out=part)

    def width_of(self, text, high_mm, font="plain"):
        return rendered(text, max(4, int(round(high_mm * self.res))), font).shape[1] / self.res


FACES = {
    "plain": ["LiberationSans-Regular.ttf", "DejaVuSans.ttf"],
    "bold": ["LiberationSans-Bold.ttf", "DejaVuSans-Bold.ttf"],
    "serif": ["LiberationSerif-Regular.ttf", "DejaVuSerif.ttf"],
    "typed": ["LiberationMono-Regular.ttf", "DejaVuSansMono.ttf"],
    "narrow": ["LiberationSansNarrow-Regular.ttf", "DejaVuSansCondensed.ttf"],
    "round": ["URWGothic-Book.otf", "DejaVuSans.ttf"],
    "old": ["C059-Roman.otf", "DejaVuSerif.ttf"],
    "slanted": ["LiberationSans-Italic.ttf", "DejaVuSans-Oblique.ttf"],
}


@functools.lru_cache(maxsize=None)
def face_file(font):
    """The font's file where there is one on this machine, else None: then a plotter's letters stand in."""
    for name in FACES.get(font, []):
        for folder in FONT_FOLDERS:
            for path in sorted(folder.rglob(name)) if folder.exists() else []:
                return str(path)
    return None


@functools.lru_cache(maxsize=4096)
def rendered(text, digit_px, font):
    """A word as coverage, cut to its ink; digits are digit_px tall."""
    path = face_file(font)
    try:
        from PIL import Image, ImageDraw, ImageFont
    except ImportError:
        path = None
    if path:
        trial = ImageFont.truetype(path, 100)
        box = trial.getbbox("0")
        face = ImageFont.truetype(path, max(6, round(100 * digit_px / (box[3] - box[1]))))
        box = face.getbbox(text)
        image = Image.new("L", (box[2] - box[0] + 4, box[3] - box[1] + 4))
        ImageDraw.Draw(image).text((2 - box[0], 2 - box[1]), text, 255, font=face)
        return np.asarray(image)
    face = HERSHEY.get(font, cv2.FONT_HERSHEY_SIMPLEX)
    (_, high), _ = cv2.getTextSize("0", face, 1.0, 1)
    size = digit_px / high
    thick = max(1, int(round(digit_px / 9)))
    (wide, high), below = cv2.getTextSize(text, face, size, thick)
    image = np.zeros((high + below + 2 * thick + 4, wide + 2 * thick + 4), np.uint8)
    cv2.putText(image, text, (thick + 2, high + thick + 2), face, size, 255, thick, cv2.LINE_AA)
    rows, columns = np.flatnonzero(image.any(1)), np.flatnonzero(image.any(0))
    return image[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1] if rows.size else image
