"""`scorecraft words`: the reference of the language."""

import click


@click.command("words")
@click.argument("word", required=False)
@click.option(
    "-o", "--output", metavar="FILE", help="Draw WORD's example to an .svg, .pdf or .png."
)
def command(word: str | None, output: str | None) -> int:
    """Explain all words of the pattern language, or WORD; or what a check says."""
    from scorecraft.errors import UsageError, nearest
    from scorecraft.language import reference
    from scorecraft.language.words import WORDS

    if word is None:
        if output:
            raise UsageError(
                "there is no drawing of all words", None, "name one: words leaf -o FILE"
            )
        click.echo(reference.whole(), nl=False)
        return 0
    if word not in WORDS:
        from scorecraft.checks import CHECKS  # it loads the checks, which words do not need

        if word in CHECKS and not output:
            click.echo(f"{word}: {CHECKS[word].says}")
            return 0
        close = nearest(word, WORDS)
        hint = f'did you mean "{close}"?' if close else "scorecraft words lists them all"
        raise UsageError(f'"{word}" is not a word of the language', None, hint)
    if output:
        draw(word, output)
    else:
        click.echo(reference.entry(WORDS[word]), nl=False)
    return 0


def draw(word: str, output: str) -> None:
    """Draw the example of a word on a round loaf.

    Raises UsageError for a word without a drawing.
    """
    from scorecraft import design
    from scorecraft.cli.pictures import deliver_pictures
    from scorecraft.errors import UsageError
    from scorecraft.language.words import WORDS
    from scorecraft.prints.forms import file_form

    row = WORDS[word]
    if row.group in ("header", "rule") or word == "trace":
        raise UsageError(
            f'"{word}" has no drawing of its own', None, f"see: scorecraft words {word}"
        )
    form = file_form(output, None)
    made = design(f'title "{word}"\nloaf round width 220mm height 95mm\n{row.example}\n')
    deliver_pictures([made.picture], output, form, quiet=False)
