"""The forms of prints: known by a file's suffix, and written as bytes."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from scorecraft.errors import UsageError

if TYPE_CHECKING:
    from scorecraft.prints.row import Printed

PICTURES = ("svg", "pdf", "png")


def file_form(target: str, asked: str | None, known: tuple[str, ...] = PICTURES) -> str:
    """Find the form of a print from its file's suffix, or as asked; `-` is the first if not asked.

    Raises UsageError, which names the forms, where it is none of those known.
    """
    suffix = Path(target).suffix.lower().lstrip(".")
    return form_in(asked or (known[0] if target == "-" else suffix), known, target)


def form_in(form: str, known: tuple[str, ...], target: str = "") -> str:
    """Give a form back if it is known; raises UsageError, which names those that are, if not."""
    if form not in known:
        names = ", ".join(f".{each}" for each in known)
        raise UsageError(
            f'"{target or form}" is an unsupported file type', None, f"end it in one of {names}"
        )
    return form


def encoded(made: Printed, form: str) -> bytes:
    """Write a print as bytes in a form; raises UsageError where it cannot be had in that one."""
    from scorecraft.drawing.templates.cutter_file import encoded_for_cutter
    from scorecraft.drawing.write import encoded as encoded_pages

    if form == "txt":
        return made.text.encode()
    return encoded_for_cutter(made.flat, form) if made.flat else encoded_pages(made.pages, form)
