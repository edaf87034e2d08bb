"""The words of the bench card, on paper and as plain text."""

from collections.abc import Iterator, Sequence

from scorecraft.arrays import Line
from scorecraft.baking import ENRICHED_COOLER_C, ENRICHED_DONE_C, LEAN_DONE_C, PREHEAT_MIN
from scorecraft.bench.clock import told
from scorecraft.bench.pace import time_words as takes
from scorecraft.bench.steps import Work
from scorecraft.bench.strings import strings_of
from scorecraft.cuts import Layout
from scorecraft.drawing.paper.cautions import STICKING
from scorecraft.loaf.oven import Way, ways
from scorecraft.loaf.sizing import grams_of
from scorecraft.loaf.telling import PROOFS
from scorecraft.rules import Rule
from scorecraft.units import in_unit

UNTITLED = "Bench card"
STRINGS_FIRST = "First"
HANDS_LAST = "By hand"
DO_NOT_CUT = "guide lines only: do not cut along them"
INTO_THE_OVEN = "Into the oven"
STILL = "do not turn"
EACH_TIME = "each time"
MARK_TO = "turn the mark to"
MARK_AS_DRAWN = "mark as drawn"
FULL_TURN, KEEP_TURNING = "one full turn", "keep turning"
UNDER_BLADE = "under the blade"
POSITIONS = "{count} positions"
DESCRIBED = "The order of cutting in {rows} rows, each with the loaf as it lies on the turntable."
PROOF_ADVICE = {
    "under": " It springs most: cut it deepest, or let it proof longer.",
    "ready": "",
    "over": " It springs little: cut it shallow, with few cuts, and bake it at once.",
}
GUESSED_G = 50
"""A weight judged by the size of the loaf is told in such steps."""


def heat(celsius: float) -> str:
    """Write a temperature in both scales, as an oven's dial has them: 245 °C / 475 °F."""
    fahrenheit = in_unit(celsius, "F")
    step = 5 if celsius > 110 else 1
    return f"{celsius:.0f} °C / {round(fahrenheit / step) * step:.0f} °F"


def time_words(made: Work) -> str:
    """Say how long the cutting takes, and within what time it should be done."""
    needed, allowed = takes(made.effort.seconds, made.bench.skill), told(made.allowed_s)
    if made.effort.seconds > made.allowed_s:
        return f"{needed} of cutting, {allowed} at most: chill the loaf first"
    return f"{needed} of cutting; aim to finish within {allowed}"


def before(layout: Layout, made: Work) -> tuple[str, ...]:
    """Say what comes before the first cut."""
    dough = made.dough
    return (
        "Put a mark on the turntable's edge at 12 o'clock: the red mark of the pictures. You "
        "stand at the bottom of each picture.",
        f"Planned for a {made.bench.skill} hand and {PROOFS[dough.stage]} dough at "
        f"{heat(dough.temperature_c)}; a cold loaf with a dry skin cuts cleanest. Dust it thinly "
        f"with rice flour.{PROOF_ADVICE[dough.stage]}",
        *tools(layout, made.bench.hand),
    )


def tools(layout: Layout, hand: str) -> Iterator[str]:
    """Say what to cut with, and how it is held."""
    if not layout.cuts or not all(cut.severs for cut in layout.cuts):
        yield f"Hold the lame in your {hand} hand. {STICKING}"
    if any(cut.through for cut in layout.cuts):
        yield f"For what goes right through take a dough cutter or a knife in your {hand} hand."
    if any(cut.hinge_mm is not None for cut in layout.cuts):
        yield (
            f"Hold kitchen scissors in your {hand} hand and make each cut in one snip; wet or oil "
            "the blades if they stick."
        )


def string_words(lines: Sequence[Line]) -> str:
    """Say which string lines to mark: two opposite spokes are one line across the loaf."""
    laid, said = strings_of(lines), []
    if laid.across:
        said.append(f"{_counted(laid.across, 'string line')} across ({2 * laid.across} spokes)")
    if laid.single:
        said.append(f"{_counted(laid.single, 'string line')} from crown to rim")
    if laid.others:
        said.append(_counted(laid.others, "string line"))
    if laid.rings:
        said.append(_counted(laid.rings, "ring") + " of string")
    return "mark " + " and ".join(said)


def _counted(count: int, name: str) -> str:
    return f"{count} {name}{'s' if count > 1 else ''}"


Column = tuple[str, tuple[str, ...]]
"""A way to bake: its name, and its steps."""


def oven(layout: Layout) -> tuple[Column, ...]:
    """List the ways to bake a loaf, each with its steps: a covered pot, a stone, a tin."""
    loaf, bake, pot = layout.loaf, layout.bake, layout.size.vessel_mm
    return tuple(_column(way) for way in ways(loaf, bake, _grams(layout), pot))


def _grams(layout: Layout) -> float:
    return layout.size.dough_g or grams_of(layout.loaf, layout.dough)


def _column(way: Way) -> Column:
    low, high = (f"{each:.0f}" for each in way.then_min)
    then = f"about {low if low == high else f'{low}–{high}'} min"
    first = f"{way.first_min:.0f} min"
    preheat = f"{PREHEAT_MIN.value:.0f} min at {heat(way.first_c)}"
    if way.place == "pot":
        steps = f"Heat the pot {preheat}", f"Lid on: {first}"
        return "Covered pot", (*steps, f"Lid off: {heat(way.then_c)}, {then}")
    name = {"stone": "Stone", "tin": "In its tin"}[way.place]
    warm = f"Heat the {'stone' if way.place == 'stone' else 'oven'} {preheat}"
    if way.stone_mm is not None:
        warm += f"; the stone must be {way.stone_mm / 10 + 1:.0f} cm long"
    if way.steam:
        later = f"Vent the steam: {heat(way.then_c)}, {then}"
        return f"{name}, with steam", (warm, f"With steam: {first}", later)
    return f"{name}, no steam", (warm, f"Bake {first}", f"Then {heat(way.then_c)}, {then}")


def recipe_first(layout: Layout) -> str:
    """Say for how much dough the times are, and that the recipe goes before them."""
    grams = _grams(layout)
    step = 10 if layout.size.dough_g or grams < GUESSED_G else GUESSED_G
    much = f"{grams / 1000:.1f} kg" if grams >= 1000 else f"{round(grams / step) * step:.0f} g"
    guess = "" if layout.size.dough_g else ", judging by the size of the loaf"
    return f"Your recipe comes first. These are starting points for about {much} of dough{guess}."


def done() -> str:
    """Say when the loaf is done."""
    lean, enriched = (_inside(rules) for rules in (LEAN_DONE_C, ENRICHED_DONE_C))
    cooler = ENRICHED_COOLER_C.value
    return (
        f"Done: internal temperature {lean}. With butter, egg, milk or sugar: {enriched}, in an "
        f"oven about {cooler:.0f} °C / {round(cooler * 1.8 / 5) * 5:.0f} °F cooler."
    )


def _inside(rules: tuple[Rule, Rule]) -> str:
    low, high = (in_unit(rule.value, "F") for rule in rules)
    return f"{rules[0].value:.0f}–{rules[1].value:.0f} °C / {low:.0f}–{high:.0f} °F"
