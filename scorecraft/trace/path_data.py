"""SVG path data, sampled to polylines.

W3C SVG 1.1 (second edition), section 8.3: the grammar and the commands.
"""

import re
from math import isfinite

import numpy as np

from scorecraft.curves import Points, bezier, without_repeats
from scorecraft.cuts import Line
from scorecraft.errors import Place, UsageError
from scorecraft.practice import LARGEST_DRAWING_MM
from scorecraft.trace.elliptic import elliptic_arc
from scorecraft.trace.matrix import NUMBER, Matrix

COUNTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
VALUE = re.compile(rf"[\s,]*({NUMBER})")
FLAG = re.compile(r"[\s,]*([01])")
LETTER = re.compile(r"[\s,]*([a-zA-Z])")
END = re.compile(r"[\s,]*\Z")

Step = tuple[str, list[float]]
"""A command letter as written and one full set of its numbers."""


def subpaths(text: str, frame: Matrix, place: Place) -> list[Line]:
    """Draw path data through an affine map (2, 3) as polylines in mm, within the chord error.

    Raises UsageError where the data cannot be read or reaches beyond the largest drawing.
    """
    pen = _Pen(frame, place)
    for letter, numbers in scan(text, place):
        pen.draw(letter, numbers)
    lines = (without_repeats(np.concatenate(pieces)) for pieces in pen.strokes)
    return [line for line in lines if len(line) > 1]


def scan(text: str, place: Place) -> list[Step]:
    """Split path data into steps; numbers that go on without a letter repeat the command."""
    steps: list[Step] = []
    at = 0
    while not END.match(text, at):
        found = LETTER.match(text, at)
        if found is None or found[1].upper() not in COUNTS or not (steps or found[1] in "Mm"):
            raise _unreadable(text, at, place)
        letter, at = found[1], found.end()
        numbers, at = _numbers(text, at, letter, place)
        steps.append((letter, numbers))
        letter = {"M": "L", "m": "l"}.get(letter, letter)
        while numbers and VALUE.match(text, at):
            numbers, at = _numbers(text, at, letter, place)
            steps.append((letter, numbers))
    return steps


def _numbers(text: str, at: int, letter: str, place: Place) -> tuple[list[float], int]:
    """Read the numbers of one step; the two flags of an arc are single digits."""
    numbers = []
    for index in range(COUNTS[letter.upper()]):
        is_flag = letter in "Aa" and index in (3, 4)
        found = (FLAG if is_flag else VALUE).match(text, at)
        if found is None or not isfinite(float(found[1])):
            raise _unreadable(text, at, place)
        numbers.append(float(found[1]))
        at = found.end()
    return numbers, at


def _unreadable(text: str, at: int, place: Place) -> UsageError:
    rest = text[at:].lstrip()
    what = repr(rest[:12].rstrip()) if rest else "its end"
    where = len(text) - len(rest) + 1
    return UsageError(f"path data cannot be read at {what} (character {where})", place)


class _Pen:
    """Follows path data in user units and keeps the strokes in mm."""

    def __init__(self, frame: Matrix, place: Place) -> None:
        self.frame = frame
        self.place = place
        self.strokes: list[list[Points]] = []
        self.down = False
        self.at = self.start = self.control = np.zeros(2)
        self.before = ""

    def draw(self, letter: str, numbers: list[float]) -> None:
        """Take one step."""
        kind = letter.upper()
        origin = self.at if letter.islower() else np.zeros(2)
        if kind == "Z":
            self._close()
        elif kind == "M":
            self.at = self.start = self._checked(origin + numbers)
            self.down = False
        elif kind == "A":
            self._arc(numbers, origin + numbers[-2:])
        elif kind in "HV":
            axis = "HV".index(kind)
            end = self.at.copy()
            end[axis] = origin[axis] + numbers[0]
            self._line(end)
        else:
            self._through(kind, origin + np.reshape(numbers, (-1, 2)))
        self.before = kind

    def _through(self, kind: str, points: Points) -> None:
        """Draw a line or Bezier curve through its points, the implied control point put in."""
        if kind == "L":
            self._line(points[0])
            return
        if kind in "ST":
            follows = self.before in ("CS" if kind == "S" else "QT")
            first = 2 * self.at - self.control if follows else self.at
            points = np.vstack([first, points])
        self.control = points[-2]
        if kind in "QT":
            control, end = points
            points = np.array([(self.at + 2 * control) / 3, (end + 2 * control) / 3, end])
        self._checked(points)
        self._add(bezier(*self._mapped(np.vstack([self.at, points]))), points[-1])

    def _line(self, end: Points) -> None:
        self._checked(end)
        self._add(self._mapped(np.array([self.at, end])), end)

    def _arc(self, numbers: list[float], end: Points) -> None:
        self._checked(np.array([numbers[0], numbers[1]]))
        self._checked(end)
        rx, ry, turn, large, sweep = numbers[:5]
        line = elliptic_arc(
            self.at, end, (rx, ry), turn, large=bool(large), sweep=bool(sweep), frame=self.frame
        )
        self._add(line, end)

    def _close(self) -> None:
        if self.down:
            pieces = self.strokes[-1]
            pieces.append(pieces[0][:1])
        self.at, self.down = self.start, False

    def _add(self, piece: Points, end: Points) -> None:
        """Add a piece in mm to the stroke, or begin one where the pen is up."""
        if not self.down:
            self.strokes.append([])
        self.strokes[-1].append(piece)
        self.at, self.down = end, True

    def _mapped(self, points: Points) -> Points:
        return np.asarray(points @ self.frame[:, :2].T + self.frame[:, 2])

    def _checked(self, points: Points) -> Points:
        """Refuse points beyond the largest drawing."""
        if not np.abs(self._mapped(points)).max() <= LARGEST_DRAWING_MM.value:
            raise UsageError(
                f"the drawing reaches beyond {LARGEST_DRAWING_MM.value:,.0f} mm",
                self.place,
                "check its width, height and viewBox",
            )
        return points
