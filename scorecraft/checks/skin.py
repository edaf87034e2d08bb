"""Skin: whether the bakes it was learned from settle it."""

from scorecraft.checks.finding import Finding
from scorecraft.loaf.skin import Skin


def skin(used: Skin) -> list[Finding]:
    """Find that the usual skin is used because a baker's openings do not settle theirs."""
    if not used.unsettled_by:
        return []
    from scorecraft.tune.baker import TO_SETTLE

    message = (
        f'the openings in "{used.unsettled_by}" do not settle the skin: '
        f"the usual {used.thickness_mm:g} mm is used"
    )
    return [Finding("skin", "note", message, TO_SETTLE, None)]
