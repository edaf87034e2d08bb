"""What a check found: how grave it is, where it is, and what to do about it."""

from collections.abc import Callable, Mapping
from typing import Literal

from scorecraft.arrays import Line
from scorecraft.checks.changes import applied
from scorecraft.checks.cure import Change, Cure
from scorecraft.cuts import Layout
from scorecraft.errors import Place
from scorecraft.frozen import dataclass, field

Severity = Literal["stop", "warning", "note"]

SEVERITIES: tuple[Severity, ...] = ("stop", "warning", "note")


@dataclass(frozen=True, slots=True)
class Offer:
    """A cure that a check offers: in a baker's words, and the changes of a layout it asks for."""

    told: str
    of: Layout
    changes: Callable[[], tuple[Change, ...]]

    def layout(self) -> Layout:
        """Make the layout that it leads to."""
        return applied(self.of, self.changes())


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing a check has to say about a layout.

    A `stop` cannot be cut as it is, a `warning` can but should be looked at, a `note` is for
    information. `place` is in the pattern, `figures` the numbers behind the message by name,
    `cuts` the indexes of the layout's cuts it is about, `shapes` lines (N, 2) to draw besides, in
    sheet mm. What holds of many copies is told once: `figures["count"]` says of how many, or of
    how many at least where the message says so. `offers` are cures, the gentlest first, that are
    yet to be tried; the `hint` says what to do where none holds. `cures` are those that hold, made
    on the layout and checked.
    """

    check: str
    severity: Severity
    message: str
    hint: str
    place: Place | None
    figures: Mapping[str, float] = field(default_factory=dict)
    cuts: tuple[int, ...] = ()
    shapes: tuple[Line, ...] = field(default=(), compare=False)
    offers: tuple[Offer, ...] = field(default=(), compare=False)
    cures: tuple[Cure, ...] = ()

    @property
    def weight(self) -> int:
        """Rank by gravity: 0 for a stop."""
        return SEVERITIES.index(self.severity)
