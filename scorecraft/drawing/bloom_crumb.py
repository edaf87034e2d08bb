"""The inside of opened cuts: a browned edge, cream crumb, strands and pores, and depth."""

import math
from collections.abc import Iterator, Sequence

import numpy as np

from scorecraft.drawing.bloom_lens import Lens, sound_ring
from scorecraft.drawing.bread import (
    CREASE,
    CRUMB,
    EDGE,
    GLEAM,
    PORE,
    PORE_DEEP,
    STRAND,
    TOAST,
    lit,
)
from scorecraft.drawing.eye import LIGHT, Eye
from scorecraft.drawing.picture import Group, Ink, Item, Line, Shape

EDGE_MM = 0.3
"""Width of the dark edge around an opening, outside of it."""
WIDE_MM = 4.0
"""Openings wider than this show strands and pores."""
PER_PATH = 120


def toasted(eye: Eye, opened: Sequence[Lens]) -> Group:
    """Brown the skin beside the cuts, where it has parted and let go of its flour."""
    items: list[Item] = []
    for reach, opacity in ((1.0, 0.16), (0.72, 0.2), (0.46, 0.26), (0.24, 0.34)):
        for lens in opened:
            out = reach * (0.35 + 0.26 * np.minimum(2 * lens.half, 14.0))
            rings = eye.rings(lens.ring(out))
            items += _filled(rings, TOAST, opacity, "toast")
    return Group("toast", tuple(items))


def edges(eye: Eye, opened: Sequence[Lens]) -> Group:
    """Draw the caramelised edge of every opening."""
    items: list[Item] = []
    for lens in opened:
        out = EDGE_MM * (0.5 + np.minimum(lens.half / 3.0, 1.2))
        items += _filled(eye.rings(lens.ring(out)), EDGE, 0.92, "edge")
    return Group("edges", tuple(items))


def crumb(eye: Eye, opened: Sequence[Lens], titles: Sequence[str]) -> Group:
    """Fill the openings: the first layer of each is the opening itself, with its cut's number."""
    items: list[Item] = []
    for depth, color in CRUMB:
        for lens in opened:
            rings = eye.rings(lens.ring(-depth))
            if not rings:
                continue
            shown = lit(color, 0.35 + 0.65 * _shade(eye, lens))
            whole = depth == 0
            items.append(
                Shape(
                    tuple(rings),
                    closed=True,
                    fill=shown,
                    css="opening" if whole else "crumb",
                    data={"cut": str(lens.cut)} if whole else {},
                    title=titles[lens.cut] if whole else "",
                )
            )
    return Group("openings", tuple(items))


def _shade(eye: Eye, lens: Lens) -> float:
    return float(np.clip(eye.shade(lens.middle).mean(), 0.0, 1.1))


def _filled(rings: list[Line], color: str, opacity: float, css: str) -> Iterator[Item]:
    if rings:
        yield Shape(tuple(rings), closed=True, fill=color, fill_opacity=opacity, css=css)


def depth(eye: Eye, opened: Sequence[Lens]) -> Group:
    """Let the raised edges cast shadow into the openings and catch the light beyond them."""
    items: list[Item] = []
    for lens in opened:
        for way in (1, -1):
            facing = _towards_light(eye, lens, way)
            dark = np.clip(facing, 0, 1) * np.minimum(0.42 * lens.half, 1.8)
            bright = np.clip(-facing, 0, 1) * np.minimum(0.1 + 0.1 * lens.half, 0.7)
            for part, opacity in ((1.0, 0.22), (0.5, 0.3)):
                items += _band(eye, lens, way, -dark * part, EDGE, opacity, "inside-shadow")
            items += _band(eye, lens, way, 0.35 + bright, GLEAM, 0.4, "gleam", from_out=0.35)
    return Group("depth", tuple(items))


def _towards_light(eye: Eye, lens: Lens, way: int) -> np.ndarray:
    """Cosine between the outward direction of a side and the light, on the paper (N,)."""
    start = eye.flat(lens.middle)
    aside = eye.flat(lens.middle + way * 0.1 * lens.left) - start
    aside /= np.maximum(np.hypot(*aside.T), 1e-9)[:, None]
    return np.asarray(aside @ (LIGHT[:2] / math.hypot(*LIGHT[:2])))


def _band(
    eye: Eye, lens: Lens, way: int, out: np.ndarray, color: str, opacity: float, css: str,
    from_out: float = 0.0,
) -> Iterator[Item]:  # fmt: skip
    """Fill between an edge and the same edge moved out or in."""
    if np.abs(out - from_out).max() < 0.08:
        return
    edge, moved = lens.side(way, from_out), lens.side(way, out)
    yield from _filled(eye.rings(sound_ring(edge, moved)), color, opacity, css)


def texture(eye: Eye, opened: Sequence[Lens], rng: np.random.Generator) -> Group:
    """Draw the strands that tear as a cut opens, and the open pores of the crumb."""
    light: list[Line] = []
    dark: list[Line] = []
    pores: list[Line] = []
    deep: list[Line] = []
    for lens in opened:
        if lens.widest > WIDE_MM:
            light += _strands(lens, rng, 1.3)
            dark += _strands(lens, rng, 0.9)
            made = _pores(lens, rng)
            pores += made
            deep += [_shrunk(each, 0.6) for each in made]
    items: list[Item] = []
    items += _stroked(eye.lines(dark), Ink(0.28 * eye.scale, CREASE, opacity=0.3), "crease")
    items += _stroked(eye.lines(light), Ink(0.34 * eye.scale, STRAND, opacity=0.36), "strand")
    items += _filled(eye.rings(pores), PORE, 0.6, "pore")
    items += _filled(eye.rings(deep), PORE_DEEP, 0.55, "pore")
    return Group("texture", tuple(items))


def _stroked(lines: list[Line], ink: Ink, css: str) -> Iterator[Item]:
    for first in range(0, len(lines), PER_PATH):
        yield Shape(tuple(lines[first : first + PER_PATH]), ink=ink, css=css)


def _strands(lens: Lens, rng: np.random.Generator, per_mm: float) -> list[Line]:
    """Short curved lines across the opening, leaning a little, none of them from edge to edge."""
    run = np.hypot(*np.diff(lens.middle, axis=0).T)
    gone = np.concatenate([[0.0], np.cumsum(run)])
    count = int(gone[-1] * per_mm)
    made = []
    for at in rng.uniform(0.03, 0.97, count) * gone[-1]:
        half = float(np.interp(at, gone, lens.half))
        if half < 1.2:
            continue
        start = rng.uniform(-0.92, 0.5)
        end = min(start + rng.uniform(0.3, 1.3), 0.92)
        across = np.linspace(start, end, 4)
        lean = rng.normal(0, 0.14) * half
        bow = rng.normal(0, 0.08) * half
        along = at + lean * across + bow * np.sin(np.linspace(0, math.pi, 4))
        made.append(_inside(lens, gone, along, across * half))
    return made


def _inside(lens: Lens, gone: np.ndarray, along: np.ndarray, aside: np.ndarray) -> Line:
    """Points at distances along a lens and mm to its left."""
    middle = np.column_stack([np.interp(along, gone, lens.middle[:, k]) for k in (0, 1)])
    left = np.column_stack([np.interp(along, gone, lens.left[:, k]) for k in (0, 1)])
    return np.asarray(middle + left * aside[:, None])


def _pores(lens: Lens, rng: np.random.Generator) -> list[Line]:
    """Irregular holes, more and larger towards the middle of a wide opening."""
    run = np.hypot(*np.diff(lens.middle, axis=0).T)
    gone = np.concatenate([[0.0], np.cumsum(run)])
    area = float((run * (lens.half[1:] + lens.half[:-1])).sum())
    angle = np.linspace(0, math.tau, 10)[:-1]
    made = []
    for at in rng.uniform(0.05, 0.95, int(area * 0.05)) * gone[-1]:
        half = float(np.interp(at, gone, lens.half))
        size = min(rng.gamma(2.0, 0.22) + 0.12, 0.3 * half)
        aside = rng.uniform(-0.72, 0.72) * half
        if half < 1.5:
            continue
        wobble = size * (1 + rng.normal(0, 0.16, len(angle)))
        long = rng.uniform(1.0, 2.1)
        made.append(_inside(lens, gone, at + wobble * np.cos(angle), aside + long * wobble * np.sin(angle)))
    return made


def _shrunk(ring: Line, scale: float) -> Line:
    middle = ring.mean(axis=0)
    return np.asarray(middle + (ring - middle) * scale + np.array([-0.05, 0.06]))
