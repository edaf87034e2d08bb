"""Ways to bake, worked by hand from the rows of the oven table in scorecraft/baking.py."""

import math

import pytest

from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import Outline
from scorecraft.loaf.oven import Way, fits_pot, kind_of, ways

STILL = Bake(spring=1.0)
BOULE = make_loaf("round", 200, None, 85)


def test_between_rows_times_are_on_a_straight_line_and_heats_those_of_the_nearest_row():
    """At 700 g halfway between 500 and 900 g: 15 and 22 min, 15 and 25 min after the lid."""
    assert ways(BOULE, STILL, 700) == (
        Way("pot", 20, (18, 20), 245, 225, True),
        Way("stone", round(13.5), (24, 27), 240, 220, True),
    )
    assert ways(BOULE, Bake(spring=1.0, steam=False), 1300)[1] == Way(
        "stone", 17, (37, 40), 240, 210, False
    )


def test_beyond_the_rows_times_go_by_the_root_of_the_weight():
    for grams, row in ((250, (20, 15, 15)), (6000, (25, 35, 35))):
        times = [round(each * math.sqrt(grams / (500 if grams < 500 else 1500))) for each in row]
        pot = ways(BOULE, STILL, grams)[0]
        assert [pot.first_min, *pot.then_min] == times


def test_kinds_go_by_form_weight_and_slenderness():
    assert kind_of(BOULE, 150) == "roll" and kind_of(BOULE, 151) == "loaf"
    slim, stout = make_loaf("long", 80, 320, 50), make_loaf("long", 80, 316, 50)
    assert [kind_of(slim, grams) for grams in (600, 601)] == ["baguette", "loaf"]
    assert kind_of(stout, 600) == "loaf"
    assert kind_of(Loaf(Outline("traced", 100, 100), 80, (2.0, 2.0)), 900) == "loaf"
    assert kind_of(make_loaf("ring", 280, None, 50), 100) == "ring"


def test_a_pot_takes_what_clears_its_wall_by_5_mm_on_either_side():
    assert fits_pot(make_loaf("oval", 150, 290, 75), STILL)
    assert not fits_pot(make_loaf("oval", 150, 291, 75), STILL)
    assert fits_pot(BOULE, STILL, 210) and not fits_pot(BOULE, STILL, 209)
    assert not fits_pot(BOULE, Bake(spring=1.4), 210)
    baked = 200 * 1.4**0.25
    assert fits_pot(BOULE, Bake(spring=1.4), baked + 10.01)
    assert [each.place for each in ways(BOULE, STILL, 900, 209)] == ["stone"]


@pytest.mark.parametrize(("length", "stone"), [(380, None), (381, 381)])
def test_only_loaves_longer_than_the_usual_stone_are_told_how_long_theirs_is(length, stone):
    (way,) = ways(make_loaf("long", 110, length, 60), STILL, 900)
    assert way.place == "stone" and way.stone_mm == stone
    wide = Loaf(Outline("traced", length / 2, 60.0), 60.0, (2.0, 2.0))
    assert ways(wide, STILL, 900)[0].stone_mm == stone
    sprung = ways(make_loaf("long", 110, 370, 60), Bake(spring=1.4), 900)[0]
    assert sprung.stone_mm == pytest.approx(370 * 1.4**0.25)


def test_only_on_a_stone_the_length_of_the_stone_is_told():
    (way,) = ways(make_loaf("tin", 100, 390, 90), STILL, 1000)
    assert way.place == "tin" and way.stone_mm is None
