"""Ranges of openings and room: about the model's number, wider for what is known less."""

from dataclasses import replace

import numpy as np
import pytest

from scorecraft.cuts import Bench, Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.predict import model_of
from scorecraft.opening.ranges import ranges_of
from scorecraft.practice import MODEL_OFF


def slash(depth, skill="steady"):
    line = np.array([[0.0, -60.0], [0.0, 60.0]])
    cut = Cut(
        line, "slash", "slash", 0, 0, depth, np.pi / 2, "expansion", Place("made.score", 1, 1)
    )
    loaf = make_loaf("round", 220.0, None, 95.0)
    return Layout("", (), loaf, Bake(), (cut,), bench=Bench(skill=skill))


def wide(layout, skin):
    """The most of a range over its least, for the opening and the room; and the model's between."""
    model = model_of(layout, skin)
    opening = model.opened()
    found = ranges_of(layout, skin, model, opening)
    ((least, most),), room = found.widest_mm, found.taken
    assert np.sqrt(least * most) == pytest.approx(opening.widest_mm[0])
    assert room[0] < opening.work_taken < room[1] <= 1
    return most / least, room[1] / room[0]


def test_a_better_hand_and_a_skin_that_is_known_make_ranges_narrower():
    usual = Skin()
    known = replace(usual, unsure=0.01)
    order = [
        (slash(8.0, "new"), usual), (slash(8.0), usual), (slash(8.0, "quick"), usual),
        (slash(8.0, "quick"), known),
    ]  # fmt: skip
    found = np.array([wide(*each) for each in order])
    assert (np.diff(found, axis=0) < 0).all()
    assert (found > np.exp(2 * MODEL_OFF.value)).all()
    grown = wide(slash(8.0, "quick"), replace(known, growth_unsure=0.3))
    assert grown[0] > found[-1, 0] and grown[1] > found[-1, 1]


def test_a_deep_cut_whose_opening_hardly_grows_with_depth_is_known_better():
    assert wide(slash(14.0), Skin())[0] < wide(slash(6.0), Skin())[0]


def test_a_loaf_without_cuts_has_no_ranges():
    layout = replace(slash(8.0), cuts=())
    model = model_of(layout, Skin())
    found = ranges_of(layout, Skin(), model, model.opened())
    assert found.widest_mm.shape == (0, 2) and found.taken == (0.0, 0.0)
