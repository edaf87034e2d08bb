"""Whose bench it is: that of the pattern, or of another hand."""

from dataclasses import replace
from typing import cast

from scorecraft.cuts import Bench, Hand, Layout
from scorecraft.errors import UsageError


def bench_of(layout: Layout, hand: str | None = None) -> Bench:
    """Give a layout's bench; `hand` stands in for its own.

    Raises UsageError for a hand that is neither right nor left.
    """
    if hand is None:
        return layout.bench
    if hand not in ("right", "left"):
        raise UsageError(f'the hand is right or left, not "{hand}"')
    return replace(layout.bench, hand=cast(Hand, hand))
