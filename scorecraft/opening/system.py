"""The equations of a set of cuts: worked out once, then solved for any depths."""

from collections.abc import Sequence
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats, Line
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.opening.bulge import FLAT, Bed
from scorecraft.opening.elastic import Elastic, elastic, pairs_of
from scorecraft.opening.load import Load, Strain, load_on
from scorecraft.opening.panels import OPENING_FEWEST_PANELS, Panels, panels

OPENING_MOST_PANELS = 60_000.0
"""The most panels: about 1 GB and some ten seconds."""
OPENING_MOST_PAIRS = 2e7
"""The most pairs of near ends, as they are counted: half a GB."""
OPENING_LONGEST_MM = 40.0
"""No panels are made longer than about this: they would take in cuts beside them."""
LONGER = 1.2
"""Where there are more, panels are made longer by this or more, until there are not."""


@dataclass(frozen=True, eq=False)
class System:
    """Panels, the load on them, and the stiffness of the sheet on its bed, stretched already."""

    panels: Panels
    load: Load
    bed: Bed = FLAT

    @cached_property
    def elastic(self) -> Elastic:
        """The stiffness of the sheet, set up when asked for: without panels there is none."""
        return elastic(self.panels, self.load.stretch, self.bed)

    def depths(self, depth_mm: Floats) -> Floats:
        """Depth of each panel (M,) from the depth of each line: the deepest cut that runs there."""
        depth = np.zeros(len(self.panels))
        for own, line_depth in zip(self.panels.of_line, depth_mm, strict=True):
            np.maximum.at(depth, own, line_depth)
        return depth


def system(
    lines: Sequence[Line],
    panel_mm: float,
    held: ArrayLike = 0.0,
    strain: Strain = (0.0, 0.0, 0.0),
    bed: Bed = FLAT,
) -> System:
    """Set up the equations of cuts along lines (N, 2).

    `held` is about how stiff the springs of each line will be (E per mm), see `panels`; under a
    `strain` the sheet is stretched already, and on a `bed` it may bulge. Where there would be more
    panels than there may be, or too many in one place, they are made longer, and run over
    crossings. Raises UsageError where not even that does.
    """
    parts = panels(lines, panel_mm, held)
    if OPENING_FEWEST_PANELS * len(lines) > OPENING_MOST_PANELS:
        raise UsageError(f"{len(lines)} cuts are more than the opening model takes")
    while _too_many(parts):
        if panel_mm > OPENING_LONGEST_MM:
            hint = "leave out cuts far from the others"
            raise UsageError("more cuts lie in one place than the opening model takes", None, hint)
        panel_mm *= max(LONGER, len(parts) / OPENING_MOST_PANELS)
        parts = panels(lines, panel_mm, held, passing=True)
    return System(parts, load_on(parts, strain), bed)


def _too_many(parts: Panels) -> bool:
    """Tell whether panels are too many, or too many in one place."""
    if len(parts) ** 2 <= OPENING_MOST_PAIRS:
        return False
    return len(parts) > OPENING_MOST_PANELS or pairs_of(parts) > OPENING_MOST_PAIRS
