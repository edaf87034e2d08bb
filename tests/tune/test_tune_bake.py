"""A bake from end to end: rows to cut numbers, the model, the log entry, the words."""

import json
import math

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.groups import groups
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.predict import predict
from scorecraft.practice import SKIN_MM
from scorecraft.tune.bake import record, tune
from scorecraft.tune.baker import baker_of
from scorecraft.tune.log import Logged, earlier
from scorecraft.tune.measured import Measured
from scorecraft.tune.predict import PANEL_MM, predictor
from scorecraft.tune.telling import log_text, measured_and_predicted, tuned_text

PLACE = Place("made.score", 1, 1)


def cut(x, length, depth, family):
    line = np.array([[x, -length / 2], [x, length / 2]])
    kind = "expansion" if depth >= 5 else "decorative"
    return Cut(
        line, f"line{family}", f"line{family}", family, family, depth, math.pi / 2, kind, PLACE
    )


@pytest.fixture(scope="module")
def layout():
    cuts = (cut(0, 110, 9, 0), cut(-45, 30, 3, 1), cut(45, 22, 3, 1), cut(25, 50, 6, 2))
    return Layout("Made", (), make_loaf("round", 220.0, None, 95.0), Bake(), cuts)


def rows(widths):
    """Rows of the cuts as counted here: the key of family 0 is line0."""
    return [Measured(f"line{count - 1}", width, Place("m.csv", k + 1, 1)) for k, (count, width)
            in enumerate(widths)]  # fmt: skip


def test_the_opening_model_s_own_widths_give_its_skin_back(layout):
    model = predictor(layout, groups(layout))
    widths = model(5.0, 0.05)
    assert widths.shape == (3,)
    tuned = tune(
        layout, groups(layout), rows([(k + 1, w) for k, w in enumerate(widths)] * 6), model
    )
    assert tuned.fit.skin_mm.best == pytest.approx(5.0, rel=0.12)
    assert tuned.fit.inside.low < 0.05 < tuned.fit.inside.high
    assert tuned.fit.skin_mm.low < 5.0 < tuned.fit.skin_mm.high
    np.testing.assert_allclose(tuned.fit.predicted_mm[:3], widths, atol=0.5)


def test_copies_are_taken_by_their_mean(layout):
    widest = predict(layout, Skin(6.0, 0.1), panel_mm=PANEL_MM).widest_mm
    assert widest[1] > 1.05 * widest[2]
    expected = [widest[0], (widest[1] + widest[2]) / 2, widest[3]]
    np.testing.assert_allclose(predictor(layout, groups(layout))(6.0, 0.1), expected, rtol=0.01)


def test_a_thicker_skin_and_a_stiffer_inside_open_the_deep_cut_less(layout):
    model = predictor(layout, groups(layout))
    assert model(5.0, 0.05)[0] > model(8.0, 0.05)[0] > model(14.0, 0.05)[0] > 0
    assert model(8.0, 0.02)[0] > model(8.0, 0.05)[0] > model(8.0, 0.2)[0] > 0


def stand_in(skin_mm, inside):
    """Narrower where the skin is thicker; a deep cut also where the inside is stiffer."""
    return np.array([160.0 * (0.05 / inside) ** 0.3, 12.0, 36.0]) / skin_mm


def test_bakes_of_other_patterns_in_the_log_are_fitted_with_it(layout):
    """Their openings count, without their patterns."""
    deep = [(1, float(stand_in(6.0, 0.1)[0]))] * 8
    light = [(2, float(stand_in(6.0, 0.1)[1])), (3, float(stand_in(6.0, 0.1)[2]))] * 8
    first = tune(layout, groups(layout), rows(deep), stand_in)
    entry = json.loads(json.dumps(record(first, pattern="other", date="", note="")))
    before = earlier(Logged((entry, {"cuts": [{"measured_mm": [4.0]}]}), ()))
    assert len(before) == 1
    alone = tune(layout, groups(layout), rows(light), stand_in)
    both = tune(layout, groups(layout), rows(light), stand_in, before)
    assert len(both.fit.residual_mm) == 24
    assert "fitted together with 1 earlier bake" in tuned_text(both)
    assert abs(math.log(both.fit.inside.best / 0.1)) < abs(math.log(alone.fit.inside.best / 0.1))
    assert both.fit.skin_mm.low < 6.0 < both.fit.skin_mm.high


def test_cuts_keep_their_names_whatever_their_numbers_and_the_record_tells_both(layout):
    """In another order of cutting the same rows are of the same cuts."""
    told = groups(layout, [3, 1, 0])
    assert [group.key for group in told] == ["line2", "line1", "line0"]
    late = tune(layout, told, rows([(3, 9.0), (1, 41.0)]), lambda *skin: stand_in(*skin)[::-1])
    assert [group["key"] for group in record(late, pattern="", date="", note="")["cuts"]] == [
        "line2", "line1", "line0",
    ]  # fmt: skip
    tuned = tune(layout, groups(layout), rows([(3, 9.0), (1, 41.0), (3, 8.6)]), stand_in)
    assert late.fit.skin_mm.best == pytest.approx(tuned.fit.skin_mm.best, rel=0.02)
    assert len(tuned.fit.predicted_mm) == 3
    entry = record(tuned, pattern="made", date="2026-01-02", note="good")
    assert json.loads(json.dumps(entry, allow_nan=False)) == entry
    by_number = {each["number"]: each for each in entry["cuts"]}
    assert by_number[3]["key"] == by_number[3]["name"] == "line2"
    assert by_number[3]["measured_mm"] == [9.0, 8.6]
    assert by_number[1]["measured_mm"] == [41.0]
    assert "measured_mm" not in by_number[2]
    assert by_number[1]["depth_mm"] == 9
    assert len(measured_and_predicted(entry)) == 3


def test_the_report_shows_measured_predicted_and_bounds(layout):
    tuned = tune(layout, groups(layout), rows([(1, 40.0), (2, 3.4), (3, 9.0)]), stand_in)
    text = tuned_text(tuned)
    assert "measured" in text and "40.0 mm" in text and " mm" in text
    assert f"skin thickness {tuned.fit.skin_mm.best:.1f} mm (" in text and "90% sure" in text
    assert "growth 1.0" in text


@pytest.mark.parametrize(
    "widths",
    [
        [(1, 40.0)],
        [(1, 70.0), (2, 9.0)],
        [(1, 0.0), (2, 0.0), (3, 0.0)],
        [(1, 5.0), (1, 90.0), (2, 1.0), (2, 20.0)],
        [(1, 40.0)] * 6,
    ],
)
def test_openings_that_do_not_settle_the_skin_leave_it_and_say_what_would(layout, widths):
    """One, two, none open, some that contradict one another, always the same cut."""
    tuned = tune(layout, groups(layout), rows(widths), stand_in)
    text = tuned_text(tuned)
    assert "best guess so far" in text
    assert "to be sure of the skin: the default of 6 mm is kept" in text
    assert "measure 4 openings or more, some of light cuts" in text
    baker = baker_of(tuned.fit, pattern="", date="")
    assert (baker.settled, baker.skin_mm, baker.growth) == (False, SKIN_MM.value, 1.0)


def test_openings_that_settle_it_are_gone_by(layout):
    made = stand_in(4.2, 0.05)
    widths = [(k + 1, float(w)) for k, w in enumerate(made)] * 8
    tuned = tune(layout, groups(layout), rows(widths), stand_in)
    assert "too few" not in tuned_text(tuned)
    baker = baker_of(tuned.fit, pattern="", date="")
    assert baker.settled and baker.skin_mm == tuned.fit.skin_mm.best < 6
    assert baker.inside == tuned.fit.inside.best


def test_the_log_is_listed_with_what_cannot_be_read(layout):
    tuned = tune(layout, groups(layout), rows([(1, 40.0), (2, 3.4)]), stand_in)
    entry = record(tuned, pattern="made", date="2026-01-02", note="good")
    text = log_text(Logged((entry, {"date": "?"}), (3,)))
    assert "2026-01-02" in text and "made" in text and "good" in text
    assert "line 3 cannot be read" in text
