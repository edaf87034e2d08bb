import math

import numpy as np
import pytest
from support.domes import length_on_dough

from scorecraft.cuts import Cut, Layout
from scorecraft.drape.darts import dart_directions, widest_petal
from scorecraft.drape.drape import make_drape
from scorecraft.drape.rings import Rings
from scorecraft.errors import Place, ScorecraftError, UsageError
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

LOAF = make_loaf("round", 220.0, None, 95.0)


def ray(degrees, inner=40.0, outer=130.0):
    way = np.array([math.cos(math.radians(degrees)), math.sin(math.radians(degrees))])
    return np.array([inner * way, outer * way])


def across(degrees, at=100.0, half=12.0):
    way = np.array([math.cos(math.radians(degrees)), math.sin(math.radians(degrees))])
    side = np.array([-way[1], way[0]])
    return np.array([at * way - half * side, at * way + half * side])


def layout(lines, loaf=LOAF):
    place = Place("made.score", 1, 1)
    cuts = [Cut(line, "slash", "slash", k, 0, 5.0, 1.5, "expansion", place)
            for k, line in enumerate(lines)]  # fmt: skip
    return Layout("Made", (), loaf, Bake(), tuple(cuts))


def test_a_closer_fit_needs_narrower_petals():
    rings = Rings(LOAF)
    wide, narrow = widest_petal(rings, 3.0), widest_petal(rings, 0.5)
    assert wide > narrow > 0
    assert widest_petal(rings, 0.001) is None


def test_darts_go_between_figures_and_no_petal_is_too_wide():
    lines = [across(angle) for angle in range(10, 370, 40)]
    rings = Rings(LOAF)
    widest = widest_petal(rings, 1.5)
    directions = dart_directions(rings, lines, widest)
    gaps = np.diff(np.append(directions, directions[0] + 2 * np.pi))
    assert gaps.max() <= widest + 1e-9 and gaps.sum() == pytest.approx(2 * np.pi)
    assert make_drape(layout(lines)).split == 0


def test_darts_do_not_run_along_a_cut():
    lines = [ray(angle) for angle in range(0, 360, 45)]
    drape = make_drape(layout(lines))
    off = [(np.degrees(dart.theta) + 22.5) % 45 - 22.5 for dart in drape.darts]
    assert np.abs(off).min() > 1.0


def test_a_cut_across_everything_is_split_and_counted():
    angle = np.linspace(0, 2 * np.pi, 200)
    ring = 110 * np.column_stack([np.cos(angle), np.sin(angle)])
    drape = make_drape(layout([ring]))
    assert drape.split == 1
    drawn = [line for line in drape.lines if line.cut == 0]
    assert len(drawn) >= len(drape.petals)
    true = length_on_dough(LOAF, ring)
    total = sum(np.hypot(*np.diff(each.line, axis=0).T).sum() for each in drawn)
    assert total == pytest.approx(true, abs=0.5)


def test_points_keep_their_distance_from_the_crown():
    drape = make_drape(layout([ray(10)]))
    for petal in drape.petals:
        theta = np.linspace(petal.start + 0.01, petal.end - 0.01, 9)
        points = 90 * np.column_stack([np.cos(theta), np.sin(theta)])
        assert np.hypot(*petal.on_paper(points).T) == pytest.approx(90)


def test_the_middle_of_the_sheet_is_whole():
    drape = make_drape(layout([ray(10)]))
    assert min(dart.first_mm for dart in drape.darts) > 25
    for dart in drape.darts:
        assert np.hypot(*(dart.left[0] - dart.right[0])) < 0.6


def test_a_long_loaf_is_refused():
    with pytest.raises(ScorecraftError, match="too long"):
        make_drape(layout([ray(10)], make_loaf("long", 100.0, 340.0, 70.0)))


@pytest.mark.parametrize("fit", [0.0, -1.0, float("nan"), 0.001])
def test_fits_that_cannot_be_are_refused(fit):
    with pytest.raises(UsageError):
        make_drape(layout([ray(10)]), fit_mm=fit)
