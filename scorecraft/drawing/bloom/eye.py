"""Where a loaf is looked at from.

The view is orthographic (Snyder, Map Projections, 1987, chapter 20): a point of the dome falls on
the paper along the line of sight.
"""

import math

import numpy as np

import scorecraft.drawing.bloom.telling as telling
from scorecraft.arrays import Flags, Floats, Line
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.loaf.dome import Loaf
from scorecraft.shaping.shaped import Shaped

LOW_LOOK_DEG = 20.0
"""Front and side views look down on the bench so much."""
STEPS = 160
"""Steps across the loaf in which a line of sight is followed."""
HIDDEN_MM = 0.05
"""A point this far behind another part of the loaf is hidden."""


@dataclass(frozen=True, slots=True)
class Eye:
    """An eye at an elevation above the bench (radians), on a side of the table.

    `turn` is the direction the eye stands in, mathematical, from the crown: -pi/2 is the baker.
    """

    elevation: float = math.pi / 2
    turn: float = -math.pi / 2

    @property
    def from_above(self) -> bool:
        """Whether the eye is straight above."""
        return self.elevation > math.pi / 2 - 1e-9

    @property
    def level(self) -> Line:
        """Rows: to the right and away from the eye, in plan axes."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return np.round([[-sin, cos], [-cos, -sin]], 15)

    def laid(self, loaf: Loaf | Shaped, plan: Line) -> Line:
        """Lay plan points (N, 2) of the dome on the paper: (N, 2) mm to the right and up."""
        right, away = (plan[:, 0] * x + plan[:, 1] * y for x, y in self.level)
        return np.column_stack([right, self.up(away, loaf.height_at(plan))])

    def sees(self, loaf: Loaf | Shaped, plan: Line) -> Flags:
        """Tell which plan points (N, 2) of the dome have nothing of the loaf before them; (N,)."""
        shown = np.ones(len(plan), dtype=bool)
        if self.from_above:
            return shown
        height = loaf.height_at(plan)
        steep = math.tan(self.elevation)
        spans = 2 * max(loaf.outline.extremes) if isinstance(loaf, Loaf) else loaf.spans_mm
        longest = min(spans, loaf.height_mm / max(steep, 1e-9))
        for far in np.linspace(0.0, longest, STEPS)[1:]:
            before = loaf.height_at(plan - far * self.level[1])
            shown &= before <= height + far * steep + HIDDEN_MM
        return shown

    def up(self, away: Floats, height: Floats) -> Floats:
        """Place up the paper (mm) of points so far away from the eye and so high."""
        return np.asarray(away * math.sin(self.elevation) + height * math.cos(self.elevation))

    @property
    def light(self) -> tuple[float, float, float]:
        """Toward the light, to the right, away and up: from the upper left of the paper."""
        right, up, near = -0.46, 0.5, 0.73
        high, low = math.sin(self.elevation), math.cos(self.elevation)
        size = math.hypot(right, up, near)
        return right / size, (up * high - near * low) / size, (up * low + near * high) / size


def look(view: str | float) -> Eye:
    """Look from the `top`, the `front`, the `side`, or at an angle above the bench.

    The front is the baker's side, the side is the right one; an angle (degrees, or a text like
    `30` or `30deg`) is taken from the baker's side. Raises UsageError for another word and for an
    angle outside 0 to 90.
    """
    low = math.radians(LOW_LOOK_DEG)
    named = {"top": Eye(), "front": Eye(low), "side": Eye(low, 0.0)}
    if view in named:
        return named[str(view)]
    degrees = _degrees(view)
    if degrees is None or not 0 <= degrees <= 90:
        raise UsageError(telling.no_view(view), None, telling.VIEWS)
    return Eye(math.radians(degrees))


def _degrees(view: str | float) -> float | None:
    try:
        return float(str(view).removesuffix("deg").removesuffix("°"))
    except ValueError:
        return None
