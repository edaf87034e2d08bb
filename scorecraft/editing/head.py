"""Changes to the head of a pattern: a key of the loaf, the oven or the bench, the value of a knob.

The statement is looked up in the text as it is now; only what changes is written. Every other
letter, comment and space stays. What cannot be placed for sure is refused in words.
"""

from collections.abc import Mapping, Sequence

from scorecraft.editing.line import Line, find_line, inserted, lines_at_head
from scorecraft.errors import ScorecraftError
from scorecraft.language.header_words import HEADER
from scorecraft.language.tree import Argument, Measure, Statement, Unary, outside
from scorecraft.language.words import WORDS

ORDER = tuple(word.name for word in HEADER)


def with_keys(text: str, word: str, keys: Mapping[str, str]) -> str:
    """Write keys of a header statement (`loaf`, `bake`, `bench`); an empty value takes one away.

    Values are as they stand in a pattern. A text without the statement gets one, below what
    comes before it by habit. Raises ScorecraftError where the statement cannot be read, stands
    twice, or does not take a value.
    """
    lines = lines_at_head(text)
    line = find_line(lines, word)
    if line is None:
        new = " ".join([word, *(piece(word, key, value) for key, value in keys.items() if value)])
        sure(Line.read(new, 0, 1), {key for key, value in keys.items() if value}, ())
        return inserted(text, anchor(lines, word), new)
    kept = [each for each in line.sound() if each.key not in keys]
    wanted = {key for key, value in keys.items() if value} | {each.key for each in kept}
    changed = rewritten(line, word, keys)
    sure(Line.read(changed, line.start, line.number), wanted, kept)
    return text[: line.start] + changed + text[line.end :]


def with_knob(text: str, name: str, value: str) -> str:
    """Write the value of a knob, a number with its unit, over the one that stands there.

    Raises ScorecraftError where there is no such knob, or its value is worked out in the text.
    """
    line = find_line(lines_at_head(text), "knob", name)
    if line is None:
        raise ScorecraftError(f'the text has no knob "{name}"', None, "it has been removed since")
    arguments = line.sound()
    old = next((each for each in arguments if each.key == "value"), None)
    if old is None or not is_plain(old):
        hint = "change what it is worked out from"
        raise ScorecraftError(f'the value of "{name}" is worked out', line.place, hint)
    start, end = line.piece(old)
    changed = line.text[:start] + written(line, old, value) + line.text[end:]
    kept = [each for each in arguments if each is not old]
    new = Line.read(changed, line.start, line.number)
    sure(new, {each.key for each in arguments}, kept)
    if not all(is_plain(each) for each in new.arguments if each.key == "value"):
        raise ScorecraftError(f'"{value}" is not a number', line.place, "like 8mm or 12")
    return text[: line.start] + changed + text[line.end :]


def rewritten(line: Line, word: str, keys: Mapping[str, str]) -> str:
    """Write a line with keys changed, from its end to its beginning so that places stay true."""
    there = {each.key for each in line.arguments}
    new = [(key, value) for key, value in keys.items() if value and key not in there]
    first = [value for key, value in new if is_first(word, key, line)]
    last = [piece(word, key, value) for key, value in new if not is_first(word, key, line)]
    text = line.text[: line.code] + "".join(f" {each}" for each in last) + line.text[line.code :]
    for old in reversed(line.arguments):
        start, end = line.piece(old)
        value = keys.get(old.key)
        if value:
            text = text[:start] + written(line, old, value) + text[end:]
        elif value is not None:
            text = text[:start].rstrip() + text[end:]
    head = len(word)
    return text[:head] + "".join(f" {each}" for each in first) + text[head:]


def written(line: Line, old: Argument, value: str) -> str:
    """Write a value in an argument's place, after its key where it has one there."""
    return f"{old.key} {value}" if line.has_key(old) else value


def is_first(word: str, key: str, line: Line) -> bool:
    """Tell whether a key's value belongs at the head of a line that does not have it."""
    leading = bool(line.arguments) and not line.has_key(line.arguments[0])
    return not leading and WORDS[word].mains[:1] == (key,)


def piece(word: str, key: str, value: str) -> str:
    """Write a new argument; the main one of a word goes without its key."""
    return value if WORDS[word].mains[:1] == (key,) else f"{key} {value}"


def anchor(lines: Sequence[Line], word: str) -> Line | None:
    """Find the line a new header statement stands below."""
    for before in reversed(ORDER[: ORDER.index(word)]):
        found = [line for line in lines if line.tokens[0].text == before]
        if found:
            return found[-1]
    return None


def is_plain(argument: Argument) -> bool:
    """Tell whether a value is written as a plain number."""
    value = argument.value
    return isinstance(value.operand if isinstance(value, Unary) else value, Measure)


def sure(line: Line, wanted: set[str], kept: Sequence[Argument]) -> None:
    """Make sure that a changed line says what was asked for, and else what it said before.

    Raises ScorecraftError where it does not.
    """
    found = line.sound()
    same = [each for each in found if each in kept]
    if len(found) != len(wanted) or {each.key for each in found} != wanted or same != list(kept):
        raise ScorecraftError("this value would change more than its own place", line.place)


def keys_as_written(statement: Statement) -> dict[str, str]:
    """Write each value of a statement back as it could stand in the text."""
    return {argument.key: outside(argument.value) for argument in statement.arguments}
