"""Texts that several checks share: what cuts are called, many of one kind told once."""

from collections.abc import Hashable, Sequence
from string import Formatter
from typing import Any

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.checks.cure import Cure
from scorecraft.cuts import Cut
from scorecraft.groups import called
from scorecraft.units import mm_words


class Sentence(str):
    """What a check says, with gaps in braces: `{by:mm}` is a length, `{cut:the}` calls a cut.

    They are filled by a call, which raises KeyError for one that is not given.

    >>> Sentence("shorten it by {by:mm}")(by=4.96)
    'shorten it by 5 mm'
    """

    __slots__ = ()

    def __call__(self, **gaps: object) -> str:
        """Fill the gaps."""
        return _Words().vformat(self, (), gaps)


class _Words(Formatter):
    """Writes lengths and cuts as bakers say them."""

    def format_field(self, value: Any, format_spec: str) -> str:
        if format_spec == "the":
            return the(value)
        return mm_words(value) if format_spec == "mm" else format(value, format_spec)


FIX_LISTED = "fix those listed, then check again"


def the(cut: Cut) -> str:
    """Call one cut: `the leaf midrib`."""
    return f"the {cut.name.replace('_', ' ')}"


def both(one: Cut, other: Cut) -> str:
    """Call two cuts that meet: `two leaf veins`, or `the slash and the leaf midrib`."""
    return f"two {called(one, 2)}" if one.name == other.name else f"{the(one)} and {the(other)}"


def beside(one: Cut, other: Cut) -> str:
    """Call a cut by another one: `the next`, or by its name."""
    return "the next one" if one.name == other.name else the(other)


def either(cures: Sequence[Cure]) -> str:
    """Say what would help, the gentlest first."""
    return ", or ".join(cure.told for cure in cures)


def likewise(count: int, whole: bool = True) -> str:
    """Say that a finding holds of `count` places, or of as many at least."""
    least = "" if whole else "at least "
    return f" ({least}{count - 1} more like it)" if count > 1 else ""


NOT_LISTED = Sentence("{more:,} more findings of this kind ({check}) are not listed")
CROWDED = Sentence("the cuts are too crowded to look at every place for {check}")
CROWDED_FIX = "use fewer cuts: counts given for this check cover only the places looked at"


def told_once(keys: Sequence[Hashable], weights: Floats) -> list[tuple[int, Ints]]:
    """Sort cases by key: for each key the index of its weightiest case, and all of its cases."""
    members: dict[Hashable, list[int]] = {}
    for index, key in enumerate(keys):
        members.setdefault(key, []).append(index)
    groups = [np.array(found, dtype=np.intp) for found in members.values()]
    return [(int(found[np.argmax(weights[found])]), found) for found in groups]
