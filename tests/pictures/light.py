"""A small painter of leaves in light: faces in metres, one sun with soft shadows, a sky, and a lens.

Faces are drawn by number, far to near, so every pixel knows which leaf it belongs to; colour, shadow and
blur are then worked out pixel by pixel. The same numbers give the same picture every time.
"""

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from PIL import Image, ImageDraw

A = np.ndarray[Any, Any]
LEAF, BLADE, DOME, TUBE, ROUGH, BOARD = range(6)
SCALE = 2  # painted at twice the size, then halved: soft edges


def unit(a: A) -> A:
    """Return vectors at length one."""
    one: A = a / np.maximum(np.linalg.norm(a, axis=-1, keepdims=True), 1e-9)
    return one


def dot(a: A, b: A) -> A:
    """Return the dot product of rows."""
    product: A = np.einsum("...i,...i->...", a, b)
    return product


def srgb(*levels: float) -> A:
    """Return a colour given as 0 to 255 in linear light."""
    linear: A = (np.array(levels, np.float32) / 255) ** 2.2
    return linear


def noise(x: A, y: A, seed: int = 0) -> A:
    """Return smooth value noise from 0 to 1 on a lattice of step one."""
    i, j = np.floor(x).astype(np.int64), np.floor(y).astype(np.int64)
    s, t = x - i, y - j
    s, t = s * s * (3 - 2 * s), t * t * (3 - 2 * t)

    def lattice(a: A, b: A) -> A:
        h = (a * 374761393 + b * 668265263 + seed * 974711) & 0xFFFFFFFF
        h = ((h ^ (h >> 13)) * 1274126177) & 0xFFFFFFFF
        spread: A = ((h ^ (h >> 16)) & 0xFFFF) / 65535.0
        return spread

    low: A = lattice(i, j) * (1 - s) + lattice(i + 1, j) * s
    high = lattice(i, j + 1) * (1 - s) + lattice(i + 1, j + 1) * s
    return low * (1 - t) + high * t


def clouds(x: A, y: A, octaves: int = 4, seed: int = 0) -> A:
    """Return layered noise from 0 to 1."""
    total: A = np.zeros(np.broadcast(x, y).shape)
    for k in range(octaves):
        total = total + noise(x * 2.03**k, y * 2.03**k, seed + k) * 0.5**k
    return total / sum(0.5**k for k in range(octaves))


@dataclass
class Faces:
    """Flat pieces with what light needs to know: corners, plane, own axes, colour and kind."""

    parts: dict[str, list[A]] = field(default_factory=dict)
    count: int = 0

    def add(  # noqa: PLR0913 - a face has as many sides to it
        self,
        kind: int,
        corners: A,
        normal: A,
        u: A,
        v: A,
        colour: A,
        *,
        group: A | None = None,
        casts: bool = True,
        back: float = 0.0,
        centre: A | None = None,
        gloss: float = 0.3,
    ) -> None:
        """Add faces of up to six corners; `u` and `v` run from the centre to where they count one."""
        n = len(corners)
        if corners.shape[1] < 6:
            corners = np.concatenate([corners, np.repeat(corners[:, -1:], 6 - corners.shape[1], 1)], 1)
        row = {
            "corners": corners,
            "normal": unit(normal),
            "colour": np.broadcast_to(colour, (n, 3)),
            "centre": corners.mean(1) if centre is None else centre,
            "u": u / np.maximum(dot(u, u), 1e-12)[:, None],
            "v": v / np.maximum(dot(v, v), 1e-12)[:, None],
            "group": self.count + (np.arange(n) if group is None else group),
            "kind": np.full(n, kind),
            "casts": np.full(n, casts),
            "back": np.full(n, back),
            "gloss": np.full(n, gloss),
        }
        for key, value in row.items():
            self.parts.setdefault(key, []).append(value)
        self.count += n

    def joined(self) -> dict[str, A]:
        """Return all faces as one array a key."""
        whole = {key: np.concatenate(value) for key, value in self.parts.items()}
        return {key: (a.astype(np.float32) if a.dtype == np.float64 else a) for key, a in whole.items()}


@dataclass
class View:
    """A camera and its light: metres, z upwards, `sun` pointing at the sun."""

    eye: tuple[float, float, float]
    target: tuple[float, float, float]
    focal: float  # in widths of the picture
    sun: tuple[float, float, float]
    sun_colour: A
    sky: A
    bounce: A
    haze: A
    zenith: A = field(default_factory=lambda: srgb(112, 156, 206))
    cell: float = 0.015  # how finely the sky's shade is felt, about one leaf
    focus: float = 0.0  # 0: sharp at the target
    aperture: float = 0.0  # blur in picture widths times metres
    fog: float = 0.0  # haze a metre
    exposure: float = 1.0
    shadow_span: float = 2.4
    size: tuple[int, int] = (1600, 2000)

    def axes(self) -> tuple[A, A, A]:
        """Return right, down and forward."""
        forward = unit(np.array(self.target) - np.array(self.eye))
        above = np.array([0.0, 1.0, 0.0]) if abs(forward[2]) > 0.98 else np.array([0.0, 0.0, 1.0])
        right = unit(np.cross(forward, above))
        return right, np.cross(forward, right), forward


def numbered(points: A, order: A, size: tuple[int, int]) -> A:
    """Return a picture of face numbers (from 1), painted in `order`; 0 where nothing is."""
    image = Image.new("I", size, 0)
    draw = ImageDraw.Draw(image)
    flat = points.reshape(len(points), -1).tolist()
    for i in order.tolist():
        draw.polygon(flat[i], fill=i + 1)
    return np.asarray(image)


def sun_map(f: dict[str, A], view: View, texels: int = 4200) -> tuple[A, A, A, float]:
    """Return what the sun sees: face numbers, its axes, each face's depth, texels a metre."""
    sun = unit(np.array(view.sun))
    right = unit(np.cross(np.array([0.0, 0.0, 1.0]), sun))
    axes = np.stack([right, np.cross(sun, right), sun]).astype(np.float32)
    scale = texels / view.shadow_span
    flat = (f["corners"] - np.array(view.target, np.float32)) @ axes.T
    depth = -((f["centre"] - np.array(view.target, np.float32)) @ axes[2])
    points = flat[..., :2] * scale + texels / 2
    inside = ((points > -40) & (points < texels + 40)).all((1, 2)) & f["casts"]
    order = np.argsort(-depth, kind="stable")
    return numbered(points, order[inside[order]], (texels, texels)), axes, depth, scale


def lit(seen: tuple[A, A, A, float], f: dict[str, A], p: A, face: A, view: View, rng: np.random.Generator) -> A:
    """Return how much of the sun reaches points, from 0 to 1, with soft edges."""
    ids, axes, depth, scale = seen
    local = (p - np.array(view.target, np.float32)) @ axes.T
    own, total = -local[:, 2], np.zeros(len(p), np.float32)
    spread = rng.random((2, len(p)), np.float32) * 6.283
    for tap in range(5):
        reach = 0.0016 * scale * (0.3 + tap * 0.35)
        x = local[:, 0] * scale + len(ids) / 2 + np.cos(spread[0] + tap * 2.4) * reach
        y = local[:, 1] * scale + len(ids) / 2 + np.sin(spread[0] + tap * 2.4) * reach
        outside = (x < 0) | (y < 0) | (x >= len(ids)) | (y >= len(ids))
        hit = ids[np.where(outside, 0, y).astype(np.int32), np.where(outside, 0, x).astype(np.int32)] - 1
        free = outside | (hit < 0) | (f["group"][hit] == f["group"][face]) | (depth[hit] > own - 0.0035)
        total += free
    return total / 5


def skylight(f: dict[str, A], view: View) -> A:
    """Return the light of the sky on each face, from forty directions, each shaded by what stands in it."""
    turns = np.arange(40)
    height = 0.06 + 0.94 * (turns + 0.5) / 40
    around = turns * 2.399963
    flatness = np.sqrt(1 - height**2)
    directions = np.stack([flatness * np.cos(around), flatness * np.sin(around), height], 1).astype(np.float32)
    sun, total, weight = unit(np.array(view.sun)), np.zeros((f["centre"].shape[0], 3), np.float32), 0.0
    soft = np.isin(f["kind"], (LEAF, BLADE))
    fade = view.cell * np.where(f["kind"] == ROUGH, 5.0, 1.5)
    for d in directions:
        right = unit(np.cross(d, np.array([0.3, 0.9, 0.1], np.float32)))
        local = f["centre"] @ np.stack([right, np.cross(d, right), d]).T
        cells = np.floor((local[:, :2] - local[:, :2].min(0)) / view.cell).astype(np.int64)
        keys = cells[:, 0] * (cells[:, 1].max() + 1) + cells[:, 1]
        top = np.full(keys.max() + 1, -1e9, np.float32)
        np.maximum.at(top, keys[f["casts"]], local[f["casts"], 2])
        open_ = np.exp(-np.clip(top[keys] - local[:, 2] - view.cell * 0.8, 0, None) / fade)
        facing = dot(f["normal"], d)
        facing = np.where(soft, 0.35 + 0.65 * np.abs(facing), np.clip(facing, 0, None))
        glow = view.sky * (0.75 + 0.25 * d[2]) + view.sun_colour * 0.06 * max(0.0, float(d @ sun)) ** 4
        total += (open_ * facing)[:, None] * glow
        weight += max(0.35, float(d[2]))
    return total / weight


def bent(f: dict[str, A], face: A, u: A, v: A, p: A, kind: A) -> tuple[A, A]:
    """Return each pixel's own normal and how much lighter or darker its surface is there."""
    n, along, across = f["normal"][face].copy(), unit(f["u"][face]), unit(f["v"][face])
    shade = np.ones(len(face), np.float32)
    thin = kind == LEAF
    n[thin] += along[thin] * (0.45 * u[thin])[:, None] + across[thin] * (0.35 * (v[thin] - 0.5))[:, None]
    rib = np.exp(-((v / 0.07) ** 2)) * 0.3 + 0.07 * np.sin(u * 17 + v * 9)
    shade[thin] += rib[thin] + 0.25 * (noise(u * 2 + face, v * 2, 7) - 0.5)[thin]
    blade = kind == BLADE
    n[blade] += across[blade] * (0.7 * v[blade])[:, None]
    shade[blade] *= 0.92 + 0.16 * np.cos(v[blade] * 12)
    dome = kind == DOME
    rest = np.sqrt(np.clip(1.05 - u**2 - v**2, 0.05, 1))
    n[dome] = n[dome] * rest[dome, None] + along[dome] * u[dome, None] + across[dome] * v[dome, None]
    mottle = np.where(f["gloss"][face] > 0.3, 0.2, 0.56) * (clouds(u * 2 + face * 3.7, v * 2, 3) - 0.5)
    shade[dome] *= 1 + mottle[dome]
    crumb = dome & (f["gloss"][face] == 0)
    lump = np.stack([noise(u * 2.6 + face * 1.3 + k * 9, v * 2.6 + k * 5, 13 + k) for k in range(3)], 1) - 0.5
    n[crumb] += 1.5 * lump[crumb]
    tube = kind == TUBE
    n[tube] = n[tube] * np.sqrt(np.clip(1.02 - v[tube] ** 2, 0.02, 1))[:, None] + across[tube] * v[tube, None]
    shade[tube] *= 0.65 + 0.7 * clouds(u * 3 + face, v * 6, 3)[tube]
    rough = kind == ROUGH
    if rough.any():
        x, y = p[rough, 0] + p[rough, 1] * 0.37, p[rough, 2] + p[rough, 1] * 0.93
        fine, wide = clouds(x * 170, y * 170, 4, 3), clouds(x * 9, y * 9, 3, 5)
        pits = np.clip(1.5 - 3.2 * clouds(x * 60 + 7, y * 60, 3, 11), 0, 1)
        shade[rough] = (0.66 + 0.68 * fine) * (0.75 + 0.5 * wide) * (1 - 0.3 * pits)
        n[rough] += (clouds(x * 170 + 0.3, y * 170, 4, 3) - fine)[:, None] * 1.6
    board = kind == BOARD
    if board.any():
        k = f["group"][face[board]] * 13.7
        a, b = dot(p[board], along[board]), dot(p[board], across[board])
        grain = clouds(a * 2.2 + k, b * 150 + k + 2.2 * noise(a * 3, b * 18 + k), 4)
        shade[board] = (0.35 + 1.25 * grain) * (0.8 + 0.4 * noise(a * 5 + k, b * 12))
        n[board] += across[board] * ((grain - 0.5) * 0.5)[:, None]
    return unit(n), shade


def shaded(
    f: dict[str, A], face: A, ray: A, view: View, seen: tuple[A, A, A, float], rng: np.random.Generator
) -> tuple[A, A]:
    """Return the light each pixel sends to the eye, and how far it came."""
    eye, sun = np.array(view.eye, np.float32), unit(np.array(view.sun, np.float32))
    n0, centre = f["normal"][face], f["centre"][face]
    steep = dot(ray, n0)
    reach = dot(centre - eye, n0) / np.where(np.abs(steep) < 0.02, np.inf, steep)
    reach = np.where(reach > 0, reach, dot(centre - eye, ray))
    p = eye + ray * reach[:, None]
    u, v = dot(p - centre, f["u"][face]), dot(p - centre, f["v"][face])
    kind = f["kind"][face]
    far = ((np.abs(u) > 1.6) | (np.abs(v) > 1.6)) & (kind < ROUGH)
    p[far], u[far], v[far] = centre[far], 0.0, 0.3
    n, shade = bent(f, face, u, v, p, kind)
    thin = (kind == LEAF) | (kind == BLADE)
    away = thin & (dot(n0, ray) > 0)
    n[away] *= -1
    colour = f["colour"][face] * np.clip(shade, 0.2, 2)[:, None]
    colour[away] = colour[away] * 0.8 + np.array([0.03, 0.04, 0.025], np.float32)
    vis, facing = lit(seen, f, p + n * 0.0015, face, view, rng), dot(n, sun)
    lift = np.clip(1 + 0.8 * (n[:, 2] - n0[:, 2]) + 0.5 * dot(n - n0, sun), 0.25, 1.7)
    light = f["sky"][face] * lift[:, None] + (np.clip(facing, 0, None) * vis)[:, None] * view.sun_colour
    light += view.bounce * (0.5 - 0.5 * n[:, 2] + 0.15)[:, None] * (0.25 + f["open"][face])[:, None]
    out = colour * light
    through = np.where(thin, np.clip(-facing, 0, None) * vis, 0)[:, None] * view.sun_colour
    out += through * colour * np.array([0.95, 0.95, 0.32], np.float32)
    half = unit(sun - ray)
    shine = np.clip(dot(n, half), 0, 1) ** 26 * vis * f["gloss"][face]
    rim = (1 - np.clip(-dot(n, ray), 0, 1)) ** 4 * f["gloss"][face] * 0.5
    out += shine[:, None] * view.sun_colour * 0.35 + rim[:, None] * f["sky"][face] * 0.6
    distance = dot(p - eye, view.axes()[2].astype(np.float32))
    mist = 1 - np.exp(-view.fog * np.clip(distance, 0, None))
    return out * (1 - mist[:, None]) + view.haze * mist[:, None], distance


def blur(a: A, sigma: float) -> A:
    """Return the picture softened by three passes of a box, edges held."""
    radius = max(1, round(sigma * 0.98))
    for axis in (0, 1, 0, 1, 0, 1):
        pad = [(radius + 1, radius) if k == axis else (0, 0) for k in range(a.ndim)]
        total = np.cumsum(np.pad(a, pad, mode="edge"), axis=axis, dtype=np.float64)
        n = a.shape[axis]
        high = np.take(total, range(2 * radius + 1, 2 * radius + 1 + n), axis)
        a = ((high - np.take(total, range(n), axis)) / (2 * radius + 1)).astype(np.float32)
    return a


def halved(a: A) -> A:
    """Return the picture at half size, each pixel from a small tent of sixteen."""
    for axis in (0, 1):
        n = a.shape[axis]
        padded = np.pad(a, [(1, 1) if k == axis else (0, 0) for k in range(a.ndim)], mode="edge")
        taps = [np.take(padded, range(k, n + k, 2), axis) for k in range(4)]
        a = (taps[0] + 3 * taps[1] + 3 * taps[2] + taps[3]) / 8
    return a


def through_lens(colour: A, distance: A, view: View) -> A:
    """Return the picture at half size as a lens gives it: sharp at the focus, softer before and behind."""
    focus = view.focus or float(np.linalg.norm(np.array(view.target) - np.array(view.eye)))
    size = view.aperture * view.size[0] * (1 / focus - 1 / np.clip(distance, 0.05, None))
    steps = (18.0, 11.0, 6.5, 3.8, 2.0, 0.7, -0.7, -2.0, -4.0, -7.0, -12.0)
    out, cover = np.zeros((*view.size[::-1], 3), np.float32), np.zeros((*view.size[::-1], 1), np.float32)
    for k, step in enumerate(steps):
        low, high = steps[min(k + 1, len(steps) - 1)], steps[max(k - 1, 0)]
        share = np.interp(size, [low - 1e-6, step, high + 1e-6], [float(k == len(steps) - 1), 1, float(k == 0)])
        share = share[..., None].astype(np.float32)
        if not share.any():
            continue
        part = np.concatenate([halved(colour * share), halved(share)], 2)
        part = blur(part, abs(step)) if abs(step) > 1 else part
        out, cover = out * (1 - part[..., 3:]) + part[..., :3], cover * (1 - part[..., 3:]) + part[..., 3:]
    return out / np.maximum(cover, 1e-4)


def developed(picture: A, view: View, rng: np.random.Generator) -> Image.Image:
    """Return the finished picture: glow, film curve, warm lights and cool darks, a little grain."""
    a = picture * view.exposure
    a = a + 0.05 * blur(np.clip(a - 0.7, 0, 3), 28)
    h, w = a.shape[:2]
    y, x = np.mgrid[0:h, 0:w].astype(np.float32)
    a *= (1 - 0.30 * (((x / w - 0.5) ** 2 + (y / h - 0.5) ** 2) * 2) ** 1.4)[..., None]
    a = a * (2.51 * a + 0.03) / (a * (2.43 * a + 0.59) + 0.14)
    grey = a.mean(2, keepdims=True)
    a = a + (grey - 0.35) * np.array([0.03, 0.004, -0.032], np.float32)
    a = np.clip(a, 0, 1) ** (1 / 2.2)
    a += rng.normal(0, 0.004, (h, w, 1)).astype(np.float32)
    return Image.fromarray((np.clip(a, 0, 1) * 255 + 0.5).astype(np.uint8))


def painted(faces: Faces, view: View, seed: int) -> Image.Image:
    """Return a scene as a picture."""
    rng = np.random.default_rng(seed)
    f = faces.joined()
    f["sky"] = skylight(f, view)
    f["open"] = np.clip(f["sky"].mean(1) / max(float(view.sky.mean()), 1e-6), 0, 1)
    right, down, forward = (axis.astype(np.float32) for axis in view.axes())
    w, h = view.size[0] * SCALE, view.size[1] * SCALE
    local = (f["corners"] - np.array(view.eye, np.float32)) @ np.stack([right, down, forward]).T
    z = np.maximum(local[..., 2], 1e-3)
    points = local[..., :2] / z[..., None] * (view.focal * w) + np.array([w / 2, h / 2], np.float32)
    near = (local[..., 2] > 0.04).all(1)
    inside = (points[..., 0].max(1) > 0) & (points[..., 0].min(1) < w) & (points[..., 1].max(1) > 0)
    keep = near & inside & (points[..., 1].min(1) < h)
    order = np.argsort(
        -(np.linalg.norm(f["centre"] - np.array(view.eye, np.float32), axis=1) + f["back"]), kind="stable"
    )
    ids, seen = numbered(points, order[keep[order]], (w, h)), sun_map(f, view)
    colour, distance = np.empty((h, w, 3), np.float32), np.full((h, w), 60, np.float32)
    for top in range(0, h, 100):
        y, x = np.mgrid[top : min(top + 100, h), 0:w].astype(np.float32)
        x, y = (x + 0.5 - w / 2) / (view.focal * w), (y + 0.5 - h / 2) / (view.focal * w)
        ray = unit(forward + x[..., None] * right + y[..., None] * down)
        band = ids[top : top + 100]
        high = np.clip(ray[..., 2:] * 2.2, 0, 1)
        colour[top : top + 100] = view.haze * (1 - high) + view.zenith * high
        hit = band > 0
        light, reach = shaded(f, band[hit] - 1, ray[hit], view, seen, rng)
        colour[top : top + 100][hit], distance[top : top + 100][hit] = light, reach
    return developed(through_lens(colour, distance, view), view, rng)
