"""What is too fine for its slots, and the widest slot that is not."""

import pytest
import shapely

from scorecraft.plate.attempt import Attempt, Kept
from scorecraft.plate.bridges import Bridged
from scorecraft.plate.sizes import Sizes
from scorecraft.plate.slits import Slit
from scorecraft.plate.too_fine import refusal, too_fine, widest

WHOLE = shapely.box(-50, -50, 50, 50)


def slit(x, name, width=2.5):
    return Slit(shapely.LineString([(x, -20), (x, 20)]), width, 0, name, 1.0)


def attempt(*kept, slits=(), loose=(), area=WHOLE):
    return Attempt(area, Bridged(tuple(slits), (), tuple(loose)), (), kept)


@pytest.mark.parametrize(
    ("share", "cuts", "bad"),
    [(0.51, 1.0, False), (0.49, 1.0, True), (0.9, 0.71, False), (0.9, 0.69, True)],
)
def test_a_part_that_loses_half_its_length_or_three_in_ten_cuts_is_too_fine(share, cuts, bad):
    kept = Kept("leaf vein", share, cuts)
    assert too_fine(attempt(kept, Kept("slash", 1.0, 1.0))) == ((kept,) if bad else ())


@pytest.mark.parametrize("how", ["loose", "area"])
def test_the_parts_around_a_piece_that_falls_out_are_too_fine(how):
    """A piece between two slots, 1 mm off their edges; a third slot is far from it."""
    piece = shapely.box(2.25, -5, 7.75, 5)
    slits = [slit(0, "left"), slit(10.18, "right"), slit(30, "far")]
    kept = [Kept(each.name, 1.0, 1.0) for each in slits]
    more = {"loose": [piece]} if how == "loose" else {"area": shapely.MultiPolygon([piece, FAR])}
    found = too_fine(attempt(*kept, slits=slits, **more))
    assert [each.name for each in found] == ["left", "right"]


FAR = shapely.box(100, -50, 200, 50)


def test_only_the_nearest_slots_border_on_a_piece():
    slits = [slit(0, "left"), slit(10.23, "right")]
    kept = [Kept(each.name, 1.0, 1.0) for each in slits]
    found = too_fine(attempt(*kept, slits=slits, loose=[shapely.box(2.25, -5, 7.75, 5)]))
    assert [each.name for each in found] == ["left"]


def test_slots_border_on_a_piece_by_their_edges_however_wide():
    """A slot of 6 mm and one of 2 mm, both with their edges 1 mm off."""
    slits = [slit(-2, "wide", width=6.0), slit(12, "narrow", width=2.0)]
    kept = [Kept(each.name, 1.0, 1.0) for each in slits]
    found = too_fine(attempt(*kept, slits=slits, loose=[shapely.box(2, -5, 10, 5)]))
    assert [each.name for each in found] == ["wide", "narrow"]


@pytest.mark.parametrize(("limit", "best"), [(3.17, 3.1), (0.8, 0.8), (4.95, 4.9), (2.0, 2.0)])
def test_the_widest_that_works_is_found_to_a_tenth(limit, best):
    seen = []

    def works(mm):
        seen.append(mm)
        return mm <= limit

    assert widest(5.0, 0.8, works) == best
    assert best in seen and max(seen) < 5.0


def test_no_more_than_seven_are_tried_and_what_is_told_was():
    seen = {}

    def works(mm):
        return seen.setdefault(mm, mm <= 17.77)

    best = widest(39.0, 0.8, works)
    assert seen[best] and len(seen) == 7
    assert best <= 17.77 < best + 0.7


def test_none_is_found_where_the_least_fails_or_is_no_less():
    assert widest(5.0, 0.8, lambda _: False) is None
    assert widest(0.8, 0.8, lambda _: True) is None
    assert widest(0.9, 0.8, lambda _: True) == 0.8


SIZES = Sizes(3.0, 4.0, 1.6)


def test_a_refusal_tells_the_part_that_loses_most_and_the_nearest_slot():
    bad = [Kept("vein", 0.4, 0.9), Kept("bud", 0.45, 0.2), Kept("rib", 0.6, 0.5)]
    error = refusal(
        attempt(*bad), bad, SIZES, lambda size: size.slot_mm <= 2 and size.bridge_mm == 4
    )
    assert "only 20% of bud would be left" in error.message
    assert error.hint == "a slot of 2 mm works: --slot 2mm"


def test_a_refusal_tells_a_bridge_where_no_slot_will_do():
    bad = [Kept("ring", 1.0, 1.0)]
    piece = shapely.box(2.25, -5, 7.75, 5)
    tried = attempt(*bad, slits=[slit(0, "ring")], loose=[piece])
    error = refusal(tried, bad, SIZES, lambda size: size.slot_mm == 3 and size.bridge_mm <= 2.5)
    assert "the piece 5 mm from the crown at 3 o'clock would fall out" in error.message
    assert error.hint == "a bridge of 2.5 mm works: --bridge 2.5mm"


def test_a_refusal_tells_the_coarser_parts_where_nothing_will_do():
    bad = Kept("vein", 0.4, 0.9)
    error = refusal(attempt(Kept("rib", 1.0, 1.0), bad), [bad], SIZES, lambda _: False)
    assert error.hint.endswith('--only "rib"')
