"""What a statement can see: its frame, its names, the attributes and the region it inherits."""

from collections.abc import Iterator, Mapping
from typing import Any

import shapely

from scorecraft.cuts import Kind
from scorecraft.errors import ToldError
from scorecraft.expand import telling as say
from scorecraft.expand.frame import Frame
from scorecraft.frozen import dataclass, field, replace
from scorecraft.language.words import AT_HAND
from scorecraft.loaf.dome import Loaf
from scorecraft.units import LENGTH, NUMBER, Quantity

FIELDS = {
    "depth": "depth_mm", "opens": "opens_mm", "blade": "blade_rad", "kind": "kind",
    "called": "called", "through": "through", "pulled": "pulled_mm",
}  # fmt: skip
"""What each key of a cut is called here."""


@dataclass(frozen=True, slots=True)
class Attributes:
    """Cut attributes as given so far: None where nothing was said."""

    depth_mm: float | None = None
    opens_mm: float | None = None
    blade_rad: float | None = None
    kind: Kind | None = None
    called: str = ""
    through: bool = False
    pulled_mm: float = 0.0

    def with_values(self, values: Mapping[str, Any]) -> "Attributes":
        """Take over what a statement says; a depth and a wanted opening replace each other."""
        told = {"depth", "opens"} & values.keys()
        old = replace(self, depth_mm=None, opens_mm=None) if told else self
        return replace(old, **{FIELDS[key]: value for key, value in values.items()})


@dataclass(frozen=True, slots=True)
class Wander:
    """How far a hand strays: sizes by a share, directions by an angle, from a seed."""

    size: float
    turn_rad: float
    seed: int


@dataclass(frozen=True, slots=True)
class Scope:
    """All that a statement inherits from the blocks around it."""

    loaf: Loaf
    frame: Frame
    given: Mapping[str, Quantity] = field(default_factory=dict)
    attributes: Attributes = Attributes()
    region: shapely.Geometry | None = None
    figure: int | None = None
    rules: tuple[str, ...] = ()
    wander: Wander | None = None
    lost: frozenset[str] = frozenset()
    """Names whose values could not be worked out: that has been told already."""

    def at(self, frame: Frame, k: int | None = None) -> "Scope":
        """Move to another frame, as copy number `k` of a placing."""
        if k is None:
            return replace(self, frame=frame)
        return replace(self, frame=frame, given={**self.given, "k": Quantity(k)})

    def naming(self, name: str, value: Quantity) -> "Scope":
        """Give a name a value from here on."""
        return replace(self, given={**self.given, name: value})

    def losing(self, name: str) -> "Scope":
        """Know of a name that its value could not be worked out."""
        return replace(self, lost=self.lost | {name})

    def within(self, region: shapely.Geometry) -> "Scope":
        """Keep only what falls in a region of the sheet, on top of what was kept before."""
        kept = region if self.region is None else shapely.intersection(self.region, region)
        return replace(self, region=kept)

    @property
    def reach_mm(self) -> float:
        """Distance along the dough from crown to rim, in the frame's direction."""
        return float(self.loaf.reach(self.frame.theta_rad))

    @property
    def names(self) -> Mapping[str, Quantity]:
        """Every name a value may use here."""
        return Names(self)


class Names(Mapping[str, Quantity]):
    """The names of a scope; the loaf's measures are worked out only when asked for."""

    def __init__(self, scope: Scope) -> None:
        self.scope = scope

    def __getitem__(self, name: str) -> Quantity:
        loaf = self.scope.loaf
        if name in self.scope.lost:
            raise ToldError(say.NO_VALUE.format(name=name))
        if name in self.scope.given:
            return self.scope.given[name]
        if name == "reach":
            return Quantity(self.scope.reach_mm, LENGTH)
        if name == "k":
            return Quantity(0.0, NUMBER)
        measures = {"width": loaf.width_mm, "length": loaf.length_mm, "height": loaf.height_mm}
        return Quantity(measures[name], LENGTH)

    def __contains__(self, name: object) -> bool:
        return name in self.scope.given or name in self.scope.lost or name in AT_HAND

    def __iter__(self) -> Iterator[str]:
        return iter([*self.scope.given, *AT_HAND])

    def __len__(self) -> int:
        return len(list(iter(self)))
