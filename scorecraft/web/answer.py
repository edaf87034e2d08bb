"""What the server answers, as plain bytes, so that a worker can make it whole."""

import json
import re
import sys
import traceback
import unicodedata
from collections.abc import Mapping, Sequence
from pathlib import PurePath
from urllib.parse import quote

from scorecraft.errors import Problem, ScorecraftError, shown_plainly
from scorecraft.frozen import dataclass, replace
from scorecraft.json_data import Json, JsonObject
from scorecraft.web import telling as say

JSON = "application/json"
SVG = "image/svg+xml"
ODD_IN_A_NAME = re.compile(r'[\x00-\x1f\x7f-\x9f/\\:*?"<>|\ud800-\udfff\u2028\u2029]++')
UNQUOTED = "!#$&+-.^_`|~"
"""What RFC 5987 lets stand in a name besides letters and digits (attr-char)."""


@dataclass(frozen=True, slots=True)
class Answer:
    """A body with its type and status; with a `name` it is a file to keep."""

    body: bytes
    type: str = JSON
    status: int = 200
    name: str = ""


def json_answer(data: Mapping[str, Json], status: int = 200) -> Answer:
    """Answer with data as a JSON object; there is always something in it."""
    body = json.dumps(data, allow_nan=False, ensure_ascii=False, separators=(",", ":"))
    return Answer(body.encode("utf-8", "replace"), JSON, status)


def marked(answer: Answer, mark: str) -> Answer:
    """Write the mark of a question on its answer, as `asked`; a file or a picture has none."""
    if not mark or answer.type != JSON:
        return answer
    first = b'{"asked":' + json.dumps(mark).encode() + b","
    return replace(answer, body=first + answer.body.removeprefix(b"{"))


def file_names(name: str) -> dict[str, str]:
    """Give a file's name for Content-Disposition (RFC 6266): in any script, and in plain ASCII.

    What no file name may hold becomes `_`.
    """
    name = ODD_IN_A_NAME.sub("_", name)
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    stem, dot, suffix = plain.rpartition(".")
    names = {"filename": f"{stem.strip(' -') or 'print'}{dot}{suffix}"}
    if plain != name:
        names["filename*"] = f"UTF-8''{quote(name, safe=UNQUOTED)}"
    return names


def problems_answer(problems: Sequence[Problem]) -> Answer:
    """Answer with what is wrong with a pattern; asking was right, so the status is 200."""
    return json_answer({"ok": False, "problems": [problem_data(each) for each in problems]})


def refusal(error: ScorecraftError, status: int) -> Answer:
    """Answer that a request cannot be met."""
    return json_answer({"error": {"message": error.message, "hint": error.hint}}, status)


def internal(error: Exception) -> Answer:
    """Answer that something failed which should not, and write where to standard error."""
    sys.stderr.write(shown_plainly("".join(traceback.format_exception(error))))
    return refusal(say.INTERNAL(kind=type(error).__name__, error=error).error(), 500)


def problem_data(problem: Problem) -> JsonObject:
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
