"""One slip is told once: what only follows from another problem is left out."""

from collections.abc import Iterable
from dataclasses import replace

from scorecraft.errors import Place, Problem

NOWHERE = Place("", 0, 0)
MOST_LINES = 6


def untangled(problems: Iterable[Problem]) -> list[Problem]:
    """Order the problems of a file by place, and leave out what follows from others."""
    ordered = sorted(problems, key=lambda p: (p.place or NOWHERE, p.trails))
    return merged(untrailed(ordered))


def untrailed(ordered: Iterable[Problem]) -> list[Problem]:
    """Leave out each problem that trails after another one on its line."""
    found: list[Problem] = []
    lines: set[int] = set()
    for problem in ordered:
        line = problem.place.line if problem.place else 0
        if problem.trails and line in lines:
            continue
        lines.add(line)
        found.append(problem)
    return found


def merged(problems: Iterable[Problem]) -> list[Problem]:
    """Tell problems about the same name once, at the first of them, with the other lines."""
    found: list[Problem] = []
    first: dict[str, int] = {}
    others: dict[int, list[int]] = {}
    for problem in problems:
        index = first.setdefault(problem.about, len(found)) if problem.about else len(found)
        if index == len(found):
            found.append(problem)
        elif problem.place:
            others.setdefault(index, []).append(problem.place.line)
    for index, lines in others.items():
        found[index] = replace(found[index], hint=also(found[index], lines))
    return found


def also(problem: Problem, lines: Iterable[int]) -> str:
    """Write a hint that names the other lines, if there are any."""
    own = problem.place.line if problem.place else 0
    told = [str(line) for line in dict.fromkeys(lines) if line != own]
    if not told:
        return problem.hint
    more = " and more" if len(told) > MOST_LINES else ""
    word = "line" if len(told) == 1 else "lines"
    return f"{problem.hint} (also in {word} {', '.join(told[:MOST_LINES])}{more})"
