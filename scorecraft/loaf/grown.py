"""The loaf after the bake: what is free grows up and out, a ring closes in, a tin holds."""

import math
from dataclasses import replace

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.loaf.crest import Crest
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.outline import TRACED_SAMPLES, Outline
from scorecraft.practice import RING_RUNS, TIN_SIDES

CLOSED_MM = 1.0
"""Radius of a hole that the dough has closed."""


def grown(loaf: Loaf, sideways: float, upward: float) -> Loaf:
    """Grow a loaf by a ratio of level lengths and one of heights.

    The volume grows by sideways^2 x upward, whatever the form.
    """
    if loaf.held is not None:
        return _risen(loaf, sideways, upward)
    height = loaf.height_mm * upward
    if loaf.hole is None:
        return Loaf(loaf.outline.scaled(sideways), height, loaf.profile)
    outer, hole = _ring(loaf.outline, loaf.hole, sideways)
    return Loaf(outer, height, loaf.profile, hole)


def carried(here: Loaf, there: Loaf, plan: Floats) -> Floats:
    """Carry plan points (..., 2) mm of a loaf to where they are on it before or after it grows.

    Each keeps its share of the way from crown to rim, and on a ring from its crest.
    """
    if here.hole is None and here.held is None:
        return np.asarray(plan * (there.width_mm / here.width_mm))
    theta = np.arctan2(plan[..., 1], plan[..., 0])
    across = np.hypot(plan[..., 0], plan[..., 1])
    middle, half = Crest(here.outline, here.hole).on_plan(theta)
    other, wide = Crest(there.outline, there.hole).on_plan(theta)
    moved = other + (across - middle) / half * wide
    return np.asarray(plan * (moved / np.maximum(across, 1e-9))[..., None])


def _risen(loaf: Loaf, sideways: float, upward: float) -> Loaf:
    """Let dough rise in its tin: along as far as there is room, up the sides and in the crown."""
    assert loaf.held is not None
    longer = max(1.0, min(sideways, loaf.held.length_mm / loaf.length_mm))
    level = loaf.volume_mm3 / loaf.plan_area_mm2
    full = (level - loaf.wall_mm) / loaf.crown_mm  # mean height of the crown over its height
    risen = level * sideways**2 * upward / longer
    top = max(loaf.held.depth_mm, loaf.wall_mm)
    wall = min(loaf.wall_mm + TIN_SIDES.value * max(risen - level, 0.0), top)
    outline = replace(loaf.outline, b_mm=longer * loaf.outline.b_mm)
    height = wall + (risen - wall) / full
    return Loaf(outline, height, loaf.profile, None, replace(loaf.held, wall_mm=wall))


def _ring(outer: Outline, hole: Outline, sideways: float) -> tuple[Outline, Outline]:
    """Grow a ring about its crest: longer by a part of the growth, broader by the rest."""
    theta = np.asarray(np.arange(TRACED_SAMPLES) * (math.tau / TRACED_SAMPLES), dtype=np.float64)
    middle, half = Crest(outer, hole).on_plan(theta)
    longer = sideways**RING_RUNS.value
    middle, half = longer * middle, sideways**2 / longer * half
    inner: Floats = np.maximum(middle - half, CLOSED_MM)
    return _sampled(outer.shape, theta, middle + half), _sampled(hole.shape, theta, inner)


def _sampled(shape: str, theta: Floats, radius: Floats) -> Outline:
    across, away = np.ptp(radius * np.cos(theta)), np.ptp(radius * np.sin(theta))
    return Outline(shape, float(across) / 2, float(away) / 2, samples=tuple(radius.tolist()))
