"""A chart on a sheet: its place and scale, its rules and numbers, and the pen's line with its truth."""
from dataclasses import dataclass, field

import cv2
import numpy as np

BLACK = (0.10, 0.10, 0.11)


@dataclass
class Chart:
    """Left, top, width and height on the sheet, mm; depth at its left and right, level at its bottom and top."""

    x: float
    y: float
    width: float
    height: float
    depth: tuple = (0.0, 300.0)
    level: tuple = (0.0, 100.0)
    depth_numbers: str = "none"
    """What is printed along the depth: 'mm', 'none', or the name of another unit, which must not be taken for mm."""
    level_numbers: str = "none"
    ruler: tuple = ()
    """Two marks of a ruler beside it, places on the sheet; the chart is drawn 1:1 and begins at its left."""
    lines: list = field(default_factory=list)
    """The truth: depth (mm), level (percent), gaps (mm) of each line drawn."""

    def place(self, depth, level):
        x = self.x + self.width * (np.asarray(depth, float) - self.depth[0]) / (self.depth[1] - self.depth[0])
        y = self.y + self.height * (self.level[1] - np.asarray(level, float)) / (self.level[1] - self.level[0])
        return np.column_stack(np.broadcast_arrays(x, y))

    @property
    def corners(self):
        x, y, w, h = self.x, self.y, self.width, self.height
        return [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]


def upright_rules(sheet, mask, chart, every_mm, width_mm, start=0.0, dash=None):
    """Upright lines each so many mm of paper."""
    x = chart.x + start
    while x <= chart.x + chart.width + 1e-6:
        dashed(sheet, mask, (x, chart.y), (x, chart.y + chart.height), width_mm, dash)
        x += every_mm


def level_rules(sheet, mask, chart, every_mm, width_mm, start=0.0, dash=None):
    y = chart.y + chart.height - start
    while y >= chart.y - 1e-6:
        dashed(sheet, mask, (chart.x, y), (chart.x + chart.width, y), width_mm, dash)
        y -= every_mm


def dashed(sheet, mask, a, b, width_mm, dash):
    if not dash:
        sheet.rule(mask, a, b, width_mm)
        return
    a, b = np.array(a), np.array(b)
    length = np.hypot(*(b - a))
    on, off = dash
    for start in np.arange(0, length, on + off):
        sheet.rule(mask, a + (b - a) * start / length, a + (b - a) * min(1, (start + on) / length), width_mm)


def depth_numbers(sheet, mask, chart, values, texts, high_mm, font, side="below", tick=0.0, gap=1.2, turn=0, line=0.2):
    for value, text in zip(values, texts):
        x = chart.place(value, chart.level[0])[0][0]
        y = chart.y + chart.height if side == "below" else chart.y
        out = 1 if side == "below" else -1
        if tick:
            sheet.rule(mask, (x, y), (x, y + out * tick), line)
        anchor = "c" + ("t" if side == "below" else "b")
        sheet.words(mask, text, x, y + out * (max(tick, 0) + gap), high_mm, font, anchor, turn)


def level_numbers(sheet, mask, chart, values, texts, high_mm, font, side="left", tick=0.0, gap=1.2, turn=0, line=0.2):
    for value, text in zip(values, texts):
        y = chart.place(chart.depth[0], value)[0][1]
        x = chart.x if side == "left" else chart.x + chart.width
        out = -1 if side == "left" else 1
        if tick:
            sheet.rule(mask, (x, y), (x + out * tick, y), line)
        sheet.words(mask, text, x + out * (max(tick, 0) + gap), y, high_mm, font, ("r" if out < 0 else "l") + "m", turn)


def draw_trace(
    sheet, rng, chart, trace, colour, width_mm=0.4, strength=1.0, bleed_mm=0.03, gaps=(), fade=0.0, jerky=0.0, area=None,
    outline=True,
):
    """The pen's line, with gaps where it was lifted; `area` (colour, strength) fills below it. Writes the truth down."""
    depth, level = trace
    low, high = sorted(chart.depth)
    kept = (depth >= low) & (depth <= high)
    depth, level = depth[kept], level[kept]
    points = chart.place(depth, level)
    if area:
        floor = chart.place(depth[[-1, 0]], chart.level[0])
        mask = sheet.layer()
        sheet.filled(mask, np.concatenate([points, floor]))
        sheet.ink(mask, area[0], area[1])
    if outline:
        mask = sheet.layer()
        start = low
        for a, b in [*gaps, (high + 1, high + 1)]:
            part = (depth >= start) & (depth <= a)
            if part.sum() > 1:
                sheet.stroke(mask, points[part], width_mm)
            start = b
        uneven = None
        if fade or jerky:
            along = np.linspace(0, 1, sheet.columns, dtype=np.float32)
            strong = 1 - fade * along
            if jerky:
                blots = cv2.GaussianBlur(rng.normal(0, 1, (1, sheet.columns)).astype(np.float32), (0, 0), 2.5 * sheet.res)
                strong = strong * np.clip(1 - jerky * (0.5 + 0.5 * blots[0] / blots.std()), 0.25, 1)
            uneven = np.broadcast_to(strong[None], (sheet.rows, sheet.columns))
        sheet.ink(mask, colour, strength, bleed_mm, uneven)
    # An area without an outline has its edge where the pen's middle would be.
    chart.lines.append({"depthMm": depth, "levelPct": level, "gapsMm": [list(g) for g in gaps]})


WORDS = (
    "stem north side wind leaf limb crack fork moss path gate oak lime ash beech crown root soil dry wet old young tall "
    "thin dead live lean seen next year after before near road wall field hedge"
).split()


def prose(rng, count):
    return " ".join(rng.choice(WORDS, count))


def paragraph(sheet, rng, mask, x, y, width, rows, high_mm, font, step=1.9):
    """Rows of invented words."""
    for row in range(rows):
        words = ""
        limit = width * (rng.uniform(0.4, 0.9) if row == rows - 1 else 1)
        while True:
            longer = (words + " " + str(rng.choice(WORDS))).strip()
            if sheet.width_of(longer, high_mm, font) > limit:
                break
            words = longer
        sheet.words(mask, words, x, y + row * high_mm * step, high_mm, font, "lt")


def table(sheet, rng, mask, x, y, widths, row_mm, rows, high_mm, font, line_mm=0.25):
    """A ruled table of invented numbers."""
    total = sum(widths)
    for row in range(rows + 1):
        sheet.rule(mask, (x, y + row * row_mm), (x + total, y + row * row_mm), line_mm)
    for k in range(len(widths) + 1):
        at = x + sum(widths[:k])
        sheet.rule(mask, (at, y), (at, y + rows * row_mm), line_mm)
    for row in range(rows):
        for k, width in enumerate(widths):
            text = str(rng.choice(WORDS)) if row == 0 or k == 0 else str(int(rng.integers(1, 999)))
            sheet.words(mask, text, x + sum(widths[:k]) + width / 2, y + (row + 0.5) * row_mm, high_mm, font, "cm")
