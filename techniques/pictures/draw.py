"""Draws the shelf's pictures: a clipped ball, a young hedge, an espalier and a lawn, in sun and shade.

`python techniques/pictures/draw.py` paints all five again beside this file; a name paints that one only.
Everything is invented; the random places of leaves and stones are seeded, so the pictures repeat.
"""

import sys
from pathlib import Path

import numpy as np
from light import Faces, View, clouds, noise, painted, srgb, unit
from pieces import around, backdrop, blades, bricks, clippings, fence, gravel, leaves, paving, slab, soil, stems, tinted
from plants import ball, limb, mounds, sapling, spurs

HERE = Path(__file__).parent
SUN = np.array([3.95, 3.42, 2.7], np.float32)
SKY = np.array([0.36, 0.45, 0.62], np.float32)


def ball_from_side(seed: int = 11) -> tuple[Faces, View]:
    """Return the ball in its gravel bed, seen from a standing gardener's knee."""
    rng = np.random.default_rng(seed)
    faces, eye = Faces(), np.array([0.15, -2.75, 1.12])
    sun = np.array([-0.86, -0.14, 0.74])
    gravel(faces, rng, (-1.5, 1.5, -1.35, 2.2), 150000)
    ball(faces, rng, np.array([0.0, 0.0, 0.42]), 0.45, eye, sun)
    clippings(faces, rng, np.array([0.1, -0.1, 0.0]), 0.42, 420)
    backdrop(faces, rng)
    view = View(
        tuple(eye),
        (0.06, 0, 0.43),
        1.75,
        tuple(sun),
        SUN,
        SKY,
        srgb(150, 138, 118) * 0.5,
        srgb(120, 132, 120),
        cell=0.014,
        aperture=0.013,
        focus=2.42,
        exposure=1.12,
        shadow_span=3.4,
    )
    return faces, view


def ball_from_above(seed: int = 12) -> tuple[Faces, View]:
    """Return the ball seen looking straight down, where the ring round the widest part is found."""
    rng = np.random.default_rng(seed)
    faces, eye = Faces(), np.array([0.03, -0.22, 2.55])
    sun = np.array([-0.80, 0.34, 0.62])
    gravel(faces, rng, (-0.67, 1.15, -1.4, 1.4), 90000)
    ball(faces, rng, np.array([0.0, 0.0, 0.42]), 0.45, eye, sun)
    ball(faces, rng, np.array([0.86, 0.95, 0.28]), 0.3, eye, sun)
    clippings(faces, rng, np.array([0.1, -0.1, 0.0]), 0.5, 500)
    paving(faces, rng, -0.66, 3.0)
    view = View(
        tuple(eye),
        (0.05, -0.04, 0.3),
        1.42,
        tuple(sun),
        SUN,
        SKY,
        srgb(150, 138, 118) * 0.7,
        srgb(196, 206, 196),
        cell=0.014,
        aperture=0.008,
        focus=1.84,
        shadow_span=3.2,
    )
    return faces, view


def young_hedge(seed: int = 21) -> tuple[Faces, View]:
    """Return a young hedge in its row before a fence, with light in the gaps."""
    rng = np.random.default_rng(seed)
    faces, eye = Faces(), np.array([-1.25, -2.05, 0.86])
    soil(faces, rng, (-2.6, 3.6, -0.62, 0.5), 170000)
    for k in range(11):
        sapling(
            faces,
            rng,
            np.array([-1.75 + 0.4 * k + rng.normal(0, 0.015), rng.normal(0, 0.015), 0.0]),
            rng.uniform(0.66, 0.84),
            eye,
        )
    fence(faces, rng, 0.44, -3.2, 5.0, 2.4)
    turf(faces, rng, (-2.4, 2.6, -1.5, -0.6), 70000, 0.032)
    clippings(faces, rng, np.array([0.0, -0.1, 0.01]), 0.7, 220)
    view = View(
        tuple(eye),
        (0.14, 0.1, 0.47),
        1.34,
        (-0.62, -0.62, 0.52),
        SUN,
        SKY,
        srgb(120, 100, 80) * 0.8,
        srgb(120, 132, 120),
        cell=0.03,
        aperture=0.006,
        focus=2.3,
        shadow_span=5.2,
    )
    return faces, view


LAWN = [srgb(58, 84, 36), srgb(76, 104, 44), srgb(96, 124, 54), srgb(118, 140, 70)]


def turf(
    faces: Faces, rng: np.random.Generator, reach: tuple[float, float, float, float], n: int, height: float
) -> None:
    """Add a mown strip of grass between left, right, near and far."""
    left, right, near, far = reach
    slab(
        faces,
        np.array([left, near, -0.008]),
        np.array([right - left, 0, 0]),
        np.array([0, far - near, 0]),
        srgb(60, 62, 34),
        cut=(30, 10),
    )
    foot = np.stack([rng.uniform(left, right, n), rng.uniform(near, far, n) + rng.normal(0, 0.01, n), np.zeros(n)], 1)
    lean = around(rng, n) * [0.8, 0.8, 0.0]
    blades(
        faces,
        rng,
        foot,
        height * rng.uniform(0.6, 1.2, n),
        rng.uniform(0.0022, 0.0032, n),
        lean,
        tinted(rng, LAWN, n, 0.2),
        tip=0.5,
    )


def espalier_on_wires(seed: int = 31) -> tuple[Faces, View]:
    """Return an apple in four tiers on level wires, with its shadow on the wall."""
    rng = np.random.default_rng(seed)
    faces, eye = Faces(), np.array([0.35, -3.5, 1.3])
    bricks(faces, rng, -2.1, 2.1, 3.1)
    soil(faces, rng, (-2.2, 2.2, -1.5, 0.0), 170000)
    feet = np.stack([np.linspace(-1.5, 1.5, 9) + rng.normal(0, 0.05, 9), rng.normal(-0.72, 0.06, 9), np.zeros(9)], 1)
    mounds(faces, rng, feet, 0.17, [srgb(110, 122, 100), srgb(134, 146, 120), srgb(92, 106, 80)])
    tiers = (0.46, 0.86, 1.26, 1.66)
    for z in tiers:
        x = np.linspace(-1.9, 1.9, 40)
        line = np.stack([x, np.full(40, -0.11), z - 0.004 + 0.004 * (x / 1.9) ** 2], 1)
        stems(faces, line[:-1], line[1:], np.full((39, 2), 0.0022), srgb(196, 196, 192), eye, gloss=0.8)
        eyes = np.array([[k, -0.11, z] for k in (-1.5, -0.75, 0.75, 1.5)])
        stems(faces, eyes + np.array([0, 0.11, 0]), eyes, np.full((4, 2), 0.004), srgb(120, 118, 114), eye, gloss=0.6)
    limb(faces, rng, np.array([0.0, -0.15, 0.0]), np.array([0.0, -0.13, 1.68]), 0.030, 0.014, eye)
    for z in tiers:
        for turn in (-1, 1):
            tip = np.array([turn * rng.uniform(1.0, 1.14), -0.13, z + 0.02])
            arm = limb(faces, rng, np.array([0.0, -0.14, z - 0.07]), tip, 0.0135, 0.006, eye, level=z + 0.01)
            spurs(faces, rng, arm, eye)
    view = View(
        tuple(eye),
        (0.02, 0, 1.04),
        1.40,
        (-0.60, -0.70, 0.66),
        SUN * 0.9,
        SKY * 1.7,
        srgb(160, 130, 108) * 0.8,
        srgb(150, 150, 140),
        cell=0.035,
        aperture=0.009,
        focus=3.4,
        shadow_span=4.4,
    )
    return faces, view


def trees(faces: Faces, rng: np.random.Generator) -> None:
    """Add a belt of trees a stone's throw off, with a dark foot."""
    slab(faces, np.array([-9.0, 14.2, -0.1]), np.array([18.0, 0, 0]), np.array([0, 0, 1.4]), srgb(30, 42, 24))
    m = 50000
    at = np.stack([rng.uniform(-8, 8, m), rng.uniform(12.6, 14.5, m), rng.uniform(0, 1, m) ** 0.8 * 3.4], 1)
    at[:, 1] += 1.2 * (clouds(at[:, 0] * 0.7, at[:, 2] * 0.7, 3, 3) - 0.5)
    at[:, 2] *= 0.55 + 0.75 * clouds(at[:, 0] * 0.5 + 4, at[:, 0] * 0, 3, 5)
    form = 0.35 + 1.3 * clouds(at[:, 0] * 1.5 + 2, at[:, 2] * 1.7 - at[:, 0] * 0.4, 3, 12)
    size = rng.uniform(0.09, 0.16, m)
    leaves(
        faces,
        at,
        around(rng, m),
        unit(around(rng, m) + np.array([-0.5, -0.8, 0.9])),
        size,
        size * 0.6,
        tinted(rng, [srgb(30, 48, 28), srgb(50, 70, 36), srgb(74, 92, 46)], m, 0.2) * form[:, None],
    )


def lawn_stripes(seed: int = 41) -> tuple[Faces, View]:
    """Return a lawn from low down: a stripe just cut beside one still long, going away into haze."""
    rng = np.random.default_rng(seed)
    faces, eye = Faces(), np.array([-0.05, 0.0, 0.44])
    slab(
        faces,
        np.array([-9.0, 0.1, -0.01]),
        np.array([18.0, 0, 0]),
        np.array([0, 14.0, 0]),
        srgb(58, 72, 32),
        cut=(60, 60),
    )
    n = 190000
    y = 0.28 * np.exp(rng.random(n) * np.log(13.0 / 0.28))
    x = rng.uniform(-0.62, 0.62, n) * (y + 0.25)
    foot = np.stack([x, y, np.zeros(n)], 1)
    edge = 0.03 * (noise(y * 3, y * 0, 4) - 0.5)
    stripe = np.floor((x - edge) / 0.55)
    long = (stripe == 0) | (stripe == 1)
    tall = np.where(long, rng.uniform(0.065, 0.115, n), rng.uniform(0.022, 0.032, n)) * (
        0.85 + 0.3 * clouds(x * 3, y * 3, 3, 8)
    )
    wide = np.where(long, 0.0027, 0.0025) * np.clip(y / 1.3, 1, 9) * rng.uniform(0.7, 1.3, n)
    lean = around(rng, n) * [0.55, 0.55, 0] + np.where(stripe % 2 == 0, 0.25, -0.35)[:, None] * np.array([0, 1.0, 0])
    tone = (
        np.where(long, 0.86, 1.0 + 0.4 * (stripe % 2))[:, None] * (0.85 + 0.3 * clouds(x * 1.3, y * 1.3, 3, 2))[:, None]
    )
    colour = tinted(rng, LAWN, n, 0.16) * tone
    dry = rng.random(n) < 0.03
    colour[dry] = tinted(rng, [srgb(170, 150, 96)], int(dry.sum()))
    for part, tip in ((long, 0.1), (~long, 0.75)):
        blades(faces, rng, foot[part], tall[part], wide[part], lean[part], colour[part], tip=tip)
    trees(faces, rng)
    view = View(
        tuple(eye),
        (0.0, 1.6, 0.0),
        0.95,
        (-0.78, 0.22, 0.46),
        SUN,
        SKY,
        srgb(90, 100, 60) * 0.5,
        srgb(186, 198, 196),
        cell=0.02,
        aperture=0.0017,
        focus=0.95,
        fog=0.022,
        shadow_span=9.0,
    )
    return faces, view


SCENES = {
    "ball-from-above": ball_from_above,
    "ball-from-side": ball_from_side,
    "young-hedge": young_hedge,
    "espalier-on-wires": espalier_on_wires,
    "lawn-stripes": lawn_stripes,
}


def main() -> None:
    """Paint the pictures named on the command line, or all of them."""
    for name in sys.argv[1:] or SCENES:
        faces, view = SCENES[name]()
        painted(faces, view, 5).save(HERE / f"{name}.jpg", quality=85, optimize=True, subsampling=2)


if __name__ == "__main__":
    main()
