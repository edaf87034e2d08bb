"""The middle form: a loaf with the cuts laid out on its dough sheet.

Everything above this floor eats a `Layout`; everything below helps to make one.
"""

import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.dough import Dough
from scorecraft.practice import PULL_ASIDE_DEG
from scorecraft.units import from_turntable

Kind = Literal["expansion", "decorative"]


@dataclass(frozen=True, slots=True)
class Stroke:
    """One blade stroke of a motif in the motif's own frame: which part it is, and its line (mm)."""

    part: str
    line: Line


@dataclass(frozen=True, slots=True)
class Cut:
    """One stroke of the blade on the dough sheet.

    `line` is (N, 2) in sheet mm, in the direction of the stroke; `depth_mm` into the dough, along
    the blade; `blade_rad` between blade and dough surface (pi/2 is straight down). `opens_mm` is
    the width the baker asked for, or None where a depth was given. `figure` numbers the drawn
    figure (all cuts of one leaf share it); `family` numbers the statement in the pattern, so that
    the copies of one figure share it; `part` names the stroke within its figure.
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

    @property
    def reach_mm(self) -> float:
        """How deep under the surface the blade reaches: less than its depth if it is slanted."""
        return self.depth_mm * math.sin(self.blade_rad)

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
class Size:
    """How the loaf came by its size: steps of the arithmetic, doubts with hints, its pot (mm).

    `dough_g` is the weight of its dough where that is given.
    """

    steps: tuple[str, ...] = ()
    doubts: tuple[tuple[str, str], ...] = ()
    vessel_mm: float | None = None
    dough_g: float | None = None


@dataclass(frozen=True)
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
    remarks: tuple[tuple[str, Place | None], ...] = ()
    """What expansion dropped or changed on the way, told to the user as notes."""

    @cached_property
    def lengths_mm(self) -> Floats:
        """True length of every cut on the dough (mm), shape (cuts,)."""
        return np.asarray(self.loaf.lengths_on_dough([cut.line for cut in self.cuts]))
