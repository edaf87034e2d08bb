"""`scorecraft words`: the reference of the language."""

import click

import scorecraft.cli.telling as telling
from scorecraft.errors import UsageError

HOW = "Say how a cut is made (after any figure, fill or placing)"
CHECKS_SAY = "Understand what a check says"
MORE = "Explain one: scorecraft words leaf. Everything at once: scorecraft words --all."


@click.command("words", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["words"]))
@click.argument("word", required=False)
@click.option("-o", "--output", metavar="FILE", help=telling.DRAW_WORD)
@click.option("--all", "everything", is_flag=True, help=telling.ALL_WORDS)
def command(word: str | None, output: str | None, everything: bool) -> int:
    """List the words of the pattern language by what they are for, or explain WORD."""
    from scorecraft.language.reference import whole

    if word is None and output:
        raise UsageError("there is no drawing of all words", None, "name one: words leaf -o FILE")
    if word is None:
        click.echo(whole() if everything else listed(), nl=False)
    elif output:
        draw(word, output)
    else:
        click.echo("\n".join(explained(word)), nl=False)
    return 0


def listed() -> str:
    """Write all words under what they are for, each with what it does in a line."""
    from scorecraft.checks import CHECKS  # it loads the checks, which one word does not need
    from scorecraft.language.goals import GOALS, words_of
    from scorecraft.language.words import ATTRIBUTES, WORDS

    parts = [
        section(goal.says, [(name, WORDS[name].help) for name in words_of(goal)]) for goal in GOALS
    ]
    parts.append(section(HOW, [(key.name, key.help) for key in ATTRIBUTES]))
    parts.append(section(CHECKS_SAY, [(each.name, each.says) for each in CHECKS.values()]))
    return "\n".join([*parts, MORE]) + "\n"


def section(heading: str, rows: list[tuple[str, str]]) -> str:
    """Write a heading and its rows."""
    return "\n".join([heading, *(f"  {name:<15} {says}" for name, says in rows), ""])


def explained(word: str) -> list[str]:
    """Explain a word: one of the language, a key of cuts, a check, or one of the trade.

    Raises UsageError, with the nearest word there is, where it is none of these.
    """
    from scorecraft.errors import nearest
    from scorecraft.glossary import TERMS
    from scorecraft.language.reference import entry, takes
    from scorecraft.language.words import ATTRIBUTES, WORDS

    told = [entry(WORDS[word])] if word in WORDS else []
    term = [f"{TERMS[word].title}: {TERMS[word].text}\n"] if word in TERMS else []
    keys = [key for key in ATTRIBUTES if key.name == word]
    told += [f"{word}, of a cut: {key.help} ({takes(key)})\n" for key in keys]
    if told and not keys:
        return told + term
    from scorecraft.checks import CHECKS  # it loads the checks, which most words do not need

    told += [f"{word}, a check: {CHECKS[word].says}\n"] if word in CHECKS else []
    told += term
    if not told:
        names = [*WORDS, *(key.name for key in ATTRIBUTES), *CHECKS, *TERMS]
        close = nearest(word, names)
        hint = f'did you mean "{close}"?' if close else "scorecraft words lists them all"
        raise UsageError(f'"{word}" is not a word of the language', None, hint)
    return told


def draw(word: str, output: str) -> None:
    """Draw a word: a figure or a texture at its default size, another as its example on a loaf.

    Raises UsageError for a word without a drawing.
    """
    from scorecraft import design
    from scorecraft.cli.output import deliver, tell_unprintable
    from scorecraft.drawing.figure import figure, written
    from scorecraft.drawing.write import encoded
    from scorecraft.language.words import WORDS
    from scorecraft.prints.forms import file_form

    explained(word)
    row = WORDS.get(word)
    if row is None or row.group in ("header", "rule") or word == "trace":
        hint = f"see: scorecraft words {word}"
        raise UsageError(f'"{word}" has no drawing of its own', None, hint)
    form = file_form(output, None)
    if row.group in ("motif", "texture"):
        lines = [cut.line for cut in design(written(row)).cuts]
        picture = figure(row, lines)
    else:
        made = design(f'title "{word}"\nloaf round width 220mm height 95mm\n{row.example}\n')
        picture = made.picture
    data = encoded([picture], form)
    tell_unprintable([picture])
    deliver(output, data, quiet=False)
