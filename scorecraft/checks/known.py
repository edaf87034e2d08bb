"""What is known of a layout so far: checks find what that allows."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass, field
from scorecraft.loaf.skin import Skin

if TYPE_CHECKING:
    from scorecraft.bench import Work
    from scorecraft.opening import Opening
    from scorecraft.opening.room import Room
    from scorecraft.opening.wishes import Met

Level = Literal["layout", "work", "opening"]
LEVELS: tuple[Level, ...] = ("layout", "work", "opening")
"""The drawing alone, with the order of work, with the openings too: each takes longer to know."""


@dataclass(frozen=True, slots=True)
class Known:
    """A layout with what has been worked out of it, up to a level.

    `met` tells how far wished openings are met, and is None where there are none. `work`, `opening`
    and `room` are there from their level on.
    """

    layout: Layout
    level: Level = "layout"
    skin: Skin = field(default_factory=Skin)
    met: Met | None = None
    work: Work | None = None
    opening: Opening | None = None
    room: Room | None = None

    def reaches(self, level: Level) -> bool:
        """Tell whether as much is known as at a level."""
        return LEVELS.index(self.level) >= LEVELS.index(level)
