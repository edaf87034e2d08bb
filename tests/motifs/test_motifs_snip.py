import math

import pytest

from scorecraft.bench import work_of
from scorecraft.bench.telling import (
    aside_words,
    depth_words,
    handle_words,
    handlings,
    severed_words,
)
from scorecraft.errors import PatternError
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.motifs.snip import snip

EAR = "loaf epi width 62mm length 460mm height 40mm\n"
LEAF = "loaf fougasse width 230mm length 310mm height 24mm\n"


def laid(text):
    return expand(parse(text, "pattern"), text)


def test_its_ends_lie_ahead_of_its_middle():
    (stroke,) = snip(width=50.0)
    assert stroke.line[12] == pytest.approx([0, 0])
    assert stroke.line[[0, -1], 1] == pytest.approx([16, 16])


def test_scissors_leave_their_hinge_and_lay_by_turns():
    cuts = laid(EAR + "row 4 spacing 75mm angle 0deg:\n    snip 54mm\n").cuts
    assert [cut.laid for cut in cuts] == [-1, 1, -1, 1]
    for cut in cuts:
        high = laid(EAR).loaf.height_at(laid(EAR).loaf.sheet_to_plan(cut.line)).max()
        assert cut.depth_mm == pytest.approx(high - 6)
        assert math.degrees(cut.blade_rad) == pytest.approx(40)
    assert [
        c.laid for c in laid(EAR + "snip lay right\nat y 90mm:\n    snip lay straight\n").cuts
    ] == [1, 0]


def test_a_cut_right_through_is_as_deep_as_the_dough():
    (cut,) = laid(LEAF + "slash 90mm through pulled 18mm\n").cuts
    assert (cut.through, cut.pulled_mm, cut.depth_mm) == (True, 18, pytest.approx(24, abs=0.1))
    (said,) = laid(LEAF + "slash 90mm pulled 18mm through yes\n").cuts
    assert (said.through, said.pulled_mm, said.depth_mm) == (True, 18, cut.depth_mm)
    (plain,) = laid(LEAF + "slash 90mm through no\n").cuts
    assert not plain.through and plain.depth_mm == 8
    with pytest.raises(PatternError, match="only a cut right through can be pulled"):
        laid(LEAF + "slash 90mm pulled 18mm\n")


def test_the_card_says_what_the_hands_do():
    layout = laid(EAR + "row 4 spacing 75mm angle 0deg:\n    snip 54mm\n")
    told = [
        handling
        for step in work_of(layout).runs
        for handling in handlings(layout, step, dict.fromkeys(range(4), 1))
    ]
    assert {depth_words(each) for each in told} == {"leave 6 mm"}
    assert {handle_words(each) for each in told} == {
        "scissors at 40° to the dough, handles toward you"
    }
    assert aside_words(layout.cuts) == "lay each piece aside at once: left, right, left …"
    assert aside_words(layout.cuts[:1]) == "lay each piece aside at once: left"
    pulled = laid(LEAF + "slash 90mm through pulled 18mm\n").cuts
    assert severed_words(pulled[0]) == "right through"
    assert aside_words(pulled) == "pull open to 18 mm once all is cut"
    assert aside_words(laid(LEAF + "slash 90mm\n").cuts) == ""
