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


def test_points_of_a_round_loaf_are_carried_in_proportion():
    here = make_loaf("oval", 150, 240, 80)
    plan = np.array([[30.0, -50.0], [0.0, 0.0], [75.0, 0.0]])
    there = grown(here, 1.2, 1.1)
    assert (there.width_mm, there.height_mm) == pytest.approx((180, 88))
    assert carried(here, there, plan) == pytest.approx(1.2 * plan)
    assert carried(there, here, plan) == pytest.approx(plan / 1.2)


def test_points_in_a_tin_keep_their_share_in_every_direction():
    short = make_loaf("tin", 120, 200, 75, tin=Tin(230, 70, 53))
    after = grown(short, 1.3, 1.0)
    assert (after.width_mm, after.length_mm) == pytest.approx((120, 230))
    found = carried(short, after, np.array([[0.0, -50.0], [48.0, 0.0], [0.0, 0.0]]))
    assert found == pytest.approx(np.array([[0, -57.5], [48, 0], [0, 0]]), abs=1e-6)


def test_points_of_a_long_ring_keep_their_share_beside_the_axes_too():
    ring = make_loaf("ring", 240, 320, 50, hole_mm=80)
    after, theta = grown(ring, 1.1, 1.1), np.array([0.5, 2.5])
    ray = np.column_stack([np.cos(theta), np.sin(theta)])
    for share in (-0.6, 0.0, 0.8):
        here, there = (
            ((each.outline.radius(theta) + each.hole.radius(theta)) / 2
             + share * (each.outline.radius(theta) - each.hole.radius(theta)) / 2)[:, None] * ray
            for each in (ring, after)
        )  # fmt: skip
        assert carried(ring, after, here) == pytest.approx(there, abs=1e-6)


def test_dough_in_a_tin_climbs_by_half_its_rise():
    """Level height of the dough: volume over area; it climbs half as far as that rises."""
    level = IN_TIN.volume_mm3 / IN_TIN.plan_area_mm2
    after = grown(IN_TIN, 1.05, 1.05)
    risen = level * 1.05**3
    assert after.wall_mm == pytest.approx(53 + (risen - level) / 2)
    assert after.volume_mm3 / after.plan_area_mm2 == pytest.approx(risen)
    assert after.held.depth_mm == 70 and after.held.length_mm == 230
    proud = make_loaf("tin", 125, 230, 110, tin=Tin(230, 70, 85))  # a wall above the rim stays
    assert grown(proud, 1.2, 1.2).wall_mm == 85
    assert grown(IN_TIN, 1.0, 0.95).wall_mm == 53 and grown(IN_TIN, 0.9, 1.0).length_mm == 230


def test_a_grown_ring_is_as_wide_and_long_as_its_crest_and_section_make_it():
    """A section of 80 mm about crests 160 mm wide and 240 mm long."""
    after = grown(make_loaf("ring", 240, 320, 50, hole_mm=80), 1.1, 1.05)
    crest, section = 1.1**0.25, 80 * 1.1**1.75
    assert after.width_mm == pytest.approx(160 * crest + section, rel=1e-4)
    assert after.length_mm == pytest.approx(240 * crest + section, rel=1e-4)
    assert (after.height_mm, after.shape, len(after.outline.samples)) == (52.5, "ring", 1440)
