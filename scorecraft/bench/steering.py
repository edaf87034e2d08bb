"""What it costs to go from one setting of the table to the next, in seconds."""

import math
from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Flags, Floats
from scorecraft.bench.clock import STILL_RAD, turn_seconds
from scorecraft.bench.settings import Setting
from scorecraft.practice import CHANGE_DEPTH_S, NEXT_FIGURE_S, SAME_BLADE_DEG, SAME_DEPTH_MM

TURN_BACK_COST = 1.3
"""A turn against the usual way counts so many times."""
SAME = np.array([SAME_DEPTH_MM.value, math.radians(SAME_BLADE_DEG.value)])
"""Depths (mm) and blade angles (radians) that differ by no more are not set anew."""


def turned(from_rad: Floats, to_rad: Floats, way: int) -> Floats:
    """Turn (radians, clockwise positive) that costs least: with the usual way, or back.

    The angles may have any shapes that go together.
    """
    ahead = (way * (to_rad - from_rad)) % math.tau
    ahead = np.where(math.tau - ahead < STILL_RAD, 0.0, ahead)
    back = math.tau - ahead
    shorter_back = TURN_BACK_COST * back < ahead
    return np.asarray(way * np.where(shorter_back, -back, ahead))


def turn_cost(turn_rad: Floats, way: int) -> Floats:
    """Cost of turning: its time, dearer against the usual way.

    Radians in, seconds out, any shape.
    """
    against = way * turn_rad < 0
    return turn_seconds(np.where(against, TURN_BACK_COST * turn_rad, turn_rad))


def entering(settings: Sequence[Setting], start_rad: float, way: int) -> Floats:
    """Cost (S,) of starting at each state (setting and choice, flattened) from a table angle."""
    angles = np.concatenate([each.choices for each in settings])
    extra = np.concatenate([each.extra for each in settings])
    turn = turned(np.full(len(angles), start_rad), angles, way)
    return np.asarray(turn_cost(turn, way) + extra)


def crossing(before: Sequence[Setting], after: Sequence[Setting], way: int) -> Floats:
    """Cost (S, S') of going from each state of some settings to each of others; in seconds."""
    leave = np.concatenate([each.choices + each.spin_rad for each in before])
    reach = np.concatenate([each.choices for each in after])
    extra = np.concatenate([each.extra for each in after])
    turn = turned(leave[:, None], reach, way)
    other = _strange([each.families for each in before], [each.families for each in after])
    change = _changed([each.last for each in before], [each.first for each in after])
    plain = NEXT_FIGURE_S.value * other + CHANGE_DEPTH_S.value * change
    widths = len(before[0].choices), len(after[0].choices)
    spread = np.repeat(np.repeat(plain, widths[0], axis=0), widths[1], axis=1)
    return np.asarray(turn_cost(turn, way) + spread + extra)


def _strange(before: Sequence[frozenset[int]], after: Sequence[frozenset[int]]) -> Flags:
    """Whether settings (rows) and others (columns) have no figure of the same kind."""
    kinds = list(dict.fromkeys([*before, *after]))
    number = {kind: k for k, kind in enumerate(kinds)}
    apart = np.array([[not (a & b) for b in kinds] for a in kinds])
    rows, columns = ([number[kind] for kind in each] for each in (before, after))
    return np.asarray(apart[np.ix_(rows, columns)])


def _changed(before: Sequence[tuple[float, float]], after: Sequence[tuple[float, float]]) -> Flags:
    """Whether depth or blade angle differ from one handling (mm, radians) to another."""
    return np.asarray((np.abs(np.array(before)[:, None] - np.array(after)) > SAME).any(axis=-1))


def changes(handlings: Sequence[tuple[float, float]]) -> int:
    """Count the changes of depth or blade along a row of handlings (mm, radians)."""
    if len(handlings) < 2:
        return 0
    return int((np.abs(np.diff(np.array(handlings), axis=0)) > SAME).any(axis=1).sum())
