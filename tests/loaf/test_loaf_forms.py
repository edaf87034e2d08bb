import math

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.loaf import forms
from scorecraft.loaf.areas import on_plan
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.forms import FORMS, called
from scorecraft.loaf.places import where

RING = make_loaf("ring", 280, None, 52, hole_mm=80)


@pytest.mark.parametrize("form", FORMS)
def test_every_form_is_a_loaf_of_its_usual_measures(form):
    row = FORMS[form]
    loaf = make_loaf(form, 175, 175 * row.longer, max(175 * row.stands, 20))
    assert loaf.shape == form and loaf.length_mm == pytest.approx(175 * row.longer)
    sheet = loaf.at_share(
        np.linspace(0, math.tau, 30), np.linspace(-0.9 if row.hole else 0.1, 0.99, 30)
    )
    assert loaf.plan_to_sheet(loaf.sheet_to_plan(sheet)) == pytest.approx(sheet, abs=0.01)
    assert loaf.height_at(loaf.sheet_to_plan(sheet)).min() > 0
    assert on_plan(loaf).area == pytest.approx(loaf.plan_area_mm2, rel=1e-3)


def test_every_form_tells_its_usual_measures():
    said = [rule.says for _, rule in forms.table()]
    for form in FORMS:
        assert any(FORMS[form].called in each and "length" in each for each in said)
    assert any("a 2 lb tin, 800 to 1050 g" in each for each in said)


def test_a_ring_is_highest_halfway_between_its_rims():
    assert RING.height_at([[90, 0], [41, 0], [139, 0], [39, 0], [0, 0]]) == pytest.approx(
        [52, 52 * math.sqrt(1 - 0.98**2), 52 * math.sqrt(1 - 0.98**2), 0, 0]
    )
    assert RING.normal([[90.0, 0.0]])[0] == pytest.approx([0, 0, 1], abs=1e-9)
    inner, outer = RING.normal([[60.0, 0.0], [120.0, 0.0]])
    assert inner == pytest.approx(outer * [-1, 1, 1])
    assert RING.sheet_to_plan([[20.0, 0.0]])[0] == pytest.approx([20, 0])  # across the hole


def test_places_on_a_ring_are_told_by_its_crest():
    theta = np.array([0.0])
    said = [where(RING, RING.at_share(theta, np.array([s]))[0]) for s in (0.0, -0.5, -0.9, 0.9)]
    assert said == [
        "at 3 o'clock, on the crest",
        "at 3 o'clock, toward the hole",
        "at 3 o'clock, at the hole",
        "at 3 o'clock, just above the base",
    ]


def test_a_ring_of_hardly_any_dough_is_refused():
    with pytest.raises(UsageError, match="narrower than 15 mm"):
        make_loaf("ring", 280, None, 50, hole_mm=255)


def test_loaves_are_called_as_bakers_do():
    assert [called(each) for each in ("ring", "baguette", "epi", "traced")] == [
        "ring loaf", "baguette", "épi", "traced loaf"
    ]  # fmt: skip
    assert make_loaf("roll", 80, None, 38).called == "roll"


def test_only_superellipses_that_may_be_of_any_length_taper():
    assert [name for name, form in FORMS.items() if form.tapers] == [
        "oval", "long", "baguette", "epi"
    ]  # fmt: skip


def test_the_table_tells_every_measure_once():
    rules = {rule.says: rule for _, rule in forms.table()}
    assert rules["length over width of a round loaf"].value == 1.0
    assert rules["usual hole over width of a ring loaf"].value == 0.34
    assert rules["of dough for a 1 lb tin, 400 to 520 g"].value == 460
    assert not any("hole over width of a round loaf" in says for says in rules)
    assert "power of a star's rim; 2 is an ellipse, more is squarer" not in rules
    assert rules["power of a square loaf's rim; 2 is an ellipse, more is squarer"].value == 4.0
    assert rules["usual height over width of a star loaf"].source != (
        rules["usual height over width of a round loaf"].source
    )


def test_an_unknown_form_is_refused_with_those_there_are():
    with pytest.raises(UsageError) as caught:
        forms.form_of("cushion")
    assert (
        caught.value.hint.startswith("use round, oval,") and "triangle or star" in caught.value.hint
    )
