"""What the loaf says: how its size was found from the dough, step by step, and what is refused."""

from __future__ import annotations

from math import isclose
from typing import TYPE_CHECKING

from scorecraft.errors import Slip
from scorecraft.units import celsius_words, percent_words

if TYPE_CHECKING:
    from scorecraft.loaf.dome import Loaf
    from scorecraft.loaf.dough import Dough

PROOFS = {"under": "underproofed", "ready": "ready", "over": "overproofed"}
"""What a stage of proofing is called in a sentence."""
WET, WARM_C = 0.78, 27.0
"""From here on dough is called wet, and dough or kitchen warm."""
BASKET_IGNORED = "the basket is ignored: the size given is used"
SIZE_USED = "the size given is used"
OUT_OF_RANGE = Slip("{what} is out of range", "{hint}")
UNKNOWN_FORM = Slip('"{name}" is not a loaf form', "use {others} or {last}")
HOLE_TOO_LARGE = Slip(
    "the ring around the hole is narrower than {least_mm:g} mm",
    "use a smaller hole or a wider loaf",
)
HOLE_OFF_CENTRE = Slip(
    "the hole does not lie around the loaf's centre", "draw the hole around the middle of the loaf"
)
UNKNOWN_PROOF = Slip(
    '"{proof}" is not a stage of proofing',
    "use under, ready, over, or how many times the mixed volume",
)
MIXED_VOLUME = "{grams:g} g of dough at {density:g} g/cm³ takes up {mixed_cm3:.0f} cm³ when mixed"
TOO_TALL = Slip(
    "this much dough would stand {height_mm:.0f} mm high on {across_mm:.0f} mm: it will spread",
    "use less dough or a wider loaf; on that width it stands about {most_mm:.0f} mm at most",
)
BASKET_SPREADS = "turned out of {basket} the loaf spreads by {more:.0%}: {why}"
BASKET_DOUBT = "the loaf will be {more:.0%} larger than {basket} once it is turned out: {why}"
BASKET_LOW = "{basket} is not full to the rim: the loaf turns out {width_mm:.0f} mm wide"
BASKET_NOT_FILLED = "that does not fill {basket}: the loaf turns out {width_mm:.0f} mm wide"
BASKET_OVERFULL = "this is too much dough for {basket}"
PAN_CHOSEN = "no tin is named: {pan} is usual for {grams:g} g"
PAN_TAKES = "{pan} takes {low_g:g} to {high_g:g} g of dough: {grams:g} g is taken"
TOO_MUCH_FOR_PAN = Slip(
    "{grams:g} g of dough is too much for {pan}: it spills over the rim",
    "use at most {most_g:g} g, or a larger tin",
)
TOO_LITTLE_FOR_PAN = Slip(
    "{grams:g} g of dough is too little for {pan}: its crown stays below the rim",
    "use at least {least_g:g} g, or a smaller tin",
)


def size_words(loaf: Loaf) -> str:
    """Say how large a loaf is: across where it is even, else its length before its width."""
    across = f"{loaf.width_mm:.0f} mm across"
    if abs(loaf.length_mm - loaf.width_mm) > 0.5:
        across = f"{loaf.length_mm:.0f} mm long, {loaf.width_mm:.0f} mm wide"
    hole = f", hole {loaf.hole.width_mm:.0f} mm" if loaf.hole else ""
    return f"{across}{hole}, {loaf.height_mm:.0f} mm high"


def with_article(name: str) -> str:
    """Write a name with a or an before it."""
    return f"{'an' if name[0] in 'aeioué' else 'a'} {name}"


def proofed_volume(dough: Dough, cm3: float) -> str:
    """Say how much room dough takes up when it is scored."""
    told = f"{PROOFS[dough.stage]}, {dough.times:.3g} times that is {cm3:.0f} cm³ at scoring"
    if dough.shrunk > 0.995:
        return told
    less = percent_words(1 - dough.shrunk)
    return f"{told}: at {celsius_words(dough.temperature_c)} it has shrunk by {less}"


def loaf_holds(loaf: Loaf, dough_mm3: float) -> str:
    """Say how much a loaf holds, and if that is not its dough."""
    across = f"{loaf.width_mm:.0f} mm wide"
    if not isclose(loaf.width_mm, loaf.length_mm):
        across = f"{loaf.length_mm:.0f} mm long, {across}"
    size, cm3 = f"{across} and {loaf.height_mm:.0f} mm high", loaf.volume_mm3 / 1000
    told = f"{with_article(loaf.called)} {size} holds {cm3:.0f} cm³"
    if isclose(loaf.volume_mm3, dough_mm3, rel_tol=0.01):
        return told
    share = percent_words(loaf.volume_mm3 / dough_mm3)
    return f"{told}, {share} of the dough's volume: {SIZE_USED}"


def basket_words(basket_mm: tuple[float, float]) -> str:
    """Call a basket by its size across the top."""
    across, along = basket_mm
    by = "" if isclose(across, along) else f" by {across:.0f} mm"
    return f"a {along:.0f} mm{by} basket"


def basket_shapes(basket: str, width_mm: float, length_mm: float) -> str:
    """Say what size a basket gives the loaf."""
    long = "" if isclose(width_mm, length_mm) else f"{length_mm:.0f} mm long and "
    return f"{basket} makes the loaf {long}{width_mm:.0f} mm wide"


def why_it_spreads(dough: Dough, too_much: bool) -> str:
    """Say why a loaf is larger than its basket once it is turned out."""
    reasons = [
        *(["too much dough"] if too_much else []),
        *(["overproofed"] if dough.stage == "over" else []),
        *([f"wet, {percent_words(dough.hydration)}"] if dough.hydration >= WET else []),
        *(["warm"] if max(dough.temperature_c, dough.kitchen_c) >= WARM_C else []),
    ]
    return " and ".join(reasons) or "the basket is full"


def basket_fix(least_g: float, most_g: float) -> str:
    """Advise the usual amount of dough for a basket."""
    low, high = (round(grams / 10) * 10 for grams in (least_g, most_g))
    return f"use a larger basket or less dough: this one takes about {low:g} to {high:g} g"
