"""Numbers with units, and the doors between the baker's units and the code's.

Inside the code everything is in millimetres, radians, grams, seconds and degrees Celsius, and
angles run counter-clockwise from the x axis. A pattern and a print count turntable angles:
0 degrees is 12 o'clock (away from the baker), growing clockwise.
"""

import math
from typing import NamedTuple

from scorecraft.frozen import dataclass


class Dimension(NamedTuple):
    """The powers of length, angle, mass, time and temperature in a quantity."""

    length: int = 0
    angle: int = 0
    mass: int = 0
    time: int = 0
    temperature: int = 0


NUMBER = Dimension()
LENGTH = Dimension(length=1)
AREA = Dimension(length=2)
ANGLE = Dimension(angle=1)
MASS = Dimension(mass=1)
TIME = Dimension(time=1)
TEMPERATURE = Dimension(temperature=1)

CALLED = {
    NUMBER: "a plain number",
    LENGTH: "a length (like 12mm)",
    AREA: "an area",
    ANGLE: "an angle (like 30deg)",
    MASS: "a weight (like 900g)",
    TIME: "a time (like 20min)",
    TEMPERATURE: "a temperature (like 24C)",
}


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: how many of the inside unit it makes (`offset` after the factor, for °F)."""

    factor: float
    dimension: Dimension
    offset: float = 0.0
    share: bool = False


UNITS = {
    "": Unit(1.0, NUMBER),
    "%": Unit(0.01, NUMBER, share=True),
    "mm": Unit(1.0, LENGTH),
    "cm": Unit(10.0, LENGTH),
    "in": Unit(25.4, LENGTH),
    "deg": Unit(math.pi / 180, ANGLE),
    "g": Unit(1.0, MASS),
    "kg": Unit(1000.0, MASS),
    "oz": Unit(28.349523125, MASS),
    "lb": Unit(453.59237, MASS),
    "s": Unit(1.0, TIME),
    "min": Unit(60.0, TIME),
    "h": Unit(3600.0, TIME),
    "C": Unit(1.0, TEMPERATURE),
    "F": Unit(5 / 9, TEMPERATURE, offset=-160 / 9),
}
"""Every unit of the language; inch, ounce and pound by definition (25.4 mm; 453.59237 g)."""

SPELLINGS = {"°": "deg", "″": "in", "inch": "in", "degrees": "deg"}
"""Other ways to write a unit, and the one that is written back."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number in inside units with its dimension; a `share` (60%) is a part of the reach."""

    value: float
    dimension: Dimension = NUMBER
    share: bool = False

    @property
    def called(self) -> str:
        """Say what sort of quantity this is, for a message."""
        if self.share:
            return "a share (like 60%)"
        return CALLED.get(self.dimension, "a product of units")


def quantity(value: float, unit: str) -> Quantity:
    """Turn a number and a unit of `UNITS` into a quantity in inside units."""
    row = UNITS[unit]
    return Quantity(value * row.factor + row.offset, row.dimension, row.share)


def in_unit(value: float, unit: str) -> float:
    """Turn an inside number back into `unit`."""
    row = UNITS[unit]
    return (value - row.offset) / row.factor


def from_turntable(angle_rad: float) -> float:
    """Turn a turntable angle (clockwise from 12 o'clock) into a mathematical one; radians."""
    return math.pi / 2 - angle_rad


def to_turntable(theta_rad: float) -> float:
    """Turn a mathematical angle into turntable radians in [0, 2 pi)."""
    turned = math.fmod(math.pi / 2 - theta_rad, math.tau)
    return turned + math.tau if turned < 0 else turned


def turntable_degrees(theta_rad: float) -> float:
    """Give the turntable angle of a mathematical angle in whole-turn degrees [0, 360)."""
    return math.degrees(to_turntable(theta_rad)) % 360.0


def plain(value: float) -> str:
    """Write a number without exponent, trailing zeros or a minus zero, exact on reading back."""
    if value == int(value):
        return f"{value + 0.0:.0f}"
    text = repr(float(value))
    if "e" not in text:
        return text
    digits = max(0, 17 - math.floor(math.log10(abs(value))))
    return f"{value:.{min(digits, 340)}f}".rstrip("0").rstrip(".")


MOST_DIGITS = 7
"""Decimals that no length is told with."""


def mm_words(value_mm: float) -> str:
    """Write a length for people: whole mm from 10 on, tenths below."""
    digits = 0 if abs(value_mm) >= 9.95 else 1
    return f"{value_mm:.{digits}f} mm".replace(".0 mm", " mm")


def mm_words_apart(less_mm: float, more_mm: float) -> tuple[str, str]:
    """Write two lengths with so many decimals that they do not read the same."""
    told = mm_words(less_mm), mm_words(more_mm)
    digits = 1
    while told[0] == told[1] and less_mm != more_mm and digits < MOST_DIGITS:
        told = f"{less_mm:.{digits}f} mm", f"{more_mm:.{digits}f} mm"
        digits += 1
    return told


def half_up(value_mm: float) -> float:
    """Round a length up to half a millimetre, as a hand can tell it."""
    return math.ceil(value_mm * 2 - 1e-9) / 2


def degree_words(angle_rad: float) -> str:
    """Write an angle for people, in whole degrees."""
    return f"{math.degrees(angle_rad):.0f}°"


def percent_words(share: float) -> str:
    """Write a share for people, in whole percent."""
    return f"{share:.0%}"


def percent_range(least: float, most: float) -> str:
    """Write a range of shares for people, in whole percent: `14–20%`."""
    low, high = f"{100 * least:.0f}", f"{100 * most:.0f}"
    return f"{high}%" if low == high else f"{low}–{high}%"


COARSE_FROM_MM = 20.0
"""A range that reaches so far is written in steps of 5 mm, a narrower one in whole mm."""


def mm_range(least_mm: float, most_mm: float) -> str:
    """Write a range of lengths for people, without the unit: `7–11`, `25–35`."""
    step = 5 if most_mm >= COARSE_FROM_MM else 1
    low, high = (step * round(each / step) for each in (least_mm, most_mm))
    return f"{high}" if low == high else f"{low}–{high}"


def celsius_words(temperature_c: float) -> str:
    """Write a temperature for people, in whole degrees Celsius."""
    return f"{temperature_c:.0f} °C"
