"""What a cure changes, and when a change is no graver."""

from dataclasses import replace

import numpy as np
import pytest

from scorecraft.checks import found, ranked, run
from scorecraft.checks.changes import added, applied, without
from scorecraft.checks.cures import (
    MOST_TRIED_FINDINGS,
    has_place,
    holds,
    in_the_way,
    no_graver,
    tried,
)
from scorecraft.checks.finding import Finding, Offer
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
    assert [layout.cuts[i].depth_mm for i in in_the_way(layout, [line], 10.0)] == [2.0]


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
        made += [(raw, applied(layout, cure.changes)) for cure in told.cures]
        assert not told.cures or told.hint == ", or ".join(each.told for each in told.cures)
    for cured, after in ((raw, run(after)) for raw, after in made):
        assert no_graver(before, after)
        assert cured.message not in [each.message for each in after]
    assert made or not any(each.offers for each in before if each.severity == "warning")


CUTS = applied(ROUND, [added([np.array([[-30.0, 40.0], [30.0, 40.0]])], 8.0, np.pi / 2)])
"""Two cuts, of two statements."""


def finding(severity="warning", count=1, cuts=(0,), check="strips", offers=()):
    return Finding(check, severity, "", "plain words", None, {"count": count}, cuts, offers=offers)


@pytest.mark.parametrize(
    ("after", "others", "holding"),
    [
        ([], [], True),
        ([finding()], [], False),
        ([finding(cuts=(1,), count=2)], [], False),
        ([finding("note", cuts=(1,))], [], True),
        ([], [finding("note", check="rim")], True),
        ([], [finding("warning", check="rim")], False),
        ([], [finding("stop", check="rim")], False),
    ],
)
def test_a_cure_holds_where_its_finding_goes_and_nothing_graver_comes(after, others, holding):
    looks = {"strips": lambda _: after, "rim": lambda _: others}
    offer = Offer("mend it", CUTS, tuple)
    assert holds(offer, CUTS, finding(), [finding()], looks) is holding


@pytest.mark.parametrize(("left", "holding"), [(0, True), (1, False), (2, False)])
def test_all_places_of_a_finding_are_mended_or_it_does_not_hold(left, holding):
    before = [finding(count=2), finding("note", count=5, cuts=(1,))]
    after = [*([finding(count=left)] if left else []), before[1]]
    looks = {"strips": lambda _: after}
    assert holds(Offer("", CUTS, tuple), CUTS, before[0], before, looks) is holding


def test_another_finding_of_the_same_statement_may_stay():
    """A stop of two places is mended, a note of three more stays."""
    before = [finding("stop", count=2), finding("note", count=3)]
    looks = {"strips": lambda _: before[1:]}
    assert holds(Offer("", CUTS, tuple), CUTS, before[0], before, looks)


HELP = (without([0, 1]),)


def test_the_first_offers_that_hold_are_told_else_the_plain_words():
    looks = {"strips": lambda layout: [finding()] if layout.cuts else []}
    no_help, helps = Offer("no help", CUTS, tuple), Offer("help", CUTS, lambda: HELP)
    also, more = replace(helps, told="do that"), replace(helps, told="more")
    (told,) = tried(CUTS, [finding(offers=(no_help, helps, also, more))], [finding()], looks)
    assert told.hint == "help, or do that" and told.offers == ()
    assert [(cure.told, cure.changes) for cure in told.cures] == [("help", HELP), ("do that", HELP)]
    (plain,) = tried(CUTS, [finding(offers=(no_help,))], [finding()], looks)
    assert plain.hint == "plain words" and plain.offers == plain.cures == ()


def test_the_weightiest_are_tried_first_and_no_more_than_can_be():
    looks = {"strips": lambda _: []}
    help_it = (Offer("help", CUTS, lambda: HELP),)
    many = [finding("note", offers=help_it)] * MOST_TRIED_FINDINGS + [
        finding("stop", offers=help_it)
    ]
    told = tried(CUTS, many, many, looks)
    assert [each.severity for each in told] == ["stop"] + ["note"] * MOST_TRIED_FINDINGS
    assert [each.hint for each in told].count("help") == MOST_TRIED_FINDINGS
    assert told[-1].hint == "plain words"


@pytest.mark.parametrize(("apart", "free"), [(9.5, False), (9.7, True)])
def test_a_cut_finds_its_place_beside_a_strip_as_wide_as_both_depths_want(apart, free):
    """Cuts of 8 mm want 9.6 mm between them."""
    beside = np.array([[-30.0, apart], [30.0, apart]])
    if ROUND.cuts[0].line[0, 0] == pytest.approx(0):
        beside = beside[:, ::-1]
    assert has_place(ROUND, beside, 8.0) is free


@pytest.mark.parametrize(("left", "free"), [(12.5, True), (11.5, False)])
def test_a_cut_finds_no_place_within_the_margin_of_the_rim(left, free):
    reach = float(ROUND.loaf.reach(0.0))
    far = np.array([[reach - left - 30, 0.0], [reach - left, 0.0]])
    bare = make("loaf round width 220mm height 90mm\n").layout
    assert has_place(bare, far, 8.0) is free


@pytest.mark.parametrize("angle", [0, 25, 70, 90, 200])
def test_on_a_long_loaf_the_rim_is_kept_off_in_every_direction(angle):
    bare = make("loaf long width 120mm length 320mm height 70mm\n").layout
    turn = np.radians(angle)
    ray, reach = np.array([np.cos(turn), np.sin(turn)]), float(bare.loaf.reach(turn))
    for left, free in ((12.5, True), (11.5, False)):
        assert has_place(bare, np.outer([0.0, reach - left], ray), 8.0) is free


def test_what_gives_way_is_as_near_as_a_strip_would_be_too_narrow(cut, lay):
    """Lines of 10 mm and cuts of 2 mm want 7.2 mm between them."""
    light = [cut((-30, y), (30, y), depth=2) for y in (7.0, 7.4, -6.0)]
    layout = lay(*light, cut((-30, 3), (30, 3), depth=8))
    line = np.array([[-40.0, 0.0], [40.0, 0.0]])
    assert in_the_way(layout, [line], 10.0) == (0, 2)
    assert in_the_way(layout, [line + 60.0, line], 10.0) == (0, 2)
