"""Where a number stands in the text, and how another one is written there.

A number may be plain, left to its default, the name of a knob or of a `let`, or worked out.
"""

import math
import re
from collections.abc import Sequence
from typing import Literal

from scorecraft.editing import telling as say
from scorecraft.editing.numbers import FINER, STEPS, inside_per_unit, on_step, rounded, written
from scorecraft.editing.scene import Scene
from scorecraft.editing.written import Edit
from scorecraft.errors import Place, ScorecraftError, Slip
from scorecraft.expand.read import default_value
from scorecraft.expand.scope import Scope
from scorecraft.expand.traced import Step
from scorecraft.frozen import dataclass, replace
from scorecraft.language.evaluate import evaluate
from scorecraft.language.keys import Key
from scorecraft.language.kinds import DIMENSIONS, MAIN_UNIT
from scorecraft.language.tree import (
    Expression,
    Figure,
    Measure,
    Name,
    Statement,
    Value,
    as_expression,
)
from scorecraft.language.words import AT_HAND, WORDS, keys_of
from scorecraft.units import UNITS, Quantity

Way = Literal["", "multiply", "own"]
Form = Literal["plain", "absent", "knob", "named", "sum"]
MULTIPLIED = re.compile(r"\((\d++(?:\.\d++)?) \* ")
NEGLIGIBLE = 1e-9


class LockedError(ScorecraftError):
    """A number that does not turn so as it is written; `ways` are those one may ask for."""

    def __init__(self, slot: "Slot", told: Slip | None = None, ways: tuple[Way, ...] = ()) -> None:
        usual = say.NAMED if slot.form == "named" else say.WORKED_OUT
        told = told or usual(what=slot.said, shown=slot.shown)
        super().__init__(told.message, slot.statement.place, told.hint)
        self.ways = ways


@dataclass(frozen=True)
class Slot:
    """A number of a statement: its key, how it is written, its value (mm, rad) and its unit.

    `place` is where the value stands (None for a default), `at` the offset where a new key goes;
    `per` is how many mm or radians one of the unit makes.
    """

    scene: Scene
    statement: Statement
    key: str
    form: Form
    value: float
    unit: str
    per: float
    place: Place | None
    at: int
    name: str = ""
    least: float = -math.inf
    most: float = math.inf

    @property
    def said(self) -> str:
        """Name it as the text does."""
        return f"{self.key} of {self.statement.word}"

    @property
    def shown(self) -> str:
        """Give what stands there."""
        return self.scene.written.slice(self.place) if self.place else ""

    @property
    def words(self) -> str:
        """Give the value as it would be written, whatever stands there."""
        return written(rounded(self.value / self.per, self.unit, 2), self.unit)

    @property
    def held(self) -> bool:
        """Tell whether it turns only if it is asked to."""
        return self.form in ("named", "sum")

    @property
    def ways(self) -> tuple[Way, ...]:
        """Give the ways in which it turns if it is asked to."""
        if not self.held:
            return ()
        own: tuple[Way, ...] = () if self.counts else ("own",)
        if self.statement.word == "around" and self.statement.get("to") and self.key != "radius":
            return own  # two factors would not keep the turn between them whole
        return (*own, "multiply") if abs(self.value) > NEGLIGIBLE else own

    @property
    def counts(self) -> bool:
        """Tell whether it is worked out from the copy's number."""
        return re.search(r"\bk\b", self.shown) is not None

    def freed(self, way: Way) -> "Slot":
        """Take it as one that turns; raises LockedError unless it does, in this way."""
        if self.form == "knob" and way == "own":
            return replace(self, form="plain")
        if not self.held:
            return self
        if way not in self.ways:
            raise LockedError(self, ways=self.ways)
        return replace(self, form="plain") if way == "own" else self

    def turned(self, value: float, level: int = 0) -> "tuple[list[Edit], float]":
        """Write another value (mm, rad), rounded; give the edits and the value it then has.

        Raises LockedError for what a factor cannot make of it.
        """
        value = min(max(value, self.least), self.most)
        if self.form == "knob":
            return self.knob_turned(value)
        if self.held:
            return self.multiplied(value, level)
        wanted = rounded(value / self.per, self.unit, level)
        if abs(wanted * self.per - self.value) < NEGLIGIBLE:
            return [], self.value
        text = written(wanted, self.unit)
        if self.place is None:
            return [Edit(self.at, self.at, f" {self.key} {text}")], wanted * self.per
        return [self.scene.written.replaced(self.place, text)], wanted * self.per

    def multiplied(self, value: float, level: int) -> "tuple[list[Edit], float]":
        """Write a factor before what is worked out, or change the one that stands there.

        Raises LockedError for what lies beyond nought.
        """
        assert self.place is not None
        before = MULTIPLIED.match(self.shown)
        rest = self.shown[before.end() : -1] if before else ""
        inner = self.shown if closed(self.shown) else f"({self.shown})"
        if value / self.value <= 0:
            raise LockedError(self, say.NO_FACTOR(what=self.said, shown=self.shown), self.ways[:-1])
        factor = 1.0
        if before and closed(f"({rest})") and self.shown == f"{before[0]}{rest})":
            factor, inner = float(before[1]), rest
        step = 0.01 * FINER[level]
        new = max(on_step(factor * value / self.value, step), step)
        if new == factor:
            return [], self.value
        text = f"({written(new, '')} * {inner})"
        return [self.scene.written.replaced(self.place, text)], self.value * new / factor

    def knob_turned(self, value: float) -> "tuple[list[Edit], float]":
        """Turn the knob that stands there, on its steps and within its range."""
        knob = self.scene.knobs[self.name]
        statement = self.scene.statement(knob.place.line)
        argument = statement.get("value")
        assert argument is not None
        steps = on_step(value / self.per - knob.low, knob.step)
        wanted = min(max(round(knob.low + steps, 9), knob.low), knob.high)
        if abs(wanted - knob.value) < NEGLIGIBLE:
            return [], self.value
        edit = self.scene.written.replaced(argument.span, written(wanted, knob.unit))
        return [edit], wanted * self.per

    @property
    def also(self) -> Sequence[Statement]:
        """Give the other statements that turn with it: those that use the name it stands for."""
        return [
            each
            for each in users(self.scene, self.name)
            if each.place.line != self.statement.place.line
        ]


def users(scene: Scene, name: str) -> list[Statement]:
    """Find the statements that use a knob, but the one that makes it."""
    return [
        each
        for each in scene.written.statements.values()
        if each.place != scene.knobs[name].place
        and name in re.findall(r"[^\W\d]\w*+", scene.written.slice(each.span))
    ]


def closed(text: str) -> bool:
    """Tell whether a value is one name, or stands in one pair of parentheses."""
    if text.isidentifier():
        return True
    depth = 0
    for index, letter in enumerate(text):
        depth += {"(": 1, ")": -1}.get(letter, 0)
        if depth == 0:
            return text.startswith("(") and index == len(text) - 1
    return False


def slot(
    scene: Scene, step: Step, key: str, scope: Scope | None = None, figure: Figure | None = None
) -> Slot | None:
    """Find the number of a key of a run's statement, or of a figure in it; None if it has none.

    It is read in a scope, the run's own if none is given.
    """
    owner = figure or step.statement
    known = key_of(scene, owner, key)
    if known is None:
        return None
    argument = next((each for each in owner.arguments if each.key == key), None)
    value = argument.value if argument else default_of(scene, owner.word, known)
    if value is None:
        return None
    place = argument.span if argument else None
    made = read_slot(scene, step, scope or step.scope, known, as_expression(value), place)
    least, most = limits_of(known, made)
    return replace(made, key=key, at=scene.written.code_end(owner), least=least, most=most)


def limits_of(key: Key, found: Slot) -> tuple[float, float]:
    """Give the least and most that a number may be dragged to, in its own limits (mm, rad)."""
    if key.kind not in DIMENSIONS:
        return -math.inf, math.inf
    least = key.least
    if least is None and key.kind in ("length", "size"):
        least = STEPS.get(found.unit, 1.0) * found.per
    return -math.inf if least is None else least, math.inf if key.most is None else key.most


def read_slot(
    scene: Scene, step: Step, scope: Scope, key: Key | None, value: Expression, place: Place | None
) -> Slot:
    """Read how a number is written and what it is."""
    found = evaluate(value, scope.names)
    form, name = form_of(scene, step, value, place)
    unit = unit_of(value, found)
    if form == "knob":
        unit = scene.knobs[name].unit
    reach = scope.reach_mm if found.share and (key is None or key.kind != "number") else 1.0
    per = inside_per_unit(unit, reach)
    inside = found.value * reach if found.share else found.value
    return Slot(scene, step.statement, "", form, inside, unit, per, place, 0, name)


def form_of(scene: Scene, step: Step, value: Value, place: Place | None) -> tuple[Form, str]:
    """Tell how a value is written, and which name it is."""
    if place is None:
        return "absent", ""
    if isinstance(value, Measure):
        return "plain", ""
    if not isinstance(value, Name):
        return "sum", ""
    knob = scene.knobs.get(value.name)
    if knob is None or shadowed(scene, step, value.name):
        return ("sum" if value.name in AT_HAND else "named"), value.name
    argument = scene.statement(knob.place.line).get("value")
    plain_there = argument is not None and isinstance(argument.value, Measure)
    return ("knob" if plain_there else "sum"), value.name


def shadowed(scene: Scene, step: Step, name: str) -> bool:
    """Tell whether a name means a rule's own value or a `let` where a statement stands."""
    within = [each.statement.word for each in step.chain[:-1]]
    called = [scene.rules[word] for word in within if word in scene.rules]
    if any(rule.get(name) for rule in called):
        return True
    lets = (each for each in scene.written.statements.values() if each.word == "let")
    return any(str(each.arguments[0].value) == name for each in lets)


def unit_of(value: Expression, found: Quantity) -> str:
    """Choose the unit of a number: the one that stands there, or the usual one of its kind."""
    if isinstance(value, Measure):
        return value.unit
    if found.share:
        return "%"
    like = (unit for unit in MAIN_UNIT.values() if UNITS[unit].dimension == found.dimension)
    return next(like, "")


def key_of(scene: Scene, owner: Statement | Figure, name: str) -> Key | None:
    """Find a key of a statement's or figure's word, or of the rule it calls."""
    word = WORDS.get(owner.word)
    if word is not None:
        return keys_of(word).get(name)
    rule = scene.rules.get(owner.word)
    return Key(name, "any") if rule and rule.get(name) and name != "name" else None


def default_of(scene: Scene, word: str, key: Key) -> Expression | None:
    """Give the value a key has where it is not written."""
    if word in WORDS:
        return as_expression(default_value(word, key.name)) if key.default else None
    given = scene.rules[word].get(key.name)
    return as_expression(given.value) if given else None
