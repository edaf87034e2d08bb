"""Slanted blades: what they hold, open and lift."""

import math
from dataclasses import replace

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.lip import across, lift, rising_side, slant_of
from scorecraft.opening.predict import predict
from scorecraft.opening.wishes import meet

ROUND = make_loaf("round", 220, None, 95)
LINE = np.array([[-60.0, 20.0], [60.0, 20.0]])


def cut(degrees, depth=8.0, line=LINE, opens=None):
    place = Place("made.score", 1, 1)
    blade = math.radians(degrees)
    return Cut(line, "slash", "slash", 0, 0, depth, blade, "expansion", place, opens)


def opened(degrees, depth=8.0):
    layout = Layout("", (), ROUND, Bake(), (cut(degrees, depth),))
    return predict(layout, Skin(), panel_mm=4.0)


def test_a_slanted_cut_parts_as_an_upright_one_as_deep_and_shows_wider():
    upright = opened(90)
    for degrees in (30, 45, 60):
        slanted = opened(degrees)
        np.testing.assert_allclose(slanted.gap_mm, upright.gap_mm)
        assert slanted.work_taken == pytest.approx(upright.work_taken)
        assert slanted.mouth_mm.max() > 1.1 * upright.mouth_mm.max()


def test_only_a_slanted_cut_lifts_a_lip():
    assert (opened(90).lift_mm == 0).all()
    assert opened(40).lift_mm.max() > 2.0


@pytest.mark.parametrize("wide", [0.1, 5.0, 1000.0])
def test_the_lip_turns_about_the_tip_of_the_cut(wide):
    """Its edge keeps its distance c from the tip; turned by a right angle it stands c high."""
    reach, slant = np.array([5.0]), np.array([1.2])
    c = reach * slant
    back = np.sqrt(
        across(np.array([wide]), reach, slant) ** 2 - lift(np.array([wide]), reach, slant) ** 2
    )
    assert np.hypot(c - (back - wide), lift(np.array([wide]), reach, slant)) == pytest.approx(c)
    if wide == 1000.0:
        assert lift(np.array([wide]), reach, slant) == pytest.approx(c, rel=1e-3)


@pytest.mark.parametrize("degrees", [30, 45, 70])
def test_the_lip_turns_as_its_lower_face_parts_from_the_other(degrees):
    """By atan(w sin a / s) over the blade's way in the dough s = d / sin a; c = d / tan a wide."""
    blade, depth, wide = math.radians(degrees), 6.0, 4.0
    turn = math.atan(wide * math.sin(blade) / (depth / math.sin(blade)))
    c = depth / math.tan(blade)
    given = np.array([wide]), np.array([depth]), np.array([1 / math.tan(blade)])
    rise, back = c * math.sin(turn), c * (1 - math.cos(turn))
    assert lift(*given) == pytest.approx(rise)
    assert across(*given) == pytest.approx(math.hypot(wide + back, rise))


def test_the_side_of_the_crown_rises_and_of_an_upright_cut_none():
    assert rising_side(cut(40)) == -1
    assert rising_side(cut(40, line=LINE[::-1])) == 1
    assert rising_side(replace(cut(40), rises=1)) == 1
    assert rising_side(replace(cut(90), rises=1)) == 0
    assert slant_of(cut(90)) == 0
    assert slant_of(cut(30)) == pytest.approx(3**0.5)


@pytest.mark.parametrize(("way", "side"), [(1, 1), (-1, -1)])
def test_through_the_crown_the_handle_leans_to_the_hand(way, side):
    """Pulled toward the cutter, from 12 o'clock: a right hand's handle leans to 3 o'clock."""
    away = np.array([[0.0, -60.0], [0.0, 60.0]])
    assert rising_side(cut(40, line=away), way) == side
    assert rising_side(cut(40, line=away[::-1]), way) == -side


def test_a_wish_is_met_below_the_surface():
    """The depth found is the one the depth check looks at, however the blade is held."""
    layout = Layout("", (), ROUND, Bake(), (cut(40, opens=15.0),))
    met = meet(layout, Skin())
    (found,) = met.layout.cuts
    assert met.found.reachable.all()
    again = predict(met.layout, Skin()).widest_mm[0]
    assert again == pytest.approx(15.0, abs=2.0)  # the hand's half millimetre
    upright = meet(Layout("", (), ROUND, Bake(), (cut(90, opens=15.0),)), Skin()).layout.cuts[0]
    assert found.depth_mm < upright.depth_mm < 10.0
