"""What kinds of value a key takes, told as soon as a value is written out."""

from scorecraft.errors import Place, Problem, nearest
from scorecraft.language import slips
from scorecraft.language.keys import Key
from scorecraft.language.tree import Broken, Measure, Name, Points, Text, Value
from scorecraft.units import ANGLE, LENGTH, MASS, NUMBER, TEMPERATURE, Quantity, in_unit, quantity

LARGEST_SHARE = 10.0
"""The greatest share a length may be of the reach."""
DIMENSIONS = {
    "length": LENGTH, "size": LENGTH, "angle": ANGLE, "number": NUMBER, "count": NUMBER,
    "mass": MASS, "temperature": TEMPERATURE,
}  # fmt: skip
LIKE = {
    "any": "a value, like 8, 12mm or 30deg",
    "length": "a length, like 12mm, 1/2in or 60%",
    "size": "a length, like 12mm or 1/2in",
    "angle": "an angle, like 30deg",
    "number": "a number, like 2 or 50%",
    "count": "a whole number, like 8",
    "mass": "a weight, like 900g",
    "temperature": "a temperature, like 24C or 75F",
    "pair": "a pair, like (10mm, 0mm)",
    "points": "points, like (0mm, -30mm) (12mm, 0mm)",
}
TINY = 1e-12
MAIN_UNIT = {"length": "mm", "size": "mm", "angle": "deg", "mass": "g", "temperature": "C"}


def check_literal(word: str, key: Key, value: Value) -> Problem | None:
    """Find what is wrong with a value that can be judged without knowing any name."""
    if isinstance(value, Broken):
        return None  # told already
    if isinstance(value, Measure):
        return check_quantity(key, quantity(value.value, value.unit), value.place)
    if isinstance(value, Text) != (key.kind == "text"):
        told = ("no text", f"it takes {expected(key)}")
        wanted, hint = ("text in quotes", slips.IN_QUOTES) if key.kind == "text" else told
    elif key.kind == "pair" or (key.kind == "points" and isinstance(value, Name)):
        if isinstance(value, Points):
            return None
        wanted, hint = expected(key).split(",")[0], slips.LIKE_PAIR
    elif isinstance(value, Name) and key.choices and value.name not in key.choices:
        slip = slips.NOT_A_CHOICE(word=word, key=key.name, value=value.name, expected=expected(key))
        return slip.meant(nearest(value.name, key.choices)).at(value.place)
    else:
        return None
    return slips.TAKES(key=key.name, wanted=wanted, hint=hint).at(value.place)


def expected(key: Key) -> str:
    """Say what a key takes."""
    if key.choices:
        return "one of: " + ", ".join(key.choices)
    return LIKE.get(key.kind, f"a {key.kind}")


def check_quantity(key: Key, found: Quantity, place: Place) -> Problem | None:
    """Check the dimension and the range of a quantity for a key."""
    if key.kind not in DIMENSIONS:
        if key.kind in ("choice", "flag", "text", "pair", "points", "new name"):
            hint = f"it takes {expected(key)}"
            return slips.TAKES(key=key.name, wanted="no number", hint=hint).at(place)
        return None
    if found.share and key.kind in ("length", "number"):
        check = check_range if key.kind == "number" else check_share
        return check(key, found, place)
    if found.dimension != DIMENSIONS[key.kind] or found.share:
        if found.dimension == NUMBER and not found.share and key.kind in MAIN_UNIT:
            return slips.NEEDS_UNIT(key=key.name, like=LIKE[key.kind]).at(place)
        like = LIKE[key.kind]
        wanted = like.split(",")[0]
        return slips.TAKES_NOT(key=key.name, wanted=wanted, given=found.called, like=like).at(place)
    return check_range(key, found, place)


def check_share(key: Key, found: Quantity, place: Place) -> Problem | None:
    """Check the sign of a share given for a length."""
    if found.value < 0 and (key.least is None or key.least >= 0):
        return slips.CANNOT_BE(key=key.name, what="negative").at(place)
    if found.value == 0 and key.least is None:
        return slips.CANNOT_BE(key=key.name, what="zero").at(place)
    if abs(found.value) > LARGEST_SHARE:
        return slips.SHARE_TOO_LARGE(key=key.name, most=LARGEST_SHARE).at(place)
    return None


def check_range(key: Key, found: Quantity, place: Place) -> Problem | None:
    """Check a quantity against the least and most of a key; sizes must be above zero."""
    value = found.value
    if key.kind == "count" and value != round(value):
        return slips.WHOLE_NUMBER(key=key.name).at(place)
    if key.least is None and key.kind in ("length", "size", "mass") and value <= 0:
        says = "zero" if value == 0 else "negative"
        return slips.CANNOT_BE(key=key.name, what=says).at(place)
    unit = MAIN_UNIT.get(key.kind, "")
    if key.least is not None and value < key.least - TINY:
        low = f"{in_unit(key.least, unit):g}{unit}"
        return slips.BELOW(key=key.name, low=low).at(place)
    if key.default.endswith("%") and not found.share and value > (key.most or 1.0):
        return slips.NEEDS_UNIT(key=key.name, like=f"a share, like {key.default}").at(place)
    if key.most is not None and value > key.most + TINY:
        high = f"{in_unit(key.most, unit):g}{unit}"
        return slips.ABOVE(key=key.name, high=high).at(place)
    return None
