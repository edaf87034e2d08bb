"""What the server answers, as plain bytes, so that a worker can make it whole."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import PurePath
from typing import Any

from scorecraft.errors import Problem, ScorecraftError

JSON = "application/json"
SVG = "image/svg+xml"


@dataclass(frozen=True, slots=True)
class Answer:
    """A body with its type and status; with a `name` it is a file to keep."""

    body: bytes
    type: str = JSON
    status: int = 200
    name: str = ""


def json_answer(data: Any, status: int = 200) -> Answer:
    """Answer with data as JSON."""
    body = json.dumps(data, allow_nan=False, ensure_ascii=False, separators=(",", ":"))
    return Answer(body.encode("utf-8", "replace"), JSON, status)


def problems_answer(problems: Sequence[Problem]) -> Answer:
    """Answer with what is wrong with a pattern; asking was right, so the status is 200."""
    return json_answer({"ok": False, "problems": [problem_data(each) for each in problems]})


def refusal(error: ScorecraftError, status: int) -> Answer:
    """Answer that a request cannot be met."""
    return json_answer({"error": {"message": error.message, "hint": error.hint}}, status)


def problem_data(problem: Problem) -> dict[str, Any]:
    """Tell a problem as plain data; columns count characters from 1.

    A problem in another file than the pattern has no line in it; its message says where it is.
    """
    place, message = problem.place, problem.message
    if place and problem.quoted:
        if not place.file.startswith("--"):  # words of an option need no line number
            message = f"{PurePath(place.file).name}, line {place.line}: {message}"
        place = None
    return {
        "message": message,
        "hint": problem.hint,
        "line": place.line if place else None,
        "column": place.column if place else None,
        "length": place.length if place else None,
    }
