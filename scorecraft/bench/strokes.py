"""What the hand must know of every cut, and how much care it takes at each turn of the table.

The table's angle counts clockwise: at the angle tau a direction theta of the plan is seen by the
cutter, who stands at 6 o'clock, as theta - tau.
"""

import math

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints
from scorecraft.bench.clock import stroke_seconds
from scorecraft.cuts import Bench, Layout
from scorecraft.frozen import dataclass, fields
from scorecraft.loaf.dome import Loaf
from scorecraft.practice import DEEP_SIGHT_POWER, EYE_DEG, PULL_COST, SPUN_FROM_DEG

LEAST_SIGHT = 0.25
"""Least share of its true size that a slope seen aslant counts with."""
PUSH_COST = 0.02
"""Care added where a stroke goes against its drawn direction."""
TOWARD_RAD = -math.pi / 2
"""The direction toward the cutter."""
NEAR = 1e-3
"""Share of a cut's length to either side of its middle that gives its direction there."""
STRAIGHT_FROM = 0.35
"""A cut whose ends are nearer than this share of its length has no direction of its own."""
MANY_CUTS = 2000
"""Above so many cuts table angles are tried at coarser steps."""


@dataclass(frozen=True, slots=True)
class Strokes:
    """Facts of all cuts, one row each: mm on the plan, radians, seconds.

    `chord` (C, 2) runs from start to end and `straight` (C,) is its share of the length;
    `middle` (C, 2) is half way along, `tangent` (C, 3) and `normal` (C, 3) are unit vectors of
    the dome there; `winding` (C,) is the turn about the crown, counter-clockwise.
    """

    length: Floats
    chord: Floats
    straight: Floats
    middle: Floats
    tangent: Floats
    normal: Floats
    winding: Floats
    seconds: Floats
    deep: Flags

    @property
    def spun(self) -> Flags:
        """Which cuts are made by turning the table under the blade; one answer a cut, (N,)."""
        return np.asarray(np.abs(self.winding) >= math.radians(SPUN_FROM_DEG.value))

    def rows(self, rows: Ints) -> "Strokes":
        """Take some of the cuts."""
        return Strokes(*(getattr(self, each.name)[rows] for each in fields(self)))


def strokes(layout: Layout) -> Strokes:
    """Measure every cut of a layout in one pass."""
    cuts, loaf = layout.cuts, layout.loaf
    owner = np.repeat(np.arange(len(cuts)), [len(cut.line) for cut in cuts])
    sheet = np.concatenate([cut.line for cut in cuts])
    plan = loaf.sheet_to_plan(sheet)
    last = np.cumsum([len(cut.line) for cut in cuts]) - 1
    first = np.concatenate([[0], last[:-1] + 1])
    chord = plan[last] - plan[first]
    for k in (k for k, cut in enumerate(cuts) if cut.hinge_mm is not None):
        chord[k] = _scissors(plan[first[k] : last[k] + 1])
    within = owner[1:] == owner[:-1]  # no step leads from one cut to the next
    flat = np.bincount(owner[1:], np.hypot(*np.diff(plan, axis=0).T) * within, len(cuts))
    straight = np.minimum(np.hypot(*chord.T) / np.maximum(flat, 1e-9), 1.0)
    middle, tangent, normal = _middles(sheet, owner, loaf)
    length = layout.lengths_mm
    deep = np.array([cut.kind == "expansion" for cut in cuts])
    turns = _wrapped(np.diff(np.arctan2(plan[:, 1], plan[:, 0])))
    winding = np.bincount(owner[1:], turns * within, len(cuts)).astype(np.float64)
    seconds = stroke_seconds(length, deep)
    return Strokes(length, chord, straight, middle, tangent, normal, winding, seconds, deep)


def _scissors(plan: Floats) -> Floats:
    """Give the way toward the hand that holds the scissors: they point away from the cutter."""
    way = plan[len(plan) // 2] - (plan[0] + plan[-1]) / 2
    long = np.hypot(*np.diff(plan, axis=0).T).sum()
    return np.asarray(way * (long / max(float(np.hypot(*way)), 1e-9)))


def _middles(sheet: Floats, owner: Ints, loaf: Loaf) -> tuple[Floats, Floats, Floats]:
    """Find the plan point half way along each cut, and the dome's tangent and normal there."""
    lines = shapely.linestrings(sheet, indices=owner)
    before, at, after = (
        loaf.sheet_to_plan(
            shapely.get_coordinates(shapely.line_interpolate_point(lines, share, normalized=True))
        )
        for share in (0.5 - NEAR, 0.5, 0.5 + NEAR)
    )
    tangent = loaf.surface(after) - loaf.surface(before)
    tangent /= np.maximum(np.linalg.norm(tangent, axis=1, keepdims=True), 1e-12)
    return at, tangent, loaf.normal(at)


def table_angles(count: int, way: int) -> Floats:
    """List the table angles (radians) to try for so many cuts: every degree, or every fifth.

    They are listed the usual way round, so that a left hand's plan is a right hand's in a mirror.
    """
    step = 1 if count <= MANY_CUTS else 5
    return np.radians((way * np.arange(0, 360, step)) % 360)


def care(made: Strokes, angles: Floats) -> Floats:
    """Weigh every cut at every table angle: its seconds times how awkward it lies (C, A).

    A stroke lies well when it is pulled toward the cutter and the dough there faces the eye, a deep
    one all the more.
    """
    theta = np.arctan2(made.chord[:, 1], made.chord[:, 0])
    off = _wrapped(theta[:, None] - angles - TOWARD_RAD)
    backward = np.abs(off) > math.pi / 2
    askew = np.where(backward, math.pi - np.abs(off), np.abs(off)) / (math.pi / 2)
    aims = np.where(made.straight < STRAIGHT_FROM, 0.0, made.straight)
    cost = np.where(made.deep, PULL_COST["expansion"].value, PULL_COST["decorative"].value)
    awkward = 1.0 + (cost * aims)[:, None] * askew**2 + PUSH_COST * backward
    seen = sight(made.normal, angles)
    seen = np.where(made.deep[:, None], seen**DEEP_SIGHT_POWER.value, seen)
    return np.asarray(made.seconds[:, None] * awkward / seen)


def sight(normal: Floats, angles: Floats) -> Floats:
    """Share of its true size that the dough shows the cutter's eye at each table angle.

    It lies between 0 and 1.
    """
    eye = math.radians(EYE_DEG.value)
    level = np.hypot(normal[:, 0], normal[:, 1])
    theta = np.arctan2(normal[:, 1], normal[:, 0])
    away = level[:, None] * np.sin(theta[:, None] - angles)
    shown = normal[:, 2, None] * math.sin(eye) - away * math.cos(eye)
    return np.asarray(np.maximum(shown, LEAST_SIGHT))


def backward(made: Strokes, cuts: Ints, bench: Bench, table_rad: float) -> Flags:
    """Tell which cuts are pulled against their drawn direction at a table angle.

    The angle is in radians; there is one answer a cut, (N,).
    """
    theta = np.arctan2(made.chord[cuts, 1], made.chord[cuts, 0])
    off = np.abs(_wrapped(theta - table_rad - bench.drift_rad))
    aimless = made.straight[cuts] < STRAIGHT_FROM
    return np.asarray(np.where(aimless, False, off > math.pi / 2 + 1e-9))


def _wrapped(angle: Floats) -> Floats:
    """Bring angles to [-pi, pi)."""
    return np.asarray((angle + math.pi) % math.tau - math.pi)
