"""The shipped patterns as designs, each made once: a design works out once what it is asked for."""

from functools import cache

from scorecraft import design
from scorecraft.shelf import shelf


@cache
def shipped(name):
    """Give the design of a shipped pattern, as it is."""
    return design(name)


def some(turn=0, every=3):
    """Name every third pattern of the shelf, from another one at each `turn`.

    Slow tests look at a part of the shelf each, and together at all of it several times.
    """
    return list(shelf())[turn % every :: every]
