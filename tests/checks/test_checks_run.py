import numpy as np
import pytest

from scorecraft import checks
from scorecraft.checks import CHECKS, MOST_FINDINGS, Check, bounded, run
from scorecraft.checks.finding import SEVERITIES, Finding
from scorecraft.checks.known import Known
from scorecraft.checks.telling import likewise, told_once
from scorecraft.designing import make
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.places import clock, where

GOOD = """
title "Leaf crown"
loaf round width 220mm height 95mm
bench temperature 5C
around 8 radius 26mm:
    leaf length 58mm width 24mm veins 4 depth 6mm vein_depth 2.5mm
fill disc radius 16mm with scales size 6mm depth 2mm
"""


def test_weightiest_first_and_every_check_by_its_name(cut, lay):
    found = run(
        lay(
            cut((0, 0), (0, 200), depth=8),
            cut((-50, 3), (50, 3), depth=30, blade=40),
            cut((-50, 5), (50, 5), depth=8),
            cut((-50, 5), (50, 5), depth=8),
        )
    )
    assert [each.weight for each in found] == sorted(each.weight for each in found)
    assert {each.check for each in found} <= set(CHECKS)
    assert {"rim", "overlaps", "strips", "undercut", "depth"} <= {each.check for each in found}
    assert all(each.hint and each.message and each.place for each in found)
    assert {each.severity for each in found} <= set(SEVERITIES)


def test_a_good_design_has_no_stop_and_no_warning():
    found = make(GOOD).drawn_findings
    assert [each.message for each in found if each.severity != "note"] == []


def test_leaves_that_overlap_are_told_once():
    crowded = GOOD.replace("around 8", "around 14").replace("radius 26mm", "radius 12mm")
    found = [each for each in make(crowded).drawn_findings if each.check == "crossings"]
    assert found
    assert all(each.figures["count"] >= 14 for each in found)
    assert {each.severity for each in found} == {"warning"}
    assert len(found) <= 3


@pytest.mark.parametrize(
    ("point", "says"),
    [
        ((0, 5), "near the crown"),
        ((0, 100), "at 12 o'clock"),
        ((100, 0), "at 3 o'clock"),
        ((50, -86.6), "at 5 o'clock"),
        ((-150, 0), "at 9 o'clock, just above the base"),
    ],
)
def test_places_are_told_by_the_clock(point, says):
    assert where(make_loaf("round", 220, None, 95), point) == says


def test_a_direction_is_told_by_the_clock():
    assert clock(0.0) == "at 3 o'clock"


def test_more_of_the_same_are_counted_as_far_as_they_are_known():
    assert likewise(1) == likewise(1, whole=False) == ""
    assert likewise(3) == " (2 more like it)"
    assert likewise(3, whole=False) == " (at least 2 more like it)"


def test_no_check_tells_more_than_can_be_read():
    """Thirty slashes through the crown: each crosses all others, at every angle."""
    lines = "".join(f"slash 180mm turn {6 * k}deg depth 6mm\n" for k in range(30))
    findings = make(f'title "Many"\nloaf round width 240mm height 90mm\n{lines}').checked
    told = [finding for finding in findings if finding.check == "crossings"]
    assert len(told) == MOST_FINDINGS + 1
    assert told[-1].message.startswith("385 more findings")
    assert [finding.severity for finding in told[:-1]].count("note") == 0
    few = [Finding("rim", "note", "one", "mend it", None)]
    assert bounded(few) == few


def test_told_once():
    cases = told_once(["a", "b", "a"], np.array([1.0, 5.0, 2.0]))
    assert [(worst, members.tolist()) for worst, members in cases] == [(2, [0, 2]), (1, [1])]


def test_cuts_of_no_length_break_no_check(cut, lay):
    dots = [cut((10, 10), (10, 10), depth=9, blade=40), cut((10, 10), (10, 10), depth=9)]
    whole = cut((-40, 10), (40, 10), depth=9, blade=40)
    assert isinstance(run(lay(*dots, whole)), tuple)
    assert run(lay()) == ()


def test_what_was_found_before_is_taken_over_but_from_checks_that_are_surer_now(lay, monkeypatch):
    old, new = (Finding("rim", "note", said, "mend it", None) for said in ("old", "new"))
    rows = {
        "plain": Check("plain", "", "layout", lambda _: [new]),
        "surer": Check("surer", "", "layout", lambda _: [new], surer="opening"),
        "late": Check("late", "", "opening", lambda _: [new]),
    }
    monkeypatch.setattr(checks, "CHECKS", rows)
    before = {"plain": (old,), "surer": (old,)}
    assert checks.untried(Known(lay())) == {"plain": (new,), "surer": (new,)}
    assert checks.untried(Known(lay(), "work"), before) == before
    at_last = {"plain": (old,), "surer": (new,), "late": (new,)}
    assert checks.untried(Known(lay(), "opening"), before) == at_last


def test_findings_are_bounded_at_fifty_the_weightiest_first():
    notes = [Finding("rim", "note", str(k), "mend it", None) for k in range(MOST_FINDINGS)]
    stop = Finding("rim", "stop", "grave", "mend it", None)
    assert bounded(notes) == notes
    told = bounded([*notes, stop, notes[0]])
    assert told[0] is stop and told[1:50] == notes[:49] and len(told) == 51
    assert told[50].message == "2 more findings of this kind (rim) are not listed"
    assert told[50].severity == "note"


def test_without_what_they_need_later_checks_find_nothing(lay):
    known = Known(lay(), "opening")
    assert all(CHECKS[name].find(known) == [] for name in ("opens", "bench_time", "room"))
