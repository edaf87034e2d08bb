"""Wishes of a layout: what a hand can cut, never deeper than the loaf takes."""

import math
from dataclasses import replace

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.wishes import meet


def slash(y, depth, opens=None):
    line, place = np.array([[-40.0, y], [40.0, y]]), Place("made.score", 1, 1)
    return Cut(
        line, "slash", "slash", 0, 0, depth, math.pi / 2, "expansion", place, opens
    )  # fmt: skip


LOW = Layout(
    "", (), make_loaf("round", 220.0, None, 31.0), Bake(), (slash(0, 4.0, 90.0), slash(40, 3.3))
)


def test_no_wish_goes_deeper_than_a_step_above_what_the_depth_check_tells():
    """A quarter of 31 mm is 7.75: half a millimetre's step is 7.5. The other keeps its depth."""
    met = meet(LOW, Skin())
    assert [cut.depth_mm for cut in met.layout.cuts] == [7.5, 3.3]
    assert met.found.reachable.tolist() == [False, True] and met.refused is None


def test_nothing_wished_and_what_cannot_be_sought_keep_their_depths(monkeypatch):
    plain = replace(LOW, cuts=(slash(0, 4.0),))
    met = meet(plain, Skin())
    assert met.layout is plain and met.found is met.refused is None
    monkeypatch.setattr("scorecraft.opening.depth.OPENING_WISH_MOST", 10.0)
    met = meet(LOW, Skin())
    assert met.layout is LOW and met.found is None and "opens" in str(met.refused)


@pytest.mark.parametrize("wish", [0.001, 12.0])
def test_depths_are_whole_steps_and_never_none(wish):
    (cut, _) = meet(replace(LOW, cuts=(slash(0, 9.0, wish), slash(60, 3.3))), Skin()).layout.cuts
    assert cut.depth_mm >= 0.5 and cut.depth_mm % 0.5 == 0
    assert (cut.depth_mm == 0.5) == (wish < 1)
