"""Opened cuts: the toasted skin beside them, the dark edge, the cream crumb, and their depth."""

import math
from collections.abc import Iterator, Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.drawing.bloom.bread import (
    CRUMB,
    EDGE,
    GLEAM,
    TOAST,
    lit,
    on_ramp,
)
from scorecraft.drawing.bloom.eye import LIGHT, Eye
from scorecraft.drawing.bloom.lens import Lens, crossings
from scorecraft.drawing.picture import Item, Layer, Shape

TOASTING = ((1.0, 0.2), (0.8, 0.2), (0.6, 0.22), (0.4, 0.26), (0.22, 0.34))
"""Layers of browned skin: how far each reaches, of the whole, and its opacity."""
FINE_MM = 2.5
"""Openings finer than this need only every other layer."""
CRUMB_SOFT = 0.4
"""Crumb lets light through: it shows only so much of the shades."""
LEAST_BAND_MM = 0.08
"""A shadow or gleam narrower than this is left out."""
GLEAM_FROM_MM = 0.35
EDGE_MM = 0.3
"""Width of the dark edge around an opening, outside of it."""


def toasted(eye: Eye, opened: Sequence[Lens]) -> Layer:
    """Brown the skin beside the cuts, where it has parted and let go of its flour."""
    items: list[Item] = []
    for number, (reach, opacity) in enumerate(TOASTING):
        for lens in opened:
            if number % 2 and lens.widest < FINE_MM:
                continue
            out = reach * (0.35 + 0.26 * np.minimum(2 * lens.half, 14.0))
            rings = eye.rings(lens.area(out))
            items += _filled(rings, on_ramp(TOAST, reach), opacity, "toast")
    return Layer("toast", tuple(items))


def edges(eye: Eye, opened: Sequence[Lens]) -> Layer:
    """Draw the caramelised edge of every opening."""
    items: list[Item] = []
    for lens in opened:
        out = EDGE_MM * (0.5 + np.minimum(lens.half / 3.0, 1.2))
        items += _filled(eye.rings(lens.area(out)), EDGE, 0.92, "edge")
    return Layer("edges", tuple(items))


def crumb(eye: Eye, opened: Sequence[Lens], titles: Sequence[str]) -> Layer:
    """Fill the openings: the first layer of each is the opening itself, with its cut's number."""
    items: list[Item] = []
    for depth, color in CRUMB:
        for lens in opened:
            rings = eye.rings(lens.area(-depth))
            if not rings:
                continue
            shown = lit(color, 1 + CRUMB_SOFT * (_shade(eye, lens) - 1))
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
    return Layer("openings", tuple(items))


def _shade(eye: Eye, lens: Lens) -> float:
    return float(np.clip(eye.shade(lens.middle).mean(), 0.0, 1.1))


def _filled(rings: list[Line], color: str, opacity: float, css: str) -> Iterator[Item]:
    if rings:
        yield Shape(tuple(rings), closed=True, fill=color, fill_opacity=opacity, css=css)


def depth(eye: Eye, opened: Sequence[Lens]) -> Layer:
    """Let the raised edges cast shadow into the openings and catch the light beyond them."""
    items: list[Item] = []
    taken = crossings(opened)
    for lens in opened:
        gone = taken.get(lens.cut)
        for way in (1, -1):
            facing = towards_light(eye, lens, way)
            dark = np.clip(facing, 0, 1) * np.minimum(0.42 * lens.half, 1.8)
            bright = np.clip(-facing, 0, 1) * np.minimum(0.1 + 0.1 * lens.half, 0.7)
            for part, opacity in ((1.0, 0.22), (0.5, 0.3)):
                if dark.max() * part > LEAST_BAND_MM:
                    area = lens.band(way, 0.0, -dark * part, gone)
                    items += _filled(eye.rings(area), EDGE, opacity, "inside-shadow")
            if bright.max() > LEAST_BAND_MM:
                area = lens.band(way, GLEAM_FROM_MM, GLEAM_FROM_MM + bright, gone)
                items += _filled(eye.rings(area), GLEAM, 0.4, "gleam")
    return Layer("depth", tuple(items))


def towards_light(eye: Eye, lens: Lens, way: int) -> np.ndarray:
    """Cosine between the outward direction of a side and the light, on the paper (N,)."""
    start = eye.flat(lens.middle)
    aside = eye.flat(lens.middle + way * 0.1 * lens.left) - start
    aside /= np.maximum(np.hypot(*aside.T), 1e-9)[:, None]
    return np.asarray(aside @ (LIGHT[:2] / math.hypot(*LIGHT[:2])))
