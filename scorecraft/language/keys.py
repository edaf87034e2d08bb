"""What a word of the language is, and the keys it takes."""

from math import radians
from typing import Literal

from scorecraft.frozen import dataclass
from scorecraft.practice import Rule

LARGEST_SIZE_MM = 10_000
"""The greatest length a pattern may ask for."""
LARGEST_TURN_DEG = 36_000
"""The greatest angle a pattern may ask for."""
KeyKind = Literal[
    "length", "size", "angle", "number", "count", "flag", "choice", "text", "mass", "temperature",
    "any", "new name", "condition", "pair", "points", "region", "texture", "path",
]  # fmt: skip
WordKind = Literal["header", "placing", "motif", "texture", "region", "rule"]


@dataclass(frozen=True, slots=True)
class Key:
    """A key of a word: what kind of value it takes, its default as written, and its help.

    `least` and `most` bound the value in inside units (mm, rad); a size must be above zero
    unless `least` says otherwise. A `length` may be a share of the reach, a `size` may not.
    `needed` keys have no default. `param` is the name the code uses where the key's own is a
    word of Python.
    """

    name: str
    kind: KeyKind
    default: str = ""
    help: str = ""
    needed: bool = False
    least: float | None = None
    most: float | None = None
    choices: tuple[str, ...] = ()
    param: str = ""

    @property
    def parameter(self) -> str:
        """Name the parameter of the motif or texture function that takes this key."""
        return self.param or self.name


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the language.

    `mains` are the keys whose values may stand first without their key; `attributes` tells
    whether cut attributes (depth, blade ...) may follow; `parts` are the strokes of a motif that
    may have a depth and blade of their own (`vein_depth`); `expands` marks motifs that are
    expansion cuts unless the pattern says otherwise. `grips` names the keys that have a handle on
    the loaf; None means every length, and where a figure starts and ends. `origin` is the part of a
    motif that stands in its place, where it can be chosen.
    """

    name: str
    group: WordKind
    help: str
    keys: tuple[Key, ...] = ()
    mains: tuple[str, ...] = ()
    body: bool = False
    attributes: bool = False
    parts: tuple[str, ...] = ()
    expands: bool = False
    example: str = ""
    origin: Literal["base", "middle", ""] = ""
    grips: tuple[str, ...] | None = None

    @property
    def handles(self) -> tuple[Key, ...]:
        """The keys that a handle on the loaf turns."""
        if self.grips is not None:
            return tuple(key for key in self.keys if key.name in self.grips)
        ends = ("start", "end")
        return tuple(key for key in self.keys if key.kind == "length" or key.param in ends)

    def key(self, name: str) -> Key | None:
        """Find a key by name, or None."""
        return next((key for key in self.keys if key.name == name), None)


def length(name: str, default: str = "", help: str = "", least: float | None = None) -> Key:
    """Make a key that takes a length or a share of the reach."""
    return Key(name, "length", default, help, not default, least, LARGEST_SIZE_MM)


def size(name: str, default: str = "", help: str = "") -> Key:
    """Make a key that takes a length, but no share."""
    return Key(name, "size", default, help, most=LARGEST_SIZE_MM)


def angle(name: str, default: str, help: str = "", param: str = "") -> Key:
    """Make a key that takes an angle."""
    most = radians(LARGEST_TURN_DEG)
    return Key(name, "angle", default, help, not default, -most, most, param=param)


def slant(name: str, default: str, help: str, least_deg: float, most_deg: float) -> Key:
    """Make a key that takes an angle within a range."""
    return Key(name, "angle", default, help, False, radians(least_deg), radians(most_deg))


def count(name: str, default: str = "", help: str = "", least: int = 1, most: int = 10**9) -> Key:
    """Make a key that takes a whole number."""
    return Key(name, "count", default, help, not default, least, most)


def number(name: str, default: str, help: str = "", least: float = 0, most: float = 1e9) -> Key:
    """Make a key that takes a plain number (or a share, as a part of one)."""
    return Key(name, "number", default, help, not default, least, most)


def choice(name: str, default: str, choices: str, help: str = "") -> Key:
    """Make a key that takes one of a few names."""
    return Key(name, "choice", default, help, not default, choices=tuple(choices.split()))


def flag(name: str, default: str, help: str = "") -> Key:
    """Make a key that takes yes or no."""
    return Key(name, "flag", default, help, choices=("yes", "no"))


def share(rule: Rule) -> str:
    """Write a rule's value as a share, as a default is written."""
    return f"{100 * rule.value:g}%"


FREE = -LARGEST_SIZE_MM  # the `least` of a place on the sheet, which may be negative
