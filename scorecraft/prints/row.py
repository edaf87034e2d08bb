"""A row of the table of prints: its name, its options, and how its pages are made."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Literal, Protocol

from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.prints.forms import form_in

if TYPE_CHECKING:
    from scorecraft.bench import Work
    from scorecraft.checks.finding import Finding
    from scorecraft.cuts import Layout
    from scorecraft.drawing.picture import Picture
    from scorecraft.groups import Group
    from scorecraft.opening import Opening
    from scorecraft.opening.ranges import Ranges

Kind = Literal["length", "flag", "choice", "names", "words"]
Value = float | bool | str | tuple[str, ...]
"""A length in mm, a flag, a choice or words, or names."""


class Drawn(Protocol):
    """What a print needs of a design."""

    @property
    def layout(self) -> Layout:
        """The cuts on their loaf."""

    @property
    def work(self) -> Work:
        """The order of cuts at the bench."""

    @property
    def groups(self) -> tuple[Group, ...]:
        """The cuts by their numbers."""

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All that was found."""

    @property
    def opening(self) -> Opening:
        """How the cuts open."""

    @property
    def ranges(self) -> Ranges:
        """How far openings and room may be off."""

    @property
    def room_words(self) -> str:
        """Whether there is room, in a sentence."""


@dataclass(frozen=True, slots=True)
class Printed:
    """What a print came to: its pages, or another form of it.

    `sheets` says how pages that are one drawing are joined, and `larger` names a paper that would
    hold it on one; `remark` is what else is to be told, and `caution` what its maker has to
    mind. `flat` is the drawing that a cutter follows, `text` the print in letters.
    """

    pages: tuple[Picture, ...] = ()
    sheets: str = ""
    larger: str = ""
    remark: str = ""
    caution: str = ""
    flat: Picture | None = None
    text: str = ""


@dataclass(frozen=True, slots=True)
class Option:
    """What can be chosen of a print; `shown` stands for its value in the help.

    A flag that `renames` gives the print's file its own name. Without a default none is None, and
    the maker has its own. One `on_page` has a `label` there; of a length the page offers the
    `choices` (mm), for names and words a field that shows what they are `like`.
    """

    name: str
    kind: Kind
    help: str
    shown: str = ""
    choices: tuple[str, ...] = ()
    default: str | None = None
    renames: bool = False
    label: str = ""
    like: str = ""

    @property
    def on_page(self) -> bool:
        """Whether the page offers it."""
        return bool(self.label)

    @property
    def key(self) -> str:
        """Its name in Python and for the page: a length has its unit there."""
        return f"{self.name}_mm" if self.kind == "length" else self.name

    def checked(self, value: object) -> Value:
        """Give a value back that can be one of this option; raises UsageError for any other."""
        number = isinstance(value, int | float) and not isinstance(value, bool)
        if self.kind == "flag" and isinstance(value, bool):
            return value
        if self.kind == "length" and isinstance(value, int | float) and number:
            if math.isfinite(value):
                return float(value)
        elif self.kind == "names" and isinstance(value, str | Sequence):
            names = value.split(",") if isinstance(value, str) else value
            return tuple(str(name).strip() for name in names if str(name).strip())
        elif self.kind == "words" and isinstance(value, str):
            return value
        elif self.kind == "choice" and value in self.choices:
            return str(value)
        must = {
            "flag": "true or false",
            "length": "a number, in mm",
            "names": "names, like leaf,star",
            "words": "a text",
            "choice": f"one of: {', '.join(self.choices)}",
        }
        raise UsageError(f'"{self.key}" must be {must[self.kind]}')


@dataclass(frozen=True, slots=True)
class Print:
    """A print: `brief` and `help` tell what it is, `make` draws it.

    Of its `forms` the first is meant for standard output; a file without a name ends in `usual`.
    One that `predicts` runs the opening model; one `on_page` is among the page's prints; `example`
    are options to try with a shipped pattern. `make` takes the design, the form, and the options by
    their keys; it imports what it needs when it is called.
    """

    name: str
    brief: str
    help: str
    forms: tuple[str, ...]
    options: tuple[Option, ...]
    make: Callable[..., Printed]
    usual: str = "pdf"
    predicts: bool = False
    on_page: bool = True
    example: str = ""

    @property
    def command(self) -> str:
        """A command line to try, without the program's name."""
        return f"{self.name} leaf-crown {self.example}".rstrip()

    def printed(self, design: Drawn, form: str, options: Mapping[str, object]) -> Printed:
        """Print a design in a form; an option that is None is as usual.

        Raises UsageError for forms and options that this print does not have.
        """
        known = {option.key: option for option in self.options}
        for key in options:
            if key not in known:
                names = ", ".join(known)
                raise UsageError(f'the {self.name} has no "{key}"', None, f"it takes: {names}")
        given = {
            key: known[key].checked(value) for key, value in options.items() if value is not None
        }
        return self.make(design, form_in(form, self.forms), **given)

    def file_name(self, stem: str, options: Mapping[str, object], form: str | None = None) -> str:
        """Name the file of a print after its pattern and its form."""
        renamed = (each.name for each in self.options if each.renames and options.get(each.key))
        return f"{stem}-{next(renamed, self.name)}.{form or self.usual}"
