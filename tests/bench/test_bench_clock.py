"""Times of strokes and turns, the time the dough allows, and the finding that compares them."""

import math
from dataclasses import replace

import numpy as np
import pytest
from support.bench_layouts import cut, layout, rays

from scorecraft.bench import work_of
from scorecraft.bench.clock import allowed_seconds, stroke_seconds, told, told_between, turn_seconds
from scorecraft.checks import bench_time as check
from scorecraft.loaf.dough import Dough
from scorecraft.practice import (
    BENCH_TIME_HALVES_C,
    BENCH_TIME_LIMITS_S,
    BENCH_TIME_S,
    PLACE_BLADE_S,
    TURN_TABLE_S,
)


def test_longer_strokes_take_longer_and_deep_ones_are_pulled_faster():
    light, longer = stroke_seconds(np.array([50.0, 100.0]), np.zeros(2, bool))
    deep, deeper = stroke_seconds(np.array([50.0, 100.0]), np.ones(2, bool))
    placing = PLACE_BLADE_S["decorative"].value
    assert longer - placing == pytest.approx(2 * (light - placing))
    assert deeper - deep < longer - light


def test_a_turn_takes_time_and_none_takes_none():
    none, quarter, half = turn_seconds(np.array([0.0, math.pi / 2, -math.pi]))
    assert none == 0
    assert half - TURN_TABLE_S.value == pytest.approx(2 * (quarter - TURN_TABLE_S.value))


def test_warm_and_wet_dough_allows_less_time():
    usual = allowed_seconds(Dough())
    assert usual == pytest.approx(BENCH_TIME_S.value)
    warm = Dough(temperature_c=Dough().temperature_c + BENCH_TIME_HALVES_C.value)
    assert allowed_seconds(warm) == pytest.approx(usual / 2)
    assert allowed_seconds(Dough(hydration=0.8)) < usual < allowed_seconds(Dough(hydration=0.6))
    assert allowed_seconds(Dough(kitchen_c=30.0)) < usual < allowed_seconds(Dough(kitchen_c=18.0))
    least, most = (rule.value for rule in BENCH_TIME_LIMITS_S)
    assert allowed_seconds(Dough(temperature_c=90)) == least
    assert allowed_seconds(Dough(temperature_c=-20)) == most


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(2, "5 s"), (43, "45 s"), (90, "1½ min"), (200, "3½ min"), (301, "5 min")],
)
def test_times_are_told_as_a_baker_reads_them(seconds, words):
    assert told(seconds) == words


@pytest.mark.parametrize(
    ("least", "most", "words"),
    [(2, 4, "5 s"), (23, 31, "25–30 s"), (20, 95, "½–1½ min"), (590, 730, "10–12 min"),
     (600, 610, "10 min"), (7000, 9200, "2–2½ h")],
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
    (finding,) = bench_time(many(2000))
    assert "chill" not in finding.hint and "fewer cuts" in finding.hint


def test_a_few_deep_rays_are_in_time():
    assert bench_time(layout(rays(8))) == []
