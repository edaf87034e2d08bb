"""What the other checks say of cuts that are meant to part the dough, which they do not know."""

from collections.abc import Sequence

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout

OF_SCORES = ("strips", "pieces", "undercut", "crossings", "depth", "density", "rim")
"""Checks that go by how a skin holds which is scored, not parted."""


def of_scores(layout: Layout, check: str, found: Sequence[Finding]) -> list[Finding]:
    """Leave out what a check holds against cuts right through and cuts with scissors alone.

    What cannot be cut for lying off the loaf stays; `tears` and `snips` look after the rest.
    """
    if check not in OF_SCORES or not any(cut.severs for cut in layout.cuts):
        return list(found)
    return [each for each in found if not _about_severed(layout, each)]


def _about_severed(layout: Layout, found: Finding) -> bool:
    if found.check == "rim" and found.severity == "stop":
        return False
    about = found.cuts or [
        index for index, cut in enumerate(layout.cuts) if cut.place == found.place
    ]
    cuts = [layout.cuts[index] for index in about] or layout.cuts
    return all(cut.severs for cut in cuts)
