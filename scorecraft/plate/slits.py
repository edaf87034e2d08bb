"""Centre lines of the slots: the chosen cuts seen from straight above, each with its width.

A plate lies flat over the dome and flour falls straight down through it, so slots are projected
on the plan, not unrolled along the dough.
"""

from collections.abc import Sequence

import shapely

import scorecraft.plate.telling as telling
from scorecraft.curves import length
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import nearest
from scorecraft.frozen import dataclass, replace
from scorecraft.loaf.areas import on_plan
from scorecraft.loaf.plan import plan_strings

LIGHT_SLOT_MM = 3.0
"""Cuts no deeper than this have slots of the plain width."""
DEEP_SLOT_MM = 8.0
"""Cuts this deep or deeper have the widest slots."""
UNFILLED_WIDER = 1.6
"""Slot of a figure that is to be filled and encloses nothing, over that of any other."""
DEEP_SLOT_WIDER = 1.4
"""Slot of a deep cut over that of a light one."""


@dataclass(frozen=True, slots=True)
class Slit:
    """A stretch of a slot: centre line on the plan, width (mm), and the cut it stands for.

    `name` is the cut's name and `rank` its weight: where two slots want the same place the one of
    lower rank gives way.
    """

    line: shapely.LineString
    width_mm: float
    cut: int
    name: str
    rank: float

    @property
    def closed(self) -> bool:
        """Whether the line ends where it starts."""
        return bool(shapely.is_closed(self.line))


def slits(layout: Layout, *, slot_mm: float, only: Sequence[str] = ()) -> list[Slit]:
    """Lay the chosen cuts on the plan as slits, `slot_mm` wide, wider for deep cuts.

    `only` names what is wanted: a figure (`leaf`), a part (`vein`), both (`leaf vein`) or a kind
    (`expansion`); nothing means all. Raises UsageError for a name the pattern does not have.
    """
    wanted = chosen(layout.cuts, only)
    lines = plan_strings(layout.loaf, [layout.cuts[index].line for index in wanted])
    dough = on_plan(layout.loaf)
    found = []
    for index, line in zip(wanted, lines, strict=True):
        cut = layout.cuts[index]
        width = slot_width(cut.depth_mm, slot_mm)
        for piece in shapely.get_parts(shapely.intersection(line, dough)):
            if shapely.length(piece) > 0:
                found.append(Slit(piece, width, index, cut.name, _rank(cut)))
    return found


def _rank(cut: Cut) -> float:
    """Weigh a cut: the deeper one first, then the longer one; copies weigh the same."""
    return round(cut.depth_mm, 2) * 1e4 + round(length(cut.line), 1)


def slot_width(depth_mm: float, slot_mm: float) -> float:
    """Widen a slot (mm) with the depth of its cut, from light cuts to deep ones."""
    light, deep = LIGHT_SLOT_MM, DEEP_SLOT_MM
    share = min(max((depth_mm - light) / (deep - light), 0.0), 1.0)
    return slot_mm * (1.0 + (DEEP_SLOT_WIDER - 1.0) * share)


def chosen(cuts: Sequence[Cut], only: Sequence[str]) -> list[int]:
    """Find the cuts that are meant by names; all, where no name is given or no cut is there.

    Raises UsageError for a name that no cut has.
    """
    if not (only and cuts):
        return list(range(len(cuts)))
    known = [name for cut in cuts for name in _names(cut)]
    for name in only:
        if name not in known:
            names = telling.names_there_are(list(dict.fromkeys(known)), nearest(name, known))
            raise telling.NOT_CALLED(name=name, names=names).usage()
    return [index for index, cut in enumerate(cuts) if not set(only).isdisjoint(_names(cut))]


def widened(
    cuts: Sequence[Cut], drawn: Sequence[Slit], names: Sequence[str], wider: float
) -> list[Slit]:
    """Widen the slots of the figures of some names so many times."""
    wide = set(chosen(cuts, names)) if names else set()
    return [
        replace(slit, width_mm=wider * slit.width_mm) if slit.cut in wide else slit
        for slit in drawn
    ]


def _names(cut: Cut) -> tuple[str, str, str, str]:
    return cut.word, cut.part, cut.name, cut.kind
