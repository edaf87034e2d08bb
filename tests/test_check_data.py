"""What `check --json` prints is what its schema says, and as exact as it says."""

import copy
import json
from math import log
from typing import get_args

import pytest
from jsonschema import Draft202012Validator
from jsonschema.exceptions import best_match
from support.shelf_designs import shipped, some

from scorecraft import design
from scorecraft.check_data import FORMAT, SCHEMA, as_data, refused
from scorecraft.checks.cure import ChangeKind
from scorecraft.checks.finding import SEVERITIES
from scorecraft.cuts import Hand, Kind, Order
from scorecraft.errors import PatternError, UsageError
from scorecraft.opening.room import ROOMS

ROUND = "loaf round width 220mm height 95mm\n"
TOLD = json.loads(SCHEMA.read_text("utf-8"))


def slip(data):
    """Tell what the schema has against data, as they are after a journey through JSON, or None."""
    printed = json.loads(json.dumps(data, allow_nan=False))
    worst = best_match(Draft202012Validator(TOLD).iter_errors(printed))
    return worst and f"{worst.json_path}: {worst.message}"


def test_the_schema_is_one():
    Draft202012Validator.check_schema(TOLD)
    assert TOLD["$schema"].endswith("draft/2020-12/schema")


@pytest.mark.parametrize("name", some(2, 6))
def test_shipped_patterns_are_told_by_the_schema(name):
    assert not slip(as_data(shipped(name)))


def test_a_quick_check_and_a_loaf_without_cuts_are_told_by_the_schema():
    assert not slip(as_data(shipped("leaf-crown"), quick=True))
    assert not slip(as_data(design(ROUND + 'note "plain"\n')))


def refusal(pattern, **options):
    with pytest.raises((PatternError, UsageError)) as caught:
        design(pattern, **options)
    return refused(caught.value)


@pytest.mark.parametrize(
    ("pattern", "options"),
    [
        (ROUND + "slahs 3mm\nleaf lenght 3mm\n", {}),
        ("leaf-crwn", {}),
        ("leaf-crown", {"loaf": "round width 220"}),
        ("leaf-crown", {"knobs": {"leaves": 99}}),
    ],
)
def test_what_is_refused_is_told_by_the_schema(pattern, options):
    assert not slip(refusal(pattern, **options))


def test_a_refusal_tells_every_problem_with_its_place_and_a_fix():
    first, second = refusal(ROUND + "slahs 3mm\nleaf lenght 3mm\n")["errors"]
    assert (first["line"], first["column"], first["length"]) == (2, 1, 5)
    assert "slahs" in first["message"] and "slash" in first["fix"]
    assert (second["line"], second["column"]) == (3, 6)


def without(data, *path):
    """Leave out what lies at a path."""
    changed = copy.deepcopy(data)
    inside = changed
    for step in path[:-1]:
        inside = inside[step]
    del inside[path[-1]]
    return changed


def test_the_schema_refuses_what_is_lacking_too_much_or_of_another_kind():
    good = as_data(shipped("one-slash"))
    paths = [("format",), ("baked",), ("cuts", 0, "seconds"), ("bench", "holding_time_minutes")]
    assert all(slip(without(good, *path)) for path in paths)
    assert slip(good | {"errors": []}) and slip(good | {"title": None})
    off = as_data(design(ROUND + "slash 400mm depth 10mm\n"), quick=True)["findings"][0]
    assert not slip(good | {"findings": [off]})
    deep = as_data(design(ROUND + "slash 100mm depth 30mm\n"), quick=True)["findings"][0]
    assert not slip(good | {"findings": [deep]})
    assert [each["kind"] for each in deep["fixes"][0]["changes"]] == ["shallower"]
    assert slip(good | {"findings": [off | {"severity": "grave"}]})
    assert slip(refused(UsageError("no")) | {"errors": []})


def test_the_words_of_the_schema_are_those_of_the_program():
    parts = {name: part.get("properties") for name, part in TOLD["$defs"].items()}
    assert parts["design"]["format"]["const"] == FORMAT
    assert parts["finding"]["severity"]["enum"] == list(SEVERITIES)
    assert parts["cut"]["kind"]["enum"] == list(get_args(Kind))
    assert parts["bench"]["hand"]["enum"] == list(get_args(Hand))
    assert parts["bench"]["order"]["enum"] == list(get_args(Order))
    assert parts["room"]["verdict"]["enum"] == list(ROOMS)
    assert parts["change"]["kind"]["enum"] == list(get_args(ChangeKind))


def test_every_cut_has_its_turn_its_step_and_its_time():
    made = shipped("leaf-crown")
    told = as_data(made)
    assert sorted(cut["order"] for cut in told["cuts"]) == list(range(1, len(made.cuts) + 1))
    by_turn = sorted(told["cuts"], key=lambda cut: cut["order"])
    steps = [cut["step"] for cut in by_turn]
    assert steps == sorted(steps) and steps[-1] == told["bench"]["steps"]
    numbers = list(dict.fromkeys(cut["number"] for cut in by_turn))
    assert numbers == sorted(numbers), "numbers follow the order of cutting"
    assert sum(cut["seconds"] for cut in by_turn) < told["bench"]["seconds"]
    assert told["bench"]["holding_time_minutes"] * 60 == pytest.approx(
        made.work.allowed_s, abs=0.05
    )


def test_the_baked_loaf_has_grown_by_its_spring():
    """Volume grows by the spring: length, width and height by factors whose product it is."""
    told = as_data(design(ROUND + "bake spring 1.4 spread 50%\nslash 100mm depth 8mm\n"))
    sizes = ("width_mm", "length_mm", "height_mm")
    grown = [told["baked"][size] / told["loaf"][size] for size in sizes]
    assert sum(map(log, grown)) == pytest.approx(log(1.4), abs=1e-4)
    assert log(grown[0]) + log(grown[1]) == pytest.approx(0.5 * log(1.4), abs=1e-4)


def test_hole_tin_and_what_hands_do_are_told():
    ring = as_data(
        design("loaf ring width 240mm height 60mm hole 80mm\nat y 40%:\n    slash 20mm\n"),
        quick=True,
    )
    tin = as_data(design("loaf tin pan two_pound dough 900g\nslash 120mm\n"), quick=True)
    leaf, ear = (as_data(shipped(name), quick=True) for name in ("fougasse-leaf", "ear-of-wheat"))
    assert not any(map(slip, (ring, tin, leaf, ear)))
    assert ring["loaf"]["hole_mm"] == 80 and 0 < ring["baked"]["hole_mm"] < 80
    assert tin["loaf"]["hole_mm"] is None and 40 < tin["loaf"]["wall_mm"] < 72
    assert ring["loaf"]["wall_mm"] is ring["shaped"] is None
    assert {(cut["through"], cut["pulled_mm"] > 10, cut["hinge_mm"]) for cut in leaf["cuts"]} == {
        (True, True, None)
    }
    assert leaf["shaped"]["width_mm"] > leaf["loaf"]["width_mm"]
    assert {(cut["through"], cut["pulled_mm"], cut["hinge_mm"]) for cut in ear["cuts"]} == {
        (False, None, 6)
    }
    assert {cut["laid"] for cut in ear["cuts"]} == {"left", "right"}


def test_a_wished_opening_is_told_beside_the_depth_that_gives_it():
    (cut,) = as_data(design(ROUND + "slash 150mm opens 8mm\n"))["cuts"]
    assert cut["wished_opening_mm"] == 8 and 3 < cut["depth_mm"] < 20


def test_a_quick_one_has_neither_bench_nor_openings():
    made = design(ROUND + "slash 150mm depth 8mm\n")
    told = as_data(made, quick=True)
    assert told["bench"] is None and told["room"] is None and told["opening"] == []
    assert {told["cuts"][0][name] for name in ("number", "order", "step", "seconds")} == {None}
    assert not {"work", "opening"} & set(vars(made)), "nor were they made"
