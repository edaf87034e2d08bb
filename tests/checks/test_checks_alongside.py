"""Cuts side by side on the flat top of a wide loaf."""

import numpy as np
import pytest

from scorecraft.checks.alongside import alongside
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("round", 600, None, 60)


def near(lay, *cuts, reach=5.0, parting=12.0):
    return alongside(lay(*cuts, loaf=FLAT), np.full(len(cuts), reach), parting)


def test_widths_are_square_to_the_cut_and_each_faces_the_other(cut, lay):
    found = near(lay, cut((-30, 0), (30, 0)), cut((30, 6), (-30, 6)))
    pairs = set(zip(found.stations.cut[found.here], found.stations.cut[found.there], strict=True))
    assert pairs == {(0, 1), (1, 0)} and found.whole
    assert found.width == pytest.approx(6, rel=0.01) and found.flat == pytest.approx(6)
    assert not found.same_way.any() and len(found.here) == 40
    assert near(lay, cut((-30, 0), (30, 0)), cut((-30, 6), (30, 6))).same_way.all()


@pytest.mark.parametrize(("apart", "count"), [(0.2, 0), (0.3, 40), (9.9, 40), (10.1, 0)])
def test_they_are_nearer_than_both_reach_and_no_one_line(cut, lay, apart, count):
    found = near(lay, cut((-30, 0), (30, 0)), cut((-30, apart), (30, apart)))
    assert len(found.here) == count


@pytest.mark.parametrize(("degrees", "any_found"), [(11, True), (13, False)])
def test_cuts_that_part_make_a_point(cut, lay, degrees, any_found):
    rise = 60 * np.tan(np.radians(degrees))
    found = near(lay, cut((-30, 0), (30, 0)), cut((-30, 2), (30, 2 + rise)), reach=9.0)
    assert bool(len(found.here)) is any_found


def test_the_greater_reach_finds_the_facing(cut, lay):
    cuts = cut((-30, 0), (30, 0)), cut((-30, 8), (30, 8))
    found = alongside(lay(*cuts, loaf=FLAT), np.array([9.0, 0.5]), 12.0)
    assert 0 in found.stations.cut[found.here] and len(found.here) >= 20


def test_a_cut_faces_itself_only_on_another_turn_of_it(arc, cut, lay):
    ring = arc(4, 0, 360, n=200)
    ring[-1] = ring[0]
    assert len(near(lay, cut(*ring)).here) == 0
    legs = cut((3, -40), *arc(3, 0, 180, centre=(0, 40)), (-3, -40))
    found = near(lay, legs)
    along = np.abs(found.stations.along[found.here] - found.stations.along[found.there])
    assert len(found.here) > 40 and along.min() > 2 * 6 + 2 * 3 - 3


@pytest.mark.parametrize(
    ("limit", "most", "whole"),
    [("MOST_FACINGS", 5, False), ("MOST_FACINGS", 4000, True),
     ("MOST_STATION_BOXES", 5, False), ("MOST_STATION_BOXES", 90_000, True)],
)  # fmt: skip
def test_where_there_are_too_many_those_of_the_first_cuts_are_all_found(
    cut, lay, monkeypatch, limit, most, whole
):
    """Sixty lines of 20 stations each, 6 mm apart: each station faces one on either side."""
    monkeypatch.setattr(f"scorecraft.checks.alongside.{limit}", most)
    found = near(lay, *(cut((-30, y), (30, y)) for y in np.arange(-177, 180, 6.0)))
    assert found.whole is whole
    facings = np.bincount(found.stations.cut[found.here], minlength=60)
    assert set(facings.tolist()) <= {0, 20, 40}
    assert len(found.here) == 20 * 118 if whole else 0 < len(found.here) < 20 * 118
    assert (np.diff(found.here) >= 0).all()


def test_the_sides_of_a_closed_cut_face_each_other_away_from_its_ends(cut, lay):
    """60 by 6 mm, 44 stations: round an end the way has to be longer than 2 x 6 + 2 x 3 mm."""
    slim = cut((-30, 0), (-30, -3), (30, -3), (30, 3), (-30, 3), (-30, 0))
    found = near(lay, slim)
    across = np.abs(found.stations.point[found.here, 0])
    assert len(found.here) == 32 and across.max() == pytest.approx(22.5)
    assert not found.same_way.any()
