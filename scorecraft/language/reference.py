"""The reference of the language, written from the one table of words."""

from collections.abc import Iterator

from scorecraft.language.kinds import LIKE
from scorecraft.language.words import AT_HAND, ATTRIBUTES, FUNCTIONS, WORDS, Key, Word, keys_of

GROUPS = {
    "header": "Head of a pattern",
    "placing": "Placing: a block of figures, and where it goes",
    "motif": "Motifs: figures made of cuts",
    "texture": "Textures, for `fill REGION with TEXTURE`",
    "region": "Regions, joined by `and` and `less`",
    "rule": "Rules",
}
DRAWN = ("motif", "texture")
"""The groups whose words have drawings."""
FIGURE_PX = 230
TAKES = {
    "flag": "yes or no", "text": "text in quotes", "any": "any value", "new name": "a name",
    "pair": "a pair, like (10mm, 0mm)", "points": "points, like (0mm, 0mm) (9mm, 30mm)",
    "region": "a region", "texture": "a texture", "path": "a motif", "condition": "a condition",
}  # fmt: skip


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


def page(figures: str) -> str:
    """Write the reference as a page of its own; `figures` is the folder of the drawings."""
    return "\n".join(
        (
            "# Reference of the pattern language",
            "",
            "Every word, with its keys and their defaults. Motifs and textures are drawn at their",
            "default size; the ring is the origin, and forward is away from you until a placing",
            "turns the figure. `scorecraft words NAME` tells more of each, with an example.",
            "",
            markdown(figures, level=2),
        )
    )


def markdown(figures: str = "", level: int = 3) -> str:
    """Write the reference as Markdown tables under headings of a level.

    The figures are drawn if a folder of them is given.
    """
    mark = "#" * level
    parts = []
    for group, heading in GROUPS.items():
        drawn = figures if group in DRAWN else ""
        head = ("| | " if drawn else "| ") + "word | what it does | keys |"
        rows = [row(word, drawn) for word in WORDS.values() if word.group == group]
        rule = "| --- " * head.count(" |") + "|"
        parts += [f"{mark} {heading}", "", head, rule, *rows, ""]
    parts += [f"{mark} Cut attributes", "", "| key | what it says |", "| --- | --- |"]
    parts += [f"| `{key.name}` | {key.help} ({escaped(takes(key))}) |" for key in ATTRIBUTES]
    return "\n".join([*parts, "", at_hand()])


def row(word: Word, figures: str = "") -> str:
    """Write one word as a row of a Markdown table, its drawing first if there is a folder."""
    keys = []
    for key in own_keys(word):
        default = f" {key.default}" if key.default else ""
        keys.append(f"`{escaped(key.name + default)}`")
    source = f"{figures}/{word.name}.svg"
    drawing = f'| <img src="{source}" alt="{word.name}" width="{FIGURE_PX}"> ' if figures else ""
    return f"{drawing}| `{word.name}` | {escaped(word.help)} | {' '.join(keys) or '–'} |"


def escaped(text: str) -> str:
    """Keep a bar from ending a cell."""
    return text.replace("|", "\\|")
