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
from scorecraft.practice import DEPTH_OFF_MM, MODEL_OFF


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


def test_ranges_are_what_three_doubts_come_to():
    """Worked out once more: all a tenth deeper tells how steeply skin and depth count.

    The hand's error is each cut's own: for the room their squares add up, by opened area. The
    short cut opens less far once all are deeper, and then its depth counts for nothing.
    """
    first = slash(8.0)
    (cut,) = first.cuts
    other = replace(cut, line=np.array([[30.0, -15.0], [30.0, 15.0]]), depth_mm=5.0)
    skin = replace(Skin(), growth_unsure=0.2)
    model = model_of(replace(first, cuts=(cut, other)), skin)
    opening = model.opened()
    deeper = model.opened(deeper=1.1, near=opening, precise=1e-3)
    found = ranges_of(replace(first, cuts=(cut, other)), skin, model, opening)
    always = np.hypot(MODEL_OFF.value, 0.2)
    hand = DEPTH_OFF_MM["steady"].value / np.array([8.0, 5.0])
    steep = np.maximum(np.log(deeper.widest_mm / opening.widest_mm) / np.log(1.1), 0)
    assert steep[0] > 0.3 and steep[1] == 0
    spread = np.exp(np.sqrt(always**2 + steep**2 * (hand**2 + skin.unsure**2)))
    expected = opening.widest_mm[:, None] * np.column_stack([1 / spread, spread])
    np.testing.assert_allclose(found.widest_mm, expected)
    area = replace(first, cuts=(cut, other)).lengths_mm * opening.widest_mm
    off = np.hypot(skin.unsure, np.hypot(*(area * hand)) / area.sum())
    steep = np.log(deeper.work_taken / opening.work_taken) / np.log(1.1)
    room = np.exp(np.hypot(always, steep * off))
    taken = opening.work_taken
    assert found.taken == pytest.approx((taken / room, taken * room))


def test_a_loaf_without_cuts_has_no_ranges():
    layout = replace(slash(8.0), cuts=())
    model = model_of(layout, Skin())
    found = ranges_of(layout, Skin(), model, model.opened())
    assert found.widest_mm.shape == (0, 2) and found.taken == (0.0, 0.0)
