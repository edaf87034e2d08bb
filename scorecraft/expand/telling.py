"""What expanding a pattern says: what it refuses, each with a way out, and what it left out."""

from scorecraft.errors import Slip

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
SECOND = Slip('a second "{word}"', "keep one: the first is in line {line}")
SAID_TWICE = Slip("the {key} of the dough is given twice", "keep one: the first is in line {line}")
ONE_STATEMENT = "--{word} takes a single statement"
NOT_GIVEN = "no {what} is given: {usual_mm:.0f} mm is usual for this width and dough"
EVEN_BASKET = Slip(
    "a {shape} loaf takes a basket as long as it is wide",
    "use oval or long for a basket longer than it is wide",
)
EVEN_LOAF = Slip(
    "a {shape} loaf is as long as it is wide", "use oval or long for a loaf longer than it is wide"
)
USUAL_DOUGH = "no size is given: a {form} takes {least_g:g} to {most_g:g} g, {usual_g:g} g is taken"
NOT_USUAL_DOUGH = Slip(
    "{grams:g} g is too {much} dough for a {form}",
    "use {least_g:g} to {most_g:g} g, or another form",
)
NO_HOLE = Slip("a loaf called {shape} has no hole", "like: loaf ring width 280mm hole 90mm")
NO_TAPER = Slip("a loaf called {shape} does not taper", "like: loaf oval width 150mm taper 20%")
NO_PAN = Slip("a loaf called {shape} bakes in no tin", "like: loaf tin pan two_pound")
SCALED = "scaled to the {key} given"
RIM_SIZE = "the rim is {how}: {length_mm:.0f} mm long, {width_mm:.0f} mm wide"
NO_FOLDER = Slip('"{file}" is looked for beside the pattern, which is not in a file', SAVE_FIRST)
NO_FILE = Slip('no file can be called "{file}"', "check its name")
OUTSIDE = Slip('"{file}" is outside the pattern\'s folder', "put it beside the pattern")
UNKNOWN_KNOB = Slip('this pattern has no knob "{name}"', "its knobs: {known}")
OTHER_UNIT = Slip('"{key}" takes {wanted.called}, not {given.called}', "use the knob's own unit")


def out_of_knob(name: str, value: float, low: float, high: float, unit: str, turned: bool) -> Slip:
    """Refuse a value of a knob outside its range."""
    own, least, most = (f"{each:g}{unit}" for each in (value, low, high))
    hint = "choose a value within its range" if turned else "change the value or the range"
    return Slip(f"{name} {own} is outside its range, {least} to {most}", hint)


WRONG_KNOB = Slip("{name} takes {wanted.called}, not {given.called}", "like {name}={value:g}{unit}")
SCRAPS = (
    "{count:,} scrap at the edge was too short to cut: left out",
    "{count:,} scraps at the edge were too short to cut: left out",
)
SHORT_STROKES = (
    "{count:,} stroke was too short for a blade: left out",
    "{count:,} strokes were too short for a blade: left out",
)
"""Of one and of several."""
MORE_THAN = Slip("more than {limit:,.0f} {what}", FEWER)
COPY_TOO_FAR = Slip("a copy lands too far from the crown", "at most {most_mm:,.0f} mm")
CUT_TOO_FAR = Slip("this runs too far from the crown", "at most {most_mm:,.0f} mm")
COPY_SCALED = Slip(
    "a copy is drawn too {says}",
    "scales multiply: keep them between {least:,.6g} and {most:,.6g} in all",
)
TOO_MANY_MARKS = Slip("too many string lines", "at most {most:,.0f} in one pattern")
TOO_MANY_COPIES = Slip("{count:,} copies are too many", "at most {most:,.0f} in one placing")
ENDLESS_RULE = (
    'the rule "{word}" uses itself more than {most:.0f} levels deep (it is defined in '
    "line {line}); does it end with a when?"
)
NO_VALUE = '"{name}" has no value'
