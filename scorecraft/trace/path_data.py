"""SVG path data, sampled to polylines.

W3C SVG 1.1 (second edition), section 8.3: the grammar and the commands.
"""

from collections.abc import Iterator

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.curves import bezier, bezier_steps, without_repeats
from scorecraft.errors import Place, UsageError
from scorecraft.trace import telling as say
from scorecraft.trace.elliptic import elliptic_arc
from scorecraft.trace.numbers import number_at, past_gap

MOST_TRACED_POINTS = 200_000
"""The most points of a traced drawing."""
MOST_TRACED_STEPS = 20_000
"""The most pieces of a traced drawing: lines and curves."""
LARGEST_DRAWING_MM = 10_000
"""How far a traced drawing may reach."""
COUNTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
FARTHEST = 1e12
"""No number of a step may be larger, whatever the map to mm makes of it."""

Step = tuple[str, list[float]]
"""A command letter as written and one full set of its numbers."""


class Ink:
    """How many steps and points a drawing has: counted before they are drawn."""

    def __init__(self) -> None:
        self.points = 0
        self.steps = 0

    def use(self, points: int, place: Place) -> None:
        """Draw one more step of so many points; raises UsageError where it is too many."""
        self.points += points
        self.steps += 1
        for what, used, most in (
            ("points", self.points, MOST_TRACED_POINTS),
            ("lines and curves", self.steps, MOST_TRACED_STEPS),
        ):
            if used > most:
                raise say.TOO_MANY(what=what, most=most).usage(place)


def subpaths(text: str, frame: Floats, place: Place, ink: Ink) -> list[Line]:
    """Draw path data through an affine map (2, 3) as polylines in mm, within the chord error.

    Raises UsageError where the data cannot be read, reaches beyond the largest drawing, or needs
    more points than the drawing has left.
    """
    pen = _Pen(frame, place, ink)
    for letter, numbers in scan(text, place):
        pen.draw(letter, numbers)
    lines = (without_repeats(np.concatenate(pieces)) for pieces in pen.strokes)
    return [line for line in lines if len(line) > 1]


def scan(text: str, place: Place) -> Iterator[Step]:
    """Split path data into steps; numbers that go on without a letter repeat the command.

    Raises UsageError where they cannot be read.
    """
    letter = ""
    at = past_gap(text, 0)
    while at < len(text):
        if text[at].upper() in COUNTS and (letter or text[at] in "Mm"):
            letter, at = text[at], past_gap(text, at + 1)
        elif not letter or letter in "Zz" or text[at].isalpha():
            raise _unreadable(text, at, place)
        else:
            letter = {"M": "L", "m": "l"}.get(letter, letter)
        numbers, at = _numbers(text, at, letter, place)
        yield letter, numbers


def _numbers(text: str, at: int, letter: str, place: Place) -> tuple[list[float], int]:
    """Read the numbers of one step; the two flags of an arc are single digits."""
    numbers: list[float] = []
    for index in range(COUNTS[letter.upper()]):
        if letter in "Aa" and index in (3, 4):
            found = (float(text[at]), at + 1) if text[at : at + 1] in ("0", "1") else None
        else:
            found = number_at(text, at)
        if found is None:
            raise _unreadable(text, at, place)
        numbers.append(found[0])
        at = past_gap(text, found[1])
    return numbers, at


def _unreadable(text: str, at: int, place: Place) -> UsageError:
    rest = text[at : at + 12].rstrip()
    what = repr(rest) if rest else "its end"
    return say.PATH_DATA(what=what, character=at + 1).usage(place)


class _Pen:
    """Follows path data in user units and keeps the strokes in mm."""

    def __init__(self, frame: Floats, place: Place, ink: Ink) -> None:
        self.frame = frame
        self.place = place
        self.ink = ink
        self.strokes: list[list[Line]] = []
        self.down = False
        self.at = self.start = self.control = np.zeros(2)
        self.before = ""

    def draw(self, letter: str, numbers: list[float]) -> None:
        """Take one step."""
        if not all(-FARTHEST <= number <= FARTHEST for number in numbers):
            raise self._beyond()
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

    def _through(self, kind: str, points: Line) -> None:
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
        controls = self._mapped(np.vstack([self.at, points]))
        self.ink.use(bezier_steps(controls), self.place)
        self._add(bezier(*controls), points[-1])

    def _line(self, end: Line) -> None:
        self.ink.use(1, self.place)
        self._add(self._mapped(np.array([self.at, end])), end)

    def _arc(self, numbers: list[float], end: Line) -> None:
        self._checked(np.abs(numbers[:2]))
        self._checked(end)
        rx, ry, turn, large, sweep = numbers[:5]
        arc = elliptic_arc(
            self.at, end, (rx, ry), turn, large=bool(large), sweep=bool(sweep), frame=self.frame
        )
        if arc is None:
            self._line(end)
            return
        if not arc.radius_mm <= LARGEST_DRAWING_MM:
            raise self._beyond()
        self.ink.use(arc.steps, self.place)
        self._add(arc.points(), end)

    def _close(self) -> None:
        if self.down:
            pieces = self.strokes[-1]
            pieces.append(pieces[0][:1])
        self.at, self.down = self.start, False

    def _add(self, piece: Line, end: Line) -> None:
        """Add a piece in mm to the stroke, or begin one where the pen is up."""
        if not self.down:
            self.strokes.append([])
        self.strokes[-1].append(piece)
        self.at, self.down = end, True

    def _mapped(self, points: Line) -> Line:
        """Carry points (N, 2) to mm; refuses those beyond the largest drawing."""
        mapped = points @ self.frame[:, :2].T + self.frame[:, 2]
        if not np.abs(mapped).max() <= LARGEST_DRAWING_MM:
            raise self._beyond()
        return np.asarray(mapped)

    def _checked(self, points: Line) -> Line:
        self._mapped(points)
        return points

    def _beyond(self) -> UsageError:
        return say.BEYOND(most_mm=LARGEST_DRAWING_MM).usage(self.place)
