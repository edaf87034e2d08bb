"""Where patterns come from: a file, the shelf of shipped ones, standard input, or a text."""

import sys
from pathlib import Path

from scorecraft.errors import UsageError, nearest
from scorecraft.frozen import dataclass
from scorecraft.limits import MOST_BYTES
from scorecraft.reading import check_size, decoded, read_text

SUFFIX = ".score"
LEVELS = ("first", "steady", "show")
"""How practised a hand a pattern wants: for a first loaf, a steady hand, or a show piece."""
FIRST = (
    "baguette-five", "chevron-loaf", "crescent-and-wheat", "ear-of-wheat", "feather-batard",
    "fougasse-leaf", "heart-quarters", "ladder-loaf", "overlapping-slashes", "roll-cross",
    "rose-bowl", "square-of-slashes", "tin-slants",
)  # fmt: skip
"""Few strokes, and none that must meet another; chosen by us on the bench cards."""
SHOW = (
    "band-lattice", "bee-garden", "bordered-square", "filled-cross", "hemp-leaf-dome",
    "herringbone-batard", "leaf-crown", "lotus", "sea-and-sun", "snow-field",
    "subdivided-triangle", "sunflower",
)  # fmt: skip
"""Many strokes, close together: two minutes and more; the rest of the shelf is between."""


@dataclass(frozen=True, slots=True)
class Source:
    """A pattern text: its name for messages, the text, and the folder of the files it may name."""

    name: str
    text: str
    folder: Path | None = None


def shelf_folder() -> Path:
    """Find the folder of the shipped patterns, in an installed package or a checkout."""
    here = Path(__file__).parent
    inside = here / "patterns"
    return inside if inside.is_dir() else here.parent / "patterns"


def shelf() -> dict[str, Path]:
    """List the shipped patterns by name."""
    return {path.stem: path for path in sorted(shelf_folder().glob(f"*{SUFFIX}"))}


def level_of(name: str) -> str:
    """Tell how practised a hand a shipped pattern wants, one of LEVELS."""
    return "first" if name in FIRST else "show" if name in SHOW else "steady"


def find_source(pattern: "str | Path") -> Source:
    """Find a pattern: a text of several lines, a file, a shipped name, or `-` for standard input.

    Raises UsageError when there is none, or it cannot be read as text.
    """
    path = Path(pattern)
    if isinstance(pattern, str) and "\n" in pattern and not there(path):
        return Source("pattern", pattern)
    if str(pattern) == "-":
        return from_stdin()
    if not str(pattern).strip():
        raise UsageError("no pattern is named", None, 'see "scorecraft list" for shipped patterns')
    if there(path) or path.suffix == SUFFIX or len(path.parts) > 1:
        return from_file(path)
    shipped = shelf()
    if str(pattern) in shipped:
        return Source(f"{pattern}{SUFFIX}", from_file(shipped[str(pattern)]).text, shelf_folder())
    close = nearest(str(pattern), shipped, cutoff=0.5)
    hint = f'did you mean "{close}"?' if close else 'see "scorecraft list" for shipped patterns'
    raise UsageError(f'no file and no shipped pattern is called "{pattern}"', None, hint)


def there(path: Path) -> bool:
    """Tell whether there is such a file; a text that could not be a file's name is none."""
    try:
        return path.exists()
    except OSError:  # such a name is too long
        return False


def from_stdin() -> Source:
    """Read a pattern from standard input; raises UsageError where there is none."""
    if sys.stdin is None:
        raise UsageError("there is no standard input", None, "name a file or a shipped pattern")
    data = sys.stdin.buffer.read(MOST_BYTES + 1)
    check_size(data, MOST_BYTES, "<stdin>", "a pattern")
    return Source("<stdin>", decoded(data, "<stdin>"))


def from_file(path: Path) -> Source:
    """Read a pattern file."""
    text = read_text(path, MOST_BYTES, "a pattern")
    return Source(str(path), text, path.resolve().parent)
