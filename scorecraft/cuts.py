"""The middle form: a loaf with the cuts laid out on its dough sheet.

Everything above this floor eats a `Layout`; everything below helps to make one.
"""

import math
from collections.abc import Mapping
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats, Line
from scorecraft.errors import Place
from scorecraft.frozen import dataclass, field
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.dough import Dough
from scorecraft.practice import DEEP_CUT_MM, DEEP_SHARE, PULL_ASIDE_DEG
from scorecraft.units import from_turntable

ON_LINE_MM = 1.0
"""A point so near to a stroke's line lies on it, and to no side of it."""
ON_TOP_MM = 8.0
"""A cut that passes the top of the loaf so near lies along it, on level dough."""
Kind = Literal["expansion", "decorative"]


@dataclass(frozen=True, slots=True)
class Stroke:
    """One blade stroke of a motif in the motif's own frame: which part it is, and its line (mm)."""

    part: str
    line: Line


@dataclass(frozen=True, slots=True)
class Cut:
    """One stroke of the blade on the dough sheet.

    `line` is (N, 2) in sheet mm, in the direction of the stroke; `depth_mm` is how deep it
    ends below the surface, however the blade is held; `blade_rad` between blade and dough surface
    (pi/2 is straight down). `opens_mm` is
    the width the baker asked for, or None where a depth was given. `rises` tells on which side of
    the stroke the lip of a slanted cut rises, 1 left, -1 right; the handle leans to the other. It
    is 0 where that goes by the hand that cuts, and None where it is not said. `figure` numbers the
    drawn figure (all cuts of one leaf share it); `family` numbers the statement in the pattern, so
    that the copies of one figure share it; `part` names the stroke within its figure. One that goes
    `through` the dough is as deep as the dough is high there, and pulled open by hand to
    `pulled_mm`; one made with scissors leaves `hinge_mm` uncut, and what it frees is laid to the
    left (-1) or to the right (1).
    """

    line: Line
    word: str
    part: str
    figure: int
    family: int
    depth_mm: float
    blade_rad: float
    kind: Kind
    place: Place
    opens_mm: float | None = None
    rises: int | None = None
    through: bool = False
    pulled_mm: float = 0.0
    hinge_mm: float | None = None
    laid: int = 0

    @property
    def severs(self) -> bool:
        """Whether it is meant to part the dough: cut right through, or all but so with scissors."""
        return self.through or self.hinge_mm is not None

    def side_of(self, point: ArrayLike, within_mm: float = ON_LINE_MM) -> int:
        """Tell on which side of the stroke a point of the sheet (mm) lies: 1 left, -1 right.

        It is 0 where the line passes the point within a distance. Of a closed cut it is the side
        of what is inside, wherever the point.
        """
        along = self.line[-1] - self.line[0]
        length = float(np.hypot(*along))
        if length < ON_LINE_MM:
            x, y = self.line.T
            return 1 if float(x[:-1] @ y[1:] - x[1:] @ y[:-1]) > 0 else -1
        way = np.asarray(point) - self.line.mean(axis=0)
        aside = float(along[0] * way[1] - along[1] * way[0]) / length
        return 0 if abs(aside) < within_mm else int(math.copysign(1, aside))

    @property
    def name(self) -> str:
        """Name the cut as a baker would: `leaf vein`, or `slash` where a figure is one stroke."""
        return self.word if self.part == self.word else f"{self.word} {self.part}"


@dataclass(frozen=True, slots=True)
class Knob:
    """A number of the pattern that can be turned: its value and range in the knob's own unit."""

    name: str
    value: float
    unit: str
    low: float
    high: float
    step: float
    place: Place


@dataclass(frozen=True, slots=True)
class Marks:
    """String lines pressed in before cutting: sheet polylines (N, 2) in mm, never cut."""

    lines: tuple[Line, ...] = ()


Hand = Literal["right", "left"]
Order = Literal["planned", "file"]
Skill = Literal["new", "steady", "quick"]


@dataclass(frozen=True, slots=True)
class Bench:
    """The hand that holds the blade, and the order asked for.

    `skill` is how quick the hand is, `loaves` how many equal loaves are scored in a row.
    """

    hand: Hand = "right"
    order: Order = "planned"
    skill: Skill = "steady"
    loaves: int = 1

    @property
    def way(self) -> int:
        """Which way the table usually turns: 1 clockwise, -1 counter-clockwise."""
        return 1 if self.hand == "right" else -1

    @property
    def drift_rad(self) -> float:
        """Direction in which a free pull drifts (radians from +x): toward the cutter and aside."""
        return from_turntable(math.pi - self.way * math.radians(PULL_ASIDE_DEG.value))


@dataclass(frozen=True, slots=True)
class Stencil:
    """What the pattern says of its stencil: sizes (mm) by name, and the rest as it is written."""

    sizes: Mapping[str, float] = field(default_factory=dict)
    fill: tuple[str, ...] = ()
    layers: str = ""
    plate: str = ""


@dataclass(frozen=True, slots=True)
class Size:
    """How the loaf came by its size: steps of the arithmetic, doubts with hints, its pot (mm).

    `dough_g` is the weight of its dough where that is given.
    """

    steps: tuple[str, ...] = ()
    doubts: tuple[tuple[str, str], ...] = ()
    vessel_mm: float | None = None
    dough_g: float | None = None


@dataclass(frozen=True, eq=False)
class Layout:
    """A loaf and its cuts: the one form that checks, model, bench and drawings share."""

    title: str
    notes: tuple[str, ...]
    loaf: Loaf
    bake: Bake
    cuts: tuple[Cut, ...]
    marks: Marks = field(default_factory=Marks)
    knobs: tuple[Knob, ...] = ()
    bench: Bench = field(default_factory=Bench)
    dough: Dough = field(default_factory=Dough)
    size: Size = field(default_factory=Size)
    stencil: Stencil = field(default_factory=Stencil)
    remarks: tuple[tuple[str, Place | None], ...] = ()
    """What expansion dropped or changed on the way, told to the user as notes."""

    @cached_property
    def depths_mm(self) -> Floats:
        """Depth of every cut (mm), shape (cuts,)."""
        return np.array([cut.depth_mm for cut in self.cuts], dtype=np.float64)

    @cached_property
    def lengths_mm(self) -> Floats:
        """True length of every cut on the dough (mm), shape (cuts,)."""
        return np.asarray(self.loaf.lengths_on_dough([cut.line for cut in self.cuts]))

    @property
    def deep_from_mm(self) -> float:
        """Depth (mm) from which a cut is deep for the loaf's height, and told."""
        return min(DEEP_CUT_MM.value, DEEP_SHARE.value * self.loaf.height_mm)
