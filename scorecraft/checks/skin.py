"""Skin: whether the bakes it was learned from settle it."""

from scorecraft.checks.finding import Finding
from scorecraft.checks.telling_loaf import TOO_FEW_BAKES
from scorecraft.loaf.skin import Skin


def skin(used: Skin) -> list[Finding]:
    """Find that the usual skin is used because a baker's openings do not settle theirs."""
    if not used.unsettled_by:
        return []
    from scorecraft.tune.baker import TO_SETTLE

    message = TOO_FEW_BAKES(source=used.unsettled_by, skin=used.thickness_mm)
    return [Finding("skin", "note", message, TO_SETTLE, None)]
