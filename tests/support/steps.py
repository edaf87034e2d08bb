"""Work counted in calls: the same number on every machine, and an end for what never ends."""

import sys
from contextlib import contextmanager


class TooManyCallsError(AssertionError):
    """More calls were made than what was asked for can be worth."""


@contextmanager
def at_most(calls):
    """Let no more than so many calls of functions, also built-in ones, be made within."""
    made = 0

    def count(frame, event, argument):
        nonlocal made
        if event in ("call", "c_call"):
            made += 1
            if made > calls:
                sys.setprofile(None)
                raise TooManyCallsError(f"more than {calls} calls")

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        yield
    finally:
        sys.setprofile(before)
