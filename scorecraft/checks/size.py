"""Whether dough makes a loaf of the size that was worked out for it."""

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout


def size(layout: Layout) -> list[Finding]:
    """Tell what the arithmetic from dough to size came to that no dough does."""
    return [Finding("size", "warning", message, hint, None) for message, hint in layout.size.doubts]
