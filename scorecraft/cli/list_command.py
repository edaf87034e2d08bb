"""`scorecraft list`: the shipped patterns."""

import click

import scorecraft.cli.telling as telling


@click.command("list", epilog=telling.example(telling.EXAMPLES["list"]))
def command() -> int:
    """List the shipped patterns: their names, titles and loaves."""
    from scorecraft.language.parse import parse
    from scorecraft.shelf import shelf

    for name, path in shelf().items():
        tree = parse(path.read_text(encoding="utf-8"), path.name)
        words = {statement.word: statement for statement in tree.statements}
        title = getattr(words["title"].arguments[0].value, "value", "")
        shape = str(words["loaf"].arguments[0].value)
        click.echo(f"{name:<22}{title:<34}{shape}")
    return 0
