"""The checks take time in proportion to the number of cuts, not to its square."""

import math
import time
import timeit
from functools import partial

import numpy as np
import pytest

from scorecraft.checks import CHECKS
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

LOAF = make_loaf("round", 1400, None, 500)


def scattered(count):
    """Short slanted bows 8 mm apart on a square grid, some of them crossing."""
    side = math.ceil(math.sqrt(count))
    grid = np.arange(side) * 8.0 - side * 4.0
    centres = np.stack(np.meshgrid(grid, grid), axis=-1).reshape(-1, 2)[:count]
    bow = np.column_stack([np.linspace(-6, 6, 9), 0.05 * np.linspace(-6, 6, 9) ** 2])
    turns = np.random.default_rng(0).uniform(0, math.tau, count)
    cuts = []
    for k, (centre, turn) in enumerate(zip(centres, turns, strict=True)):
        spin = np.array([[math.cos(turn), math.sin(turn)], [-math.sin(turn), math.cos(turn)]])
        place = Place("", 1 + k % 20, 1)
        depth = 3.0 if k % 2 else 5.0
        line = bow @ spin + centre
        cuts.append(Cut(line, "arc", "arc", k // 10, k % 20, depth, 0.8, "decorative", place))
    return Layout("", (), LOAF, Bake(), tuple(cuts))


def growth(check, half, whole):
    """Least processor time on the whole over that on the half, measured by turns, gc off."""
    times = {id(half): [], id(whole): []}
    for layout in (half, whole) * 4:
        times[id(layout)].append(
            timeit.timeit(partial(check, layout), timer=time.process_time, number=1)
        )
    tick = 2e-3  # a check that takes next to no time has no ratio to speak of
    return (min(times[id(whole)]) + tick) / (min(times[id(half)]) + tick)


@pytest.fixture(scope="module")
def layouts():
    return scattered(5_000), scattered(10_000)


@pytest.mark.parametrize("name", CHECKS)
def test_doubling_the_cuts_doubles_the_time(name, layouts):
    """Caches that another program empties may spoil a turn: three tries at most."""
    assert any(growth(CHECKS[name], *layouts) <= 2.4 for _ in range(3))
