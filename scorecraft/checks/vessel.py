"""Whether the baked loaf still fits the pot it bakes in."""

import math

from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.telling import apart
from scorecraft.cuts import Layout
from scorecraft.practice import VESSEL_CLEAR_MM


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
    severity: Severity = "note"
    told, pot = apart(baked, inside)
    message = f"the baked loaf, {told} across, all but fills its {pot} pot"
    if baked > inside:
        severity = "warning"
        message = f"the loaf bakes to {told} across and touches its {pot} pot"
    if widest > inside:
        severity = "stop"
        told, pot = apart(widest, inside)
        message = f"the loaf is {told} across: it does not fit its {pot} pot"
    less = 1 - (most / widest) ** 3
    hint = f"make it no more than {math.floor(most)} mm across: about {less:.0%} less dough"
    figures = {"baked_mm": baked, "most_mm": most, "less_dough": less}
    return [Finding("vessel", severity, message, hint, None, figures)]
