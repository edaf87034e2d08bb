"""The words of the language by what one wants to do with them."""

from collections.abc import Iterator

from scorecraft.frozen import dataclass
from scorecraft.language.words import WORDS


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
    Goal("Tell the dough, the oven and the bench", ("dough", "bake", "bench")),
    Goal("Dust it through a stencil", ("stencil",)),
)


def words_of(goal: Goal) -> Iterator[str]:
    """List the words of a goal: those it names, then those of its groups."""
    yield from goal.names
    yield from (word.name for word in WORDS.values() if word.group in goal.groups)
