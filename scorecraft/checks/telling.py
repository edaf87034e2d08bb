"""Texts that several checks share: what cuts are called, more of the same, lists cut short."""

from collections.abc import Sequence

from scorecraft.checks.cure import Cure
from scorecraft.cuts import Cut
from scorecraft.groups import called

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


def not_listed(check: str, more: int) -> str:
    """Say that a check found more than is listed."""
    return f"{more:,} more findings of this kind ({check}) are not listed"


def crowded(check: str) -> str:
    """Say that a check looked at a sample only."""
    return f"the cuts are too crowded to look at every place for {check}"


CROWDED_FIX = "use fewer cuts: counts given for this check cover only the places looked at"
