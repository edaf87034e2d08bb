"""The one thing to do after a check: cure the first stop, or print the guide."""

from __future__ import annotations

from pathlib import Path
from shlex import join
from typing import TYPE_CHECKING

from scorecraft.cli.options import Given
from scorecraft.shelf import SUFFIX, shelf, there

if TYPE_CHECKING:
    from scorecraft.checks.finding import Finding
    from scorecraft.designing import Design

OWN = "mine"
"""What a pattern of one's own may be called."""
FIRST_CUT = "add a cut, like: slash 120mm depth 10mm"
AFTER = "\n      then "


def next_step(design: Design, given: Given) -> str:
    """Say what to do next, with the command that does it."""
    stop = next((each for each in design.checked if each.severity == "stop"), None)
    if stop:
        return f"Next: {edited(given, cure(stop))}"
    if not design.cuts:
        return f"Next: {edited(given, FIRST_CUT)}"
    if given.pattern == "-":
        guide = command("guide", OWN + SUFFIX, *given.options)
        return f"Next: save the pattern as {OWN + SUFFIX} and print its guide: {guide}"
    return f"Next: print the guide: {command('guide', given.pattern, *given.options)}"


def cure(stop: Finding) -> str:
    """Say where and how to cure a stop."""
    line = f"on line {stop.place.line}, " if stop.place else ""
    return line + stop.hint.rstrip(".")


def edited(given: Given, change: str) -> str:
    """Say to change the pattern and check it again; a shipped one is copied first."""
    if given.pattern == "-":
        return f"{change}{AFTER}check it again"
    if given.pattern not in shelf() or there(Path(given.pattern)):
        return f"{change}{AFTER}run: {command('check', given.pattern, *given.options)}"
    copy = command("new", OWN, "--like", given.pattern)
    check = command("check", OWN + SUFFIX, *given.options)
    return f"{copy}{AFTER}{change}{AFTER}run: {check}"


def command(*words: str) -> str:
    """Write a command as it is typed in a terminal."""
    return f"scorecraft {join(words)}"
