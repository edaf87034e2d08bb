"""Whether the baked loaf still fits the pot it bakes in."""

import math

from scorecraft.baking import VESSEL_CLEAR_MM
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.finding import Finding, Severity
from scorecraft.cuts import Layout
from scorecraft.units import mm_words_apart


def vessel(layout: Layout) -> list[Finding]:
    """Find a loaf that touches the wall of its pot, before or after it has sprung.

    The pot's inside width (mm) is its size's `vessel_mm`; without one nothing is told.
    """
    inside = layout.size.vessel_mm
    if inside is None:
        return []
    widest = max(layout.loaf.width_mm, layout.loaf.length_mm)
    baked = widest * layout.bake.sideways
    most = (inside - 2 * VESSEL_CLEAR_MM.value) / layout.bake.sideways
    if widest <= most:
        return []
    severity: Severity = "stop" if widest > inside else "warning" if baked > inside else "note"
    across, pot = mm_words_apart(widest if severity == "stop" else baked, inside)
    message = say.FITS[severity](across=across, pot=pot)
    less = 1 - (most / widest) ** 3
    hint = say.SMALLER_LOAF(most=math.floor(most), less=less)
    figures = {"baked_mm": baked, "most_mm": most, "less_dough": less}
    return [Finding("vessel", severity, message, hint, None, figures)]
