"""What expanding a pattern says: what it refuses, each with a way out, and what it left out."""

from collections.abc import Iterable

from scorecraft.errors import Slip
from scorecraft.units import Quantity, in_unit

FEWER = "use fewer copies, or a shallower recursion"
SAVE_FIRST = "save the pattern to a file first"
NO_LOAF = Slip("the pattern has no loaf", "like: loaf round width 220mm height 95mm")
NO_SIZE = Slip(
    "the loaf has no width and no dough",
    "like: loaf round width 220mm height 95mm, or loaf round dough 900g",
)
BY_ALONE = Slip(
    '"by" is the width of a basket, and there is no basket',
    "like: loaf oval dough 750g basket 25cm by 15cm",
)
BASKET_ALONE = Slip(
    "a basket gives a loaf its size only together with its dough",
    "like: loaf round dough 900g basket 22cm",
)
TRACED_SIZE = Slip(
    "a traced rim takes a width or a length, not both",
    "give one of them: it keeps its proportions",
)
NO_TIN = Slip(
    "the tin has no size and the loaf no dough",
    "like: loaf tin pan two_pound, or loaf tin width 110mm length 230mm height 85mm",
)
NO_STEP = Slip(
    "this goes along a path without saying how often",
    "like: along rim inset 20mm count 24, or every 18mm",
)
PULLED_ALONE = Slip(
    "only a cut right through can be pulled open",
    "like: slash 80mm through pulled 20mm",
)
AS_DRAWN = "as drawn"
FINE_LATTICE = Slip("this lattice is too fine to lay out", "use a wider spacing")
NO_REACH = "a share of the reach cannot be used here: there is no loaf yet"
EMPTY_REGION = Slip("this region is empty", "nothing is left of it")


def second(word: str, line: int) -> Slip:
    """Refuse a header word that is there twice."""
    return Slip(f'a second "{word}"', f"keep one: the first is in line {line}")


def said_twice(key: str, line: int) -> Slip:
    """Refuse a second word on the dough, on another line."""
    return Slip(f"the {key} of the dough is given twice", f"keep one: the first is in line {line}")


def one_statement(word: str) -> str:
    """Refuse an option with more than one statement."""
    return f"--{word} takes a single statement"


def not_given(what: str, usual_mm: float) -> str:
    """Say which measure of the loaf is taken where none is given."""
    return f"no {what} is given: {usual_mm:.0f} mm is usual for this width and dough"


def even_basket(shape: str) -> Slip:
    """Refuse a long basket for a round or square loaf."""
    return Slip(
        f"a {shape} loaf takes a basket as long as it is wide",
        "use oval or long for a basket longer than it is wide",
    )


def even_loaf(shape: str) -> Slip:
    """Refuse a length of its own for a loaf that has none."""
    return Slip(
        f"a {shape} loaf is as long as it is wide",
        "use oval or long for a loaf longer than it is wide",
    )


def usual_dough(form: str, least_g: float, usual_g: float, most_g: float) -> str:
    """Say how much dough is taken for a form of which no size is given."""
    return f"no size is given: a {form} takes {least_g:g} to {most_g:g} g, {usual_g:g} g is taken"


def not_usual_dough(form: str, grams: float, least_g: float, most_g: float) -> tuple[str, str]:
    """Say that a form is not made of so much dough, and what to do."""
    much = "much" if grams > most_g else "little"
    return (
        f"{grams:g} g is too {much} dough for a {form}",
        f"use {least_g:g} to {most_g:g} g, or another form",
    )


def no_hole(shape: str) -> Slip:
    """Refuse a hole in a loaf that has none."""
    return Slip(f"a loaf called {shape} has no hole", "like: loaf ring width 280mm hole 90mm")


def no_taper(shape: str) -> Slip:
    """Refuse a taper of a loaf that has no two ends."""
    return Slip(f"a loaf called {shape} does not taper", "like: loaf oval width 150mm taper 20%")


def no_pan(shape: str) -> Slip:
    """Refuse a tin for a loaf that bakes in none."""
    return Slip(f"a loaf called {shape} bakes in no tin", "like: loaf tin pan two_pound")


def scaled(key: str) -> str:
    """Say to which measure a traced rim is scaled."""
    return f"scaled to the {key} given"


def rim_size(how: str, width_mm: float, length_mm: float) -> str:
    """Say how large a traced rim is."""
    return f"the rim is {how}: {length_mm:.0f} mm long, {width_mm:.0f} mm wide"


def no_folder(file: str) -> Slip:
    """Refuse a drawing where the pattern lies nowhere."""
    return Slip(f'"{file}" is looked for beside the pattern, which is not in a file', SAVE_FIRST)


def no_file(file: str) -> Slip:
    """Refuse a drawing whose name no file can have."""
    return Slip(f'no file can be called "{file}"', "check its name")


def outside(file: str) -> Slip:
    """Refuse a drawing outside the folder of the pattern."""
    return Slip(f'"{file}" is outside the pattern\'s folder', "put it beside the pattern")


def unknown_knob(name: str, known: Iterable[str]) -> Slip:
    """Refuse a knob that the pattern does not have."""
    listed = ", ".join(known) or "none"
    return Slip(f'this pattern has no knob "{name}"', f"its knobs: {listed}")


def other_unit(key: str, wanted: Quantity, given: Quantity) -> Slip:
    """Refuse a limit of a knob in another unit than the knob's."""
    return Slip(f'"{key}" takes {wanted.called}, not {given.called}', "use the knob's own unit")


def out_of_knob(name: str, value: float, low: float, high: float, unit: str, turned: bool) -> Slip:
    """Refuse a value of a knob outside its range."""
    own, least, most = (f"{each:g}{unit}" for each in (value, low, high))
    hint = "choose a value within its range" if turned else "change the value or the range"
    return Slip(f"{name} {own} is outside its range, {least} to {most}", hint)


def wrong_knob(name: str, wanted: Quantity, given: Quantity, unit: str) -> Slip:
    """Refuse a knob turned to something of another kind."""
    like = f"like {name}={in_unit(wanted.value, unit):g}{unit}"
    return Slip(f"{name} takes {wanted.called}, not {given.called}", like)


def scraps(count: int) -> str:
    """Say that clipped ends were left out."""
    what = "scrap at the edge was" if count == 1 else "scraps at the edge were"
    return f"{count:,} {what} too short to cut: left out"


def short_strokes(count: int) -> str:
    """Say that tiny strokes were left out."""
    what = "stroke was" if count == 1 else "strokes were"
    return f"{count:,} {what} too short for a blade: left out"


def more_than(limit: float, what: str) -> Slip:
    """Refuse a pattern that grows beyond a limit."""
    return Slip(f"more than {limit:,.0f} {what}", FEWER)


def copy_too_far(most_mm: float) -> Slip:
    """Refuse a copy far off the loaf."""
    return Slip("a copy lands too far from the crown", f"at most {most_mm:,.0f} mm")


def cut_too_far(most_mm: float) -> Slip:
    """Refuse a cut far off the loaf."""
    return Slip("this runs too far from the crown", f"at most {most_mm:,.0f} mm")


def copy_scaled(large: bool, least: float, most: float) -> Slip:
    """Refuse a copy that is scaled beyond reason."""
    says = "large" if large else "small"
    return Slip(
        f"a copy is drawn too {says}",
        f"scales multiply: keep them between {least:,.6g} and {most:,.6g} in all",
    )


def too_many_marks(most: int) -> Slip:
    """Refuse too many string lines."""
    return Slip("too many string lines", f"at most {most:,.0f} in one pattern")


def too_many_copies(count: int, most: int) -> Slip:
    """Refuse too many copies of one placing."""
    return Slip(f"{count:,} copies are too many", f"at most {most:,.0f} in one placing")


def endless_rule(word: str, most: int, line: int) -> str:
    """Refuse a rule that uses itself without end."""
    return (
        f'the rule "{word}" uses itself more than {most:.0f} levels deep (it is defined in line '
        f"{line}); does it end with a when?"
    )


def no_value(name: str) -> str:
    """Say that a name has no value."""
    return f'"{name}" has no value'
