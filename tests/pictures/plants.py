"""The plants that stand in the scenes: a clipped ball, a hedge sapling, the limbs of an espalier, low mounds."""

import numpy as np
from light import A, Faces, clouds, srgb, unit
from pieces import BALL, UP, YOUNG, around, leaves, stems, studs, tinted


def ball(faces: Faces, rng: np.random.Generator, middle: A, radius: float, eye: A, sun: A) -> None:
    """Add a clipped ball: leafy twigs at the surface, a dark inside, a stem, and shoots that stand proud."""
    turn = np.arange(12500)
    z = 1 - 2 * (turn + 0.5) / len(turn)
    out = np.stack([np.sqrt(1 - z**2) * np.cos(turn * 2.399963), np.sqrt(1 - z**2) * np.sin(turn * 2.399963), z], 1)
    out = unit(out + rng.normal(0, 0.02, out.shape))
    out = out[out[:, 2] > -0.82]
    swell = clouds(out[:, 0] * 5 + 9, out[:, 1] * 5 + out[:, 2] * 4, 3, 2) - 0.5
    tip = middle + out * (radius * (1 + 0.05 * swell) - np.abs(rng.normal(0, 0.012, len(out))))[:, None]
    heading = unit(out + 0.55 * around(rng, len(out)) + 0.25 * UP)
    tone = 0.78 + 0.5 * clouds(out[:, 0] * 4 + 3, out[:, 2] * 4 + out[:, 1] * 3, 3, 4)
    tone *= 0.62 + 0.5 * np.clip(out @ unit(sun) + 0.3, 0, 1)  # the leaves lie with the surface, so the ball rounds
    for k in range(9):
        n = len(tip)
        splay = unit(np.cross(heading, around(rng, n)))
        base = tip - heading * (0.004 * k + rng.uniform(0, 0.003, n))[:, None]
        along = heading * (0.95 - 0.09 * k) + splay * (0.45 + 0.08 * k)
        length = rng.uniform(0.011, 0.019, n) * (0.75 + 0.05 * k)
        colour = tinted(rng, BALL, n, 0.16) * (tone * (1.12 - 0.055 * k))[:, None]
        fresh = rng.random(n) < 0.10 - 0.012 * k
        colour[fresh] = tinted(rng, YOUNG, int(fresh.sum()))
        leaves(
            faces,
            base,
            along,
            unit(heading + 0.6 * splay + 0.4 * out),
            length,
            length * rng.uniform(0.5, 0.66, n),
            colour,
        )
    inner = unit(around(rng, 9000))
    deep = middle + inner * radius * rng.uniform(0.80, 0.93, len(inner))[:, None]
    size = rng.uniform(0.02, 0.03, len(inner))
    leaves(
        faces,
        deep,
        around(rng, len(inner)) + inner * 0.3,
        inner,
        size,
        size * 0.8,
        tinted(rng, [srgb(44, 52, 24), srgb(66, 58, 36)], len(inner)),
    )
    low = around(rng, 60) * [0.05, 0.05, 0.0] + [middle[0], middle[1], 0.0]
    high = middle + around(rng, 60) * radius * [0.6, 0.6, 0.3] - UP * radius * 0.5
    stems(faces, low, high, np.tile([0.007, 0.003], (60, 1)), srgb(98, 82, 62), eye)
    proud(faces, rng, middle, radius, eye)


def proud(faces: Faces, rng: np.random.Generator, middle: A, radius: float, eye: A, n: int = 74) -> None:
    """Add the shoots that stand proud of a ball since the last clip, leafy in pairs."""
    out = around(rng, n)
    out[:, 2] = np.abs(out[:, 2]) * 0.9 - 0.1
    out = unit(out)
    reach = rng.gamma(3.0, 0.014, n) + 0.022
    heading = unit(out + 0.35 * around(rng, n) + 0.2 * UP)
    start = middle + out * (radius - 0.02)
    sway = around(rng, n) * 0.25
    joints = 9
    for k in range(joints):
        low, high = k / joints, (k + 1) / joints
        a, b = (start + (heading * part + sway * part**2) * (reach + 0.02)[:, None] for part in (low, high))
        stems(faces, a, b, np.tile([0.0011 - 0.0008 * low, 0.0011 - 0.0008 * high], (n, 1)), srgb(132, 128, 62), eye)
        splay = unit(np.cross(heading + sway, around(rng, n)))
        for turn in (1, -1):
            length = rng.uniform(0.014, 0.022, n) * (1.1 - 0.5 * high)
            leaves(
                faces,
                b,
                (heading + sway * high) * 0.75 + splay * turn * 0.7,
                unit(heading - 0.5 * turn * splay),
                length,
                length * 0.6,
                tinted(rng, [BALL[3], *YOUNG], n),
            )


def sapling(faces: Faces, rng: np.random.Generator, foot: A, height: float, eye: A) -> None:
    """Add a young upright hedge plant: stems from the ground, side shoots, broad leaves lighter at the tips."""
    n = 13
    start = foot + rng.normal(0, 0.018, (n, 3)) * [1, 1, 0]
    heading = unit(UP + rng.normal(0, 0.17, (n, 3)) * [1, 1, 0])
    long = height * rng.uniform(0.62, 1.06, n)
    joints = 17
    for k in range(joints):
        low, high = k / joints, (k + 1) / joints
        wave = 0.05 * np.sin(np.arange(n) * 2.1 + high * 5)[:, None] * heading[:, [1, 0, 2]]
        a, b = (
            start + heading * (long * low)[:, None] + wave * low,
            start + heading * (long * high)[:, None] + wave * high,
        )
        stems(faces, a, b, np.tile([0.0048 - 0.0034 * low, 0.0048 - 0.0034 * high], (n, 1)), srgb(112, 96, 66), eye)
        if k < 2:
            continue
        for turn in range(2):
            swing = 2.4 * k + turn * np.pi + rng.normal(0, 0.4, n)
            out = np.stack([np.cos(swing), np.sin(swing), np.full(n, 0.55)], 1)
            twig(faces, rng, b, out, high, eye)


def twig(faces: Faces, rng: np.random.Generator, at: A, out: A, high: float, eye: A) -> None:
    """Add a side shoot with its leaves at each place, shorter towards the tip of the stem."""
    n = len(at)
    reach = rng.uniform(0.02, 0.11, n) * (1.15 - 0.75 * high)
    end = at + unit(out) * reach[:, None]
    stems(faces, at, end, np.tile([0.0015, 0.001], (n, 1)), srgb(128, 116, 70), eye)
    shades = [srgb(58, 82, 40), srgb(80, 106, 50), srgb(108, 132, 62)]
    for part in (0.2, 0.45, 0.7, 1.0, 1.0):
        length = rng.uniform(0.028, 0.046, n) * (1.1 - 0.35 * high)
        along = unit(out) * 0.6 + 0.75 * around(rng, n) + 0.25 * UP
        tone = (0.66 + 0.5 * high**2 + 0.12 * part) * np.ones((n, 1))
        leaves(
            faces,
            at + (end - at) * part,
            along,
            unit(UP * 0.8 + 0.7 * around(rng, n)),
            length,
            length * 0.6,
            tinted(rng, shades, n) * tone,
            gloss=0.5,
            curl=0.16,
        )


def limb(
    faces: Faces, rng: np.random.Generator, start: A, end: A, thick: float, thin: float, eye: A, *, level: float = 0.0
) -> A:
    """Add a trunk or an arm that wavers a little, and return the points along it."""
    t = np.linspace(0, 1, 26)[:, None]
    line = start + (end - start) * t
    if level:
        line[:, 2] = start[2] + (level - start[2]) * np.clip(t[:, 0] * 5, 0, 1) ** 0.6
    line[:, [0, 2]] += 0.010 * np.cumsum(rng.normal(0, 0.35, (26, 2)), 0) * np.sin(t * np.pi)
    radius = thick + (thin - thick) * t[:, 0] + rng.uniform(0, thick * 0.12, 26)
    stems(
        faces,
        line[:-1],
        line[1:] + (line[1:] - line[:-1]) * 0.15,
        np.stack([radius[:-1], radius[1:]], 1),
        srgb(104, 90, 76),
        eye,
    )
    return line


def spurs(faces: Faces, rng: np.random.Generator, arm: A, eye: A) -> None:
    """Add fruiting spurs with leaves, some upright summer shoots, and apples."""
    at = arm[2:].repeat(2, 0) + rng.normal(0, 0.012, (48, 3)) * [1, 0.3, 0]
    out = unit(
        np.stack([rng.normal(0, 0.5, 48), rng.normal(-0.35, 0.4, 48), np.where(rng.random(48) < 0.74, 1.0, -0.6)], 1)
    )
    reach = rng.uniform(0.02, 0.055, 48)
    tall = rng.random(48) < 0.17
    reach[tall] = rng.uniform(0.12, 0.22, int(tall.sum()))
    end = at + out * reach[:, None]
    stems(faces, at, end, np.tile([0.0038, 0.002], (48, 1)), srgb(110, 92, 72), eye)
    shades = [srgb(54, 80, 40), srgb(76, 102, 50), srgb(104, 128, 64)]
    for k in range(10):
        part = np.where(tall, (k + 1) / 10, 1.0 - 0.5 * (k % 2))[:, None]
        length = rng.uniform(0.042, 0.068, 48)
        along = unit(out * 0.5 + around(rng, 48) + [0, -0.35, 0.1])
        leaves(
            faces,
            at + (end - at) * part,
            along,
            unit(UP * 0.9 + [0, -0.5, 0] + 0.6 * around(rng, 48)),
            length,
            length * 0.66,
            tinted(rng, shades, 48, 0.16),
            gloss=0.3,
            curl=0.2,
        )
    n = 4
    pick = rng.choice(48, n, replace=False)
    low = at[pick] + np.stack([rng.normal(0, 0.02, n), np.full(n, -0.05), rng.uniform(-0.085, -0.055, n)], 1)
    stems(faces, at[pick], low + np.array([0, 0.01, 0.02]), np.full((n, 2), 0.0015), srgb(120, 110, 70), eye)
    blush = tinted(rng, [srgb(142, 44, 38), srgb(156, 74, 48), srgb(148, 128, 66)], n, 0.1)
    studs(faces, low, eye - low.mean(0), rng.uniform(0.024, 0.032, n), blush, gloss=0.6)


def mounds(faces: Faces, rng: np.random.Generator, at: A, radius: float, shades: list[A]) -> None:
    """Add low soft plants of narrow leaves, such as lavender, at each place."""
    for middle in at:
        n = 900
        out = around(rng, n)
        out[:, 2] = np.abs(out[:, 2])
        long = rng.uniform(0.022, 0.045, n)
        base = middle + out * (radius * rng.uniform(0.45, 1.0, n) ** 0.5)[:, None] * [1, 1, 0.9]
        leaves(
            faces,
            base,
            unit(out + 0.5 * around(rng, n) + 0.5 * UP),
            around(rng, n),
            long,
            long * 0.17,
            tinted(rng, shades, n, 0.2),
            gloss=0.15,
            fold=0.2,
        )
