"""What is told of wished openings, of depths that are given by hand."""

from dataclasses import replace

import numpy as np
import pytest

from scorecraft.checks.opens import opens
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.loaf.dome import make_loaf
from scorecraft.opening.depth import Wanted
from scorecraft.opening.wishes import Met


def met(lay, cut, wishes, reached, most, reachable, *, settled=True, depths=None, loaf=None):
    """Cuts of two statements by turns, with what their wishes came to."""
    cuts = [
        replace(cut((0, k), (40, k), depth=depth, family=1 + k % 2), opens_mm=wish)
        for k, (wish, depth) in enumerate(zip(wishes, depths or [9.0] * len(wishes), strict=True))
    ]
    found = Wanted(
        np.array([each.depth_mm for each in cuts]), np.array(reached), np.array(reachable),
        lambda: np.array(most), settled,
    )  # fmt: skip
    return Met(lay(*cuts, **({"loaf": loaf} if loaf else {})), found)


def test_wishes_out_of_reach_are_told_once_a_statement_by_the_least(cut, lay):
    made = met(lay, cut, [12] * 4, [6.0] * 4, [9.04, 8.0, 7.0, 11.0], [False, True, False, False])
    first, second = opens(made)
    assert (first.cuts, second.cuts) == ((0, 2), (3,))
    assert first.figures == {"most_mm": 7.0, "count": 2} and first.severity == "warning"
    assert first.message == (
        "the slash cannot open 12 mm: however deep you cut, it opens only 7.0 mm between its "
        "neighbours"
    )
    assert first.hint.startswith("ask for 6.3 mm or less") and "9.9 mm" in second.hint


@pytest.mark.parametrize(("depth", "bounded"), [(9.4, False), (9.6, True), (10.0, True)])
def test_where_the_loaf_takes_no_deeper_cut_it_is_told_so(cut, lay, depth, bounded):
    flat = make_loaf("round", 200, None, 40)
    made = met(lay, cut, [12], [9.0], [9.0], [False], depths=[depth], loaf=flat)
    (found,) = opens(made)
    assert ("as deep as this loaf takes" in found.message) is bounded


def test_wishes_met_only_roughly_are_told_by_the_worst(cut, lay):
    wishes, reached = [10, None, 10, 10, 10], [10.4, 3.0, 10.6, 8.0, 12.6]
    made = met(lay, cut, wishes, reached, reached, [True] * 5, settled=False)
    first, second = opens(made)
    assert first.cuts == (2, 4) and second.cuts == (3,)
    assert first.figures == {"reached_mm": 12.6, "count": 2}
    assert first.message.startswith("the slash opens about 12.6 mm, not the 10 mm asked for")
    assert first.message.endswith("(1 more like it)")
    settled = met(lay, cut, wishes, reached, reached, [True] * 5)
    assert opens(settled) == []


@pytest.mark.parametrize(
    ("error", "why"),
    [(UsageError("too much"), "too many cuts for that"), (ScorecraftError("lost"), "lost")],
)
def test_where_no_depths_were_sought_it_is_told_why(cut, lay, error, why):
    made = met(lay, cut, [10, 10, None, None], [1.0] * 4, [1.0] * 4, [True] * 4)
    (found,) = opens(Met(made.layout, refused=error))
    assert found.cuts == (0, 1) and found.figures == {"count": 2} and why in found.message
    assert found.place.line == 2
    assert opens(Met(made.layout)) == []
