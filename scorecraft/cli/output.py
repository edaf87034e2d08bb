"""Printing: messages to stderr, data to stdout, files whole or not at all."""

import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from threading import Timer
from typing import TYPE_CHECKING

import click

import scorecraft.cli.telling as telling
from scorecraft.errors import PatternError, ScorecraftError, UsageError, shown_plainly

if TYPE_CHECKING:
    from scorecraft.drawing.picture import Picture

COLORS = {"stop": "red", "warning": "yellow", "note": "cyan"}


def say(text: str, *, err: bool = False, nl: bool = True) -> None:
    """Print words that may hold what others wrote: nothing in them steers the terminal."""
    click.echo(shown_plainly(text), err=err, nl=nl)


def told(error: ScorecraftError) -> str:
    """Write an error as its place, its line with a caret, and the way out."""
    text = str(error)
    if isinstance(error, PatternError) and len(error.problems) > 1:
        text += f"\n{len(error.problems)} errors"
    return text


def colored(report: str) -> str:
    """Colour the weights at the start of lines; click takes colours out where none are shown."""
    report = shown_plainly(report)
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return report
    lines = []
    for line in report.split("\n"):
        sign = line.split(" ", 1)[0]
        styled = click.style(sign, fg=COLORS[sign]) if sign in COLORS else sign
        lines.append(styled + line[len(sign) :])
    return "\n".join(lines)


@contextmanager
def patience(quiet: bool, after_s: float = 1.5) -> Iterator[None]:
    """Say on standard error that work goes on, if it takes long."""
    timer = Timer(after_s, click.echo, [telling.PREDICTING], {"err": True})
    timer.daemon = True
    if not quiet:
        timer.start()
    try:
        yield
    finally:
        timer.cancel()


def deliver(target: str, data: bytes, *, quiet: bool) -> None:
    """Write data to a file, or to standard output where the target is `-`.

    Raises UsageError where that cannot take it.
    """
    if target == "-":
        if sys.stdout is None:
            raise UsageError("standard output is closed", None, "give a file with -o")
        if sys.stdout.isatty() and b"\0" in data[:4096]:
            hint = "give a file with -o, or send it on with a pipe"
            raise UsageError("this cannot be shown in a terminal", None, hint)
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
        return
    from scorecraft.writing import write_whole

    write_whole(Path(target), data)
    if not quiet:
        say(telling.WROTE.format(target=target), err=True)


def tell_unprintable(pictures: "Sequence[Picture]") -> None:
    """Tell which characters of the labels cannot be printed."""
    from scorecraft.drawing.write import unprintable

    if lacking := unprintable(pictures):
        shown = " ".join(lacking)
        say(f'warning  {shown} cannot be printed; "?" stands in its place', err=True)
