"""Ears: the lip that lifts on one side of a slanted cut, burnt at its edge."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.cuts import Cut, Layout
from scorecraft.drawing.bloom.bread import EDGE, GLEAM, LIP, SWELLING, lit, on_ramp
from scorecraft.drawing.bloom.crumb import towards_light
from scorecraft.drawing.bloom.eye import Eye
from scorecraft.drawing.bloom.lens import Lens, crossings
from scorecraft.drawing.picture import Item, Layer, Shape
from scorecraft.opening.lip import rising_side as ear_side
from scorecraft.practice import EAR_BLADE_DEG, EAR_OPENING_MM

LIP_STEPS = 7
SWELLINGS = ((2.3, 0.1), (1.95, 0.12), (1.6, 0.14), (1.3, 0.18))
"""Soft layers behind the lip: how far back each reaches, of the lip's width, and its opacity."""


@dataclass(frozen=True, slots=True, eq=False)
class Strip:
    """A band along an edge: from `inner` to `outer` mm outside of it, and its look."""

    inner: Floats | float
    outer: Floats | float
    color: str
    opacity: float
    css: str


def has_ear(cut: Cut, lens: Lens) -> bool:
    """Tell whether a cut lifts an ear: slanted enough, and open enough."""
    return math.degrees(cut.blade_rad) < EAR_BLADE_DEG.value and lens.widest > EAR_OPENING_MM.value


def ears(eye: Eye, layout: Layout, opened: Sequence[Lens], rng: np.random.Generator) -> Layer:
    """Draw the ears of a layout, each as a group with its cut's number."""
    items: list[Item] = []
    taken = crossings(opened)
    for lens in opened:
        cut = layout.cuts[lens.cut]
        if has_ear(cut, lens):
            items.append(_ear(eye, lens, ear_side(cut), taken.get(lens.cut), rng))
    return Layer("ears", tuple(items))


def _ear(
    eye: Eye, lens: Lens, way: int, gone: shapely.Geometry | None, rng: np.random.Generator
) -> Layer:
    """Draw one ear from its back to its free edge: shadow, swelling, lip and gleam."""
    lift, edge = _lift(lens), _torn(lens, rng)
    facing = towards_light(eye, lens, way)
    shade = float(np.clip(eye.shade(lens.middle).mean(), 0.6, 1.1))
    strips: list[Strip] = []
    reach = np.clip(0.35 + 0.65 * facing, 0.15, 1) * np.minimum(0.55 * lens.half, 4.0)
    strips += [Strip(-reach * part, 0.0, EDGE, 0.24, "ear-shadow") for part in (1.0, 0.7, 0.4)]
    strips += [
        Strip(0.0, lift * back, SWELLING, opacity, "swelling") for back, opacity in SWELLINGS
    ]
    for part in np.linspace(1.0, 0.2, LIP_STEPS).tolist():
        torn = lift * part * (1 + edge * (1.1 - part))
        strips.append(Strip(0.0, torn, lit(on_ramp(LIP, part), shade), 0.9 - 0.55 * part, "lip"))
    bright = 0.5 + 0.12 * np.clip(-facing, 0.0, 1) + 0.25 * edge
    strips.append(Strip(lift * 0.46, lift * bright, GLEAM, 0.5, "gleam"))
    items = [
        Shape(tuple(rings), closed=True, fill=each.color, fill_opacity=each.opacity, css=each.css)
        for each in strips
        if (rings := eye.rings(lens.band(way, each.inner, each.outer, gone)))
    ]
    return Layer("ear", tuple(items), css="ear", data={"cut": str(lens.cut)})


def _lift(lens: Lens) -> np.ndarray:
    """Width of the lip (N,): fuller where the cut is wider."""
    return np.asarray(np.minimum(0.36 * lens.half, 4.6) + np.minimum(0.6 * lens.half, 0.8))


def _torn(lens: Lens, rng: np.random.Generator) -> np.ndarray:
    """How the burnt edge wanders along the lip (N,), as a part of its width."""
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(lens.middle, axis=0).T))])
    waves = sum(
        rng.normal(0, 0.2) / (1 + k / 4) * np.sin(gone * k / 12 + rng.uniform(0, math.tau))
        for k in range(1, 22)
    )
    return np.asarray(np.clip(waves, -0.5, 0.7))
