"""The rules of thumb of dough, baskets and oven; `practice.table` lists them with all others."""

from scorecraft.frozen import dataclass
from scorecraft.rules import COMMON, Rule, Subject

DOUGH = Subject("dough")
DOUGH_DENSITY = Rule(
    1.2,
    "g/cm3",
    "mixed dough: 1.25 free of gas, less the 4-10 % of gas that mixing leaves in it",
    "method: Campbell, Rielly, Fryer & Sadd, Cereal Chem. 70 (1993) 517-521; the numbers recalled, "
    "page not checked; 173.5 g in 145 cm3 (1.197) in a laboratory loaf, quoted without title",
)
LEAST_PROOF = Rule(1.0, "", "the least the dough has grown when it is scored", "by definition")
READY_TIMES = {
    "sourdough": Rule(1.9, "", "volume of a ready sourdough over its mixed volume: 1.5 to about 2"),
    "yeasted": Rule(2.1, "", "volume of a ready yeasted dough over its mixed volume: about double"),
}
PROOF_SHARES = {
    "young": Rule(0.55, "", "volume over the ready volume: hardly proofed"),
    "under": Rule(0.69, "", "volume over the ready volume: underproofed"),
    "ready from": Rule(0.785, "", "volume over the ready volume: ready from here on"),
    "ready": Rule(1.0, "", "volume over the ready volume: ready", "by definition"),
    "ready to": Rule(1.1, "", "volume over the ready volume: ready up to here"),
    "over": Rule(1.27, "", "volume over the ready volume: overproofed"),
    "spent": Rule(1.6, "", "volume over the ready volume: about to collapse"),
}
OVEN_SPRINGS = {
    "young": Rule(1.8, "", "oven spring of a dough that is hardly proofed"),
    "under": Rule(1.65, "", "oven spring of an underproofed dough: 1.5 to 1.8"),
    "ready from": Rule(1.45, "", "oven spring of a dough that is just ready"),
    "ready": Rule(
        1.4,
        "",
        "volume of the baked loaf over that of the proofed loaf, for a ready dough with steam",
        "laboratory loaf of lean dough, 515 cm3 at the end of proof and 220 cm3 more in the oven "
        "(1.43; quoted without title in a data base of abstracts); 'by as much as half its initial "
        "volume', McGee, On Food and Cooking, 2004",
    ),
    "ready to": Rule(1.3, "", "oven spring of a dough that is ready to the full"),
    "over": Rule(1.15, "", "oven spring of an overproofed dough: 1.1 to 1.2"),
    "spent": Rule(1.1, "", "oven spring of a dough about to collapse"),
}
UNDER_DEPTH_MM = Rule(10.0, "mm", "the deepest cuts of underproofed dough: this deep or deeper")
OVER_DEEP_MM = Rule(8.0, "mm", "overproofed dough may sag under deeper cuts")
CURE_DEPTHS_MM = {
    "under": Rule(13.0, "mm", "depth of cut that is advised for underproofed dough"),
    "ready": Rule(10.0, "mm", "depth of an expansion cut that is advised for room"),
    "over": Rule(6.0, "mm", "depth of cut that is advised for overproofed dough"),
}
STANDS = {
    "young": Rule(1.15, "", "height of a hardly proofed loaf over the usual height"),
    "under": Rule(1.1, "", "height of an underproofed loaf over the usual height"),
    "ready": Rule(1.0, "", "height of a ready loaf over the usual height"),
    "over": Rule(0.87, "", "height of an overproofed loaf over the usual height"),
    "spent": Rule(0.75, "", "height of a spent loaf over the usual height"),
}
USUAL_C = Rule(24.0, "C", "usual temperature of dough and kitchen")
USUAL_WATER = Rule(0.7, "", "usual hydration: water over flour, by weight")
LOWER_PER_WATER = Rule(
    1.0, "", "share of the height lost per unit of hydration: 5% wetter stands 5% lower"
)
LOWER_PER_C = Rule(
    0.004, "", "share of the height lost per °C of warmer dough; cold dough stands higher"
)
LOWER_PER_KITCHEN_C = Rule(0.002, "", "share of the height lost per °C of warmer kitchen")
SHRINKS_PER_C = Rule(
    0.0025,
    "",
    "share of its volume that a loaf loses per °C it is chilled: its gas shrinks and dissolves",
)

BASKETS = Subject("baskets")
LOAF_PER_BASKET = Rule(
    1.0, "", "width of the loaf turned out over the basket's width across the top"
)
SPREADS_FROM_BASKET = Rule(
    1.05, "", "a loaf turned out spreads to at most this many times its basket"
)
LOWEST_STAND = Rule(0.3, "of the width", "a ready loaf stands at least this high")
HIGHEST_STAND = Rule(0.55, "of the width", "a ready loaf turned out of its basket stands no higher")
BASKET_SLACK = Rule(1.2, "", "this many times the usual most dough is too much")


@dataclass(frozen=True, slots=True, kw_only=True)
class Basket(Rule):
    """A common proofing basket: length and width (mm) across the top, and the dough it takes (g).

    The rule's value is the most dough.
    """

    length_mm: float
    width_mm: float
    least_g: float


def _basket(length_cm: float, width_cm: float, least_g: float, most_g: float) -> Basket:
    form = "round" if length_cm == width_cm else "oval"
    across = f"{length_cm:g} cm" if form == "round" else f"{length_cm:g} × {width_cm:g} cm"
    says = f"dough for a basket, {form}, {across}: from {least_g:g} g up to this"
    length_mm, width_mm = 10 * length_cm, 10 * width_cm
    return Basket(most_g, "g", says, length_mm=length_mm, width_mm=width_mm, least_g=least_g)


COMMON_BASKETS = (
    _basket(16, 16, 250, 350),
    _basket(18, 18, 350, 500),
    _basket(20, 20, 450, 700),
    _basket(22, 22, 700, 900),
    _basket(25, 25, 900, 1200),
    _basket(28, 28, 1200, 1700),
    _basket(20, 13, 400, 550),
    _basket(25, 15, 700, 900),
    _basket(30, 15, 1000, 1200),
    _basket(35, 15, 1200, 1500),
)

OVEN = Subject("oven")
SPREAD = Rule(0.5, "", "share of the oven spring (of its logarithm) that goes sideways")
SKIN_GIVES_WITH_STEAM = Rule(
    0.15,
    "",
    "share of the oven spring that a skin kept soft by steam follows before it sets",
    "that steam delays setting is general teaching; the number is " + COMMON,
)
SKIN_GIVES_DRY = Rule(
    0.05,
    "",
    "share of the oven spring that the skin follows before it sets in an oven without steam",
)
SETS_DRY_AT = Rule(
    0.75,
    "",
    "without steam the skin has set once the loaf has grown by this share: cuts open no wider",
)
DRY_SPRING = Rule(0.85, "", "oven spring without steam, as a share of that with it (both less 1)")
VESSEL_CLEAR_MM = Rule(5.0, "mm", "room between the baked loaf and the wall of its pot")
LARGEST_POT_MM = Rule(
    300.0, "mm", "the inside of a large covered pot; a longer loaf bakes on a stone"
)
STONE_MM = Rule(380.0, "mm", "the longest loaf for the usual stone or tray")
PREHEAT_MIN = Rule(45.0, "min", "preheat the oven with its pot or stone for this long")
LEAN_DONE_C = (
    Rule(93.0, "C", "a lean loaf is done from this internal temperature on"),
    Rule(
        99.0, "C", "the internal temperature gets no higher than this",
        "the crumb tends to 100 C: Zanoni, Peri & Pierucci, J. Food Eng. 19 (1993) 389-398",
    ),
)  # fmt: skip
ENRICHED_DONE_C = (
    Rule(88.0, "C", "an enriched loaf is done from this internal temperature on"),
    Rule(93.0, "C", "an enriched loaf is dry above this internal temperature"),
)
ENRICHED_COOLER_C = Rule(
    30.0, "C", "bake enriched dough cooler by about this: sugar, milk and egg brown early"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing(Rule):
    """How a loaf of a kind and weight (g) bakes in a place: two stretches (min), each with a heat.

    The rule's value is the least time in all; `then_min` is (least, most).
    """

    kind: str
    place: str
    dough_g: float
    first_min: float
    then_min: tuple[float, float]
    first_c: float
    then_c: float


def _timing(
    kind: str,
    place: str,
    dough_g: float,
    minutes: tuple[float, float, float],
    heat_c: tuple[float, float],
) -> Timing:
    first, least, most = minutes
    then = f"{least:g}" if least == most else f"{least:g} to {most:g}"
    where = {"pot": "in a covered pot", "tin": "in its tin", "stone": "on a stone"}[place]
    moist = "with the lid on" if place == "pot" else "with steam"
    says = (
        f"{kind} of {dough_g:g} g {where}: {first:g} min {moist} at {heat_c[0]:g} °C, then {then} "
        f"min without at {heat_c[1]:g} °C; this long in all at least"
    )
    return Timing(
        first + least,
        "min",
        says,
        kind=kind,
        place=place,
        dough_g=dough_g,
        first_min=first,
        then_min=(least, most),
        first_c=heat_c[0],
        then_c=heat_c[1],
    )


OVEN_TIMES = (
    _timing("roll", "stone", 80, (8, 7, 10), (230, 220)),
    _timing("roll", "stone", 120, (8, 10, 13), (230, 220)),
    _timing("baguette", "stone", 250, (10, 9, 12), (245, 235)),
    _timing("baguette", "stone", 350, (10, 12, 16), (245, 235)),
    _timing("loaf", "pot", 500, (20, 15, 15), (245, 225)),
    _timing("loaf", "pot", 900, (20, 22, 25), (245, 225)),
    _timing("loaf", "pot", 1500, (25, 35, 35), (245, 220)),
    _timing("loaf", "stone", 500, (12, 22, 24), (240, 220)),
    _timing("loaf", "stone", 900, (15, 27, 30), (240, 220)),
    _timing("loaf", "stone", 1500, (18, 42, 45), (240, 210)),
    _timing("tin", "tin", 500, (10, 18, 22), (230, 205)),
    _timing("tin", "tin", 900, (10, 25, 30), (230, 205)),
    _timing("tin", "tin", 1500, (12, 35, 42), (230, 200)),
    _timing("ring", "stone", 600, (12, 18, 22), (240, 220)),
    _timing("ring", "stone", 1000, (15, 22, 27), (240, 220)),
    _timing("flat", "stone", 400, (8, 8, 12), (250, 240)),
)
"""The oven table: each kind and place by its weight of dough, in this order."""
