"""What the page asks for, read from JSON with care: every field has its type and its limit."""

from collections.abc import Mapping
from pathlib import Path

from scorecraft.designing import Design, make
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass, field
from scorecraft.shelf import Source, shelf_folder

BAKER = "baker.toml"
"""What bakes have taught, in the folder of the patterns."""
MOST_KNOBS = 200
LONGEST_WORD = 400
LONGEST_MARK = 64

Data = Mapping[str, object]


@dataclass(frozen=True, slots=True)
class Asked:
    """A pattern as the page has it: its text, its name, and what is set from outside.

    `place` says which folder the files it names must lie in: `shelf`, `folder`, or none; with
    `baker` the model is as the folder's own bakes have taught it.
    """

    text: str
    name: str = "pattern.score"
    place: str = ""
    loaf: str | None = None
    bake: str | None = None
    dough: str | None = None
    knobs: tuple[tuple[str, str], ...] = field(default=())
    baker: bool = False


def asked(data: Data) -> Asked:
    """Read the pattern of a request; raises UsageError at the first field that is not right."""
    return Asked(
        text=text_of(data, "text", limit=None),
        name=text_of(data, "name", default="pattern.score"),
        place=choice_of(data, "place", ("", "shelf", "folder")),
        loaf=words_of(data, "loaf"),
        bake=words_of(data, "bake"),
        dough=words_of(data, "dough"),
        knobs=knobs_of(data),
        baker=flag_of(data, "baker"),
    )


def files_folder(wanted: Asked, own: Path | None) -> Path | None:
    """Give the folder that the files a pattern names must lie in; `own` is the page's."""
    return {"shelf": shelf_folder(), "folder": own, "": None}[wanted.place]


def designed(wanted: Asked, folder: Path | None) -> Design:
    """Make the design that is asked for; raises ScorecraftError as `make` does."""
    source = Source(wanted.name, wanted.text, files_folder(wanted, folder))
    baker = folder / BAKER if folder and wanted.baker else None
    return make(
        source,
        loaf=wanted.loaf,
        bake=wanted.bake,
        dough=wanted.dough,
        knobs=dict(wanted.knobs),
        baker=baker,
    )


def text_of(
    data: Data, key: str, *, default: str | None = None, limit: int | None = LONGEST_WORD
) -> str:
    """Read a text; without a default it must be there; raises UsageError for anything else."""
    value = data.get(key, default)
    if not isinstance(value, str) or (limit is not None and len(value) > limit):
        raise UsageError(f'"{key}" must be a text')
    if any("\ud800" <= letter <= "\udfff" for letter in value):
        raise UsageError(f'"{key}" holds half a letter')
    return value


def words_of(data: Data, key: str) -> str | None:
    """Read a text that may be left out; it is one line; raises UsageError for anything else."""
    if data.get(key) is None:
        return None
    value = text_of(data, key)
    if "\n" in value or "\r" in value:
        raise UsageError(f'"{key}" must be one line')
    return value


def choice_of(data: Data, key: str, choices: tuple[str, ...]) -> str:
    """Read one of a few words; the first is meant where none is given.

    Raises UsageError for any other.
    """
    value = data.get(key, choices[0])
    if value not in choices:
        raise UsageError(f'"{key}" must be one of: {", ".join(filter(None, choices))}')
    return str(value)


def number_of(data: Data, key: str, default: float, least: float, most: float) -> float:
    """Read a number within its limits; raises UsageError for anything else."""
    value = data.get(key, default)
    if isinstance(value, bool) or not isinstance(value, int | float) or not least <= value <= most:
        raise UsageError(f'"{key}" must be a number from {least:g} to {most:g}')
    return float(value)


def flag_of(data: Data, key: str) -> bool:
    """Read a yes or no, no where nothing is said; raises UsageError for anything else."""
    value = data.get(key, False)
    if not isinstance(value, bool):
        raise UsageError(f'"{key}" must be true or false')
    return value


def knobs_of(data: Data) -> tuple[tuple[str, str], ...]:
    """Read the knobs that are turned, by name.

    Raises UsageError for what is no knob or too much.
    """
    value = data.get("knobs") or {}
    if not isinstance(value, Mapping) or len(value) > MOST_KNOBS:
        raise UsageError('"knobs" must be a few names with their values')
    for name, turned in value.items():
        if not isinstance(turned, str | int | float) or isinstance(turned, bool):
            raise UsageError(f'the knob "{name}" must have a number or a text')
        if len(str(name)) + len(str(turned)) > LONGEST_WORD:
            raise UsageError("a knob's name and value must be short")
    return tuple((str(name), str(turned)) for name, turned in value.items())
