"""Ears: the lip that lifts on one side of a slanted cut, burnt at its edge."""

import math
from collections.abc import Sequence

import numpy as np

from scorecraft.cuts import Cut, Layout
from scorecraft.drawing.bloom_lens import Lens, sound_ring
from scorecraft.drawing.bread import GLEAM, LIP, SHADOW, lit, on_ramp
from scorecraft.drawing.eye import LIGHT, Eye
from scorecraft.drawing.picture import Group, Item, Shape
from scorecraft.practice import EAR_BLADE_DEG, EAR_OPENING_MM


def ear_side(cut: Cut) -> int:
    """Tell on which side of the stroke the flap lies: +1 left, -1 right.

    The blade leans in under the crown's side of the cut, so that is the side that lifts; a cut
    through the crown lifts on the left of the stroke.
    """
    middle = cut.line.mean(axis=0)
    along = cut.line[-1] - cut.line[0]
    crown = float(along[0] * -middle[1] - along[1] * -middle[0])
    return -1 if crown < -1e-6 * float(np.hypot(*along)) else 1


def has_ear(cut: Cut, lens: Lens) -> bool:
    """Tell whether a cut lifts an ear: slanted enough, and open enough."""
    return (
        math.degrees(cut.blade_rad) < EAR_BLADE_DEG.value
        and lens.widest > EAR_OPENING_MM.value
    )


def ears(eye: Eye, layout: Layout, opened: Sequence[Lens], rng: np.random.Generator) -> Group:
    """Draw the ears of a layout, each as a group with its cut's number."""
    items: list[Item] = []
    for lens in opened:
        cut = layout.cuts[lens.cut]
        if has_ear(cut, lens):
            items.append(_ear(eye, lens, ear_side(cut), rng))
    return Group("ears", tuple(items))


def _ear(eye: Eye, lens: Lens, way: int, rng: np.random.Generator) -> Group:
    """Draw one ear from its back to its free edge: swelling, lip, gleam and shadow."""
    lift = _lift(lens, rng)
    facing = _facing(eye, lens, way)
    items: list[Item] = []
    items += _cast(eye, lens, way, lift, facing)
    for back, opacity in ((1.5, 0.16), (1.2, 0.2)):
        items += _strip(eye, lens, way, 0.0 * lift, lift * back, SHADOW, opacity, "swelling")
    shade = float(np.clip(eye.shade(lens.middle).mean(), 0.6, 1.1))
    for part in np.linspace(1.0, 0.12, 8):
        depth = part * float(lift.max())
        color = lit(on_ramp(LIP, depth * 0.55), shade)
        items += _strip(eye, lens, way, 0.0 * lift, lift * part, color, 0.85, "lip")
    items += _strip(eye, lens, way, lift * 0.5, lift * 0.82, GLEAM, 0.22, "gleam")
    return Group("ear", tuple(items), css="ear", data={"cut": str(lens.cut)})


def _lift(lens: Lens, rng: np.random.Generator) -> np.ndarray:
    """Width of the lip (N,): fuller where the cut is wider, a little ragged."""
    share = np.linspace(0, math.tau, len(lens.half))
    ragged = sum(
        rng.normal(0, 0.05) * np.sin(k * share + rng.uniform(0, math.tau)) for k in range(3, 14)
    )
    full = np.minimum(0.28 * lens.half, 3.2) + np.minimum(0.5 * lens.half, 0.5)
    return np.asarray(full * (1 + ragged))


def _facing(eye: Eye, lens: Lens, way: int) -> np.ndarray:
    start = eye.flat(lens.middle)
    aside = eye.flat(lens.middle + way * 0.1 * lens.left) - start
    aside /= np.maximum(np.hypot(*aside.T), 1e-9)[:, None]
    return np.asarray(aside @ (LIGHT[:2] / math.hypot(*LIGHT[:2])))


def _cast(eye: Eye, lens: Lens, way: int, lift: np.ndarray, facing: np.ndarray) -> list[Item]:
    """Let the lip cast its shadow: into the opening if it stands on the light's side."""
    items: list[Item] = []
    for part in (1.0, 0.7, 0.4):
        inward = -np.clip(0.35 + 0.65 * facing, 0.15, 1) * np.minimum(0.55 * lens.half, 4.0) * part
        items += _strip(eye, lens, way, inward, 0.0 * lift, "#3a1d0b", 0.2, "ear-shadow")
    return items


def _strip(
    eye: Eye, lens: Lens, way: int, inner: np.ndarray, outer: np.ndarray, color: str,
    opacity: float, css: str,
) -> list[Item]:  # fmt: skip
    rings = eye.rings(sound_ring(lens.side(way, inner), lens.side(way, outer)))
    if not rings:
        return []
    return [Shape(tuple(rings), closed=True, fill=color, fill_opacity=opacity, css=css)]
