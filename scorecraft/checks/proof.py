"""Whether the cuts suit the dough as it is: how far proofed, and in an oven with steam or without.

Common practice, no source.
"""

import numpy as np

from scorecraft.baking import CURE_DEPTHS_MM, OVER_DEEP_MM, UNDER_DEPTH_MM
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.changes import at_depth, no_deeper
from scorecraft.checks.finding import Finding, Offer
from scorecraft.cuts import Layout


def proof(layout: Layout) -> list[Finding]:
    """Find cuts too shallow for underproofed dough, too deep for overproofed, and a dry oven."""
    deep = [i for i, cut in enumerate(layout.cuts) if cut.kind == "expansion"]
    found: list[Finding] = []
    if deep and layout.dough.stage == "under":
        found += _under(layout, deep)
    elif deep and layout.dough.stage == "over":
        found += _over(layout, deep)
    if layout.cuts and not layout.bake.steam and layout.size.vessel_mm is None:
        found.append(Finding("proof", "note", say.NO_STEAM, say.NO_STEAM_FIX, None))
    return found


def _under(layout: Layout, deep: list[int]) -> list[Finding]:
    """Tell that the deepest cuts are shallow for dough that springs so much."""
    depths = np.array([layout.cuts[i].depth_mm for i in deep])
    wanted = min(UNDER_DEPTH_MM.value, float(np.floor(2 * layout.deep_from_mm) / 2))
    if depths.max() >= wanted:
        return []
    about = tuple(i for i, depth in zip(deep, depths, strict=True) if depth == depths.max())
    figures = {"count": 1.0, "depth_mm": float(depths.max()), "least_mm": wanted}
    offer = Offer(say.UNDER_CURE(depth=wanted), layout, lambda: (at_depth(layout, about, wanted),))
    message = say.UNDERPROOFED(depth=depths.max())
    place = layout.cuts[about[0]].place
    return [
        Finding("proof", "note", message, say.PROOF_LONGER, place, figures, about, offers=(offer,))
    ]


def _over(layout: Layout, deep: list[int]) -> list[Finding]:
    """Tell that cuts are deep for dough that hardly springs and may sag."""
    most = CURE_DEPTHS_MM["over"].value
    about = tuple(i for i in deep if layout.cuts[i].depth_mm > OVER_DEEP_MM.value)
    if not about:
        return []
    worst = max(about, key=lambda i: layout.cuts[i].depth_mm)
    cut = layout.cuts[worst]
    figures = {"count": 1.0, "depth_mm": cut.depth_mm, "most_mm": most}
    offer = Offer(say.OVER_CURE(depth=most), layout, lambda: (no_deeper(layout, about, most),))
    message, hint = say.OVERPROOFED(depth=cut.depth_mm), say.OVER_FIX
    return [Finding("proof", "warning", message, hint, cut.place, figures, about, offers=(offer,))]
