"""How the cuts of a loaf open: widths along every cut, and the tension left in the skin."""

from functools import cached_property
from math import ceil

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.frozen import dataclass
from scorecraft.opening.load import Load, tensor
from scorecraft.opening.panels import Panels
from scorecraft.opening.tension import tension_of

OPENING_STRETCH = 0.1
"""The widest mouth is a mean over this, or half the skin if that is less; a share of the cut."""
STRETCH_POINTS = 8
"""Parts of a stretch over which a width is averaged."""
TRAPEZES = np.array([0.5, *[1.0] * (STRETCH_POINTS - 1), 0.5]) / STRETCH_POINTS
"""Weights (STRETCH_POINTS + 1,) of the widths in that mean."""


@dataclass(frozen=True, slots=True, eq=False)
class Profile:
    """The mouth along one cut, from its start to its end.

    `points_mm` (K, 2) on the cut, `along_mm` (K,) from its start, `width_mm` (K,). A free tip has
    no width; where it ends on another cut the width is carried on to there.
    """

    points_mm: Floats
    along_mm: Floats
    width_mm: Floats

    def widest_mm(self, stretch_mm: float) -> float:
        """Width (mm) at the widest place, as a mean over a stretch (mm) of the cut."""
        length = self.along_mm[-1]
        count = ceil(STRETCH_POINTS * length / stretch_mm)
        width = np.interp(length / count * np.arange(count + 1), self.along_mm, self.width_mm)
        return float(np.convolve(width, TRAPEZES, "valid").max())


@dataclass(frozen=True, eq=False)
class Opening:
    """Result of the slit-opening model, arrays over its M panels; lengths in mm.

    `gap_mm` is how far the faces of the slit part, `slide_mm` how far they slide along it,
    `mouth_mm` what the eye sees at the surface, `lift_mm` how far the lip of a slanted cut rises.
    `line` (M,) is the line of each panel. `tension_left` (2, 2) is the mean tension in the cut
    sheet as a fraction of `uncut_tension`, the mean tension of the uncut sheet in units of E.
    `work_taken` is the share of the work stored in the uncut sheet that the cuts take up: half of
    the tension given up times the jump over them; none in an endless sheet. `skin_mm` is the
    thickness of the sheet.
    """

    midpoint_mm: Floats
    line: Ints
    length_mm: Floats
    gap_mm: Floats
    slide_mm: Floats
    mouth_mm: Floats
    lift_mm: Floats
    tension_left: Floats
    uncut_tension: float
    work_taken: float
    skin_mm: float
    panels: Panels
    load: Load

    @property
    def jumps_mm(self) -> Floats:
        """Jumps of all panels (2M,), gaps then slides."""
        return np.concatenate([self.gap_mm, self.slide_mm])

    @cached_property
    def widest_mm(self) -> Floats:
        """Widest mouth along each line (mm), shape (lines,).

        It is a mean over half the thickness of the skin, or `OPENING_STRETCH` of a short line:
        where cuts meet the model has peaks that are narrower, but a thin sheet cannot tell them.
        """
        profiles = [self.profile(line) for line in range(len(self.panels.of_line))]
        stretch = [min(self.skin_mm / 2, OPENING_STRETCH * p.along_mm[-1]) for p in profiles]
        return np.array([p.widest_mm(mm) for p, mm in zip(profiles, stretch, strict=True)])

    def profile(self, line: int) -> Profile:
        """Return the mouth along a line, in order from its start to its end."""
        own = self.panels.of_line[line]
        ends = self.panels.ends[line]
        inner = self.mouth_mm[own]
        along = self.panels.along_mm[line]
        first, last = ends.widths(inner, along)
        return Profile(
            np.concatenate([[ends.start], self.midpoint_mm[own], [ends.end]]),
            np.concatenate([[0.0], along, [ends.length_mm]]),
            np.concatenate([[first], inner, [last]]),
        )

    def tension_at(self, points_mm: Floats) -> Floats:
        """Tension of the skin at points (N, 2) as a fraction of the uncut mean, (N, 2, 2).

        Meant for places a panel or two away from any cut: nearer, the panels show through.
        """
        points = np.asarray(points_mm, dtype=np.float64).reshape(-1, 2)
        around = tension_of(self.panels, self.gap_mm, self.slide_mm, points, self.load.stretch)
        uncut = tensor(self.load.extra(points))
        return self.tension_left + (around + uncut) / self.uncut_tension
