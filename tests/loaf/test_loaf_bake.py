import math

import numpy as np
import pytest
from support.domes import dome_area

from scorecraft.errors import UsageError
from scorecraft.loaf.bake import Bake, Growth
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import Outline

ROUND = make_loaf("round", 220, None, 95)
LONG = make_loaf("long", 120, 320, 70)


def grown(loaf, bake):
    rim = loaf.outline
    side = bake.sideways
    after = Outline(rim.shape, rim.a_mm * side, rim.b_mm * side, rim.power)
    return Loaf(after, loaf.height_mm * bake.upward, loaf.profile)


@pytest.mark.parametrize("spread", [0.0, 0.3, 2 / 3, 1.0])
def test_the_grown_loaf_has_the_grown_volume(spread):
    bake = Bake(spring=1.5, spread=spread)
    assert grown(LONG, bake).volume_mm3 == pytest.approx(1.5 * LONG.volume_mm3)


@pytest.mark.parametrize(
    ("gain", "percent"), [(0.2, 6.27), (0.3, 9.14), (0.43, 12.66), (0.5, 14.47), (0.7, 19.35)]
)
def test_the_same_growth_in_every_direction_is_the_cube_root(gain, percent):
    """(1 + f)^(1/3) - 1 of a volume gain f, less the share the skin follows."""
    bake = Bake(spring=1 + gain, spread=2 / 3)
    strains = Growth(LONG, bake).at(LONG.sheet_rim(20) * 0.8) / bake.left
    assert 100 * strains[:, :2] == pytest.approx(np.full((20, 2), percent), abs=0.01)
    assert strains[:, 2] == pytest.approx(np.zeros(20), abs=1e-5)


@pytest.mark.parametrize("loaf", [ROUND, LONG], ids=["round", "long"])
def test_growth_of_the_skin_adds_up_to_the_grown_dome(loaf):
    """Areas grown patch by patch sum to the area of the loaf after the bake, on a round loaf.

    On a long one the skin also shears, which is left out.
    """
    bake = Bake(spring=1.6, spread=0.4)
    points, areas = loaf.patches(180, 40)
    along, around = Growth(loaf, bake).along_rays(points.reshape(-1, 2))
    grows = (1 + along / bake.left) * (1 + around / bake.left)
    after = float((grows * areas.reshape(-1)).sum())
    close = 1e-4 if loaf is ROUND else 0.02
    assert after == pytest.approx(dome_area(grown(loaf, bake)), rel=close)


def test_skin_that_slides_evens_itself_out_along_the_ray():
    """L1/L0 everywhere along the ray; around it the same at the crown, the rim's growth there."""
    bake = Bake(spring=1.6, spread=0.4)
    reach = float(ROUND.reach(0.0))
    points = np.column_stack([np.linspace(0, reach, 50), np.zeros(50)])
    along, around = Growth(ROUND, bake).along_rays(points)
    longer = float(grown(ROUND, bake).reach(0.0)) / reach
    assert 1 + along / bake.left == pytest.approx(np.full(50, longer), rel=1e-4)
    assert 1 + around[0] / bake.left == pytest.approx(longer, rel=1e-4)
    assert 1 + around[-1] / bake.left == pytest.approx(bake.sideways, rel=1e-4)
    assert (np.diff(around) < 0).all()


def test_usual_field_is_that_of_a_sheet_on_the_grown_dome():
    """0.11 both ways at the crown, 0.11 and 0.075 at the rim: finite elements, see tests/published.

    A round of 220 by 95 mm, spring 1.4.
    """
    along, around = Growth(ROUND, Bake()).along_rays([[0, 0], [ROUND.reach(0.0), 0]])
    assert along == pytest.approx([0.11, 0.11], abs=2e-3)
    assert around == pytest.approx([0.11, 0.075], abs=2e-3)


def test_sheet_axes():
    """At 12 o'clock the ray is y and around is x; at 3 o'clock the other way round."""
    made = Growth(ROUND, Bake(spread=0.2))
    along, around = made.along_rays(np.array([[100.0, 0.0]]))
    assert made.at([[100, 0]])[0] == pytest.approx([along[0], around[0], 0])
    assert made.at([[0, 100]])[0] == pytest.approx([around[0], along[0], 0])
    diagonal = made.at([[100 / math.sqrt(2)] * 2])[0]
    mean, half = (along[0] + around[0]) / 2, (along[0] - around[0]) / 2
    assert diagonal == pytest.approx([mean, mean, half])


def test_usual_bake_stretches_a_round_loaf_by_a_tenth():
    exx, eyy, exy = Growth(ROUND, Bake()).mean
    assert exx == pytest.approx(0.10, abs=0.01)
    assert eyy == pytest.approx(exx)
    assert exy == pytest.approx(0, abs=1e-12)


def test_mean_is_weighted_by_the_area_of_the_dome():
    made = Growth(LONG, Bake(spread=0.2))
    points, areas = LONG.patches(200, 60)
    mean = np.average(made.at(points.reshape(-1, 2)), axis=0, weights=areas.reshape(-1))
    assert made.mean == pytest.approx(mean, abs=2e-4)
    assert made.patches[1].sum() == pytest.approx(dome_area(LONG), rel=1e-3)


def test_no_spring_no_strain_and_steam_lets_the_skin_give():
    assert Growth(ROUND, Bake(spring=1.0)).mean == pytest.approx((0, 0, 0), abs=1e-12)
    assert Growth(ROUND, Bake(steam=True)).mean[0] < Growth(ROUND, Bake(steam=False)).mean[0]


@pytest.mark.parametrize("given", [{"spring": 0.9}, {"spring": 9}, {"spread": 1.2}, {"spread": -1}])
def test_absurd_bakes_are_refused(given):
    with pytest.raises(UsageError):
        Bake(**given)


def test_strength_is_that_of_the_usual_bake_and_grows_with_the_logarithm_of_the_spring():
    assert Bake().strength == pytest.approx(1.0)
    assert Bake(spring=Bake().spring ** 2).strength == pytest.approx(2.0)
    assert Bake(steam=False).strength == pytest.approx(Bake(steam=False).left / Bake().left)
    assert Bake().soft == 1.0 > Bake(steam=False).soft


def test_growth_is_shared_out_by_the_spread():
    bake = Bake(spring=2.0, spread=0.25)
    assert (bake.sideways, bake.upward) == pytest.approx((2**0.125, 2**0.75))
    assert bake.left == pytest.approx(0.85)
    dry = Bake(spring=2.0, steam=False)
    assert (dry.left, dry.soft) == pytest.approx((0.95, 0.75))
    assert dry.strength == pytest.approx(math.log(2) * 0.95 / (math.log(1.4) * 0.85))


@pytest.mark.parametrize("edge", [{"spring": 1.0}, {"spring": 3.0}, {"spread": 0.0, "spring": 3.0}])
def test_the_least_and_the_greatest_bakes_are_taken(edge):
    assert Bake(**edge).spring == edge["spring"]
    assert Bake(spread=1.0).upward == 1.0


def test_off_the_axes_strains_are_those_of_the_ray_turned():
    """The tensor of two strains along and around a ray, in sheet axes, as everywhere (Mohr)."""
    made, theta = Growth(LONG, Bake(spread=0.2)), 0.5
    point = LONG.at_share(np.array([theta]), np.array([0.7]))
    ray, aside = np.array([math.cos(theta), math.sin(theta)]), np.array([-0.479426, 0.877583])
    (exx, eyy, exy), (along, around) = made.at(point)[0], made.along_rays(point)
    tensor = np.array([[exx, exy], [exy, eyy]])
    assert ray @ tensor @ ray == pytest.approx(along[0])
    assert aside @ tensor @ aside == pytest.approx(around[0], rel=1e-4)
    assert abs(along[0] - around[0]) > 0.01 and abs(ray @ tensor @ aside) < 1e-6


def test_across_the_hole_of_a_ring_the_strain_is_that_at_its_rim():
    ring = make_loaf("ring", 280, None, 45, (2.0, 2.0), hole_mm=100)
    made, bake = Growth(ring, Bake()), Bake()
    along, around = made.along_rays([[30.0, 40.0], [3.0, 4.0]])
    half = 45 * bake.sideways ** (2 - 0.25)
    hole = (95 * bake.sideways**0.25 - half) / 50
    assert around == pytest.approx([bake.left * (hole - 1)] * 2, rel=1e-2)
    # half an ellipse of the grown section, by Ramanujan's first formula, over half a circle
    high = 45 * bake.upward
    h = ((half - high) / (half + high)) ** 2
    girth = (half + high) * (1 + 3 * h / (10 + math.sqrt(4 - 3 * h)))
    assert along == pytest.approx([bake.left * (girth / 90 - 1)] * 2, rel=1e-3)
