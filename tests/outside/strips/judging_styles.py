"""Styles the reader is judged on. They are not to be tried while working at it: those in tuning_styles.py are for that."""
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


def label(values):
    return [f"{v:g}" for v in values]


def shot(rng, wide=True, hard=0.5, **more):
    """A photo: the harder, the more it tilts, blurs and is packed."""
    long_px = int(rng.choice([1500, 1920, 2300]))
    short_px = int(long_px * rng.choice([0.75, 0.5625]))
    tilt = hard * rng.uniform(8, 30)
    lean = rng.uniform(0, 2 * np.pi)
    return View(
        width_px=long_px if wide else short_px,
        height_px=short_px if wide else long_px,
        **{
            "fill": rng.uniform(0.78, 0.97),
            "tilt": tilt * np.sin(lean),
            "swing": tilt * np.cos(lean),
            "roll": rng.normal(0, 3),
            "focal": rng.uniform(0.75, 1.3),
            "barrel": rng.uniform(-0.02, 0.006),
            "gradient": rng.uniform(0, 0.5) * hard * 1.4,
            "vignette": rng.uniform(0.05, 0.5),
            "cast": rng.uniform(0, 0.16),
            "exposure": rng.uniform(0.5, 1.0),
            "defocus_px": rng.uniform(0.3, 0.6 + 1.4 * hard),
            "motion_px": rng.uniform(0, 4 * hard),
            "noise": rng.uniform(0.004, 0.008 + 0.016 * hard),
            "sharpen": rng.uniform(0, 1.2),
            "quality": int(rng.integers(95 - int(50 * hard), 96)),
            **more,
        },
    )


def green_grid(rng):
    """Green grid of equal lines without a frame, violet pen, plotter's numbers above the chart and at its right."""
    sheet = Sheet(rng, 300, 118, (0.92, 0.96, 0.94), res=10)
    chart = Chart(14, 18, 264, 88, (0, 240), (0, 80), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 11, 0.22)
    level_rules(sheet, mask, chart, 11, 0.22)
    sheet.ink(mask, (0.55, 0.78, 0.45), 0.95)
    mask = sheet.layer()
    depth_numbers(sheet, mask, chart, range(0, 241, 40), label(range(0, 241, 40)), 3, "plotter serif", side="above")
    level_numbers(sheet, mask, chart, range(0, 81, 20), label(range(0, 81, 20)), 3, "plotter serif", side="right")
    sheet.ink(mask, (0.3, 0.4, 0.2))
    trace = invented_trace(rng, rng.uniform(200, 240))
    draw_trace(sheet, rng, chart, trace, (0.6, 0.15, 0.45), rng.uniform(0.35, 0.7), 0.9, 0.05)
    return sheet, [chart], shot(rng, background="wood")


def ruled_paper(rng):
    """Exercise paper with blue rules and a red margin; the frame is ruled in pencil, numbers and notes in handwriting; the pen skips twice."""
    sheet = Sheet(rng, 297, 170, (0.90, 0.94, 0.95), res=10)
    chart = Chart(42, 34, 225, 90, (0, 250), (0, 100), "mm", "percent")
    mask = sheet.layer()
    for y in np.arange(8, 170, 8):
        sheet.rule(mask, (0, y), (297, y), 0.22)
    sheet.ink(mask, (0.85, 0.70, 0.50), 0.8)
    mask = sheet.layer()
    sheet.rule(mask, (24, 0), (24, 170), 0.3)
    sheet.ink(mask, (0.45, 0.40, 0.90), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.45)
    depth_numbers(sheet, mask, chart, range(0, 251, 50), label(range(0, 251, 50)), 3.4, "hand", tick=2, line=0.35)
    level_numbers(sheet, mask, chart, [0, 50, 100], label([0, 50, 100]), 3.4, "hand", tick=2, line=0.35)
    sheet.ink(mask, (0.33, 0.32, 0.32), 0.85, 0.04)
    mask = sheet.layer()
    sheet.words(mask, prose(rng, 4), 60, 20, 4, "hand", "lm")
    sheet.ink(mask, (0.55, 0.2, 0.1), 0.9, 0.03)
    gaps = [(at, at + long) for at, long in zip(rng.uniform([60, 140], [110, 200]), (6, 20))]
    trace = invented_trace(rng, 240, True)
    draw_trace(sheet, rng, chart, trace, (0.55, 0.15, 0.08), rng.uniform(0.4, 0.6), 0.9, 0.04, jerky=0.3, gaps=gaps)
    return sheet, [chart], shot(rng, background="cloth")


def waxed_strip(rng):
    """A narrow strip 1:1 on bark, pale scratch line on grey wax paper, a ruler lying beside it; steep views."""
    sheet = Sheet(rng, 320, 66, (0.72, 0.74, 0.75), res=11, fibre=0.02)
    chart = Chart(12, 6, 300, 40, (0, 300), (0, 100), ruler=((32, 49), (292, 49)))
    mask = sheet.layer()
    level_rules(sheet, mask, chart, 10, 0.18)
    upright_rules(sheet, mask, chart, 20, 0.18)
    sheet.ink(mask, (0.60, 0.60, 0.60), 0.6)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    sheet.ink(mask, (0.4, 0.4, 0.4), 0.9)
    draw_trace(sheet, rng, chart, invented_trace(rng, 290), (0.30, 0.28, 0.28), 0.45, 0.8, 0.05)
    mask = sheet.layer()
    sheet.filled(mask, [(6, 49), (318, 49), (318, 63), (6, 63)])
    sheet.ink(mask, (0.5, 0.85, 0.95))
    mask = sheet.layer()
    for mm in range(301):
        sheet.rule(mask, (12 + mm, 49), (12 + mm, 49 + (4 if mm % 10 == 0 else 2)), 0.2)
        if mm % 20 == 0:
            sheet.words(mask, str(mm // 10), 12 + mm, 54.5, 2.6, "bold", "ct")
    sheet.ink(mask, BLACK)
    return sheet, [chart], shot(rng, hard=1.0, background="bark")


def photocopy(rng):
    """A speckled copy on which print and line are one black: a double frame, a dashed grid, bold numbers."""
    sheet = Sheet(rng, 285, 140, (0.94, 0.94, 0.94), res=11, fibre=0.004)
    chart = Chart(26, 16, 236, 96, (0, 295), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    sheet.box(mask, chart.x - 18, chart.y - 8, chart.width + 28, chart.height + 24, 0.5)
    upright_rules(sheet, mask, chart, chart.width / 5.9, 0.18, dash=(1.2, 1.0))
    level_rules(sheet, mask, chart, chart.height / 4, 0.18, dash=(1.2, 1.0))
    depth_numbers(sheet, mask, chart, range(0, 295, 50), label(range(0, 295, 50)), 2.6, "bold")
    level_numbers(sheet, mask, chart, range(0, 101, 25), label(range(0, 101, 25)), 2.6, "bold")
    for _ in range(260):
        x, y = rng.uniform(2, 283), rng.uniform(2, 138)
        r = rng.uniform(0.05, 0.25)
        sheet.filled(mask, [(x - r, y), (x, y - r), (x + r, y), (x, y + r)])
    sheet.ink(mask, (0.12, 0.12, 0.12), 0.95, 0.03)
    draw_trace(sheet, rng, chart, invented_trace(rng, 295), (0.12, 0.12, 0.12), 0.5, 0.95, 0.04)
    return sheet, [chart], shot(rng, background="plain")


def report_page(rng):
    """A printed report: caption, tinted plot, a boxed legend inside the chart, minor ticks inside, table beside it."""
    sheet = Sheet(rng, 297, 210, res=10)
    chart = Chart(24, 40, 180, 84, (0, 360), (0, 100), "mm", "percent")
    tint = sheet.layer()
    sheet.filled(tint, chart.corners)
    sheet.ink(tint, (0.93, 0.91, 0.88), 1.0)
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, chart.width / 9, 0.2)
    level_rules(sheet, mask, chart, chart.height / 5, 0.2)
    sheet.ink(mask, (1.0, 1.0, 1.0), 0.8)
    draw_trace(sheet, rng, chart, invented_trace(rng, 355, True), (0.25, 0.45, 0.15), 0.35, 1.0, 0.0)
    mask = sheet.layer()
    sheet.filled(mask, [(150, 43), (200, 43), (200, 55), (150, 55)])
    sheet.ink(mask, (0.4, 0.4, 0.4), 0.15)
    mask = sheet.layer()
    sheet.box(mask, 150, 43, 50, 12, 0.2)
    sheet.words(mask, prose(rng, 2), 167, 49, 2.2, "serif", "lm")
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.25)
    for mm in range(0, 361, 10):
        x = chart.place(mm, 0)[0]
        sheet.rule(mask, x, (x[0], x[1] - (2 if mm % 40 == 0 else 1)), 0.15)
    depth_numbers(sheet, mask, chart, range(0, 361, 40), label(range(0, 361, 40)), 2.3, "old")
    level_numbers(sheet, mask, chart, range(0, 101, 20), label(range(0, 101, 20)), 2.3, "old")
    sheet.words(mask, prose(rng, 5), 24, 24, 5, "old", "lm")
    paragraph(sheet, rng, mask, 24, 146, 250, 10, 2.4, "old")
    table(sheet, rng, mask, 216, 40, [22, 22, 22], 8, 9, 2.3, "old")
    sheet.ink(mask, BLACK, 0.95)
    mask = sheet.layer()
    sheet.rule(mask, (153, 49), (164, 49), 0.4)
    sheet.ink(mask, (0.25, 0.45, 0.15))
    return sheet, [chart], shot(rng, background="tiles", fill=0.95)


def two_axes(rng):
    """Two axes with arrowheads on a card, units at their ends, a hand's shadow over it, on leaves."""
    sheet = Sheet(rng, 240, 140, (0.84, 0.90, 0.93), res=11)
    chart = Chart(28, 20, 190, 92, (0, 200), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.rule(mask, (28, 13), (28, 112), 0.45)
    sheet.rule(mask, (28, 112), (226, 112), 0.45)
    sheet.filled(mask, [(28, 10), (26.4, 15), (29.6, 15)])
    sheet.filled(mask, [(229, 112), (224, 110.4), (224, 113.6)])
    depth_numbers(sheet, mask, chart, range(0, 201, 25), label(range(0, 201, 25)), 2.8, "slanted", tick=1.6)
    level_numbers(sheet, mask, chart, range(0, 101, 25), label(range(0, 101, 25)), 2.8, "slanted", tick=1.6)
    sheet.words(mask, "mm", 232, 116, 2.8, "slanted", "ct")
    sheet.ink(mask, (0.3, 0.28, 0.28), 0.9)
    draw_trace(sheet, rng, chart, invented_trace(rng, 195), (0.1, 0.1, 0.6), 0.45, 0.9, 0.03)
    return sheet, [chart], shot(rng, background="leaves", hand=rng.uniform(0.25, 0.5))


def hanging_strip(rng):
    """A chart printed upright: depth runs down the sheet, its numbers stand beside it and read as the photo is held."""
    sheet = Sheet(rng, 330, 96, (0.93, 0.94, 0.93), res=11)
    chart = Chart(16, 10, 300, 64, (300, 0), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 10, 0.16)
    level_rules(sheet, mask, chart, 16, 0.16)
    sheet.ink(mask, (0.80, 0.62, 0.45), 0.85)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    sheet.ink(mask, (0.6, 0.4, 0.25))
    mask = sheet.layer()
    # Turned with the sheet the numbers stand upright: quarter turns of the sheet and of the words undo each other.
    depth_numbers(sheet, mask, chart, range(0, 301, 50), label(range(0, 301, 50)), 2.6, "plain", turn=1)
    level_numbers(sheet, mask, chart, [0, 50, 100], label([0, 50, 100]), 2.6, "plain", turn=1)
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 285), (0.12, 0.12, 0.55), 0.4, 0.9, 0.03)
    return sheet, [chart], shot(rng, wide=False, background="wood", roll=-90 + rng.normal(0, 3), fill=0.93)


def charts_side_by_side(rng):
    """Two gridded charts side by side with a table under both; either is right."""
    sheet = Sheet(rng, 300, 130, (0.91, 0.94, 0.96), res=11)
    charts = []
    for x in (18.0, 164.0):
        chart = Chart(x, 12, 122, 58, (0, 160), (0, 100), "mm", "percent")
        mask = sheet.layer()
        upright_rules(sheet, mask, chart, chart.width / 16, 0.12)
        level_rules(sheet, mask, chart, chart.height / 10, 0.12)
        sheet.ink(mask, (0.62, 0.70, 0.78), 0.85)
        mask = sheet.layer()
        sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
        depth_numbers(sheet, mask, chart, range(0, 161, 40), label(range(0, 161, 40)), 2.4, "narrow", tick=1)
        level_numbers(sheet, mask, chart, [0, 50, 100], label([0, 50, 100]), 2.4, "narrow", tick=1)
        sheet.ink(mask, BLACK, 0.9)
        draw_trace(sheet, rng, chart, invented_trace(rng, 158), (0.55, 0.2, 0.1), 0.35, 0.95, 0.02)
        charts.append(chart)
    mask = sheet.layer()
    table(sheet, rng, mask, 18, 84, [44.6] * 6, 7, 5, 2.4, "narrow")
    sheet.ink(mask, BLACK, 0.9)
    return sheet, charts, shot(rng, background="cloth", fill=0.95)


def folded_strip(rng):
    """A long strip that was folded in four and lies badly: creases, curl, a sharpened photo packed hard."""
    sheet = Sheet(rng, 420, 84, (0.90, 0.93, 0.94), res=10)
    chart = Chart(16, 8, 390, 60, (0, 390), (0, 100), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 10, 0.16)
    level_rules(sheet, mask, chart, 10, 0.16)
    sheet.ink(mask, (0.60, 0.62, 0.90), 0.8)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.35)
    sheet.ink(mask, (0.4, 0.4, 0.75))
    mask = sheet.layer()
    depth_numbers(sheet, mask, chart, range(0, 391, 30), label(range(0, 391, 30)), 2.8, "plain")
    level_numbers(sheet, mask, chart, range(0, 101, 20), label(range(0, 101, 20)), 2.8, "plain")
    sheet.ink(mask, (0.3, 0.2, 0.4))
    draw_trace(sheet, rng, chart, invented_trace(rng, rng.uniform(330, 390)), BLACK, 0.45, 0.9, 0.04)
    mask = sheet.layer()
    for share in (0.25, 0.5, 0.75):
        sheet.rule(mask, (420 * share, 0), (420 * share, 84), 0.5)
    sheet.ink(mask, (0.75, 0.75, 0.75), 0.5, 0.15)
    folds = [(share, sign * rng.uniform(0.04, 0.16)) for share, sign in zip((0.25, 0.5, 0.75), (1, -1, 1))]
    view = shot(rng, background="tiles", folds=folds, bow=rng.uniform(0, 0.012), sharpen=rng.uniform(0.8, 1.5))
    view.quality = int(rng.integers(40, 60))
    return sheet, [chart], view


def grey_area(rng):
    """An area filled in grey whose edge is the curve: there is no line; a frame, rounded numbers."""
    sheet = Sheet(rng, 270, 124, res=11)
    chart = Chart(24, 12, 226, 88, (0, 220), (0, 100), "mm", "percent")
    draw_trace(sheet, rng, chart, invented_trace(rng, 220, True), BLACK, area=((0.45, 0.45, 0.45), 0.9), outline=False)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(0, 221, 20), label(range(0, 221, 20)), 2.6, "round", tick=1.4)
    level_numbers(sheet, mask, chart, range(0, 101, 10), label(range(0, 101, 10)), 2.2, "round", tick=1.4)
    sheet.ink(mask, BLACK)
    return sheet, [chart], shot(rng, background="plain")


def inches(rng):
    """A trap: depth printed in inches (0 to 12), level in parts of five; neither may be taken for mm and percent."""
    sheet = Sheet(rng, 330, 112, (0.90, 0.95, 0.95), res=10)
    chart = Chart(18, 12, 288, 80, (0, 304.8), (0, 100), "inches", "fifths")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 12, 0.16)
    level_rules(sheet, mask, chart, 16, 0.16)
    sheet.ink(mask, (0.70, 0.75, 0.60), 0.9)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, np.arange(0, 13) * 25.4, label(range(13)), 3, "plain", tick=1.5)
    level_numbers(sheet, mask, chart, range(0, 101, 20), label(range(6)), 3, "plain", tick=1.5)
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 300), (0.1, 0.1, 0.5), 0.4, 0.95, 0.03)
    return sheet, [chart], shot(rng, background="wood")


def tenths(rng):
    """A trap: depth printed in tenths of an inch (0 to 120), unmarked: as numbers they could be millimetres."""
    sheet = Sheet(rng, 330, 112, (0.90, 0.95, 0.95), res=10)
    chart = Chart(18, 12, 288, 80, (0, 304.8), (0, 100), "tenths of an inch", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 24, 0.16)
    level_rules(sheet, mask, chart, 16, 0.16)
    sheet.ink(mask, (0.75, 0.70, 0.62), 0.9)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, np.arange(0, 13) * 25.4, label(range(0, 121, 10)), 3, "serif", tick=1.5)
    level_numbers(sheet, mask, chart, range(0, 101, 20), label(range(0, 101, 20)), 3, "serif", tick=1.5)
    sheet.ink(mask, BLACK)
    draw_trace(sheet, rng, chart, invented_trace(rng, 300), (0.5, 0.15, 0.1), 0.4, 0.95, 0.03)
    return sheet, [chart], shot(rng, background="wood")


def form(rng):
    """A bait: a printed form with a border, a heading bar and boxes to fill in, and a chart of two axes between them."""
    sheet = Sheet(rng, 297, 210, res=10)
    chart = Chart(44, 62, 215, 86, (0, 280), (0, 100), "mm", "percent")
    mask = sheet.layer()
    sheet.box(mask, 10, 10, 277, 190, 0.5)
    sheet.box(mask, 10, 10, 277, 16, 0.5)
    for k, x in enumerate((20, 112, 204)):
        sheet.box(mask, x, 33, 72, 12, 0.3)
        sheet.words(mask, prose(rng, 2 + k % 2), x + 4, 39, 2.4, "narrow", "lm")
    sheet.box(mask, 20, 168, 256, 24, 0.3)
    sheet.words(mask, prose(rng, 6), 24, 174, 2.4, "narrow", "lm")
    sheet.words(mask, prose(rng, 3), 148, 18, 4.5, "bold")
    sheet.rule(mask, (44, 62), (44, 148.2), 0.35)
    sheet.rule(mask, (43.8, 148), (259, 148), 0.35)
    depth_numbers(sheet, mask, chart, range(0, 281, 40), label(range(0, 281, 40)), 2.5, "narrow", tick=1.2)
    level_numbers(sheet, mask, chart, range(0, 101, 20), label(range(0, 101, 20)), 2.5, "narrow", tick=1.2)
    sheet.ink(mask, BLACK, 0.95)
    draw_trace(sheet, rng, chart, invented_trace(rng, 275), (0.55, 0.15, 0.1), 0.35, 0.95, 0.02)
    return sheet, [chart], shot(rng, background="wood", fill=0.95)


def inner_part(rng):
    """A chart cut from a longer one: depth 90 to 390 mm, level 20 to 80 %, frame, few numbers."""
    sheet = Sheet(rng, 330, 110, (0.93, 0.94, 0.92), res=10)
    chart = Chart(20, 12, 300, 78, (90, 390), (20, 80), "mm", "percent")
    mask = sheet.layer()
    upright_rules(sheet, mask, chart, 20, 0.2, start=10)
    sheet.ink(mask, (0.72, 0.66, 0.80), 0.9)
    mask = sheet.layer()
    sheet.box(mask, chart.x, chart.y, chart.width, chart.height, 0.3)
    depth_numbers(sheet, mask, chart, range(100, 390, 60), label(range(100, 390, 60)), 2.8, "serif", tick=1.5)
    level_numbers(sheet, mask, chart, range(20, 81, 20), label(range(20, 81, 20)), 2.8, "serif", tick=1.5)
    sheet.ink(mask, BLACK)
    depth, level = invented_trace(rng, 390)
    draw_trace(sheet, rng, chart, (depth, 22 + 0.55 * level), (0.15, 0.15, 0.5), 0.4, 0.9, 0.03)
    return sheet, [chart], shot(rng, background="plain")


STYLES = {
    "green grid": green_grid,
    "ruled paper": ruled_paper,
    "waxed strip": waxed_strip,
    "photocopy": photocopy,
    "report page": report_page,
    "two axes": two_axes,
    "hanging strip": hanging_strip,
    "side by side": charts_side_by_side,
    "folded strip": folded_strip,
    "grey area": grey_area,
    "inches": inches,
    "tenths": tenths,
    "form": form,
    "inner part": inner_part,
}
