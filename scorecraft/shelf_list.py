"""The shelf in the order of telling: by the form of the loaf, then by the level of the hand."""

from scorecraft.frozen import dataclass
from scorecraft.language.parse import parse
from scorecraft.language.tree import Pattern
from scorecraft.language.words import WORDS
from scorecraft.shelf import LEVELS, from_file, level_of, shelf


@dataclass(frozen=True, slots=True)
class Row:
    """A shipped pattern: its name, title, form of loaf, and level (one of LEVELS)."""

    name: str
    title: str
    shape: str
    level: str


def listed() -> list[Row]:
    """List the shipped patterns."""
    rows = []
    for name, path in shelf().items():
        tree = parse(from_file(path).text, path.name)
        rows.append(Row(name, first(tree, "title", "text"), first(tree, "loaf", "shape"),
                        level_of(name)))  # fmt: skip
    key = WORDS["loaf"].key("shape")
    forms = key.choices if key else ()
    return sorted(rows, key=lambda row: (forms.index(row.shape), LEVELS.index(row.level), row.name))


def first(tree: Pattern, word: str, key: str) -> str:
    """Find the value of a key of the first statement of a word, or ""."""
    statement = next((each for each in tree.statements if each.word == word), None)
    argument = statement.get(key) if statement else None
    if argument is None:
        return ""
    return str(getattr(argument.value, "value", argument.value))
