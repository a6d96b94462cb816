"""Styles that anyone may try the reader on while working at it. The judging styles are in another file, kept apart."""
import numpy as np

from camera import View
from chart import (
    BLACK,
    Chart,
    depth_numbers,
    draw_trace,
    level_numbers,
    level_rules,
    paragraph,
    prose,
    table,
    upright_rules,
)
from sheet import Sheet
from traces import invented_trace


def numbers(values):
    return [f"{v:g}" for v in values]


def camera(rng, wide=True, **more):
    """A handheld photo as it usually comes out."""
    long_px = int(rng.choice([1600, 2000, 2400]))
    short_px = long_px * 3 // 4
    return View(
        width_px=long_px if wide else short_px,
        height_px=short_px if wide else long_px,
        **{
            "fill": rng.uniform(0.8, 0.95),
            "tilt": rng.uniform(-14, 14),
            "swing": rng.uniform(-10, 10),
            "roll": rng.uniform(-5, 5),
            "barrel": rng.uniform(-0.012, 0.004),
            "gradient": rng.uniform(0.05, 0.35),
            "vignette": rng.uniform(0.05, 0.35),
            "cast": rng.uniform(0, 0.1),
            "exposure": rng.uniform(0.6, 0.95),
            "defocus_px": rng.uniform(0.3, 1.0),
            "noise": rng.uniform(0.004, 0.014),
            "sharpen": rng.uniform(0, 0.7),
            "quality": int(rng.integers(65, 96)),
            **more,
        },
    )


def millimetre_paper(rng):
    """Orange millimetre paper, its outer rules bold, blue pen; numbers by a plotter every 50 mm."""
    sheet = Sheet(rng, 342, 124, (0.90, 0.95, 0.97), res=10)
    chart = Chart(20, 12, 300, 100, (0, 300), (0, 100), "mm", "percent")
    orange = (0.35, 0.60, 0.93)
    for every, width, strength in [(1, 0.1, 0.45), (5, 0.16, 0.6), (10, 0.25, 0.85)]:
        mask = sheet.layer()
        upright_rules(sheet, mask, chart, every, width)
        level_rules(sheet, mask, chart, every, width)
        sheet.ink(mask, orange, strength)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.45)
    sheet.ink(mask, orange, 1.0)
    mask = sheet.layer()
    depth_numbers(sheet, mask, chart, range(0, 301, 50), numbers(range(0, 301, 50)), 3, "plotter")
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 3, "plotter")
    sheet.ink(mask, (0.25, 0.2, 0.2), 0.9)
    trace = invented_trace(rng, rng.uniform(240, 300))
    draw_trace(sheet, rng, chart, trace, (0.75, 0.25, 0.12), rng.uniform(0.35, 0.6), 0.92, 0.05)
    return sheet, [chart], camera(rng, background="wood")


def framed_ticks(rng):
    """A printed frame with ticks outside and sans numbers, no grid, black line, white sheet on a wooden table."""
    long_mm = float(rng.choice([200, 250, 400]))
    sheet = Sheet(rng, 297, 150, res=11)
    chart = Chart(30, 22, 240, 88, (0, long_mm), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    step = 50 if long_mm > 200 else 25
    depths = np.arange(0, long_mm + 1, step)
    depth_numbers(sheet, mask, chart, depths, numbers(depths), 2.8, "plain", tick=2)
    level_numbers(sheet, mask, chart, range(0, 101, 25), numbers(range(0, 101, 25)), 2.8, "plain", tick=2)
    sheet.words(mask, "depth, mm", 150, 122, 2.8, "plain")
    sheet.words(mask, "level, %", 11, 66, 2.8, "plain", turn=3)
    sheet.words(mask, f"{prose(rng, 2)} {int(rng.integers(1, 60))}", 150, 12, 3.6, "bold")
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, long_mm, True), BLACK, rng.uniform(0.25, 0.4), 0.95, 0.02)
    return sheet, [chart], camera(rng, background="wood", fill=rng.uniform(0.7, 0.95))


def log_page(rng):
    """A page of a log-book: heading, paragraphs, a chart with a grey grid, and a ruled table below as wide as it."""
    sheet = Sheet(rng, 210, 270, (0.88, 0.93, 0.95), res=10)
    chart = Chart(28, 78, 160, 62, (0, 320), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 20, 0.15)
    level_rules(sheet, mask, chart, chart.height / 5, 0.15)
    sheet.ink(mask, (0.6, 0.6, 0.6), 0.8)
    mask = sheet.layer()
    sheet.words(mask, prose(rng, 3), 105, 16, 5, "serif")
    paragraph(sheet, rng, mask, 20, 26, 170, 9, 2.4, "serif")
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 321, 40), numbers(range(0, 321, 40)), 2.4, "serif", tick=1.2)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.4, "serif", tick=1.2)
    table(sheet, rng, mask, 28, 160, [32, 32, 32, 32, 32], 7.5, int(rng.integers(5, 9)), 2.4, "serif")
    paragraph(sheet, rng, mask, 20, 236, 170, 5, 2.4, "serif")
    sheet.ink(mask, BLACK, 0.9)
    draw_trace(sheet, rng, chart, invented_trace(rng, 315), (0.15, 0.12, 0.55), 0.4, 0.9, 0.02)
    return sheet, [chart], camera(rng, wide=False, background="cloth")


def thermal_strip(rng):
    """A long thermal strip that fades and curls, dotted grid, typed numbers, on a bare table."""
    sheet = Sheet(rng, 330, 72, (0.90, 0.90, 0.91), res=12, fibre=0.006)
    chart = Chart(16, 8, 300, 50, (0, 300), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 10, 0.14, dash=(0.4, 0.6))
    level_rules(sheet, mask, chart, 10, 0.14, dash=(0.4, 0.6))
    sheet.ink(mask, (0.35, 0.35, 0.35), 0.7)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 301, 20), numbers(range(0, 301, 20)), 2.2, "typed", gap=1)
    level_numbers(sheet, mask, chart, [0, 50, 100], numbers([0, 50, 100]), 2.2, "typed", gap=1)
    sheet.ink(mask, (0.25, 0.22, 0.22), 0.85)
    trace = invented_trace(rng, rng.uniform(250, 300))
    draw_trace(sheet, rng, chart, trace, (0.2, 0.18, 0.18), 0.3, 0.95, 0.03, fade=rng.uniform(0.2, 0.6))
    bent = {"bow": rng.uniform(-0.015, 0.02), "lift": rng.uniform(0, 0.02)}
    return sheet, [chart], camera(rng, background="plain", glare=rng.uniform(0, 0.12), **bent)


def filled_area(rng):
    """A print with the area under the curve filled in pale blue under a darker edge, level rules only."""
    sheet = Sheet(rng, 280, 140, res=11)
    chart = Chart(28, 18, 230, 90, (0, 250), (0, 100), "mm", "percent")
    mask = sheet.layer()
    level_rules(sheet, mask, chart, chart.height / 10, 0.15)
    sheet.ink(mask, (0.75, 0.75, 0.75), 0.9)
    trace = invented_trace(rng, 250, True)
    area = ((0.95, 0.82, 0.62), rng.uniform(0.5, 1.0))
    draw_trace(sheet, rng, chart, trace, (0.60, 0.33, 0.10), 0.35, 1.0, 0.0, area=area)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 251, 25), numbers(range(0, 251, 25)), 2.6, "round", tick=1.5)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.6, "round", tick=1.5)
    sheet.ink(mask, BLACK)
    return sheet, [chart], camera(rng, background="tiles")


def upright_strip(rng):
    """A gridded strip photographed on its side: depth runs up or down the photo."""
    sheet = Sheet(rng, 290, 92, (0.86, 0.93, 0.95), res=11)
    chart = Chart(18, 10, 260, 66, (0, 260), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 10, 0.2)
    level_rules(sheet, mask, chart, chart.height / 10, 0.2)
    sheet.ink(mask, (0.55, 0.72, 0.50), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    sheet.ink(mask, (0.35, 0.5, 0.25), 0.95)
    mask = sheet.layer()
    depth_numbers(sheet, mask, chart, range(0, 261, 20), numbers(range(0, 261, 20)), 2.6, "plain")
    level_numbers(sheet, mask, chart, [0, 20, 40, 60, 80, 100], numbers([0, 20, 40, 60, 80, 100]), 2.6, "plain")
    sheet.ink(mask, BLACK, 0.9)
    draw_trace(sheet, rng, chart, invented_trace(rng, 258), (0.2, 0.1, 0.65), 0.45, 0.9, 0.04)
    side = float(rng.choice([90, -90]))
    return sheet, [chart], camera(rng, wide=False, background="leaves", roll=side + rng.uniform(-4, 4))


def two_charts(rng):
    """Two framed charts one above the other on a sheet, each with numbers; either is right, both as one is wrong."""
    sheet = Sheet(rng, 270, 190, res=10)
    charts = []
    for y in (14.0, 104.0):
        chart = Chart(26, y, 220, 62, (0, 220), (0, 100), "mm", "percent")
        mask = sheet.layer()
        upright_rules(sheet, mask, chart, 10, 0.12)
        sheet.ink(mask, (0.7, 0.7, 0.7), 0.8)
        mask = sheet.layer()
        sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
        depth_numbers(sheet, mask, chart, range(0, 221, 20), numbers(range(0, 221, 20)), 2.4, "plain", tick=1)
        level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.4, "plain", tick=1)
        sheet.ink(mask, BLACK)
        draw_trace(sheet, rng, chart, invented_trace(rng, 220), BLACK, 0.3, 0.95, 0.02)
        charts.append(chart)
    return sheet, charts, camera(rng, background="wood")


def right_to_left(rng):
    """A chart whose depth runs from right to left, red grid, black pen."""
    sheet = Sheet(rng, 320, 110, (0.88, 0.94, 0.96), res=10)
    chart = Chart(18, 12, 280, 80, (280, 0), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 5, 0.15)
    level_rules(sheet, mask, chart, 8, 0.15)
    sheet.ink(mask, (0.55, 0.55, 0.92), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.4)
    sheet.ink(mask, (0.3, 0.3, 0.85))
    mask = sheet.layer()
    depth_numbers(sheet, mask, chart, range(0, 281, 40), numbers(range(0, 281, 40)), 3, "plain")
    level_numbers(sheet, mask, chart, range(0, 101, 50), numbers(range(0, 101, 50)), 3, "plain", side="right")
    sheet.ink(mask, (0.2, 0.2, 0.6))
    draw_trace(sheet, rng, chart, invented_trace(rng, 270), BLACK, 0.4, 0.9, 0.04)
    return sheet, [chart], camera(rng, background="cloth")


def axes_only(rng):
    """Two axes with ticks and numbers, nothing else, on white paper that fills the photo."""
    sheet = Sheet(rng, 270, 150, res=11)
    chart = Chart(30, 20, 220, 96, (0, 250), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.rule(mask, (chart.x, chart.y), (chart.x, chart.y + chart.height + 0.2), 0.4)
    sheet.rule(mask, (chart.x - 0.2, chart.y + chart.height), (chart.x + chart.width, chart.y + chart.height), 0.4)
    depth_numbers(sheet, mask, chart, range(0, 251, 50), numbers(range(0, 251, 50)), 3, "plain", tick=-1.5)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 3, "plain", tick=-1.5)
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 240), (0.65, 0.3, 0.1), 0.4, 0.95, 0.02)
    return sheet, [chart], camera(rng, background="wood", fill=1.02)


def centimetres(rng):
    """A trap: the depth is printed in centimetres (0 to 30), which must not be taken for millimetres."""
    sheet = Sheet(rng, 330, 110, res=10)
    chart = Chart(18, 12, 300, 80, (0, 300), (0, 100), "cm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 10, 0.15)
    level_rules(sheet, mask, chart, 8, 0.15)
    sheet.ink(mask, (0.65, 0.65, 0.65), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 301, 50), numbers(range(0, 31, 5)), 2.8, "plain", tick=1.5)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.8, "plain", tick=1.5)
    sheet.words(mask, "cm", 326, 96, 2.8, "plain", "rt")
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 290), (0.6, 0.2, 0.1), 0.4, 0.95, 0.03)
    return sheet, [chart], camera(rng, background="wood")


def strip_by_ruler(rng):
    """A narrow strip drawn 1:1 without numbers, laid beside a wooden ruler on bark; its depth comes from two taps."""
    sheet = Sheet(rng, 300, 70, (0.90, 0.94, 0.95), res=11)
    chart = Chart(10, 8, 280, 34, (0, 280), (0, 100), ruler=((30, 50), (270, 50)))
    mask = sheet.layer()
    level_rules(sheet, mask, chart, chart.height / 4, 0.15)
    upright_rules(sheet, mask, chart, 10, 0.15)
    sheet.ink(mask, (0.55, 0.7, 0.8), 0.9)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    sheet.ink(mask, (0.3, 0.45, 0.6))
    draw_trace(sheet, rng, chart, invented_trace(rng, 275), (0.3, 0.1, 0.1), 0.4, 0.9, 0.04)
    ruler(sheet, chart, 50, 290)
    view = camera(rng, background="bark", hand=rng.uniform(0, 0.4))
    return sheet, [chart], view


def page_border(rng):
    """A bait: a border round the whole page, a boxed title, and inside them a chart with a thinner frame."""
    sheet = Sheet(rng, 290, 150, res=11)
    chart = Chart(40, 34, 220, 82, (0, 240), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, 8, 8, 274, 134, 0.7)
    sheet.box(mask, 8, 8, 274, 15, 0.5)
    sheet.words(mask, prose(rng, 4), 145, 15.5, 4, "bold")
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.25)
    depth_numbers(sheet, mask, chart, range(0, 241, 40), numbers(range(0, 241, 40)), 2.6, "plain", tick=1.2)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.6, "plain", tick=1.2)
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 235), (0.6, 0.2, 0.1), 0.35, 0.95, 0.02)
    return sheet, [chart], camera(rng, background="tiles")


def table_and_axes(rng):
    """A bait: a chart of two axes only above a big ruled table with numbers under it."""
    sheet = Sheet(rng, 250, 190, res=10)
    chart = Chart(28, 14, 200, 74, (0, 200), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.rule(mask, (chart.x, chart.y), (chart.x, chart.y + chart.height + 0.2), 0.35)
    sheet.rule(mask, (chart.x - 0.2, chart.y + chart.height), (chart.x + chart.width, chart.y + chart.height), 0.35)
    depth_numbers(sheet, mask, chart, range(0, 201, 25), numbers(range(0, 201, 25)), 2.6, "plain", tick=1.2)
    level_numbers(sheet, mask, chart, range(0, 101, 25), numbers(range(0, 101, 25)), 2.6, "plain", tick=1.2)
    table(sheet, rng, mask, 20, 106, [35] * 6, 9, 7, 2.6, "plain")
    sheet.ink(mask, BLACK, 0.95)
    draw_trace(sheet, rng, chart, invented_trace(rng, 195), (0.1, 0.1, 0.6), 0.35, 0.95, 0.02)
    return sheet, [chart], camera(rng, background="wood")


def later_part(rng):
    """A chart that begins at a depth of 120 mm and a level of 10 %, its last grid line not numbered."""
    sheet = Sheet(rng, 300, 116, (0.90, 0.94, 0.95), res=10)
    chart = Chart(22, 14, 264, 84, (120, 340), (10, 70), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 12, 0.15)
    level_rules(sheet, mask, chart, 14, 0.15)
    sheet.ink(mask, (0.70, 0.62, 0.55), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(120, 331, 30), numbers(range(120, 331, 30)), 2.8, "plain", tick=1.2)
    level_numbers(sheet, mask, chart, range(10, 71, 20), numbers(range(10, 71, 20)), 2.8, "plain", tick=1.2)
    sheet.ink(mask, BLACK)
    depth, level = invented_trace(rng, 340)
    draw_trace(sheet, rng, chart, (depth, 12 + 0.55 * level), (0.55, 0.2, 0.1), 0.4, 0.9, 0.03)
    return sheet, [chart], camera(rng, background="cloth")


def dark_area(rng):
    """An area filled in one dark colour, without a line along its edge: the edge is the curve."""
    sheet = Sheet(rng, 270, 130, res=10)
    chart = Chart(26, 14, 220, 90, (0, 260), (0, 100), "mm", "percent")
    colour = [(0.30, 0.42, 0.25), (0.55, 0.35, 0.20), (0.25, 0.25, 0.25)][int(rng.integers(3))]
    trace = invented_trace(rng, 260, True)
    draw_trace(sheet, rng, chart, trace, BLACK, area=(colour, rng.uniform(0.7, 1.0)), outline=False)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 261, 20), numbers(range(0, 261, 20)), 2.6, "plain", tick=1.4)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.6, "plain", tick=1.4)
    sheet.ink(mask, BLACK)
    return sheet, [chart], camera(rng, background="wood")


def lifted_pen(rng):
    """A framed chart without grid whose pen was lifted three times, once for long: nothing may be read there."""
    sheet = Sheet(rng, 290, 116, res=10)
    chart = Chart(22, 12, 250, 84, (0, 250), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 251, 50), numbers(range(0, 251, 50)), 2.8, "typed", tick=1.2)
    level_numbers(sheet, mask, chart, range(0, 101, 25), numbers(range(0, 101, 25)), 2.8, "typed", tick=1.2)
    sheet.ink(mask, BLACK)
    gaps = [(at, at + long) for at, long in zip(rng.uniform([40, 100, 180], [60, 130, 200]), (4, 25, 9))]
    draw_trace(sheet, rng, chart, invented_trace(rng, 245), (0.55, 0.15, 0.1), 0.45, 0.9, 0.03, gaps=gaps)
    return sheet, [chart], camera(rng, background="cloth")


def field_sheet(rng):
    """A bait: a sheet to fill in, with bars, fields and sometimes a border or a table, and a chart of two axes somewhere in it."""
    sheet = Sheet(rng, 260, 190, res=10)
    tall = rng.uniform(62, 86)
    chart = Chart(rng.uniform(28, 40), rng.uniform(50, 64), rng.uniform(180, 204), tall, (0, 240), (0, 100), "mm", "percent")
    mask = sheet.layer()
    left, wide = rng.uniform(10, 16), rng.uniform(222, 236)
    rows = int(rng.integers(1, 3))
    parts = int(rng.integers(2, 5))
    for row in range(rows):
        for k in range(parts):
            each = wide / parts
            width = each * rng.choice([0.86, 1.0])
            sheet.box(mask, left + k * each, 20 + row * 11, width, 9, 0.25)
            sheet.words(mask, prose(rng, 1), left + k * each + 2, 24.5 + row * 11, 2.6, "plain", "lm")
    below = chart.y + chart.height + 16
    for k in range(int(rng.integers(1, 4))):
        sheet.box(mask, left + k * 78, below, 70, rng.uniform(10, 22), 0.3)
        sheet.words(mask, prose(rng, 1), left + 2 + k * 78, below + 4, 2.6, "plain", "lm")
    if rng.uniform() < 0.5:
        sheet.box(mask, 6, 5, 248, 180, rng.uniform(0.3, 0.8))
    sheet.rule(mask, (chart.x, chart.y), (chart.x, chart.y + chart.height + 0.2), 0.35)
    sheet.rule(mask, (chart.x - 0.2, chart.y + chart.height), (chart.x + chart.width, chart.y + chart.height), 0.35)
    tick = float(rng.choice([1.4, -1.4, 0]))
    depth_numbers(sheet, mask, chart, range(0, 241, 40), numbers(range(0, 241, 40)), 2.6, "plain", tick=tick)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.6, "plain", tick=tick)
    sheet.ink(mask, BLACK, 0.95)
    mask = sheet.layer()
    sheet.filled(mask, [(left, 8), (left + wide, 8), (left + wide, 17), (left, 17)])
    sheet.ink(mask, (0.5, 0.45, 0.4), rng.uniform(0.3, 1.0))
    mask = sheet.layer()
    sheet.words(mask, prose(rng, 3), left + 3, 12.5, 4, "bold", "lm")
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 235), (0.5, 0.2, 0.1), 0.35, 0.95, 0.02)
    return sheet, [chart], camera(rng, background=str(rng.choice(["wood", "plain"])))


def lettered_axes(rng):
    """A bait: two axes under a boxed title, a ruled box of remarks as wide as the axis below, nothing else."""
    sheet = Sheet(rng, 270, 170, (0.90, 0.94, 0.96), res=10)
    chart = Chart(32, 34, 210, 78, (0, 300), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, chart.x, 10, chart.width, 14, 0.3)
    sheet.words(mask, prose(rng, 4), chart.x + chart.width / 2, 17, 4, "serif")
    sheet.box(mask, chart.x, 130, chart.width, 28, 0.3)
    paragraph(sheet, rng, mask, chart.x + 3, 134, chart.width - 6, 4, 2.4, "serif")
    line = rng.uniform(0.25, 0.5)
    sheet.rule(mask, (chart.x, chart.y), (chart.x, chart.y + chart.height + line / 2), line)
    sheet.rule(mask, (chart.x - line / 2, chart.y + chart.height), (chart.x + chart.width, chart.y + chart.height), line)
    depth_numbers(sheet, mask, chart, range(0, 301, 50), numbers(range(0, 301, 50)), 2.8, "serif", tick=1.5)
    level_numbers(sheet, mask, chart, range(0, 101, 25), numbers(range(0, 101, 25)), 2.8, "serif", tick=1.5)
    sheet.ink(mask, BLACK, 0.95)
    draw_trace(sheet, rng, chart, invented_trace(rng, 290), BLACK, rng.uniform(0.3, 0.5), 0.95, 0.02)
    return sheet, [chart], camera(rng, background="cloth")


def folds_of(rng, most=0.35):
    """Folds up and down along a strip, each panel tilted against the next."""
    count = int(rng.integers(2, 5))
    places = (np.arange(1, count + 1) + rng.uniform(-0.1, 0.1, count)) / (count + 1)
    sign = rng.choice([-1, 1])
    return [(float(at), float(sign * (-1) ** k * rng.uniform(0.12, most))) for k, at in enumerate(places)]


def folded_grid(rng):
    """A long gridded strip folded two to four times up and down, seen at a tilt, packed hard."""
    sheet = Sheet(rng, 320, 84, (0.90, 0.94, 0.95), res=11)
    chart = Chart(14, 10, 290, 60, (0, 290), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, float(rng.choice([5, 10])), 0.15)
    level_rules(sheet, mask, chart, 6, 0.15)
    sheet.ink(mask, [(0.6, 0.75, 0.6), (0.75, 0.65, 0.6), (0.65, 0.65, 0.65)][int(rng.integers(3))], 0.85)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    depth_numbers(sheet, mask, chart, range(0, 291, 20), numbers(range(0, 291, 20)), 2.4, "plain")
    level_numbers(sheet, mask, chart, range(0, 101, 50), numbers(range(0, 101, 50)), 2.4, "plain")
    sheet.ink(mask, (0.2, 0.2, 0.2), 0.9)
    draw_trace(sheet, rng, chart, invented_trace(rng, 285), (0.45, 0.1, 0.1), rng.uniform(0.35, 0.5), 0.9, 0.03)
    view = camera(rng, background="wood", quality=int(rng.integers(40, 66)), bow=rng.uniform(-0.01, 0.01))
    view.folds = folds_of(rng)
    return sheet, [chart], view


def folded_ticks(rng):
    """A long strip without a grid, with ticks below its frame every 10 mm, folded two to four times, seen at a tilt."""
    sheet = Sheet(rng, 320, 84, res=11)
    chart = Chart(14, 8, 290, 58, (0, 290), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    for mm in range(0, 291, 10):
        x, y = chart.x + mm, chart.y + chart.height
        sheet.rule(mask, (x, y), (x, y + (2.4 if mm % 50 == 0 else 1.5)), 0.25)
    depth_numbers(sheet, mask, chart, range(0, 291, 50), numbers(range(0, 291, 50)), 2.4, "typed", gap=3)
    level_numbers(sheet, mask, chart, range(0, 101, 50), numbers(range(0, 101, 50)), 2.4, "typed")
    sheet.ink(mask, BLACK, 0.95)
    draw_trace(sheet, rng, chart, invented_trace(rng, 285), (0.5, 0.15, 0.1), rng.uniform(0.35, 0.5), 0.9, 0.03)
    view = camera(rng, background="cloth", bow=rng.uniform(-0.01, 0.01))
    view.folds = folds_of(rng)
    return sheet, [chart], view


def pale_area(rng):
    """An area filled in one pale or middling tint, no line along its edge, on a grid drawn over it."""
    sheet = Sheet(rng, 270, 130, res=10)
    chart = Chart(26, 14, 220, 90, (0, 240), (0, 100), "mm", "percent")
    colour = [(0.95, 0.80, 0.65), (0.70, 0.70, 0.72), (0.60, 0.80, 0.95), (0.55, 0.72, 0.55)][int(rng.integers(4))]
    trace = invented_trace(rng, 240, bool(rng.integers(2)))
    draw_trace(sheet, rng, chart, trace, BLACK, area=(colour, rng.uniform(0.8, 1.0)), outline=False)
    mask = sheet.layer()
    if rng.uniform() < 0.5:
        upright_rules(sheet, mask, chart, 22, 0.12)
        level_rules(sheet, mask, chart, 18, 0.12)
        sheet.ink(mask, (0.6, 0.6, 0.6), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 241, 40), numbers(range(0, 241, 40)), 2.6, "plain", tick=1.4)
    level_numbers(sheet, mask, chart, range(0, 101, 20), numbers(range(0, 101, 20)), 2.6, "plain", tick=1.4)
    sheet.ink(mask, BLACK)
    return sheet, [chart], camera(rng, background="cloth")


def broad_marker(rng):
    """A framed chart with a coarse grid and a line as broad as a marker's."""
    sheet = Sheet(rng, 290, 116, res=10)
    chart = Chart(22, 12, 250, 84, (0, 250), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 25, 0.15)
    level_rules(sheet, mask, chart, 21, 0.15)
    sheet.ink(mask, (0.7, 0.7, 0.72), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 251, 50), numbers(range(0, 251, 50)), 2.8, "plain", tick=1.2)
    level_numbers(sheet, mask, chart, range(0, 101, 25), numbers(range(0, 101, 25)), 2.8, "plain", tick=1.2)
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 245), (0.45, 0.15, 0.1), rng.uniform(0.9, 1.3), 0.9, 0.03)
    return sheet, [chart], camera(rng, background="cloth")


def ruler(sheet, chart, y, long_mm, colour=(0.55, 0.75, 0.88)):
    """A ruler drawn along the chart, its zero at the chart's left."""
    mask = sheet.layer()
    sheet.filled(mask, [(chart.x - 6, y), (chart.x + long_mm - 4, y), (chart.x + long_mm - 4, y + 14), (chart.x - 6, y + 14)])
    sheet.ink(mask, colour)
    mask = sheet.layer()
    for mm in range(0, int(long_mm) - 9):
        tall = 5 if mm % 10 == 0 else 3.5 if mm % 5 == 0 else 2.2
        sheet.rule(mask, (chart.x + mm, y), (chart.x + mm, y + tall), 0.18)
        if mm % 10 == 0:
            sheet.words(mask, str(mm // 10), chart.x + mm, y + 6, 2.4, "plain", "ct")
    sheet.ink(mask, BLACK, 0.9)


STYLES = {
    "millimetre paper": millimetre_paper,
    "framed, ticks": framed_ticks,
    "log page": log_page,
    "thermal strip": thermal_strip,
    "filled area": filled_area,
    "upright strip": upright_strip,
    "two charts": two_charts,
    "right to left": right_to_left,
    "axes only": axes_only,
    "centimetres": centimetres,
    "strip by ruler": strip_by_ruler,
    "page border": page_border,
    "table and axes": table_and_axes,
    "later part": later_part,
    "dark area": dark_area,
    "lifted pen": lifted_pen,
    "field sheet": field_sheet,
    "lettered axes": lettered_axes,
    "folded grid": folded_grid,
    "folded ticks": folded_ticks,
    "pale area": pale_area,
    "broad marker": broad_marker,
}
