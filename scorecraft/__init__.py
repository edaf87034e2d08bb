"""Scoring planned for one's own loaf: from a few lines of text to a full-size guide."""

from __future__ import annotations

TYPE_CHECKING = False  # this is read before Ctrl-C is heard: it loads no library
if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from scorecraft.designing import Design
    from scorecraft.units import Quantity

__version__ = "0.4.0"
__all__ = ["design"]


def design(
    pattern: str | Path,
    *,
    loaf: str | None = None,
    bake: str | None = None,
    dough: str | None = None,
    loaves: int | None = None,
    knobs: Mapping[str, str | float | int | Quantity] | None = None,
    baker: str | Path | None = None,
) -> Design:
    """Design a pattern on a loaf.

    `pattern` is a file, the name of a shipped pattern, or a text of several lines. `loaf` and
    `bake` stand in for the pattern's own, written as in a pattern: `round width 180mm height
    80mm`; a drawing that `loaf` names is looked up from the current folder. `dough` says what
    is other today: `over temperature 5C` leaves the rest as the pattern has it. `loaves` is how
    many equal ones are scored in a row. `knobs` turns knobs by name, to numbers or texts with a
    unit. `baker` is a file that `scorecraft tune` wrote from bakes of your own. Raises
    `scorecraft.errors.ScorecraftError`, which says what is wrong, where, and what to do.

    >>> import scorecraft
    >>> crown = scorecraft.design("leaf-crown", loaf="round width 200mm height 85mm")
    >>> crown.layout.loaf.width_mm
    200.0
    >>> crown.stops
    False
    >>> scorecraft.design("leaf-crwn")
    Traceback (most recent call last):
    scorecraft.errors.UsageError: no file and no shipped pattern is called "leaf-crwn"
        did you mean "leaf-crown"?
    """
    from pathlib import Path

    from scorecraft.designing import make

    here = Path.cwd()
    return make(
        pattern,
        loaf=loaf,
        bake=bake,
        dough=dough,
        loaves=loaves,
        knobs=knobs,
        baker=baker,
        standing=here,
    )
