from dataclasses import replace

import pytest

from scorecraft.checks import telling, telling_cuts, telling_loaf
from scorecraft.checks.cure import Cure
from scorecraft.loaf.dough import Dough


def test_lengths_and_cuts_are_said_as_bakers_do(cut):
    vein = cut((0, 0), (9, 0), word="leaf", part="mid_vein")
    said = telling.Sentence("{a:the} is {b:mm} by {c:.1f} mm")
    assert said(a=vein, b=4.96, c=2.25) == "the leaf mid vein is 5 mm by 2.2 mm"
    with pytest.raises(KeyError):
        said(a=vein)


def test_cuts_of_one_name_are_told_by_their_number(cut):
    slash, vein = cut((0, 0), (9, 0)), cut((0, 0), (9, 0), word="leaf", part="vein")
    assert telling.both(slash, slash) == "two slashes"
    assert telling.both(slash, vein) == "the slash and the leaf vein"
    assert telling.beside(slash, replace(slash, figure=3)) == "the next one"
    assert telling.beside(slash, vein) == "the leaf vein"
    assert telling_cuts.over(slash, slash) == "one slash runs over another"
    assert telling_cuts.over(vein, slash) == "the leaf vein runs over the slash"
    assert telling.either([Cure("this", ()), Cure("that", ())]) == "this, or that"


def test_how_many_are_to_go():
    assert telling_cuts.remove_some(1, True) == "remove one of them"
    assert telling_cuts.remove_some(2, False) == "remove at least 2 of them"


@pytest.mark.parametrize(("left", "says"), [(0.04, "right up to"), (0.3, "within 0.3 mm of")])
def test_what_ends_at_the_rim_reaches_it(cut, left, says):
    assert f"{says} the rim" in telling_cuts.near_the_rim(cut((0, 0), (9, 0)), left, "here")


def test_strips_are_between_two_cuts_two_alike_or_the_turns_of_one(cut):
    one, other = cut((0, 0), (9, 0)), cut((0, 3), (9, 3))
    vein = cut((0, 0), (9, 0), word="leaf", part="vein")
    for pair, between in (
        ((one, one), "the turns of the slash"),
        ((one, other), "one slash and the next"),
        ((one, vein), "the slash and the leaf vein"),
    ):
        assert telling_cuts.narrow_strip(*pair, 3.0, 6.0, "here") == (
            f"only 3 mm of dough between {between}, here: leave 6 mm between cuts this deep"
        )


@pytest.mark.parametrize(
    ("undercut", "severity", "ends"),
    [
        (0.04, "stop", "8 mm deep or more: it will lift off"),
        (0.06, "note", "8 mm deep or more, and slanted cuts undercut 6% of it: it may curl"),
        (0.0, None, "8 mm deep or more: it opens like a lid"),
    ],
)
def test_pieces_are_told_by_what_becomes_of_them(undercut, severity, ends):
    said = telling_cuts.loose_piece(3.94, 8.0, undercut, "here", severity)
    assert said == f"a piece of 3.9 cm² here is cut free all around, {ends}"


@pytest.mark.parametrize(("left", "says"), [(0.0, "meets"), (1.2, "stops 1.2 mm short of")])
def test_a_slanted_cut_meets_its_neighbour_or_stops_short_of_it(cut, left, says):
    one = cut((0, 0), (9, 0), depth=8, blade=40)
    assert telling_cuts.undercuts(one, one, 9.5, left, 9.0, "here") == (
        f"the slash, 8 mm deep with the blade at 40°, runs 9.5 mm under the skin and {says} "
        "the next one, 9 mm away here"
    )


def test_why_the_room_counts_for_less():
    assert telling_loaf.wants_more("under", False).startswith("; without steam")
    assert telling_loaf.wants_more("under", True) == "; underproofed dough asks for more"
    assert telling_loaf.wants_more("ready", True) == telling_loaf.wants_more("over", True) == ""


def test_depths_sides_and_kitchens(cut):
    deep, light = cut((0, 0), (9, 0), depth=6), cut((0, 0), (9, 0), depth=0.5)
    assert telling_loaf.too_shallow(deep).endswith(
        "only 6 mm deep, too shallow to give the loaf room"
    )
    assert telling_loaf.too_shallow(light).endswith("too shallow to part the skin")
    assert telling_loaf.one_sided(0.75, True, "at 3 o'clock") == (
        "75% of the opening is on the 3 o'clock side: the loaf will rise more there"
    )
    assert "of the cutting" in telling_loaf.one_sided(0.75, False, "at 3 o'clock")
    assert telling_loaf.too_slow(Dough(), "9 min", "8 min") == (
        "scoring takes about 9 min, but dough at 24 °C and 70% hydration spreads after about 8 min"
    )
    warm = telling_loaf.too_slow(Dough(kitchen_c=28.0), "9 min", "8 min")
    assert "hydration in a kitchen at 28 °C spreads" in warm
    assert telling_loaf.fewer_cuts(deep, 1, "2 min").endswith("the slash alone takes 2 min")
    assert telling_loaf.fewer_cuts(deep, 3, "2 min").endswith("the slashes alone take 2 min")


def test_cuts_that_are_added_or_changed_together(cut):
    slash, vein = cut((0, 0), (9, 0)), cut((0, 0), (9, 0), word="leaf", part="vein")
    assert telling_loaf.those([slash]) == "the slash"
    assert telling_loaf.those([slash, slash]) == "the slashes"
    assert telling_loaf.those([slash, vein]) == "the expansion cuts"
    assert telling_loaf.add_expansion(1, ["here"], 99.6, 9.5) == (
        "add an expansion cut through the crown here, 100 mm long and 9.5 mm deep"
    )
    assert telling_loaf.room_left("tight", 0.1, "") == (
        "tight: the cuts absorb 10% of the oven spring"
    )
