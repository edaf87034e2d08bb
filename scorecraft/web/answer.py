"""What the server answers, as plain bytes, so that a worker can make it whole."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
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


def json_answer(data: Mapping[str, Any], status: int = 200) -> Answer:
    """Answer with data as a JSON object; there is always something in it."""
    body = json.dumps(data, allow_nan=False, ensure_ascii=False, separators=(",", ":"))
    return Answer(body.encode("utf-8", "replace"), JSON, status)


def marked(answer: Answer, mark: str) -> Answer:
    """Write the mark of a question on its answer, as `asked`; a file or a picture has none."""
    if not mark or answer.type != JSON:
        return answer
    first = b'{"asked":' + json.dumps(mark).encode() + b","
    return replace(answer, body=first + answer.body.removeprefix(b"{"))


def problems_answer(problems: Sequence[Problem]) -> Answer:
    """Answer with what is wrong with a pattern; asking was right, so the status is 200."""
    return json_answer({"ok": False, "problems": [problem_data(each) for each in problems]})


def refusal(error: ScorecraftError, status: int) -> Answer:
    """Answer that a request cannot be met."""
    return json_answer({"error": {"message": error.message, "hint": error.hint}}, status)


def problem_data(problem: Problem) -> dict[str, Any]:
    """Tell a problem as plain data; columns count characters from 1."""
    place = problem.place
    return {
        "message": problem.message,
        "hint": problem.hint,
        "line": place.line if place else None,
        "column": place.column if place else None,
        "length": place.length if place else None,
    }
