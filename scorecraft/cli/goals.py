"""The words of the language by what one wants to do: the list of `scorecraft words`."""

from collections.abc import Iterator
from dataclasses import dataclass

from scorecraft.language.words import ATTRIBUTES, WORDS


@dataclass(frozen=True, slots=True)
class Goal:
    """Something one wants to do, and the words that do it, by name or as groups of the table."""

    says: str
    names: tuple[str, ...] = ()
    groups: tuple[str, ...] = ()


GOALS = (
    Goal("Name your pattern", ("title", "note")),
    Goal("Measure your loaf", ("loaf",)),
    Goal("Draw a figure", groups=("motif",)),
    Goal("Place cuts", ("marks", "at", "inside", "outside"), ("region",)),
    Goal("Repeat and mirror", ("around", "row", "grid", "mirror", "repeat", "along", "wedges")),
    Goal("Fill an area", ("fill",), ("texture",)),
    Goal("Adjust with knobs", ("knob", "let")),
    Goal("Make it look cut by hand", ("vary",)),
    Goal("Make figures of your own", groups=("rule",)),
    Goal("Tell the oven and the bench", ("bake", "bench")),
)
HOW = "Say how a cut is made (after any figure, fill or placing)"
CHECKS_SAY = "Understand what a check says"
MORE = "Explain one: scorecraft words leaf. Everything at once: scorecraft words --all."


def words_of(goal: Goal) -> Iterator[str]:
    """List the words of a goal: those it names, then those of its groups."""
    yield from goal.names
    yield from (word.name for word in WORDS.values() if word.group in goal.groups)


def listed() -> str:
    """Write all words under what they are for, each with what it does in a line."""
    from scorecraft.checks import CHECKS  # it loads the checks, which one word does not need

    parts = [
        section(goal.says, [(name, WORDS[name].help) for name in words_of(goal)]) for goal in GOALS
    ]
    parts.append(section(HOW, [(key.name, key.help) for key in ATTRIBUTES]))
    parts.append(section(CHECKS_SAY, [(each.name, each.says) for each in CHECKS.values()]))
    return "\n".join([*parts, MORE]) + "\n"


def section(heading: str, rows: list[tuple[str, str]]) -> str:
    """Write a heading and its rows."""
    return "\n".join([heading, *(f"  {name:<15} {says}" for name, says in rows), ""])
