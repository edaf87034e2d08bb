"""The reference of the language as a page in Markdown, with a drawing of every figure."""

from scorecraft.language.keys import Word
from scorecraft.language.reference import GROUPS, at_hand, own_keys, takes
from scorecraft.language.words import ATTRIBUTES, WORDS

DRAWN = ("motif", "texture")
"""The groups whose words have drawings."""
FIGURE_PX = 230


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
