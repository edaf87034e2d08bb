"""Every slip of a pattern's text that reading it can find, in the user's words, with a way out."""

from collections.abc import Iterable, Sequence

from scorecraft.errors import Slip


def listed(names: Iterable[str]) -> str:
    """Write names one after another."""
    return ", ".join(names)


def mean(close: str, otherwise: str) -> str:
    """Ask whether the nearest known name is meant, or say something else where none is near."""
    return f'did you mean "{close}"?' if close else otherwise


# Lines and blocks

EMPTY = Slip(
    "the pattern is empty", 'start with: title "My loaf" and loaf round width 220mm height 95mm'
)
TAB = Slip("a tab in the indentation", "indent by four spaces for each level")
LINE_UP = Slip(
    "this line is indented, but nothing opens a block", "line it up with the lines above it"
)
NO_COLON = Slip(
    "this line is indented, but nothing opens a block",
    'end the line above with ":", or remove the spaces',
)
NO_WORD = Slip("a line starts with a word", "like leaf, around or slash")


def too_large(most_bytes: int) -> Slip:
    """Refuse a text that is too long to be a pattern."""
    return Slip(f"the pattern is larger than {most_bytes:,.0f} bytes")


def head_in_block(word: str) -> Slip:
    """Refuse a word of the head in a block."""
    return Slip(
        f'"{word}" cannot stand in a block', "put it at the start of a line, outside every block"
    )


def no_statement(word: str, sort: str, example: str) -> Slip:
    """Refuse a region or a texture that starts a line."""
    return Slip(f'"{word}" is a {sort}, not a statement', f"use it in a fill, like: {example}")


def unknown_word(word: str, close: str) -> Slip:
    """Refuse a word that is not in the language."""
    return Slip(f'unknown word "{word}"', mean(close, '"scorecraft words" lists every word'))


def takes_no_block(word: str) -> Slip:
    """Refuse a colon after a word without a block."""
    return Slip(f'"{word}" takes no block', 'remove the ":"')


def needs_block(word: str) -> Slip:
    """Ask for the colon and the block of a word."""
    return Slip(f'"{word}" needs a block', 'end the line with ":" and indent what belongs to it')


def empty_block(word: str) -> Slip:
    """Ask for something in a block."""
    return Slip(f'nothing stands under "{word}"', "indent at least one line under it")


def nested_blocks(most: int) -> Slip:
    """Refuse blocks in blocks without end."""
    return Slip("blocks are nested too deeply", f"at most {most:.0f} levels of blocks")


# Words, keys and values


def not_expected(text: str, word: str) -> Slip:
    """Refuse what follows a finished statement."""
    return Slip(f'"{text}" is not expected here', f"after {word}")


def lacking(word: str, names: Iterable[str], example: str) -> Slip:
    """Ask for keys that a word cannot do without."""
    wanted = " and ".join(f'"{name}"' for name in names)
    return Slip(f'"{word}" needs {wanted}', f"like: {example}")


def without_key(text: str, word: str, keys: Iterable[str]) -> Slip:
    """Refuse a value whose key is missing."""
    return Slip(f'"{text}" has no key in front of it', f"keys of {word}: {listed(keys)}")


def no_key(word: str, text: str, close: str, keys: Sequence[str]) -> Slip:
    """Refuse a key that a word does not have."""
    otherwise = f"its keys: {listed(keys) or 'none'}"
    return Slip(f'"{word}" has no key "{text}"', mean(close, otherwise))


def given_twice(key: str) -> Slip:
    """Refuse a key that is there already."""
    return Slip(f'"{key}" is given twice', "keep one of them")


def space_before_unit(together: str) -> Slip:
    """Refuse a space between a number and its unit."""
    return Slip("a space between number and unit", f"write {together}")


def needs_value(key: str, word: str) -> Slip:
    """Ask for the value of a key."""
    return Slip(f'"{key}" needs a value', f"see: scorecraft words {word}")


def many_parts(most: int) -> Slip:
    """Refuse a region that is joined of too many."""
    return Slip("a region of too many parts", f"at most {most:.0f} joined")


def expected_sort(sort: str, names: Iterable[str]) -> Slip:
    """Ask for a region, a texture or a motif."""
    return Slip(f"expected a {sort}", f"one of: {listed(names)}")


def not_sort(text: str, sort: str, close: str, names: Iterable[str]) -> Slip:
    """Refuse a word that is not a region, a texture or a motif."""
    return Slip(f'"{text}" is not a {sort}', mean(close, f"one of: {listed(names)}"))


POINT = "a point is (x, y), like (10mm, 25mm)"
CLOSE_POINT = "close the point with )"
DEFINE_NAME = Slip("define needs a name", "like: define twig size=30mm:")
DEFAULT = Slip("expected key=default", "like: define twig size=30mm n=3:")
IN_QUOTES = 'write it in "quotes"'
LIKE_PAIR = "like (10mm, 0mm)"
ABOVE_ZERO = "give a size above zero"


def word_of_language(name: str) -> Slip:
    """Refuse a rule called like a word."""
    return Slip(f'"{name}" is a word of the language', "choose another name")


def needs_default(key: str) -> Slip:
    """Ask for the default of a rule's key."""
    return Slip(f'"{key}" needs a default', f"like {key}=30mm")


def takes(key: str, wanted: str, hint: str) -> Slip:
    """Refuse a value of another kind than a key takes."""
    return Slip(f'"{key}" takes {wanted}', hint)


def takes_not(key: str, wanted: str, given: str, like: str) -> Slip:
    """Refuse a quantity of another dimension than a key takes."""
    return Slip(f'"{key}" takes {wanted}, not {given}', f"write {like}")


def not_a_choice(value: str, key: str, word: str, close: str, expected: str) -> Slip:
    """Refuse a name where only a few are known."""
    return Slip(f'"{word}" has no {key} "{value}"', mean(close, expected))


def needs_unit(key: str, like: str) -> Slip:
    """Ask for a unit."""
    return Slip(f'"{key}" needs a unit', f"write {like}")


def cannot_be(key: str, what: str) -> Slip:
    """Refuse a size of zero or less."""
    return Slip(f'"{key}" cannot be {what}', ABOVE_ZERO)


def share_too_large(key: str, most: float) -> Slip:
    """Refuse a share far beyond the loaf."""
    return Slip(f'"{key}" is too large', f"give {most:.0%} or less")


def whole_number(key: str) -> Slip:
    """Ask for a whole number."""
    return Slip(f'"{key}" takes a whole number', "like 8")


def below(key: str, low: str) -> Slip:
    """Refuse a value below the least."""
    return Slip(f'"{key}" is below {low}', f"give {low} or more")


def above(key: str, high: str) -> Slip:
    """Refuse a value above the most."""
    return Slip(f'"{key}" is above {high}', f"give {high} or less")


# Names


def many_names(most: int) -> Slip:
    """Refuse too many names."""
    return Slip("too many names", f"at most {most:,.0f} in one pattern")


def name_taken(name: str, always: bool) -> Slip:
    """Refuse a new name that hides another."""
    why = "is always at hand" if always else "is already taken"
    return Slip(f'the name "{name}" {why}', "choose another name")


def defined_by_itself(name: str) -> Slip:
    """Refuse a name in its own value."""
    return Slip(f'"{name}" is defined by itself', "use only names from lines above it")


def unknown_name(name: str, close: str) -> Slip:
    """Refuse a name that nothing gives a value."""
    return Slip(f'unknown name "{name}"', mean(close, "define it with knob or let above"))


# Numbers, texts and other characters

STRANGE_DIGIT = Slip("this digit is not one of 0 to 9", "write plain digits")
OVER_ZERO = Slip("a fraction with zero below the line", "like 1/2in")
HUGE = Slip("this number is too large", "sizes stay below a million")
NO_QUOTE = Slip("this text has no closing quote", 'end it with "')


def no_meaning(shown: str, like: str | None) -> Slip:
    """Refuse a character that the language has no use for."""
    hint = f"write {like} instead" if like else "put text in double quotes"
    return Slip(f'"{shown}" has no meaning here', hint)


def no_unit(written: str, close: str, known: Iterable[str]) -> Slip:
    """Refuse a unit that is none."""
    return Slip(f'"{written}" is not a unit', mean(close, f"units are {listed(known)}"))


def control_character(code: int) -> Slip:
    """Refuse a character in a text that would steer a terminal."""
    return Slip(f"text cannot hold the control character U+{code:04X}", "remove it")
