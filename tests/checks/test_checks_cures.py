"""What a cure changes, and when a change is no graver."""

import numpy as np
import pytest

from scorecraft.checks import found, ranked, run
from scorecraft.checks.cures import has_place, no_graver, with_cuts, without_light_cuts
from scorecraft.checks.finding import Finding
from scorecraft.checks.known import Known
from scorecraft.designing import make

ROUND = make("loaf round width 220mm height 90mm\nslash 60mm depth 8mm\n").layout


def told(check, severity, count=1):
    return Finding(check, severity, "", "", None, {"count": count})


def test_a_change_is_no_graver_only_where_no_check_warns_more():
    before = [told("rim", "warning", 2), told("strips", "stop")]
    assert no_graver(before, before)
    assert no_graver(before, [])
    assert no_graver(
        before, [told("rim", "warning", 2), told("strips", "warning"), told("depth", "note")]
    )
    assert not no_graver(before, [*before, told("depth", "warning")])
    assert not no_graver(before, [told("rim", "warning", 3)])
    assert not no_graver(before, [told("rim", "stop", 2)])
    assert not no_graver([], [told("rim", "stop")])


def test_added_cuts_are_statements_of_their_own():
    line = np.array([[-30.0, 40.0], [30.0, 40.0]])
    changed = with_cuts(ROUND, [line, line + 5], 10.0, np.pi / 2)
    assert [cut.family for cut in changed.cuts] == [0, 1, 2]
    assert len({cut.figure for cut in changed.cuts}) == 3
    assert {cut.depth_mm for cut in changed.cuts[1:]} == {10.0}
    assert with_cuts(make("loaf round width 99mm\n").layout, [line], 9.0, 1.0).cuts[0].family == 0
    again = with_cuts(changed, [line - 9], 8.0, np.pi / 2)
    assert [cut.family for cut in again.cuts] == [0, 1, 2, 3]
    assert len({cut.figure for cut in again.cuts}) == 4


def test_a_cut_finds_its_place_off_other_cuts_and_off_the_rim():
    across = np.array([[-30.0, 0.0], [30.0, 0.0]])
    assert not has_place(ROUND, across, 8.0)
    assert not has_place(ROUND, across[:, ::-1] + [5.0, 0.0], 8.0)
    assert has_place(ROUND, across[:, ::-1] + [20.0, 0.0], 8.0)
    assert not has_place(ROUND, across * 6 + [0.0, 60.0], 8.0)


def test_only_light_cuts_give_way():
    text = "slash 60mm depth 8mm\nslash 60mm turn 90deg depth 2mm\n"
    layout = make("loaf round width 220mm height 90mm\n" + text).layout
    line = np.array([[-40.0, -30.0], [40.0, 30.0]])
    left, count = without_light_cuts(layout, [line], 10.0)
    assert count == 1 and [cut.depth_mm for cut in left.cuts] == [8.0]


LOAVES = (
    "round width 80mm height 40mm",
    "round width 350mm height 20mm",
    "oval width 90mm length 120mm height 50mm",
)
PATTERNS = ("leaf-crown", "tortoiseshell-oval", "one-slash", "filled-cross", "overlapping-slashes")


@pytest.mark.parametrize("loaf", LOAVES)
@pytest.mark.parametrize("name", PATTERNS)
def test_every_told_cure_with_a_number_takes_its_finding_away(name, loaf):
    """Made on the layout, nothing is left of the finding and no check stops or warns anew."""
    layout = make(name, loaf=loaf).layout
    before = run(layout)
    made = []
    for told in ranked(found(Known(layout))):
        assert not told.offers
        (raw,) = (each for each in before if each.message == told.message)
        made += [(raw, offer.layout()) for offer in raw.offers if offer.told == told.hint]
    for cured, after in ((raw, run(after)) for raw, after in made):
        assert no_graver(before, after)
        assert cured.message not in [each.message for each in after]
    assert made or not any(each.offers for each in before if each.severity == "warning")
