"""A plate as it comes out, right or wrong: spaced, bridged, cut and rounded."""

from collections.abc import Sequence

import shapely

from scorecraft.frozen import dataclass
from scorecraft.plate.body import Body
from scorecraft.plate.bridges import Bridged, bridged
from scorecraft.plate.islands import ROUND, slot_area
from scorecraft.plate.sizes import Sizes
from scorecraft.plate.slits import Slit
from scorecraft.plate.spacing import spaced


@dataclass(frozen=True, slots=True)
class Kept:
    """How much of a part (0 to 1) is left after webs and bridges took theirs.

    `share` of the length of its slots, and `cuts` that still have a slot at all.
    """

    name: str
    share: float
    cuts: float


@dataclass(frozen=True, slots=True)
class Attempt:
    """What stays of the blank, the bridged slits, and the slits of the cross-hair that fit in."""

    area: shapely.Geometry
    bridged: Bridged
    hair: tuple[shapely.Polygon, ...]
    kept: tuple[Kept, ...]


def attempt(
    body: Body, wanted: Sequence[Slit], sizes: Sizes, shapes: shapely.Geometry | None = None
) -> Attempt:
    """Space, bridge and cut the slots, and the shapes that are opened whole; refuse nothing."""
    apart = spaced(wanted, sizes.web_mm)
    held = bridged(body.area, wanted, apart, bridge_mm=sizes.bridge_mm, web_mm=sizes.web_mm)
    area, hair = _cut(body, held.slits, sizes.web_mm, shapes)
    return Attempt(area, held, hair, _kept(wanted, held))


def _cut(
    body: Body, left: Sequence[Slit], web_mm: float, shapes: shapely.Geometry | None
) -> tuple[shapely.Geometry, tuple[shapely.Polygon, ...]]:
    """Cut the slots out of the blank and open what is left: no web is thinner than the disc."""
    slots = slot_area(left)
    if shapes is not None:
        slots = shapely.union(slots, shapes)
    clear = shapely.buffer(slots, web_mm)
    hair = body.hair if not any(each.intersects(clear) for each in body.hair) else ()
    rest = shapely.difference(body.area, shapely.union_all([slots, *hair]))
    core = shapely.buffer(rest, -web_mm / 2, quad_segs=ROUND)
    return shapely.buffer(core, web_mm / 2, quad_segs=ROUND), hair


def _kept(wanted: Sequence[Slit], held: Bridged) -> tuple[Kept, ...]:
    """Measure for each part how much of it is left."""
    asked, got = _lengths(wanted), _lengths(held.slits)
    return tuple(
        Kept(name, sum(left.values()) / sum(cuts.values()), len(left) / len(cuts))
        for name, cuts in asked.items()
        for left in [got.get(name, {})]
    )


def _lengths(slits: Sequence[Slit]) -> dict[str, dict[int, float]]:
    """Add up the lengths of slits (mm) by part and cut."""
    found: dict[str, dict[int, float]] = {}
    for slit in slits:
        cuts = found.setdefault(slit.name, {})
        cuts[slit.cut] = cuts.get(slit.cut, 0.0) + slit.line.length
    return found
