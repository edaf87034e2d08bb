"""The reference of the language, written from the one table of words."""

from collections.abc import Iterator

from scorecraft.language.evaluate import FUNCTIONS
from scorecraft.language.keys import Key, Word
from scorecraft.language.kinds import LIKE
from scorecraft.language.words import AT_HAND, ATTRIBUTES, WORDS, keys_of

GROUPS = {
    "header": "Head of a pattern",
    "placing": "Placing: a block of figures, and where it goes",
    "motif": "Motifs: figures made of cuts",
    "texture": "Textures, for `fill REGION with TEXTURE`",
    "region": "Regions, joined by `and` and `less`",
    "rule": "Rules",
}
TAKES = {
    "flag": "yes or no", "text": "text in quotes", "any": "any value", "new name": "a name",
    "pair": "a pair, like (10mm, 0mm)", "points": "points, like (0mm, 0mm) (9mm, 30mm)",
    "region": "a region", "texture": "a texture", "path": "a motif", "condition": "a condition",
}  # fmt: skip
ORIGINS = {
    "base": "its foot; it grows forward, away from you unless it is turned",
    "middle": "its middle; forward is away from you unless it is turned",
}
"""What stands where a figure is placed."""


def takes(key: Key) -> str:
    """Say what a key takes, in a few words."""
    if key.kind == "choice":
        return " | ".join(key.choices)
    if key.kind == "number" and key.choices:
        return " | ".join([*key.choices, "a number"])
    said = LIKE.get(key.kind) or TAKES[key.kind]
    return said.split(", like")[0]


def own_keys(word: Word) -> list[Key]:
    """List the keys of a word without the cut attributes that every figure takes."""
    shared = {key.name for key in ATTRIBUTES}
    return [key for key in keys_of(word).values() if key.name not in shared]


def entry(word: Word) -> str:
    """Write one word of the reference as plain text."""
    lines = [f"{word.name}: {word.help}", ""]
    rows = own_keys(word)
    wide = max((len(key.name) for key in rows), default=0)
    for key in rows:
        lines.append("  " + "  ".join([f"{key.name:<{wide}}", *key_notes(word, key)]))
    if word.origin:
        lines.append(f"  its origin: {ORIGINS[word.origin]}")
    if word.attributes:
        lines.append(f"  and the cut attributes: {', '.join(key.name for key in ATTRIBUTES)}")
    lines += ["", "  for example:"]
    lines += [f"    {line}" for line in word.example.splitlines()]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def key_notes(word: Word, key: Key) -> Iterator[str]:
    """Yield what there is to say of a key: what it takes, its default, its help."""
    yield takes(key)
    if key.name in word.mains:
        yield f"(the word {key.name} may be left out)"
    if key.default:
        yield f"[{key.default}]"
    if key.help:
        yield key.help


def attributes() -> str:
    """Write the cut attributes as plain text."""
    lines = ["Cut attributes, on any motif, fill or placing; everything inside inherits them:", ""]
    lines += [f"  {key.name:<7}{takes(key)}  {key.help}" for key in ATTRIBUTES]
    return "\n".join(lines) + "\n"


def whole() -> str:
    """Write the whole reference as plain text."""
    parts = []
    for group, heading in GROUPS.items():
        words = [word for word in WORDS.values() if word.group == group]
        parts.append("\n".join([heading.replace("`", ""), "=" * len(heading), ""]))
        parts += [entry(word) for word in words]
    parts += [attributes(), at_hand()]
    return "\n".join(parts)


def at_hand() -> str:
    """Say which names and functions every expression may use."""
    names, functions = ", ".join(AT_HAND), ", ".join(FUNCTIONS)
    return (
        f"In expressions: the names {names}; the functions {functions}.\n"
        "A share such as 60% means that part of the reach: the way over the dough from crown to\n"
        "rim toward the figure's place (on an oval it is shorter to the side; put `let far reach`\n"
        "at the head to keep the long one). Angles are turntable angles: 0deg is 12 o'clock, and\n"
        "they grow clockwise.\n"
    )
