"""The checks take time in proportion to the number of cuts, and bounded time for a crowd."""

import math

import numpy as np
import pytest
import shapely
from support.timing import by_turns, ratio, settled

from scorecraft.checks import CHECKS, run
from scorecraft.checks.known import Known
from scorecraft.checks.overlaps import overlaps
from scorecraft.checks.undercut import undercut
from scorecraft.cuts import Cut, Layout
from scorecraft.designing import make
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.motifs.spiral import spiral

LOAF = make_loaf("round", 1400, None, 500)
HEAD = "loaf round width 220mm height 95mm\n"
CROWD = HEAD + "repeat {count} turn 1deg:\n    leaf 50mm veins 40\n"


def laid(lines, depth=3.0, blade=0.8, kind="decorative"):
    """A layout of lines, ten to a figure, of twenty statements in turn."""
    cuts = [
        Cut(line, "arc", "arc", k // 10, k % 20, depth, blade, kind, Place("", 1 + k % 20, 1))
        for k, line in enumerate(lines)
    ]
    return Layout("", (), LOAF, Bake(), tuple(cuts))


def turned(line, angle):
    c, s = math.cos(angle), math.sin(angle)
    return line @ np.array([[c, s], [-s, c]])


def scattered(count):
    """Short slanted bows 8 mm apart on a square grid, some of them crossing."""
    side = math.ceil(math.sqrt(count))
    grid = np.arange(side) * 8.0 - side * 4.0
    centres = np.stack(np.meshgrid(grid, grid), axis=-1).reshape(-1, 2)[:count]
    bow = np.column_stack([np.linspace(-6, 6, 9), 0.05 * np.linspace(-6, 6, 9) ** 2])
    turns = np.random.default_rng(0).uniform(0, math.tau, count)
    return laid([turned(bow, turn) + at for at, turn in zip(centres, turns, strict=True)])


def spirals(turns):
    """Twelve long spirals, four on each of three places."""
    (stroke,) = spiral(radius=90, inner=0, turns=turns, clockwise=True)
    return laid([turned(stroke.line, angle) for angle in (0.0, 0.02, 0.04) * 4])


def fan(count):
    """Deep slanted cuts through one point, all crossing each other."""
    cut = np.array([[-60.0, 0.0], [60.0, 0.0]])
    lines = [turned(cut, angle) for angle in np.linspace(0, math.pi, count, endpoint=False)]
    return laid(lines, 6.0, math.radians(30), "expansion")


def all_pairs():
    """What the library takes for the distances between all of 400 lines: a yardstick."""
    lines = shapely.linestrings([cut.line for cut in fan(400).cuts])
    shapely.distance(lines[:, None], lines[None, :])


@pytest.fixture(scope="module")
def layouts():
    return scattered(2_500), scattered(5_000)


@pytest.mark.parametrize("name", [name for name, row in CHECKS.items() if row.needs == "layout"])
def test_doubling_the_cuts_doubles_the_time(name, layouts):
    """Quadratic would be 4."""
    half, whole = (lambda layout=layout: CHECKS[name].find(Known(layout)) for layout in layouts)
    assert ratio(whole, half, 2.7, tick=2e-3) <= 2.7


def test_a_crowd_twice_as_large_costs_hardly_more():
    """Where all cross all a bounded sample is looked at; unbounded it would be 4."""
    half, whole = (make(CROWD.format(count=count)).layout for count in (12, 24))
    jobs = (lambda: run(whole), lambda: run(half), all_pairs)

    def holds(twice, once, yardstick):
        return twice <= 2.2 * once and twice <= 60 * yardstick

    assert holds(*settled(lambda: by_turns(*jobs, turns=1), holds))


def test_long_spirals_take_time_in_proportion_to_their_length():
    """They also cross more often: 2.6 times here, far from the 4 of quadratic."""
    half, whole = spirals(8), spirals(16)
    jobs = (lambda: overlaps(whole), lambda: overlaps(half), all_pairs)

    def holds(twice, once, yardstick):
        return twice <= 3.2 * once and twice <= 27 * yardstick

    assert holds(*settled(lambda: by_turns(*jobs, turns=1), holds))


def test_undercuts_of_a_crowd_are_bounded():
    whole = fan(800)
    assert ratio(lambda: undercut(whole), all_pairs, 24) <= 24
