"""What is held against cuts for the dough and the oven; the limits are in scorecraft/baking.py."""

from dataclasses import replace

import pytest

from scorecraft.checks.proof import proof
from scorecraft.cuts import Size
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.dough import Dough


def line(cut, y, depth, **more):
    return cut((-40, y), (40, y), depth=depth, kind="expansion", **more)


def of(layout, stage):
    return proof(replace(layout, dough=Dough(stage)))


def test_underproofed_dough_wants_its_deepest_cuts_ten_millimetres_deep(cut, lay):
    made = lay(line(cut, 0, 8), line(cut, 20, 7), line(cut, 40, 8, family=2))
    (found,) = of(made, "under")
    assert found.severity == "note" and found.cuts == (0, 2) and found.place.line == 1
    assert found.figures == {"count": 1, "depth_mm": 8, "least_mm": 10}
    assert "8 mm is shallow for it" in found.message
    (offer,) = found.offers
    assert offer.told == "cut 10 mm deep, or proof it longer"
    assert [each.depth_mm for each in offer.layout().cuts] == [10, 7, 10]
    assert of(lay(line(cut, 0, 10), line(cut, 20, 5)), "under") == []
    assert of(lay(cut((0, 0), (40, 0), depth=3)), "under") == []


def test_a_low_loaf_of_it_wants_no_more_than_its_height_allows(cut, lay):
    low = make_loaf("round", 200, None, 31)  # a quarter is 7.75 mm: 7.5 as a hand cuts
    (found,) = of(lay(line(cut, 0, 7), loaf=low), "under")
    assert found.figures["least_mm"] == 7.5
    assert of(lay(line(cut, 0, 7.5), loaf=low), "under") == []


def test_overproofed_dough_sags_under_cuts_deeper_than_eight(cut, lay):
    made = lay(line(cut, 0, 8), line(cut, 20, 9), line(cut, 40, 12, family=2))
    (found,) = of(made, "over")
    assert found.severity == "warning" and found.cuts == (1, 2) and found.place.line == 2
    assert found.figures == {"count": 1, "depth_mm": 12, "most_mm": 6}
    assert "12 mm deep it may sag" in found.message
    assert [each.depth_mm for each in found.offers[0].layout().cuts] == [8, 6, 6]
    assert of(lay(line(cut, 0, 8)), "over") == []
    assert of(lay(cut((0, 0), (40, 0), depth=9, kind="decorative")), "over") == []


@pytest.mark.parametrize("stage", ["under", "ready", "over"])
def test_a_ready_dough_has_no_wish(cut, lay, stage):
    assert bool(of(lay(line(cut, 0, 9)), stage)) is (stage != "ready")


def test_an_oven_without_steam_is_told_where_there_are_cuts_and_no_pot(cut, lay):
    dry = Bake(steam=False)
    (found,) = proof(lay(line(cut, 0, 8), bake=dry))
    assert (found.severity, found.place) == ("note", None) and "without steam" in found.message
    assert proof(lay(bake=dry)) == []
    assert proof(lay(line(cut, 0, 8), bake=dry, size=Size(vessel_mm=260))) == []
    assert proof(lay(line(cut, 0, 8))) == []
