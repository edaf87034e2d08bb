"""A plate as it comes out: how much is left of each part, and the material around it."""

import pytest
import shapely
from shapely import LineString

from scorecraft.loaf.dome import make_loaf
from scorecraft.plate.attempt import attempt
from scorecraft.plate.body import blank
from scorecraft.plate.sizes import Sizes
from scorecraft.plate.slits import Slit

BODY = blank(make_loaf("round", 200.0, None, 80.0))
SIZES = Sizes(2.5, 3.0, 1.6)


def slit(*points, name="slash", cut=0, rank=1.0):
    return Slit(LineString(points), 2.5, cut, name, rank)


def test_what_is_left_of_a_part_is_told_by_length_and_by_cuts():
    """Of three veins of 20 mm one is drawn back by a web from the rib, and one is a dot."""
    rib = slit((-40, 30), (40, 30), name="rib", rank=9)
    veins = [
        slit((-20, 30), (-20, 50), name="vein", cut=1),
        slit((0, 40), (0, 60), name="vein", cut=2),
        slit((20, 40), (20, 42), name="vein", cut=3),
    ]
    whole, worn = attempt(BODY, [rib, *veins], SIZES).kept
    assert (whole.name, whole.share, whole.cuts) == ("rib", 1.0, 1.0)
    drawn_back = 20 - 2.5 - 1.64
    assert worn.name == "vein" and worn.cuts == pytest.approx(2 / 3)
    assert worn.share == pytest.approx((drawn_back + 20) / 42, abs=0.002)


def test_bridges_take_their_share_of_a_ring():
    """Two bridges of 3 mm, each with the round ends of the slot beside it."""
    ring = shapely.Point(0, 40).buffer(14, quad_segs=32).exterior
    tried = attempt(BODY, [Slit(LineString(ring.coords), 2.5, 0, "ring", 1.0)], SIZES)
    assert len(tried.bridged.bridges) == 2
    lost = 2 * (3 + 2.5 + 0.04)
    assert tried.kept[0].share == pytest.approx(1 - lost / ring.length, abs=0.002)
    assert tried.kept[0].cuts == 1.0


def test_the_material_is_the_blank_less_the_slots_as_wide_as_asked():
    one = slit((-40, 30), (40, 30))
    tried = attempt(BODY, [one], SIZES)
    slot = 80 * 2.5 + 3.1416 * 1.25**2
    hair = sum(each.area for each in tried.hair)
    assert BODY.area.area - tried.area.area == pytest.approx(slot + hair, abs=1.0)
    assert len(tried.hair) == 4


def test_material_thinner_than_a_web_is_cut_away():
    """Between two slots that meet in a point no sliver stays."""
    fan = [slit((-40, 30), (40, 30)), slit((-40, 30), (40, 50), cut=1)]
    area = attempt(BODY, fan, SIZES).area
    core = area.buffer(-0.79).buffer(0.791)
    assert area.difference(core).area < 0.2
