"""What the printing commands share: file names, forms and the paper of the house."""

import os
from collections.abc import Sequence
from pathlib import Path

from scorecraft.cli.output import deliver, say
from scorecraft.drawing.paper.sheet import Paper, home_paper
from scorecraft.drawing.paper.tiles import joined_words
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.write import encoded, unprintable
from scorecraft.errors import UsageError


def named(pattern: str, what: str) -> str:
    """Name a print after its pattern, in the current folder."""
    stem = "pattern" if pattern == "-" else Path(pattern).stem
    return f"{stem}-{what}.pdf"


def file_form(
    target: str, asked: str | None, known: tuple[str, ...] = ("svg", "pdf", "png")
) -> str:
    """Find the form of a print from its file's suffix, or as asked; `-` is SVG if not asked."""
    suffix = Path(target).suffix.lower().lstrip(".")
    form = asked or ("svg" if target == "-" else suffix)
    if form not in known:
        names = ", ".join(f".{each}" for each in known)
        raise UsageError(f'"{target}" is no kind of print', None, f"end it in one of {names}")
    return form


def home() -> Paper:
    """Choose the paper of the house by its locale."""
    return home_paper(os.environ)


def tell_sheets(pages: Sequence[Picture], *, quiet: bool, larger: Paper | None = None) -> None:
    """Say that a print is on several sheets, and which `larger` paper would hold it on one."""
    remark = joined_words(pages)
    if remark and not quiet:
        one = f"; --paper {larger.name} holds it on one" if larger else ""
        say(f"{remark}{one}", err=True)


def deliver_pictures(pictures: Sequence[Picture], target: str, form: str, *, quiet: bool) -> None:
    """Encode and write pictures; tell which characters of their labels cannot be printed."""
    data = encoded(pictures, form)
    if lacking := unprintable(pictures):
        shown = " ".join(lacking)
        say(f'warn  {shown} cannot be printed; "?" stands in its place', err=True)
    deliver(target, data, quiet=quiet)
