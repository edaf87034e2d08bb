"""Dropped: what the pattern asks for and the expansion left out."""

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout


def dropped(layout: Layout) -> list[Finding]:
    """Tell what was left out on the way from the pattern to the cuts."""
    hint = "nothing to do, unless the edge looks ragged"
    return [Finding("dropped", "note", said, hint, place) for said, place in layout.remarks]
