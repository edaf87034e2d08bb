"""Every slip of a pattern's text that reading it can find, in the user's words, with a way out."""

from scorecraft.errors import Slip

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
TOO_LARGE = Slip("the pattern is larger than {most_bytes:,.0f} bytes")
HEAD_IN_BLOCK = Slip(
    '"{word}" cannot stand in a block', "put it at the start of a line, outside every block"
)
NO_STATEMENT = Slip('"{word}" is a {sort}, not a statement', "use it in a fill, like: {example}")
UNKNOWN_WORD = Slip('unknown word "{word}"', '"scorecraft words" lists every word')
TAKES_NO_BLOCK = Slip('"{word}" takes no block', 'remove the ":"')
NEEDS_BLOCK = Slip('"{word}" needs a block', 'end the line with ":" and indent what belongs to it')
EMPTY_BLOCK = Slip('nothing stands under "{word}"', "indent at least one line under it")
NESTED_BLOCKS = Slip("blocks are nested too deeply", "at most {most:.0f} levels of blocks")


# Words, keys and values

NOT_EXPECTED = Slip('"{text}" is not expected here', "after {word}")
LACKING = Slip('"{word}" needs {wanted}', "like: {example}")
WITHOUT_KEY = Slip('"{text}" has no key in front of it', "keys of {word}: {keys}")
NO_KEY = Slip('"{word}" has no key "{text}"', "its keys: {keys}")
GIVEN_TWICE = Slip('"{key}" is given twice', "keep one of them")
SPACE_BEFORE_UNIT = Slip("a space between number and unit", "write {together}")
NEEDS_VALUE = Slip('"{key}" needs a value', "see: scorecraft words {word}")
MANY_PARTS = Slip("a region of too many parts", "at most {most:.0f} joined")
EXPECTED_SORT = Slip("expected a {sort}", "one of: {names}")
NOT_SORT = Slip('"{text}" is not a {sort}', "one of: {names}")
POINT = "a point is (x, y), like (10mm, 25mm)"
CLOSE_POINT = "close the point with )"
DEFINE_NAME = Slip("define needs a name", "like: define twig size=30mm:")
DEFAULT = Slip("expected key=default", "like: define twig size=30mm n=3:")
IN_QUOTES = 'write it in "quotes"'
LIKE_PAIR = "like (10mm, 0mm)"
ABOVE_ZERO = "give a size above zero"
WORD_OF_LANGUAGE = Slip('"{name}" is a word of the language', "choose another name")
NEEDS_DEFAULT = Slip('"{key}" needs a default', "like {key}=30mm")
TAKES = Slip('"{key}" takes {wanted}', "{hint}")
TAKES_NOT = Slip('"{key}" takes {wanted}, not {given}', "write {like}")
NOT_A_CHOICE = Slip('"{word}" has no {key} "{value}"', "{expected}")
NEEDS_UNIT = Slip('"{key}" needs a unit', "write {like}")
CANNOT_BE = Slip('"{key}" cannot be {what}', ABOVE_ZERO)
SHARE_TOO_LARGE = Slip('"{key}" is too large', "give {most:.0%} or less")
WHOLE_NUMBER = Slip('"{key}" takes a whole number', "like 8")
BELOW = Slip('"{key}" is below {low}', "give {low} or more")
ABOVE = Slip('"{key}" is above {high}', "give {high} or less")


# Names

MANY_NAMES = Slip("too many names", "at most {most:,.0f} in one pattern")
ALWAYS_AT_HAND = Slip('the name "{name}" is always at hand', "choose another name")
NAME_TAKEN = Slip('the name "{name}" is already taken', "choose another name")
DEFINED_BY_ITSELF = Slip('"{name}" is defined by itself', "use only names from lines above it")
UNKNOWN_NAME = Slip('unknown name "{name}"', "define it with knob or let above")

# Numbers, texts and other characters

STRANGE_DIGIT = Slip("this digit is not one of 0 to 9", "write plain digits")
OVER_ZERO = Slip("a fraction with zero below the line", "like 1/2in")
HUGE = Slip("this number is too large", "sizes stay below a million")
NO_QUOTE = Slip("this text has no closing quote", 'end it with "')
NO_MEANING = Slip('"{shown}" has no meaning here', "put text in double quotes")
LOOKS_LIKE = Slip('"{shown}" has no meaning here', "write {like} instead")
NO_UNIT = Slip('"{written}" is not a unit', "units are {known}")
CONTROL_CHARACTER = Slip("text cannot hold the control character U+{code:04X}", "remove it")
