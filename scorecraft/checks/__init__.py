"""The checks: what is wrong with a layout, how grave it is, and what to do about it."""

from collections.abc import Callable, Mapping

from scorecraft.checks.balance import balance
from scorecraft.checks.crossings import crossings
from scorecraft.checks.density import density
from scorecraft.checks.depth import depth
from scorecraft.checks.finding import Finding
from scorecraft.checks.overlaps import overlaps
from scorecraft.checks.pieces import pieces
from scorecraft.checks.rim import rim
from scorecraft.checks.size import size
from scorecraft.checks.strips import strips
from scorecraft.checks.undercut import undercut
from scorecraft.checks.vessel import vessel
from scorecraft.cuts import Layout
from scorecraft.practice import MOST_FINDINGS

CHECKS: Mapping[str, Callable[[Layout], list[Finding]]] = {
    "rim": rim,
    "overlaps": overlaps,
    "crossings": crossings,
    "strips": strips,
    "pieces": pieces,
    "undercut": undercut,
    "depth": depth,
    "density": density,
    "balance": balance,
    "size": size,
    "vessel": vessel,
}
"""Every check by its name, in the order of telling."""


def run(layout: Layout) -> tuple[Finding, ...]:
    """Run every check; what cannot be cut comes first, then warnings, then notes."""
    found = [finding for check in CHECKS.values() for finding in bounded(check(layout))]
    return tuple(sorted(found, key=lambda finding: finding.weight))


def bounded(found: list[Finding]) -> list[Finding]:
    """Leave the weightiest MOST_FINDINGS of what one check found; tell how many more there are."""
    most = int(MOST_FINDINGS.value)
    if len(found) <= most:
        return found
    kept = sorted(found, key=lambda finding: finding.weight)[:most]
    check = found[0].check
    message = f"{len(found) - most:,} more findings of this kind ({check}) are not told one by one"
    more = Finding(check, "note", message, "mend those that are told, and look again", None)
    return [*kept, more]
