"""Text to tokens, line by line: a bad token becomes a broken one, told once."""

import re
import unicodedata
from collections.abc import Callable, Iterable, Iterator
from typing import Literal

from scorecraft.errors import Place, Problem, lines_of, nearest
from scorecraft.frozen import dataclass
from scorecraft.language import slips
from scorecraft.units import SPELLINGS, TIME, UNITS

TokenKind = Literal["number", "name", "text", "sign", "broken"]
SIGNS = ("<=", ">=", "==", "!=", "(", ")", ",", ":", "=", "+", "-", "*", "/", "<", ">")
LOOKALIKES = {"–": "-", "−": "-", "×": "*", "÷": "/", "“": '"', "”": '"', "≤": "<=", "≥": ">="}
TAB = 4
NUMBER = re.compile(
    r"(?P<top>[0-9]++\.?[0-9]*+|\.[0-9]++)(?:/(?P<below>[0-9]++)(?=[%°″\w]))?+(?P<unit>[%°″]|\w*+)"
)
SIGN_APART = re.compile(r"\s++[%°″]")


@dataclass(frozen=True, slots=True)
class Token:
    """A piece of a line: its kind, its text, and for a number its value and unit."""

    kind: TokenKind
    text: str
    place: Place
    value: float = 0.0
    unit: str = ""


@dataclass(frozen=True, slots=True)
class SourceLine:
    """A line with something on it: its indentation in columns, and its tokens."""

    number: int
    indent: int
    tokens: tuple[Token, ...]


Report = Callable[[Problem], None]


def source_lines(text: str, file: str, report: Report) -> list[SourceLine]:
    """Split a text into lines of tokens; blank lines and comments leave nothing."""
    found = []
    tab_told = False
    for number, line in enumerate(lines_of(text), start=1):
        body = line.lstrip(" \t")
        margin = line[: len(line) - len(body)]
        if not body.strip() or body.startswith("#"):
            continue
        if "\t" in margin and not tab_told:
            tab_told = True
            place = Place(file, number, margin.index("\t") + 1)
            report(slips.TAB.at(place))
        tokens = unspoiled(scan(line, len(margin), Place(file, number, 1), report))
        if tokens:
            found.append(SourceLine(number, len(margin.expandtabs(TAB)), tokens))
    return found


def unspoiled(tokens: Iterable[Token]) -> tuple[Token, ...]:
    """Leave out broken tokens after the colon that ends a line."""
    found = list(tokens)
    end = len(found)
    while end and found[end - 1].kind == "broken":
        end -= 1
    ends = end and found[end - 1].text == ":" and found[end - 1].kind == "sign"
    return tuple(found[:end] if ends else found)


def scan(line: str, start: int, at: Place, report: Report) -> Iterator[Token]:
    """Read the tokens of one line from column `start` (from 0) on."""
    position = start
    while position < len(line):
        character = line[position]
        if character.isspace():
            position += 1
            continue
        if character == "#":
            return
        token, position = read_one(line, position, at, report)
        yield token


def read_one(line: str, position: int, at: Place, report: Report) -> tuple[Token, int]:
    """Read one token; give it and the position after it."""
    character = line[position]
    if character.isdigit() or (character == "." and line[position + 1 : position + 2].isdigit()):
        return read_number(line, position, at, report)
    if character == '"':
        return read_text(line, position, at, report)
    if character.isidentifier():
        end = position
        while end < len(line) and (line[end].isidentifier() or line[end].isdigit()):
            end += 1
        return Token("name", line[position:end], span(at, position, end)), end
    for sign in SIGNS:
        if line.startswith(sign, position):
            end = position + len(sign)
            return Token("sign", sign, span(at, position, end)), end
    return read_stray(line, position, at, report)


def read_stray(line: str, position: int, at: Place, report: Report) -> tuple[Token, int]:
    """Read a run of characters the language has no use for; it is told once."""
    end = position + 1
    while end < len(line) and is_stray(line[end]):
        end += 1
    character = line[position]
    place = span(at, position, end)
    like = LOOKALIKES.get(character)
    shown = character if character.isprintable() else f"U+{ord(character):04X}"
    slip = slips.LOOKS_LIKE if like else slips.NO_MEANING
    report(slip(shown=shown, like=like).at(place, trails=True))
    return Token("broken", line[position:end], place), end


def is_stray(character: str) -> bool:
    """Tell whether no token starts with this character."""
    known = character.isspace() or character.isidentifier() or character.isdigit()
    return not known and character not in '#".' and not any(s[0] == character for s in SIGNS)


def span(at: Place, start: int, end: int) -> Place:
    """Make the place of columns start..end (from 0) of a line."""
    return Place(at.file, at.line, start + 1, max(1, end - start))


def read_number(line: str, position: int, at: Place, report: Report) -> tuple[Token, int]:
    """Read a number with its unit; `1/2in` is half an inch."""
    found = NUMBER.match(line, position)
    if found is None:  # a digit of another script
        place = span(at, position, position + 1)
        report(slips.STRANGE_DIGIT.at(place))
        return Token("broken", line[position], place), position + 1
    top, below, written = found.groups()
    bare, end = found.start("unit"), found.end()
    if below is not None and float(below) == 0:
        place = span(at, position, bare)
        report(slips.OVER_ZERO.at(place))
        return Token("broken", line[position:bare], place), end
    value, unit = float(top) / float(below or 1), SPELLINGS.get(written, written)
    place = span(at, position, end)
    if not written and (apart := SIGN_APART.match(line, end)):
        end = apart.end()
        together = f"{line[position:bare]}{line[end - 1]}"
        report(slips.SPACE_BEFORE_UNIT(together=together).at(span(at, position, end)))
    elif unit not in UNITS:
        close = nearest(unit, [name for name, row in UNITS.items() if row.dimension != TIME])
        slip = slips.NO_UNIT(written=written, known=", ".join(filter(None, UNITS))).meant(close)
        report(slip.at(span(at, bare, end)))
    elif not value < 1e12:
        report(slips.HUGE.at(place))
    else:
        return Token("number", line[position:end], place, value, unit), end
    return Token("broken", line[position:end], place), end


def read_text(line: str, position: int, at: Place, report: Report) -> tuple[Token, int]:
    """Read a quoted text; a backslash keeps a quote or a backslash as it is, a tab is a space."""
    out = []
    end = position + 1
    while end < len(line) and line[end] != '"':
        if line[end] == "\\" and line[end + 1 : end + 2] in ('"', "\\"):
            end += 1
        out.append(" " if line[end] == "\t" else line[end])
        end += 1
    place = span(at, position, min(end + 1, len(line)))
    if end >= len(line):
        report(slips.NO_QUOTE.at(place))
    elif stray := next((c for c in out if unicodedata.category(c) in ("Cc", "Cs")), ""):
        report(slips.CONTROL_CHARACTER(code=ord(stray)).at(place))
    return Token("text", "".join(out), place), end + 1
