"""String marks: lines pressed into the dough first, as guides for the cuts."""

import math

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Marks
from scorecraft.errors import Problem, ScorecraftError, ToldError
from scorecraft.expand import telling as say
from scorecraft.expand.frame import crown
from scorecraft.expand.read import Values, read
from scorecraft.expand.scope import Scope
from scorecraft.language.tree import Pattern
from scorecraft.language.words import WORDS
from scorecraft.loaf.areas import on_sheet
from scorecraft.loaf.dome import Loaf

MOST_MARKS = 1_000
"""The most string lines of one pattern."""


def marks_of(pattern: Pattern, scope: Scope, problems: list[Problem]) -> Marks:
    """Lay out the string lines on the sheet."""
    lines: list[Line] = []
    for statement in pattern.statements:
        if statement.word != "marks":
            continue
        try:
            values = read(WORDS["marks"], statement.arguments, scope, statement.place)
        except ToldError:
            continue
        except ScorecraftError as error:
            problems.append(Problem(error.message, error.place or statement.place, error.hint))
            continue
        if len(lines) + values["count"] > MOST_MARKS:
            problems.append(say.TOO_MANY_MARKS(most=MOST_MARKS).at(statement.place))
            break
        lay = {"spokes": spokes, "ring": ring, "lines": parallels}[values["what"]]
        lines += lay(values, scope.loaf)
    return Marks(tuple(lines))


def spokes(values: Values, loaf: Loaf) -> list[Line]:
    """Lay strings from the crown, or the hole, to the rim, evenly around."""
    found = []
    for k in range(values["count"]):
        frame = crown().turned(values["turn"] + math.tau * k / values["count"])
        end = float(loaf.reach(frame.theta_rad))
        start = float(loaf.hole.radius(frame.theta_rad)) if loaf.hole else 0.0
        found.append(frame.place(np.array([[0.0, start], [0.0, end]])))
    return found


def ring(values: Values, loaf: Loaf) -> list[Line]:
    """Lay a ring of string about the crown."""
    angles = np.linspace(0.0, math.tau, 181)
    return [values["radius"] * np.column_stack([np.sin(angles), np.cos(angles)])]


def parallels(values: Values, loaf: Loaf) -> list[Line]:
    """Lay parallel strings across the loaf, centred on the crown."""
    dough = on_sheet(loaf)
    frame = crown().turned(values["turn"])
    found = []
    for k in range(values["count"]):
        x = (k - (values["count"] - 1) / 2) * values["spacing"]
        line = shapely.LineString(frame.place(np.array([[x, -2e3], [x, 2e3]])))
        kept = shapely.get_parts(shapely.intersection(line, dough))
        found += [shapely.get_coordinates(part) for part in kept if part.length > 0]
    return found
