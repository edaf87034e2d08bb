"""Cuts too deep for the loaf, and cuts too shallow to do what they are for."""

from collections.abc import Iterator
from functools import partial

import numpy as np

from scorecraft.checks import telling_loaf as say
from scorecraft.checks.changes import at_depth, no_deeper
from scorecraft.checks.cure import Change
from scorecraft.checks.finding import Finding, Offer, Severity
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Cut, Layout
from scorecraft.practice import (
    DEEPEST_CUT_MM,
    DEEPEST_SHARE,
    SHALLOWEST_CUT_MM,
    SHALLOWEST_EXPANSION_MM,
)


def depth(layout: Layout) -> list[Finding]:
    """Find cuts too deep for the loaf's height and cuts that stay in its skin."""
    height, deep = layout.loaf.height_mm, layout.deep_from_mm
    deepest = min(DEEPEST_CUT_MM.value, DEEPEST_SHARE.value * height)
    depths = layout.depths_mm
    findings = []
    for worst, members in told_once([cut.family for cut in layout.cuts], depths):
        over = members[depths[members] > deep]
        if len(over):
            severity: Severity = "stop" if depths[worst] > deepest else "warning"
            findings.append(_too_deep(layout, layout.cuts[worst], over, deep, severity))
    return findings + list(_too_shallow(layout))


def _too_deep(
    layout: Layout, cut: Cut, over: np.ndarray, deep: float, severity: Severity
) -> Finding:
    share = cut.depth_mm / layout.loaf.height_mm
    message = say.TOO_DEEP(cut=cut, share=share) + likewise(len(over))
    most = float(np.floor(deep * 2) / 2)
    about = tuple(over.tolist())
    offer = Offer(say.IT_NO_DEEPER(depth=most), layout, lambda: (no_deeper(layout, about, most),))
    figures = {"count": float(len(over)), "depth_mm": cut.depth_mm, "most_mm": deep}
    hint = say.SHALLOWER_OR_TALLER
    return Finding(
        "depth", severity, message, hint, cut.place, figures, about, offers=(offer,) if most else ()
    )


def _too_shallow(layout: Layout) -> Iterator[Finding]:
    """Tell of cuts that do not part the skin, and of expansion cuts that hardly open."""
    least = [least_depth_mm(cut) for cut in layout.cuts]
    short = [i for i, cut in enumerate(layout.cuts) if cut.depth_mm < least[i]]
    lacking = np.array([least[i] - layout.cuts[i].depth_mm for i in short])
    for worst, members in told_once([layout.cuts[i].family for i in short], lacking):
        cut, wanted = layout.cuts[short[worst]], least[short[worst]]
        figures = {
            "count": float(len(members)),
            "depth_mm": cut.depth_mm,
            "least_mm": wanted,
        }
        about = tuple(short[i] for i in members)
        deeper = partial(_deeper, layout, about, wanted)
        yield Finding(
            "depth",
            "warning",
            say.too_shallow(cut) + likewise(len(members)),
            say.SPACE_OR_OUT,
            cut.place,
            figures,
            about,
            offers=(Offer(say.THIS_DEEP(depth=wanted), layout, deeper),),
        )


def _deeper(layout: Layout, about: tuple[int, ...], depth_mm: float) -> tuple[Change, ...]:
    return (at_depth(layout, about, depth_mm),)


def least_depth_mm(cut: Cut) -> float:
    """Depth (mm) below which a cut does not do what it is for."""
    expands = cut.kind == "expansion"
    return (SHALLOWEST_EXPANSION_MM if expands else SHALLOWEST_CUT_MM).value
