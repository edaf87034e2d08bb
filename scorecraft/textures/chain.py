"""Joining of strokes end to end into the longest strokes a blade can make."""

from collections import defaultdict
from collections.abc import Sequence
from itertools import combinations
from math import atan2

import numpy as np

from scorecraft.arrays import Line

MEET_MM = 1e-6
"""Ends nearer than this meet."""

End = tuple[int, bool]
"""An end of a stroke: its number, and whether it is the last point."""


def chain(lines: Sequence[Line], *, sharpest: float) -> list[Line]:
    """Join lines (mm) that meet end to end, at each meeting the straightest pair first.

    Ends that would turn the blade by more than `sharpest` (radians) stay apart. A chain that
    comes back to its start is closed.
    """
    partner = _partners(lines, sharpest)
    done: set[int] = set()
    loose = [(i, False) for i in range(len(lines)) if (i, False) not in partner]
    loose += [(i, True) for i in range(len(lines)) if (i, True) not in partner]
    starts = [*loose, *((i, False) for i in range(len(lines)))]
    return [_walk(lines, partner, start, done) for start in starts if start[0] not in done]


def _partners(lines: Sequence[Line], sharpest: float) -> dict[End, End]:
    """Pair the ends that meet, straightest first."""
    partner: dict[End, End] = {}
    for meeting in _meetings(lines):
        pairs = [(round(_turn(lines, *pair), 9), pair) for pair in combinations(meeting, 2)]
        for turn, (one, other) in sorted(pairs):
            if turn <= sharpest + 1e-9 and one not in partner and other not in partner:
                partner[one], partner[other] = other, one
    return partner


def _meetings(lines: Sequence[Line]) -> list[list[End]]:
    """Group the ends of lines by the point they share."""
    found: defaultdict[tuple[int, int], list[End]] = defaultdict(list)
    ends = np.array([[line[0], line[-1]] for line in lines]).reshape(-1, 2)
    for number, key in enumerate(np.rint(ends / MEET_MM).astype(np.int64).tolist()):
        found[tuple(key)].append((number // 2, bool(number % 2)))
    return [meeting for meeting in found.values() if len(meeting) > 1]


def _turn(lines: Sequence[Line], one: End, other: End) -> float:
    """Angle (radians) by which the blade turns from one stroke into the other."""
    come, leave = -_outward(lines, one), _outward(lines, other)
    cross = come[0] * leave[1] - come[1] * leave[0]
    return abs(atan2(cross, come @ leave))


def _outward(lines: Sequence[Line], end: End) -> Line:
    """Direction from an end into its stroke."""
    line = lines[end[0]]
    return np.asarray(line[-2] - line[-1] if end[1] else line[1] - line[0])


def _walk(lines: Sequence[Line], partner: dict[End, End], start: End, done: set[int]) -> Line:
    """Follow partners from an end until they run out or come back."""
    parts: list[Line] = []
    end: End | None = start
    while end is not None and end[0] not in done:
        number, backward = end
        done.add(number)
        line = lines[number][::-1] if backward else lines[number]
        parts.append(line if not parts else line[1:])
        end = partner.get((number, not backward))
    joined = np.concatenate(parts)
    if end is not None and len(parts) > 1:
        joined[-1] = joined[0]
    return joined
