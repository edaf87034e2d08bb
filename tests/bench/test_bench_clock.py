"""Times of strokes and turns, the time the dough allows, and the finding that compares them."""

import math
from dataclasses import replace

import numpy as np
import pytest
from support.bench_layouts import cut, layout, rays

from scorecraft.bench import work_of
from scorecraft.bench.clock import (
    aim_seconds,
    allowed_seconds,
    mark_seconds,
    spin_seconds,
    stroke_seconds,
    told,
    told_between,
    turn_seconds,
)
from scorecraft.checks import bench_time as check
from scorecraft.loaf.dough import Dough
from scorecraft.practice import (
    AIM_S,
    BENCH_TIME_HALVES_C,
    BENCH_TIME_HALVES_KITCHEN_C,
    BENCH_TIME_LIMITS_S,
    BENCH_TIME_PER_WATER,
    BENCH_TIME_S,
    PLACE_BLADE_S,
    SPIN_DEG_PER_S,
    STRING_MARK_S,
    STROKE_MM_PER_S,
    TURN_DEG_PER_S,
    TURN_TABLE_S,
)


@pytest.mark.parametrize(("kind", "deep"), [("decorative", False), ("expansion", True)])
def test_a_stroke_takes_the_setting_of_the_blade_and_its_length_at_its_speed(kind, deep):
    seconds = stroke_seconds(np.array([0.0, 60.0]), np.array([deep, deep]))
    placing, speed = PLACE_BLADE_S[kind].value, STROKE_MM_PER_S[kind].value
    np.testing.assert_allclose(seconds, [placing, placing + 60 / speed])


def test_a_turn_takes_time_and_none_takes_none():
    none, hair, least, half = turn_seconds(np.array([0.0, -9e-7, 1.1e-6, -math.pi]))
    assert none == hair == 0
    assert least == pytest.approx(TURN_TABLE_S.value, abs=1e-4)
    assert half == pytest.approx(TURN_TABLE_S.value + 180 / TURN_DEG_PER_S.value)


def test_aims_spins_and_strings_take_their_time_each():
    assert aim_seconds(3) == 3 * AIM_S.value
    assert spin_seconds(-math.tau) == pytest.approx(360 / SPIN_DEG_PER_S.value)
    assert mark_seconds(2) == 2 * STRING_MARK_S.value


def test_warm_and_wet_dough_allows_less_time():
    usual = allowed_seconds(Dough())
    assert usual == pytest.approx(BENCH_TIME_S.value)
    warm = Dough(temperature_c=Dough().temperature_c + BENCH_TIME_HALVES_C.value)
    assert allowed_seconds(warm) == pytest.approx(usual / 2)
    cool = Dough(kitchen_c=Dough().kitchen_c - BENCH_TIME_HALVES_KITCHEN_C.value)
    assert allowed_seconds(cool) == pytest.approx(usual * 2)
    wet = Dough(hydration=Dough().hydration + 0.1)
    assert allowed_seconds(wet) == pytest.approx(usual * (1 - 0.1 * BENCH_TIME_PER_WATER.value))
    least, most = (rule.value for rule in BENCH_TIME_LIMITS_S)
    assert allowed_seconds(Dough(temperature_c=90)) == least
    assert allowed_seconds(Dough(temperature_c=-20)) == most


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(2, "5 s"), (43, "45 s"), (89, "90 s"), (90, "1½ min"), (106, "2 min"), (301, "5 min")],
)
def test_times_are_told_as_a_baker_reads_them(seconds, words):
    assert told(seconds) == words


@pytest.mark.parametrize(
    ("least", "most", "words"),
    [(2, 4, "5 s"), (23, 31, "25–30 s"), (80, 89.9, "80–90 s"), (3, 90, "½–1½ min"),
     (20, 95, "½–1½ min"), (300, 359, "5–6 min"), (265, 359, "4½–6 min"), (265, 361, "4–6 min"),
     (590, 730, "10–12 min"), (600, 610, "10 min"), (6000, 7199, "100–120 min"),
     (5300, 7200, "1½–2 h"), (7000, 9200, "2–2½ h"),
     (106, 196, "2–3½ min"), (4501, 8101, "1½–2½ h")],
)  # fmt: skip
def test_a_range_of_times_is_told_in_one_unit(least, most, words):
    assert told_between(least, most) == words


def bench_time(made):
    return check.bench_time(made, work_of(made))


def many(count, **dough):
    lines = [[[x, -30], [x, 30]] for x in np.linspace(-40, 40, count)]
    made = layout([cut(line, "hatch") for line in lines])
    return replace(made, dough=Dough(**dough))


def test_too_many_cuts_for_a_warm_dough_are_found_with_the_way_out():
    assert bench_time(many(60)) == []
    (finding,) = bench_time(many(200))
    assert finding.check == "bench_time" and finding.severity == "warning"
    assert finding.figures["seconds"] > finding.figures["allowed_s"] == BENCH_TIME_S.value
    assert "chill the loaf" in finding.hint and "hatch" in finding.hint
    assert bench_time(many(200, temperature_c=5.0)) == []
    assert bench_time(many(60, temperature_c=34.0, hydration=0.8)) != []


def test_chilling_is_not_advised_where_it_does_not_help():
    (finding,) = bench_time(many(400))
    assert "chill" not in finding.hint and "fewer cuts" in finding.hint


def test_a_few_deep_rays_are_in_time():
    assert bench_time(layout(rays(8))) == []
