"""Strokes of a pen made fit for a blade: cut at corners, joined where they run on, rounded."""

from collections.abc import Sequence
from itertools import pairwise
from math import acos, pi

import numpy as np

from scorecraft import curves
from scorecraft.arrays import Line

CORNER_RAD = 1.0
"""A blade is lifted where a stroke turns by more at one point."""
RUNS_ON_RAD = 0.75
"""Strokes that meet end to end and turn by less are made as one."""
MEET_MM = 0.05
STRAIGHT = 4.5
"""A step of the data longer than this (units) is straight, and stays so."""


def joined(pieces: Sequence[Line]) -> list[Line]:
    """Cut lines (N, 2) in mm at their corners and join what runs on, the straightest first."""
    lines = [part for piece in pieces for part in _parted(curves.without_repeats(piece))]
    while True:
        found = _straightest(lines)
        if found is None:
            return lines
        one, other, line = found
        lines = [each for k, each in enumerate(lines) if k not in (one, other)] + [line]


def drawn(lines: Sequence[Line], unit_mm: float) -> list[Line]:
    """Round lines (N, 2) in mm: smooth through their points, long steps staying straight."""
    return [curves.smooth(_held(line, STRAIGHT * unit_mm)) for line in lines]


def _parted(line: Line) -> list[Line]:
    """Cut a line where it turns too sharply for a blade."""
    if len(line) < 3:
        return [line] if len(line) > 1 else []
    steps = np.diff(line, axis=0)
    corners = [k + 1 for k in range(len(steps) - 1) if _turn(steps[k], steps[k + 1]) > CORNER_RAD]
    ends = [0, *corners, len(line) - 1]
    return [line[a : b + 1] for a, b in pairwise(ends)]


def _straightest(lines: Sequence[Line]) -> tuple[int, int, Line] | None:
    """Find the two lines that run on into one another best, and what they make together."""
    best, found = RUNS_ON_RAD, None
    for one in range(len(lines)):
        for other in range(one + 1, len(lines)):
            for a in (lines[one], lines[one][::-1]):
                for b in (lines[other], lines[other][::-1]):
                    if np.hypot(*(a[-1] - b[0])) > MEET_MM:
                        continue
                    turn = _turn(a[-1] - a[-2], b[1] - b[0])
                    if turn < best:
                        best, found = turn, (one, other, curves.join(a, b))
    return found


def _turn(first: Line, then: Line) -> float:
    """Angle (radians) between two steps."""
    size = float(np.hypot(*first) * np.hypot(*then))
    return acos(min(1.0, max(-1.0, float(first @ then) / size))) if size else pi


def _held(line: Line, longest_mm: float) -> Line:
    """Add points to long steps, a third from each end, so that smoothing leaves them straight."""
    out = [line[0]]
    for start, end in pairwise(line):
        if len(line) > 2 and np.hypot(*(end - start)) > longest_mm:
            out += [start + (end - start) / 4, start + (end - start) * 3 / 4]
        out.append(end)
    return np.array(out)
