"""Dropped: what the pattern asks for and the expansion left out."""

from scorecraft.checks.finding import Finding
from scorecraft.checks.telling_loaf import RAGGED
from scorecraft.cuts import Layout


def dropped(layout: Layout) -> list[Finding]:
    """Tell what was left out on the way from the pattern to the cuts."""
    return [Finding("dropped", "note", said, RAGGED, place) for said, place in layout.remarks]
