"""Cuts with scissors: whether their hinges hold, and their pieces can be laid aside."""

import math
from collections.abc import Callable, Iterator

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.finding import Finding
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Cut, Layout
from scorecraft.practice import (
    LEAST_SNIP_HINGE_MM,
    MOST_SNIP_HINGE,
    SNIP_FLATTEST_DEG,
    SNIP_STEEPEST_DEG,
)

HOLDS_MM = 8.0
"""So much dough stays between the end of one cut and the hinge of the next."""


def snips(layout: Layout) -> list[Finding]:
    """Find scissor cuts that cut a piece off, or leave one that cannot be laid to its side."""
    snipped = [index for index, cut in enumerate(layout.cuts) if cut.hinge_mm is not None]
    return [
        *_told(layout, snipped, _hinge),
        *_told(layout, snipped, _held),
        *_overlapping(layout, snipped),
    ]


Fault = tuple[str, str, float]
"""What is wrong, what to do, and how much it is out (more is worse)."""


def _told(
    layout: Layout, snipped: list[int], fault: Callable[[Layout, Cut], Fault | None]
) -> Iterator[Finding]:
    """Tell a fault once for each statement that has it."""
    found = [(i, each) for i in snipped if (each := fault(layout, layout.cuts[i]))]
    keys = [layout.cuts[i].family for i, _ in found]
    for worst, members in told_once(keys, np.array([each[2] for _, each in found])):
        index, (said, hint, _) = found[worst]
        about = tuple(found[k][0] for k in members)
        figures = {"count": float(len(members))}
        place = layout.cuts[index].place
        yield Finding(
            "snips", "warning", said + likewise(len(members)), hint, place, figures, about
        )


def _hinge(layout: Layout, cut: Cut) -> Fault | None:
    """Find a hinge that tears, or one that does not give."""
    assert cut.hinge_mm is not None
    least = LEAST_SNIP_HINGE_MM.value
    high = cut.depth_mm + cut.hinge_mm
    most = max(MOST_SNIP_HINGE.value * high, least)
    if least <= cut.hinge_mm <= most:
        return None
    said = (say.THIN_HINGE if cut.hinge_mm < least else say.STIFF_HINGE)(cut=cut)
    hint = say.LEAVE_HINGE(least=least, most=most)
    return said, hint, max(least - cut.hinge_mm, cut.hinge_mm - most)


def _held(layout: Layout, cut: Cut) -> Fault | None:
    """Find scissors that are held too flat or too steep."""
    flat, steep, held = (
        SNIP_FLATTEST_DEG.value,
        SNIP_STEEPEST_DEG.value,
        math.degrees(cut.blade_rad),
    )
    if flat - 1e-6 <= held <= steep + 1e-6:
        return None
    said = (say.HELD_FLAT if held < flat else say.HELD_STEEP)(cut=cut, held=held)
    return said, say.HOLD_BETWEEN(flat=flat, steep=steep), max(flat - held, held - steep)


def _overlapping(layout: Layout, snipped: list[int]) -> Iterator[Finding]:
    """Tell cuts that run on under the next one ahead: they cut its piece off."""
    places = [_place(layout, layout.cuts[i]) for i in snipped]
    found: list[tuple[int, float, float]] = []
    for index, (here, ahead, width) in zip(snipped, places, strict=True):
        cut = layout.cuts[index]
        run = cut.depth_mm / math.tan(cut.blade_rad) + HOLDS_MM
        ways, aside = [there - here for there, _, _ in places], ahead[::-1] * [1, -1]
        steps = [float(way @ ahead) for way in ways if abs(way @ aside) < width / 2]
        gap = min((step for step in steps if step > 1.0), default=math.inf)
        if gap < run:
            found.append((index, gap, run))
    keys = [layout.cuts[index].family for index, _, _ in found]
    for worst, members in told_once(keys, np.array([run - gap for _, gap, run in found])):
        index, gap, run = found[worst]
        cut, about = layout.cuts[index], tuple(found[k][0] for k in members)
        said = say.UNDER_THE_NEXT(cut=cut, apart=gap) + likewise(len(members))
        figures = {"count": float(len(members)), "apart_mm": gap, "least_mm": run}
        hint = say.FURTHER_APART(least=run)
        yield Finding("snips", "warning", said, hint, cut.place, figures, about)


def _place(layout: Layout, cut: Cut) -> tuple[Floats, Floats, float]:
    """Where a cut's middle is on the plan, the way its scissors point (unit), and its width."""
    plan = layout.loaf.sheet_to_plan(cut.line)
    middle, ends = plan[len(plan) // 2], (plan[0] + plan[-1]) / 2
    ahead = ends - middle
    width = float(np.hypot(*(plan[-1] - plan[0])))
    return middle, np.asarray(ahead / max(float(np.hypot(*ahead)), 1e-9)), width
