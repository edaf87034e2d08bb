"""`scorecraft list`: the shipped patterns."""

import click

import scorecraft.cli.telling as telling


@click.command("list", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["list"]))
def command() -> int:
    """List the shipped patterns by the form of their loaf, the easiest of each form first."""
    from itertools import groupby

    from scorecraft.shelf_list import listed

    for number, (shape, rows) in enumerate(groupby(listed(), lambda row: row.shape)):
        click.echo(("\n" if number else "") + telling.shape_heading(shape))
        for row in rows:
            click.echo(f"  {row.name:<22}{row.title:<34}{telling.LEVELS[row.level]}")
    return 0
