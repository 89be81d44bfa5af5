"""The pieces pictures are made of: leaves, stems, stones, blades of grass, boards and bricks."""

import numpy as np
from light import BLADE, BOARD, DOME, LEAF, ROUGH, TUBE, A, Faces, clouds, noise, srgb, unit

UP = np.array([0.0, 0.0, 1.0])
OUTLINE = np.array([(-1.0, 0.0), (-0.62, 0.66), (-0.1, 1.0), (0.45, 0.72), (0.82, 0.3), (1.0, 0.0)])


def around(rng: np.random.Generator, n: int) -> A:
    """Return random directions."""
    return unit(rng.normal(size=(n, 3)))


def tinted(rng: np.random.Generator, colours: list[A], n: int, spread: float = 0.14) -> A:
    """Return colours picked between neighbours of a list, each a little lighter or darker."""
    at = rng.random(n) * (len(colours) - 1)
    low = at.astype(int)
    part = (at - low)[:, None]
    table = np.array(colours)
    mixed = table[low] * (1 - part) + table[np.minimum(low + 1, len(colours) - 1)] * part
    shaken: A = mixed * np.exp(rng.normal(0, spread, (n, 1)))
    return shaken


def leaves(  # noqa: PLR0913 - each look has a usual value
    faces: Faces,
    base: A,
    along: A,
    up: A,
    length: A,
    width: A,
    colour: A,
    *,
    fold: float = 0.35,
    curl: float = 0.12,
    gloss: float = 0.35,
) -> None:
    """Add leaves, each two halves folded along the rib and curling down at the tip."""
    along = unit(along)
    side = unit(np.cross(along, up))
    face = np.cross(side, along)
    centre = base + along * (length / 2)[:, None]
    group = np.arange(len(base))
    for turn in (1.0, -1.0):
        across = side * turn * np.cos(fold) + face * np.sin(fold)
        t, s = OUTLINE[:, 0], OUTLINE[:, 1]
        droop = -curl * (t + 1) ** 2 / 2
        corners = (
            centre[:, None]
            + along[:, None] * (t[None] * length[:, None] / 2)[..., None]
            + across[:, None] * (s[None] * width[:, None] / 2)[..., None]
            + face[:, None] * (droop[None] * length[:, None] / 2)[..., None]
        )
        normal = np.cross(along, across) * -turn
        faces.add(
            LEAF,
            corners,
            normal,
            along * (length / 2)[:, None],
            across * (width / 2)[:, None],
            colour,
            group=group + (0 if turn > 0 else -len(base)),
            centre=centre,
            gloss=gloss,
        )


def stems(
    faces: Faces, start: A, end: A, thick: A, colour: A, eye: A, *, gloss: float = 0.12, casts: bool = True
) -> None:
    """Add straight stems as round strips that face the eye; `thick` is the radius at both ends."""
    run = end - start
    look = unit(eye - (start + end) / 2)
    side = unit(np.cross(run, look))
    a, b = side * thick[:, :1], side * thick[:, 1:]
    corners = np.stack([start - a, start + a, end + b, end - b], 1)
    faces.add(
        TUBE,
        corners,
        np.cross(side, unit(run)),
        run / 2,
        side * thick.mean(1)[:, None],
        colour,
        gloss=gloss,
        casts=casts,
    )


def stones(
    faces: Faces, rng: np.random.Generator, at: A, radius: A, colour: A, *, flat: float = 0.55, gloss: float = 0.1
) -> None:
    """Add rounded stones or clods lying on the ground."""
    n = len(at)
    normal = unit(UP + rng.normal(0, 0.32, (n, 3)))
    u = unit(np.cross(normal, around(rng, n)))
    v = np.cross(normal, u)
    angle = np.arange(6) * np.pi / 3
    reach = rng.uniform(0.78, 1.12, (n, 6)) * radius[:, None]
    long = rng.uniform(0.62, 1.0, n)
    corners = (
        at[:, None]
        + u[:, None] * (np.cos(angle) * reach)[..., None]
        + v[:, None] * (np.sin(angle) * reach * long[:, None])[..., None]
        + normal[:, None] * (radius * flat * rng.random(n))[:, None, None]
    )
    faces.add(DOME, corners, normal, u * radius[:, None], v * (radius * long)[:, None], colour, gloss=gloss)


def slab(  # noqa: PLR0913 - each look has a usual value
    faces: Faces,
    corner: A,
    u: A,
    v: A,
    colour: A,
    *,
    kind: int = ROUGH,
    cut: tuple[int, int] = (1, 1),
    casts: bool = False,
    back: float = 50.0,
    gloss: float = 0.0,
) -> None:
    """Add a flat face cut into pieces: ground, board or wall."""
    i, j = (k.ravel() for k in np.meshgrid(np.arange(cut[0]), np.arange(cut[1])))
    du, dv = u / cut[0], v / cut[1]
    start = corner + i[:, None] * du + j[:, None] * dv
    corners = np.stack([start, start + du, start + du + dv, start + dv], 1)
    n = len(start)
    normal = np.repeat(np.cross(u, v)[None], n, 0)
    faces.add(
        kind,
        corners,
        normal,
        np.repeat((du / 2)[None], n, 0),
        np.repeat((dv / 2)[None], n, 0),
        colour,
        casts=casts,
        back=back,
        gloss=gloss,
        group=np.zeros(n, int),
    )


GRAVEL = [
    srgb(176, 160, 138),
    srgb(140, 126, 108),
    srgb(196, 184, 164),
    srgb(104, 97, 90),
    srgb(166, 138, 108),
    srgb(150, 142, 132),
]
BALL = [srgb(62, 84, 34), srgb(88, 112, 44), srgb(112, 136, 54), srgb(134, 152, 66)]
YOUNG = [srgb(150, 172, 72), srgb(176, 190, 92)]


def gravel(
    faces: Faces, rng: np.random.Generator, reach: tuple[float, float, float, float], n: int, size: float = 0.0075
) -> None:
    """Add a bed of gravel over its bedding, between left, right, near and far."""
    left, right, near, far = reach
    slab(
        faces,
        np.array([left, near, -0.012]),
        np.array([right - left, 0, 0]),
        np.array([0, far - near, 0]),
        srgb(112, 100, 84),
        cut=(60, 60),
    )
    at = np.stack([rng.uniform(left, right, n), rng.uniform(near, far, n), rng.uniform(-0.008, 0.001, n)], 1)
    tone = 0.8 + 0.4 * clouds(at[:, 0] * 2, at[:, 1] * 2, 3, 9)
    stones(faces, rng, at, size * rng.lognormal(0, 0.34, n), tinted(rng, GRAVEL, n, 0.2) * tone[:, None])


def clippings(faces: Faces, rng: np.random.Generator, middle: A, spread: float, n: int) -> None:
    """Add fallen leaves and snippets round the foot of a plant."""
    at = middle + rng.normal(0, 1, (n, 3)) * [spread, spread, 0] + UP * rng.uniform(0.004, 0.014, n)[:, None]
    flat = around(rng, n) * [1, 1, 0.25]
    size = rng.uniform(0.011, 0.02, n)
    leaves(
        faces,
        at,
        flat,
        unit(UP + 0.5 * around(rng, n)),
        size,
        size * 0.55,
        tinted(rng, [BALL[1], BALL[2], BALL[3], srgb(150, 120, 70)], n),
    )


def paving(faces: Faces, rng: np.random.Generator, right: float, run: float) -> None:
    """Add two courses of brick edging, running away from the eye, with lawn beyond."""
    for row in range(2):
        for k in range(int(run / 0.22)):
            corner = np.array(
                [right - 0.11 - 0.115 * row, -run / 2 + 0.22 * k + 0.11 * row, 0.02 + rng.normal(0, 0.0015)]
            )
            tilt = rng.normal(0, 0.002, 2)
            tone = tinted(rng, [srgb(132, 104, 90), srgb(112, 92, 84), srgb(148, 122, 106)], 1, 0.12)
            slab(
                faces,
                corner,
                np.array([0.106, 0, tilt[0]]),
                np.array([0, 0.212, tilt[1]]),
                tone,
                cut=(3, 6),
                back=0.0,
                casts=True,
            )


def backdrop(faces: Faces, rng: np.random.Generator) -> None:
    """Add lawn and a tall hedge behind, for the lens to soften."""
    slab(
        faces,
        np.array([-6.0, 1.9, -0.015]),
        np.array([12.0, 0, 0]),
        np.array([0, 6.0, 0]),
        srgb(70, 82, 48),
        cut=(40, 20),
    )
    slab(faces, np.array([-6.0, 4.8, -0.1]), np.array([12.0, 0, 0]), np.array([0, 0, 4.0]), srgb(30, 42, 24))
    n = 30000
    at = np.stack([rng.uniform(-5, 5, n), rng.uniform(4.2, 4.9, n), rng.uniform(-0.05, 3.6, n) ** 1.0], 1)
    at[:, 1] += 0.35 * (noise(at[:, 0] * 1.6, at[:, 2] * 1.6, 3) - 0.5)
    size = rng.uniform(0.06, 0.11, n)
    leaves(
        faces,
        at,
        around(rng, n) + np.array([0, -0.5, 0.2]),
        unit(around(rng, n) + np.array([-0.3, -1.2, 0.8])),
        size,
        size * 0.6,
        tinted(rng, [srgb(34, 52, 28), srgb(54, 76, 36), srgb(78, 98, 46)], n, 0.2),
    )


EARTH = [srgb(70, 54, 42), srgb(92, 72, 56), srgb(54, 43, 36), srgb(112, 90, 70)]
CHIPS = [srgb(118, 90, 64), srgb(84, 62, 46), srgb(146, 116, 84)]


def soil(faces: Faces, rng: np.random.Generator, reach: tuple[float, float, float, float], n: int) -> None:
    """Add worked soil with clods and a scatter of bark, between left, right, near and far."""
    left, right, near, far = reach
    slab(
        faces,
        np.array([left, near, -0.015]),
        np.array([right - left, 0, 0]),
        np.array([0, far - near, 0]),
        srgb(58, 45, 36),
        cut=(60, 30),
    )
    at = np.stack([rng.uniform(left, right, n), rng.uniform(near, far, n), np.zeros(n)], 1)
    at[:, 2] = 0.045 * (clouds(at[:, 0] * 3, at[:, 1] * 3, 3, 6) - 0.55) + rng.uniform(-0.006, 0.004, n)
    stones(
        faces,
        rng,
        at,
        0.0042 * np.clip(rng.lognormal(0, 0.55, n), 0, 2.6),
        tinted(rng, EARTH, n, 0.22),
        flat=1.3,
        gloss=0.0,
    )
    m = n // 40
    at = np.stack([rng.uniform(left, right, m), rng.uniform(near, far, m), rng.uniform(0.004, 0.016, m)], 1)
    size = rng.uniform(0.012, 0.034, m)
    leaves(
        faces,
        at,
        around(rng, m) * [1, 1, 0.3],
        unit(UP + 0.5 * around(rng, m)),
        size,
        size * rng.uniform(0.25, 0.5, m),
        tinted(rng, CHIPS, m, 0.2),
        gloss=0.02,
    )


def blades(
    faces: Faces, rng: np.random.Generator, foot: A, height: A, width: A, lean: A, colour: A, *, tip: float = 0.12
) -> None:
    """Add blades of grass in three joints, thinner and more bent towards the tip; `tip` is the width left there."""
    n = len(foot)
    side = unit(np.cross(lean + 0.9 * around(rng, n) * [1, 1, 0], UP))
    bend = rng.uniform(0.25, 1.0, n)
    marks = (0.0, 0.4, 0.75, 1.0)
    wide = (0.85, 1.0, 0.72, tip)

    def at(t: float) -> A:
        rise = UP * (height * t * (1 - 0.25 * bend * t))[:, None]
        place: A = foot + rise + lean * (height * bend * 0.75 * t**1.8)[:, None]
        return place

    for k in range(3):
        a, b = at(marks[k]), at(marks[k + 1])
        u, v = side * (width * wide[k] / 2)[:, None], side * (width * wide[k + 1] / 2)[:, None]
        corners = np.stack([a - u, a + u, b + v, b - v], 1)
        tone = (0.62, 0.92, 1.12)[k]
        faces.add(
            BLADE,
            corners,
            np.cross(side, b - a),
            (b - a) / 2,
            side * (width / 2)[:, None],
            colour * tone,
            gloss=0.3,
            group=np.arange(n) - k * n,
        )


def fence(faces: Faces, rng: np.random.Generator, y: float, left: float, right: float, top: float) -> None:
    """Add a fence of level boards with nails, weathered, facing the eye."""
    slab(
        faces, np.array([left, y + 0.03, 0.0]), np.array([right - left, 0, 0]), np.array([0, 0, top]), srgb(26, 24, 22)
    )
    for k in range(int(top / 0.128)):
        tone = tinted(rng, [srgb(134, 122, 108), srgb(112, 102, 92), srgb(148, 136, 122)], 1, 0.1)
        z = 0.05 + 0.128 * k
        corner = np.array([left, y + rng.normal(0, 0.002), z])
        slab(
            faces,
            corner,
            np.array([right - left, 0, rng.normal(0, 0.0015)]),
            np.array([0, 0.004, 0.121]),
            tone,
            kind=BOARD,
            cut=(50, 2),
            back=20.0,
        )
        posts = np.arange(left + 0.3, right, 0.9).repeat(2)
        high = np.tile([0.03, 0.088], len(posts) // 2)
        at = np.stack([posts + rng.normal(0, 0.003, len(posts)), np.full(len(posts), y - 0.003), z + high], 1)
        studs(faces, at, np.array([0.0, -1.0, 0.0]), np.full(len(at), 0.0042), srgb(70, 66, 62), gloss=0.2)


def studs(faces: Faces, at: A, facing: A, radius: A, colour: A, *, gloss: float = 0.4, back: float = 0.0) -> None:
    """Add round things that face one way: nail heads, and fruit turned to the eye."""
    n = len(at)
    normal = unit(np.broadcast_to(facing, (n, 3)))
    u = unit(np.cross(normal, UP + 0.01))
    v = np.cross(normal, u)
    for turn in (0, np.pi):
        angle = turn + np.arange(6) * np.pi / 5
        ring = (u[:, None] * np.cos(angle)[None, :, None] + v[:, None] * np.sin(angle)[None, :, None]) * radius[
            :, None, None
        ]
        faces.add(
            DOME,
            at[:, None] + ring,
            normal,
            u * radius[:, None],
            v * radius[:, None],
            colour,
            centre=at,
            gloss=gloss,
            back=back,
            group=np.arange(n) - (n if turn else 0),
        )


def bricks(faces: Faces, rng: np.random.Generator, left: float, right: float, top: float) -> None:
    """Add an old brick wall in stretcher bond on the plane y = 0."""
    slab(
        faces,
        np.array([left, 0.006, -0.1]),
        np.array([right - left, 0, 0]),
        np.array([0, 0, top + 0.1]),
        srgb(150, 142, 128),
        cut=(60, 60),
    )
    shades = [
        srgb(138, 108, 94),
        srgb(126, 96, 84),
        srgb(146, 116, 100),
        srgb(118, 96, 88),
        srgb(154, 130, 114),
        srgb(132, 102, 90),
    ]
    for row in range(int((top + 0.1) / 0.075)):
        for x in np.arange(left - 0.1125 * (row % 2), right, 0.225):
            z, slope = -0.1 + row * 0.075, rng.normal(0, 0.012, 2)
            corner = np.array([x + rng.normal(0, 0.0015), rng.normal(0, 0.0015), z + rng.normal(0, 0.0012)])
            u, v = np.array([0.214, slope[0] * 0.2, 0.0]), np.array([0.0, slope[1] * 0.06, 0.064])
            slab(faces, corner, u, v, tinted(rng, shades, 1, 0.12), cut=(6, 2), back=20.0)
