"""Straight sections of a loaf: how long the dough is from side to side, and from end to end."""

from functools import cached_property

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.loaf.dome import Loaf

SECTIONS = 41
"""Sections that are measured each way; between them it is a straight line."""
STEPS = 240
"""Chords of a section."""


@dataclass(frozen=True)
class Sections:
    """Lengths (mm) over the dough of a loaf, in sections square to its sides."""

    loaf: Loaf

    def across(self, y: Floats) -> Floats:
        """Length over the dough from side to side at plan distances y (N,) from the middle."""
        return self._at(y, self._lengths[0], self.loaf.length_mm)

    def along(self, x: Floats) -> Floats:
        """Length over the dough from end to end at plan distances x (N,) from the middle."""
        return self._at(x, self._lengths[1], self.loaf.width_mm)

    def _at(self, place: Floats, lengths: Floats, size_mm: float) -> Floats:
        share = np.clip(2 * np.abs(place) / size_mm, 0.0, 1.0) * (SECTIONS - 1)
        return np.interp(share, np.arange(SECTIONS), lengths)

    @cached_property
    def _lengths(self) -> tuple[Floats, Floats]:
        return self._measured(0), self._measured(1)

    def _measured(self, axis: int) -> Floats:
        """Lengths of sections along an axis (0 is x), from the middle out to the other's rim."""
        half = np.array([self.loaf.width_mm, self.loaf.length_mm]) / 2
        places = np.minimum(np.arange(SECTIONS) / (SECTIONS - 1), 0.98) * half[1 - axis]
        turn = np.linspace(-np.pi / 2, np.pi / 2, STEPS + 1)  # closer where the dough is steep
        points = np.empty((SECTIONS, STEPS + 1, 2))
        power = self.loaf.outline.power
        ends = half[axis] * (1 - (places / half[1 - axis]) ** power) ** (1 / power)
        points[..., axis] = ends[:, None] * np.sin(turn)
        points[..., 1 - axis] = places[:, None]
        steps = np.diff(self.loaf.surface(points), axis=1)
        return np.asarray(np.linalg.norm(steps, axis=-1).sum(axis=1))
