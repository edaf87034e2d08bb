"""The shipped patterns as designs, each made once: a design works out once what it is asked for."""

from functools import cache

from scorecraft import design


@cache
def shipped(name):
    """Give the design of a shipped pattern, as it is."""
    return design(name)
