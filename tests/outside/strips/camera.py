"""A photograph of a sheet: the paper bends as a developable surface, a pinhole camera with a lens sees it, light falls on it."""
from dataclasses import dataclass, field

import cv2
import numpy as np


@dataclass
class View:
    """How a photograph is taken. Lengths on the sheet in mm, on the photo in pixels; angles in degrees."""

    width_px: int = 2000
    height_px: int = 1500
    fill: float = 0.88
    """The share of the photo that what is framed takes up."""
    frame_mm: tuple | None = None
    """What of the sheet is framed: left, top, right, bottom; all of it when None."""
    tilt: float = 0.0
    swing: float = 0.0
    roll: float = 0.0
    focal: float = 1.05
    """Focal length over the photo's longer side."""
    barrel: float = 0.0
    """Radial shift at the photo's corner, share; negative is barrel."""
    bow: float = 0.0
    """Height of an arch, share of the sheet's length."""
    wave: float = 0.0
    lift: float = 0.0
    """How far an end curls up, share of the length."""
    folds: list = field(default_factory=list)
    """(place along the sheet as a share, change of slope)."""
    bend_angle: float = 0.0
    """Direction along which it bends: 0 along the sheet's width, 90 along its height."""
    background: str = "wood"
    gradient: float = 0.1
    vignette: float = 0.1
    cast: float = 0.05
    hand: float = 0.0
    glare: float = 0.0
    exposure: float = 0.85
    defocus_px: float = 0.5
    motion_px: float = 0.0
    noise: float = 0.008
    sharpen: float = 0.0
    quality: int = 85


class Surface:
    """A developable sheet: bent along one direction only, so that lengths on it stay true."""

    def __init__(self, view, sheet):
        angle = np.radians(view.bend_angle)
        self.along = np.array([np.cos(angle), np.sin(angle)])
        self.across = np.array([-np.sin(angle), np.cos(angle)])
        half = (abs(self.along[0]) * sheet.width_mm + abs(self.along[1]) * sheet.height_mm) / 2
        t = np.linspace(-2.5 * half, 2.5 * half, 8001)
        share = np.clip(t / half, -1.6, 1.6)
        z = view.bow * 2 * half * (1 - share**2)
        z += view.wave * 2 * half * np.sin(2.3 * np.pi * share + 0.7)
        z += view.lift * 2 * half * np.clip((share - 0.35) / 0.65, 0, 1.5) ** 2
        for place, slope in view.folds:
            at = (2 * place - 1) * half
            z += slope / 2 * (np.sqrt((t - at) ** 2 + 0.6**2) - abs(at))
        z -= np.interp(0, t, z)
        self.t, self.z = t, z
        self.slope = np.gradient(z, t)
        arc = np.concatenate([[0], np.cumsum(np.hypot(np.diff(t), np.diff(z)))])
        self.s = arc - np.interp(0, t, arc)
        self.step = t[1] - t[0]

    def look(self, table, t):
        place = np.clip((t - self.t[0]) / self.step, 0, self.t.size - 1.001)
        k = place.astype(np.int32)
        f = (place - k).astype(np.float32)
        return table.astype(np.float32)[k] * (1 - f) + table.astype(np.float32)[k + 1] * f


def rotation(view):
    a, b, c = np.radians([view.tilt, view.swing, view.roll])
    tilt = np.array([[1, 0, 0], [0, np.cos(a), -np.sin(a)], [0, np.sin(a), np.cos(a)]])
    swing = np.array([[np.cos(b), 0, np.sin(b)], [0, 1, 0], [-np.sin(b), 0, np.cos(b)]])
    roll = np.array([[np.cos(c), -np.sin(c), 0], [np.sin(c), np.cos(c), 0], [0, 0, 1]])
    return tilt @ swing @ roll


class Camera:
    """Where places of a sheet come to lie on the photo."""

    def __init__(self, view, sheet):
        self.view, self.sheet = view, sheet
        self.surface = Surface(view, sheet)
        self.turn = rotation(view)
        self.focal = view.focal * max(view.width_px, view.height_px)
        self.centre = np.array([(view.width_px - 1) / 2, (view.height_px - 1) / 2])
        self.radius = np.hypot(*self.centre)
        left, top, right, bottom = view.frame_mm or (0, 0, sheet.width_mm, sheet.height_mm)
        edge = np.linspace(0, 1, 9)
        outline = np.concatenate(
            [
                [(left + e * (right - left), y) for e in edge for y in (top, bottom)],
                [(x, top + e * (bottom - top)) for e in edge for x in (left, right)],
            ]
        )
        self.shift = np.array([0.0, 0.0, 3.0 * max(sheet.width_mm, sheet.height_mm)])
        for _ in range(12):
            seen = self.project(outline)
            low, high = seen.min(0), seen.max(0)
            size = (high - low) / (view.fill * 2 * (self.centre + 0.5))
            off = (low + high) / 2 - self.centre
            self.shift[:2] -= off / self.focal * self.shift[2]
            self.shift[2] *= size.max() ** 0.9

    def in_room(self, sheet_mm):
        """Places of the sheet as the camera has them, mm: x right, y down, z away."""
        middle = np.array([self.sheet.width_mm, self.sheet.height_mm]) / 2
        place = np.atleast_2d(np.asarray(sheet_mm, float)) - middle
        s, n = place @ self.surface.along, place @ self.surface.across
        t = np.interp(s, self.surface.s, self.surface.t)
        z = np.interp(t, self.surface.t, self.surface.z)
        flat = t[:, None] * self.surface.along + n[:, None] * self.surface.across
        return np.column_stack([flat, -z]) @ self.turn.T + self.shift

    def project(self, sheet_mm):
        """Sheet (mm) to photo (pixels)."""
        room = self.in_room(sheet_mm)
        ideal = room[:, :2] / room[:, 2:] * self.focal
        r2 = (ideal**2).sum(1, keepdims=True) / self.radius**2
        return ideal * (1 + self.view.barrel * r2) + self.centre

    def back(self):
        """For each pixel of the photo: place on the sheet (mm), on the table below it (mm), and the slope there."""
        view, surface = self.view, self.surface
        x, y = np.meshgrid(
            (np.arange(view.width_px) - self.centre[0]).astype(np.float32),
            (np.arange(view.height_px) - self.centre[1]).astype(np.float32),
        )
        r2 = (x * x + y * y) / np.float32(self.radius**2)
        inner = r2.copy()
        for _ in range(6):
            inner = r2 / (1 + np.float32(view.barrel) * inner) ** 2
        ideal = 1 / (1 + np.float32(view.barrel) * inner) / np.float32(self.focal)
        x, y = x * ideal, y * ideal
        a = [np.float32(self.turn[0, i]) * x + np.float32(self.turn[1, i]) * y + np.float32(self.turn[2, i]) for i in range(3)]
        b = self.turn.T @ self.shift

        def meet(height):
            ray = (-height + np.float32(b[2])) / a[2]
            return ray * a[0] - np.float32(b[0]), ray * a[1] - np.float32(b[1])

        table = meet(np.float32(-1))
        u, v = meet(np.float32(0))
        bent = view.bow or view.wave or view.lift or view.folds
        if bent:
            for _ in range(7):
                t = u * np.float32(surface.along[0]) + v * np.float32(surface.along[1])
                u, v = meet(surface.look(surface.z, t))
            t = u * np.float32(surface.along[0]) + v * np.float32(surface.along[1])
            n = u * np.float32(surface.across[0]) + v * np.float32(surface.across[1])
            s = surface.look(surface.s, t)
            u = s * np.float32(surface.along[0]) + n * np.float32(surface.across[0])
            v = s * np.float32(surface.along[1]) + n * np.float32(surface.across[1])
            slope = surface.look(surface.slope, t)
        else:
            slope = np.zeros_like(u)
        middle = (np.float32(self.sheet.width_mm / 2), np.float32(self.sheet.height_mm / 2))
        return u + middle[0], v + middle[1], table[0], table[1], slope


def photograph(rng, sheet, view):
    """Takes the photo. Returns the picture (bytes, blue first) and the camera that tells where things lie."""
    camera = Camera(view, sheet)
    u, v, table_u, table_v, slope = camera.back()
    res = sheet.res
    per_px = shrink(camera, res)
    page = linear(np.clip(sheet.paper, 0, 1))
    if per_px > 1:
        page = cv2.GaussianBlur(page, (0, 0), 0.42 * np.sqrt(per_px**2 - 0.6))
    seen = cv2.remap(page, u * np.float32(res), v * np.float32(res), cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    inside = np.minimum(
        np.minimum(u, np.float32(sheet.width_mm) - u), np.minimum(v, np.float32(sheet.height_mm) - v)
    )
    cover = np.clip(inside * np.float32(res / per_px) + 0.5, 0, 1)[..., None]
    ground = background(rng, view, table_u, table_v, max(sheet.width_mm, sheet.height_mm))
    shade = cv2.GaussianBlur(np.roll((cover[..., 0] > 0.5).astype(np.float32), (6, 5), (0, 1)), (0, 0), 9)
    ground = ground * (1 - 0.45 * shade[..., None])
    light = lighting(rng, view, slope)
    picture = (ground * (1 - cover) + seen * cover) * light
    picture = lens_blur(rng, view, picture)
    grain = rng.standard_normal(picture.shape, dtype=np.float32)
    grain = cv2.GaussianBlur(grain, (0, 0), 0.55) * 1.7
    picture = picture + grain * np.sqrt(np.maximum(picture, 0) + 0.02) * np.float32(view.noise)
    shown = np.clip(picture, 0, 1) ** np.float32(1 / 2.2)
    if view.sharpen:
        shown = shown + np.float32(view.sharpen) * (shown - cv2.GaussianBlur(shown, (0, 0), 1.3))
    return np.clip(shown * 255 + 0.5, 0, 255).astype(np.uint8), camera


def linear(reflectance):
    return np.maximum(reflectance, 0) ** np.float32(2.2)


def shrink(camera, res):
    """Sheet pixels that go to one photo pixel, in the middle."""
    middle = np.array([camera.sheet.width_mm, camera.sheet.height_mm]) / 2
    a, b = camera.project([middle - [5, 0], middle + [5, 0]])
    c, d = camera.project([middle - [0, 5], middle + [0, 5]])
    return float(np.clip(20 * res / (np.hypot(*(b - a)) + np.hypot(*(d - c))), 0.3, 8))


def lighting(rng, view, slope):
    """Light over the photo, by channel: a lamp to one side, the lens, the bend of the paper, a hand, uneven white."""
    high, wide = slope.shape
    x, y = np.meshgrid(np.linspace(-1, 1, wide, dtype=np.float32), np.linspace(-1, 1, high, dtype=np.float32))
    angle = rng.uniform(0, 2 * np.pi)
    light = view.exposure * (1 - view.gradient * (1 + x * np.cos(angle) + y * np.sin(angle)) / 2)
    light = light * (1 - view.vignette * (x * x + y * y) / 2)
    light = light * np.clip(1 + rng.choice([-1, 1]) * 0.9 * slope, 0.5, 1.25)
    if view.hand:
        light = light * (1 - view.hand * hand_shadow(rng, wide, high))
    if view.glare:
        gx, gy = rng.uniform(-0.5, 0.5, 2)
        light = light * (1 + view.glare * np.exp(-(((x - gx) / 0.5) ** 2 + ((y - gy) / 0.3) ** 2)))
    turn = rng.uniform(0, 2 * np.pi)
    lean = 0.5 * view.cast * (x * np.cos(turn) + y * np.sin(turn))
    tone = rng.uniform(-view.cast, view.cast, 3)
    channels = [light * (1 + tone[0] + lean), light * (1 + tone[1]), light * (1 + tone[2] - lean)]
    return np.stack(channels, -1).astype(np.float32)


def hand_shadow(rng, wide, high):
    """The soft shadow of a hand that reaches in from an edge of the photo."""
    mask = np.zeros((high, wide), np.uint8)
    size = 0.16 * max(wide, high)
    at = np.array([rng.uniform(0.15, 0.85) * wide, rng.choice([0.0, 1.0]) * high])
    inward = np.array([rng.uniform(-0.4, 0.4), 1.0 if at[1] == 0 else -1.0])
    palm = at + inward * size * 0.8
    cv2.ellipse(mask, tuple(map(int, palm)), (int(size * 0.55), int(size * 0.7)), 0, 0, 360, 255, -1)
    cv2.line(mask, tuple(map(int, at - inward * size)), tuple(map(int, palm)), 255, int(size * 0.75))
    for finger in np.linspace(-0.5, 0.5, 4):
        tip = palm + size * np.array([inward[0] + finger * 1.1, inward[1] * rng.uniform(1.0, 1.35)])
        root = palm + size * np.array([finger * 0.8, 0.2 * inward[1]])
        cv2.line(mask, tuple(map(int, root)), tuple(map(int, tip)), 255, int(size * 0.2))
    return cv2.GaussianBlur(mask.astype(np.float32) / 255, (0, 0), rng.uniform(0.006, 0.025) * wide)


def lens_blur(rng, view, picture):
    if view.defocus_px > 0.3:
        reach = int(np.ceil(view.defocus_px)) + 1
        y, x = np.mgrid[-reach : reach + 1, -reach : reach + 1]
        disc = np.clip(view.defocus_px + 0.5 - np.hypot(x, y), 0, 1).astype(np.float32)
        picture = cv2.filter2D(picture, -1, disc / disc.sum())
    if view.motion_px > 1:
        angle = rng.uniform(0, np.pi)
        kernel = np.zeros((31, 31), np.float32)
        along = np.array([np.cos(angle), np.sin(angle)]) * view.motion_px / 2
        a, b = [np.round((15 + sign * along) * 16).astype(int) for sign in (-1, 1)]
        cv2.line(kernel, tuple(map(int, a)), tuple(map(int, b)), 1.0, 1, cv2.LINE_AA, 4)
        kernel = kernel + kernel[::-1, ::-1]
        picture = cv2.filter2D(picture, -1, kernel / kernel.sum())
    return picture


def background(rng, view, u, v, size):
    """What the sheet lies on, by the place on the table in mm, in linear light."""
    kind = view.background
    tile_mm, px = 2.4 * size, 900
    # A texture in low resolution, repeated by mirrors: only its look matters.
    field = texture(rng, kind, px)
    scale = np.float32(px / tile_mm)
    return cv2.remap(field, u * scale + px / 2, v * scale + px / 2, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REFLECT)


def cloud(rng, px, sx, sy):
    field = cv2.GaussianBlur(rng.normal(0, 1, (px, px)).astype(np.float32), (0, 0), sigmaX=sx, sigmaY=sy)
    return field / max(1e-6, float(field.std()))


def texture(rng, kind, px):
    y, x = np.mgrid[0:px, 0:px].astype(np.float32)
    if kind == "wood":
        grain = np.sin((y + 14 * cloud(rng, px, 90, 25)) * 0.16) * 0.5 + 0.5 * cloud(rng, px, 40, 0.8)
        base = np.float32([0.22, 0.36, 0.52]) * (1 + 0.13 * grain[..., None])
        for joint in range(0, px, 150):
            base[joint : joint + 3] *= 0.35
    elif kind == "bark":
        ridge = np.abs(cloud(rng, px, 5, 26)) + 0.5 * np.abs(cloud(rng, px, 2, 6))
        base = np.float32([0.20, 0.26, 0.32]) * np.clip(0.35 + 0.6 * ridge, 0.15, 1.9)[..., None]
        moss = np.clip(cloud(rng, px, 30, 30) - 1, 0, 1)[..., None]
        base = base * (1 - 0.5 * moss) + np.float32([0.16, 0.34, 0.26]) * 0.5 * moss
    elif kind == "cloth":
        weave = np.sin(x * 1.9) * np.sin(y * 1.9) + 0.4 * cloud(rng, px, 2, 2)
        base = np.float32([0.42, 0.34, 0.30]) * (1 + 0.12 * weave[..., None])
    elif kind == "tiles":
        base = np.float32([0.72, 0.74, 0.74]) * (1 + 0.03 * cloud(rng, px, 3, 3)[..., None])
        line = (np.mod(x + 37, 230) < 4) | (np.mod(y + 61, 230) < 4)
        base[line] *= 0.45
    elif kind == "leaves":
        base = np.float32([0.18, 0.30, 0.34]) * (1 + 0.3 * cloud(rng, px, 6, 6)[..., None])
        for _ in range(160):
            at = tuple(int(c) for c in rng.integers(0, px, 2))
            axes = (int(rng.integers(14, 42)), int(rng.integers(6, 16)))
            tone = np.float32([0.12, 0.32, 0.42]) * rng.uniform(0.5, 1.5)
            cv2.ellipse(base, at, axes, float(rng.uniform(0, 360)), 0, 360, tuple(map(float, tone)), -1, cv2.LINE_AA)
    else:
        base = np.full((px, px, 3), 0.30, np.float32) * (1 + 0.02 * cloud(rng, px, 2, 2)[..., None])
    return linear(np.clip(base, 0.01, 1))
