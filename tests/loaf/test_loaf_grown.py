import math

import numpy as np
import pytest

from scorecraft.loaf.bake import Bake, Growth
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.grown import CLOSED_MM, carried, grown
from scorecraft.loaf.tin import Tin

RING = make_loaf("ring", 280, None, 52, hole_mm=80)
IN_TIN = make_loaf("tin", 125, 230, 75, tin=Tin(230, 70, 53))


@pytest.mark.parametrize("loaf", [RING, IN_TIN, make_loaf("heart", 220, 210, 70)])
def test_every_form_grows_by_its_spring(loaf):
    bake = Bake(spring=1.4)
    assert grown(loaf, bake.sideways, bake.upward).volume_mm3 == pytest.approx(
        1.4 * loaf.volume_mm3, rel=1e-6
    )
    still = Growth(loaf, Bake(spring=1.0))
    assert still.mean == pytest.approx((0, 0, 0), abs=1e-9)


def test_a_ring_grows_over_its_hole_and_outward():
    after = grown(RING, 1.09, 1.18)
    assert after.hole is not None
    assert after.hole.width_mm < 75 and after.width_mm > 290
    closed = grown(make_loaf("ring", 200, None, 50, hole_mm=12), 1.3, 1.1)
    assert closed.hole is not None and closed.hole.width_mm == pytest.approx(2 * CLOSED_MM)


def test_a_tin_holds_its_sides_and_the_dough_goes_up():
    after = grown(IN_TIN, 1.09, 1.18)
    assert (after.width_mm, after.length_mm) == (125, 230)
    assert IN_TIN.wall_mm < after.wall_mm < 70 and after.crown_mm > IN_TIN.crown_mm
    assert grown(IN_TIN, 1.3, 1.3).wall_mm == 70  # no further than its rim
    short = make_loaf("tin", 125, 200, 75, tin=Tin(230, 70, 53))
    assert grown(short, 1.09, 1.18).length_mm == pytest.approx(218)
    assert grown(short, 1.3, 1.0).length_mm == pytest.approx(230)


def test_dough_in_a_tin_stretches_most_across():
    strain = Growth(IN_TIN, Bake())
    middle = strain.at([[0.0, 0.0]])[0]
    assert middle[0] > 1.5 * middle[1] > 0 and middle[2] == 0


def test_a_ring_stretches_most_across_its_dough():
    theta = np.linspace(0, math.tau, 8)
    along, around = Growth(RING, Bake()).along_rays(RING.at_share(theta, np.zeros(8)))
    assert (along > 2 * around).all() and (around > 0).all()
    at_hole = Growth(RING, Bake()).along_rays(RING.at_share(theta, np.full(8, -1.0)))[1]
    assert (at_hole < 0).all()  # the rim of the hole gets shorter as it closes
    assert np.isfinite(Growth(RING, Bake()).at([[0.0, 0.0], [5.0, 5.0]])).all()


def test_a_point_on_a_ring_keeps_its_share_from_crest_to_rim():
    after = grown(RING, 1.1, 1.2)
    for share in (-0.9, 0.0, 0.5, 1.0):
        here, there = (
            (each.width_mm + each.hole.width_mm) / 4
            + share * (each.width_mm - each.hole.width_mm) / 4
            for each in (RING, after)
        )
        assert carried(RING, after, np.array([[0.0, here]])) == pytest.approx(
            np.array([[0.0, there]]), abs=0.05
        )
