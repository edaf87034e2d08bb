"""`scorecraft words`: the reference of the language."""

import click


@click.command("words")
@click.argument("word", required=False)
def command(word: str | None) -> int:
    """Explain all words of the pattern language, or WORD."""
    from scorecraft.errors import UsageError
    from scorecraft.language import reference
    from scorecraft.language.words import WORDS, nearest

    if word is None:
        click.echo(reference.whole(), nl=False)
        return 0
    if word not in WORDS:
        close = nearest(word, list(WORDS))
        hint = f'did you mean "{close}"?' if close else "scorecraft words lists them all"
        raise UsageError(f'"{word}" is not a word of the language', None, hint)
    click.echo(reference.entry(WORDS[word]), nl=False)
    return 0
