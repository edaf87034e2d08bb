"""Scissor cuts along a loaf that is level where they are: a V that points along y."""

import math
from dataclasses import replace

import pytest

from scorecraft.checks.snips import snips
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("round", 600, None, 60)


def snip(cut, y, *, x=0.0, hinge=6.0, depth=30.0, blade=40.0, family=1):
    """Ends 40 mm apart, 20 mm ahead of the middle."""
    points = (x - 20, y + 20), (x, y), (x + 20, y + 20)
    return replace(
        cut(*points, depth=depth, blade=blade, family=family, word="snip"), hinge_mm=hinge
    )


@pytest.mark.parametrize(
    ("hinge", "depth", "said"),
    [
        (2.9, 30.0, "the piece tears off"),
        (3.0, 30.0, None),
        (20.0, 30.0, None),  # 0.4 of 50 mm
        (21.0, 30.0, "the piece cannot be laid aside"),
        (3.0, 1.0, None),  # 0.4 of 4 mm is less than any hinge: 3 mm holds
        (3.1, 1.0, "the piece cannot be laid aside"),
    ],
)
def test_a_hinge_is_three_millimetres_to_four_tenths_of_the_height(cut, lay, hinge, depth, said):
    found = snips(lay(snip(cut, 0, hinge=hinge, depth=depth), loaf=FLAT))
    assert bool(found) is (said is not None)
    for each in found:
        assert said in each.message and each.severity == "warning" and each.cuts == (0,)
        most = 3 if depth == 1 else 0.4 * (hinge + depth)
        assert each.hint == f"leave 3 mm to {most:.2g} mm uncut, 6 mm is usual"


def test_the_worst_hinge_of_a_statement_is_told(cut, lay):
    """0.5 mm too thin, 2 mm too thin, and 1.8 mm too thick for its height."""
    hinges = [snip(cut, 90 * k, hinge=each) for k, each in enumerate((2.5, 1.0, 23.0, 6.0))]
    (found,) = snips(lay(*hinges, cut((200, 0), (240, 0), depth=9), loaf=FLAT))
    assert "leaves 1 mm uncut" in found.message and found.cuts == (0, 1, 2)
    assert found.figures == {"count": 3}


@pytest.mark.parametrize(
    ("blade", "said"),
    [(29.0, "at 29°: its tongue is too thin"), (30.0, None), (45.0, None),
     (46.0, "at 46°: its piece is blunt")],
)  # fmt: skip
def test_scissors_are_held_at_30_to_45_degrees(cut, lay, blade, said):
    found = snips(lay(snip(cut, 0, blade=blade), loaf=FLAT))
    assert bool(found) is (said is not None)
    assert all(said in each.message for each in found)
    assert all(each.hint == "hold them at 30 to 45° to the dough" for each in found)


def test_the_scissors_farthest_out_are_told(cut, lay):
    """4 degrees too flat and 6 too steep, 10 too flat and 6 too steep."""
    for flat, worst in ((26, 51), (20, 20)):
        made = lay(snip(cut, 0, blade=flat), snip(cut, 90, blade=51), loaf=FLAT)
        (found,) = (each for each in snips(made) if "scissors" in each.message)
        assert f"at {worst}°" in found.message and found.cuts == (0, 1)


RUN = 30 / math.tan(math.radians(40)) + 8
"""So far a cut runs ahead under the dough, with what has to stay before the next hinge."""


@pytest.mark.parametrize(("apart", "told"), [(RUN - 1, True), (RUN + 1, False)])
def test_a_cut_must_not_run_on_to_the_hinge_of_the_next(cut, lay, apart, told):
    found = snips(lay(snip(cut, 0), snip(cut, apart), loaf=FLAT))
    assert bool(found) is told
    for each in found:
        assert each.figures["apart_mm"] == pytest.approx(apart, abs=0.3)
        assert each.figures["least_mm"] == pytest.approx(RUN) and each.cuts == (0,)
        assert each.figures["count"] == 1


@pytest.mark.parametrize(("aside", "told"), [(19, True), (21, False)])
def test_only_what_is_ahead_within_half_its_width_is_the_next(cut, lay, aside, told):
    made = lay(snip(cut, 50), snip(cut, 80, x=aside), loaf=FLAT)
    assert bool(snips(made)) is told


def test_the_one_that_lacks_most_is_told(cut, lay):
    ys = (-30, 0, 41, 120)
    (found,) = snips(lay(*(snip(cut, y) for y in ys), loaf=FLAT))
    assert found.figures["apart_mm"] == pytest.approx(30, abs=0.2)
    assert found.cuts == (0, 1) and found.figures["count"] == 2


@pytest.mark.parametrize(("apart", "told"), [(0.9, False), (1.2, True)])
def test_cuts_within_a_millimetre_are_one_place(cut, lay, apart, told):
    assert bool(snips(lay(snip(cut, 0), snip(cut, apart), loaf=FLAT))) is told
