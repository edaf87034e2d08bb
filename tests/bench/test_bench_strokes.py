"""What the hand must know of a cut: measures, and the care it takes at each turn of the table."""

import math
from dataclasses import replace

import numpy as np
import pytest
from support.bench_layouts import cut, layout, turned

from scorecraft.bench.strokes import (
    LEAST_SIGHT,
    PUSH_COST,
    STRAIGHT_FROM,
    Strokes,
    backward,
    care,
    sight,
    strokes,
    table_angles,
)
from scorecraft.cuts import Bench
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import DEEP_SIGHT_POWER, EYE_DEG, PULL_ASIDE_DEG, PULL_COST

EYE = math.radians(EYE_DEG.value)
LOW = make_loaf("round", 220.0, None, 60.0)


def stroke(heading_deg, straight=1.0, deep=False):
    """One stroke of 2 s over the crown, on level dough, in a direction from the x axis."""
    heading = math.radians(heading_deg)
    chord = 50 * np.array([[math.cos(heading), math.sin(heading)]])
    up, none = np.array([[0.0, 0.0, 1.0]]), np.zeros(1)
    return Strokes(
        np.array([50.0]), chord, np.array([straight]), np.zeros((1, 2)), up, up, none,
        np.array([2.0]), np.array([deep]),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("heading", "straight", "awkward"),
    [
        (-90, 1.0, 0.0), (90, 1.0, 0.0), (0, 1.0, 1.0), (-45, 1.0, 0.25), (-120, 1.0, 1 / 9),
        (120, 1.0, 1 / 9), (0, 0.5, 0.5), (0, STRAIGHT_FROM - 0.01, 0.0), (0, STRAIGHT_FROM, 0.35),
    ],
)  # fmt: skip
@pytest.mark.parametrize("turn", [0, 40])
def test_a_stroke_square_to_the_pull_takes_the_most_care(heading, straight, awkward, turn):
    """As the square of the angle to the pull, over a right angle; a push a little more."""
    for deep, kind, seen in [
        (False, "decorative", math.sin(EYE)),
        (True, "expansion", math.sin(EYE) ** DEEP_SIGHT_POWER.value),
    ]:
        (found,) = care(stroke(heading + turn, straight, deep), np.radians([turn]))
        pushed = PUSH_COST * (heading > 0)
        expected = 2.0 * (1 + PULL_COST[kind].value * awkward + pushed) / seen
        assert found == pytest.approx([expected])


def test_the_dough_is_seen_as_its_normal_meets_the_eye():
    """The share is the cosine between the normal and the way to the eye, above the cutter."""
    normal = np.random.default_rng(3).normal(size=(40, 3)) * [1, 1, 0.3]
    normal[:, 2] = np.abs(normal[:, 2])
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    for angle in (0.0, 1.0, 4.0):
        c, s = math.cos(angle), math.sin(angle)
        eye = np.array([0.0, -math.cos(EYE), math.sin(EYE)])
        seen = normal @ np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]]) @ eye
        assert (seen < LEAST_SIGHT).any() and (seen > LEAST_SIGHT).any()
        expected = np.maximum(seen, LEAST_SIGHT)
        np.testing.assert_allclose(sight(normal, np.array([angle]))[:, 0], expected)


@pytest.mark.parametrize(("hand", "side"), [("right", 1), ("left", -1)])
@pytest.mark.parametrize("table", [0, 100])
def test_a_stroke_is_pulled_toward_the_cutter_and_the_hand(hand, side, table):
    """A free pull drifts to the side of the hand: what is within a right angle of it stays."""
    aside = PULL_ASIDE_DEG.value
    for off, against in [(0, False), (89, False), (-89, False), (91, True), (-91, True)]:
        heading = -90 + side * aside + off + table
        made = stroke(heading)
        rows = np.array([0])
        turn = math.radians(table)
        assert backward(made, rows, Bench(hand), turn).tolist() == [against]
        aimless = replace(made, straight=np.array([STRAIGHT_FROM - 0.01]))
        assert backward(aimless, rows, Bench(hand), turn).tolist() == [False]


def test_cuts_are_measured_each_by_itself():
    """A half circle about the crown, and a line in from the rim."""
    angles = np.linspace(0, math.pi, 181)
    half = 50 * np.column_stack([np.cos(angles), np.sin(angles)])
    line = [[0, -80], [0, -30]]
    made = strokes(layout([cut(half), cut(line, depth=8), cut(half[::-1])], loaf=LOW))
    plan = LOW.sheet_to_plan([[50.0, 0.0], [0.0, -80.0], [0.0, -30.0], [0.0, -55.0]])
    radius = plan[0, 0]
    np.testing.assert_allclose(made.winding, [math.pi, 0, -math.pi], atol=1e-9)
    np.testing.assert_allclose(made.straight, [2 / math.pi, 1, 2 / math.pi], rtol=1e-4)
    chords = [[-2 * radius, 0], plan[2] - plan[1], [2 * radius, 0]]
    np.testing.assert_allclose(made.chord, chords, atol=1e-9)
    np.testing.assert_allclose(made.middle, [[0, radius], plan[3], [0, radius]], atol=1e-6)
    np.testing.assert_allclose(made.normal, LOW.normal(made.middle), atol=1e-9)
    np.testing.assert_allclose(np.einsum("ij,ij->i", made.tangent, made.normal), 0, atol=1e-4)
    np.testing.assert_allclose(np.linalg.norm(made.tangent, axis=1), 1)
    np.testing.assert_allclose(made.tangent[[0, 2]], [[-1, 0, 0], [1, 0, 0]], atol=1e-4)
    assert made.tangent[1, 1] > 0 and made.tangent[1, 2] > 0  # in toward the crown, and up
    assert made.deep.tolist() == [False, True, False] and not made.spun.any()
    taken = made.rows(np.array([1]))
    assert taken.winding.tolist() == [made.winding[1]] and len(taken.chord) == 1


def test_a_cut_that_winds_three_hundred_degrees_is_spun():
    for degrees, spun in [(299, False), (301, True), (-301, True)]:
        angles = np.radians(np.linspace(0, degrees, 200))
        line = 50 * np.column_stack([np.cos(angles), np.sin(angles)])
        assert strokes(layout([cut(line)])).spun.tolist() == [spun]


def test_scissors_point_away_from_the_hand_that_holds_them():
    """A snip is drawn as its tip: both blades come from the open side, where the hand is."""
    for turn in (0, 70):
        tip = turned([[20, -5], [25, 0], [30, 5], [35, 0], [40, -5]], turn)
        (chord,) = strokes(layout([replace(cut(tip, blade=40), hinge_mm=5.0)], loaf=LOW)).chord
        toward = turned([0, 1], turn)
        assert float(chord @ toward) == pytest.approx(20 * math.sqrt(2), rel=0.02)
        assert float(np.hypot(*chord)) == pytest.approx(20 * math.sqrt(2), rel=0.02)


def test_the_table_is_tried_at_every_degree_or_every_fifth_the_usual_way_round():
    assert np.degrees(table_angles(2000, 1)).tolist() == pytest.approx(range(360))
    assert np.degrees(table_angles(2001, 1)).tolist() == pytest.approx(range(0, 360, 5))
    assert np.degrees(table_angles(1, -1))[:3].tolist() == pytest.approx([0, 359, 358])
