"""Knobs: the numbers of a pattern that can be turned, within their ranges."""

from collections.abc import Mapping

from scorecraft.cuts import Knob
from scorecraft.errors import Problem, ScorecraftError, ToldError, UsageError
from scorecraft.expand import telling as say
from scorecraft.expand.read import Values, read
from scorecraft.expand.scope import Scope
from scorecraft.expand.walk import named, without
from scorecraft.language.tree import Pattern, Statement
from scorecraft.language.words import WORDS
from scorecraft.units import Quantity, in_unit, quantity


def knobs_of(
    pattern: Pattern, turned: Mapping[str, Quantity], problems: list[Problem], scope: Scope
) -> tuple[Scope, tuple[Knob, ...]]:
    """Read the knobs, each turned as asked; give the scope that knows them.

    A value outside its knob's range is a problem of the file; one asked for raises UsageError.
    """
    knobs: list[Knob] = []
    for statement in pattern.statements:
        if statement.word == "let":
            try:
                scope = named(statement, scope)
            except ScorecraftError:
                scope = without(statement, scope)  # the walk meets it again and reports it
        if statement.word != "knob":
            continue
        try:
            knob, value = knob_of(statement, scope, turned)
        except UsageError:
            raise
        except ScorecraftError as error:
            if not isinstance(error, ToldError):
                problems.append(Problem(error.message, error.place or statement.place, error.hint))
            scope = without(statement, scope)
            continue
        knobs.append(knob)
        scope = scope.naming(knob.name, value)
    names = [str(s.arguments[0].value) for s in pattern.statements if s.word == "knob"]
    if unknown := sorted(set(turned) - set(names)):
        raise say.UNKNOWN_KNOB(name=unknown[0], known=", ".join(names) or "none").usage()
    return scope, tuple(knobs)


def knob_of(
    statement: Statement, scope: Scope, turned: Mapping[str, Quantity]
) -> tuple[Knob, Quantity]:
    """Read one knob with its range, and the value it stands at.

    Raises ScorecraftError where it stands outside its range, UsageError where it was turned there.
    """
    given = {a.key: a for a in statement.arguments}
    name = getattr(given["name"].value, "name", "")
    values = read(WORDS["knob"], statement.arguments, scope, statement.place)
    base: Quantity = values["value"]
    unit = getattr(given["value"].value, "unit", "") or unit_for(base)
    for key in ("min", "max", "step"):
        limit = values.get(key)
        if limit is not None and (limit.dimension, limit.share) != (base.dimension, base.share):
            raise say.OTHER_UNIT(key=key, wanted=base, given=limit).error(given[key].place)
    low = in_unit(values["min"].value if "min" in values else base.value / 2, unit)
    high = in_unit(values["max"].value if "max" in values else base.value * 2, unit)
    low, high = min(low, high), max(low, high)
    value = turned.get(name, base)
    if (value.dimension, value.share) != (base.dimension, base.share):
        like = in_unit(base.value, unit)
        raise say.WRONG_KNOB(name=name, wanted=base, given=value, value=like, unit=unit).usage()
    stands, step = in_unit(value.value, unit), step_of(values, base, unit)
    knob = Knob(name, stands, unit, low, high, step, statement.place)
    if not low - 1e-9 <= knob.value <= high + 1e-9:
        slip = say.out_of_knob(knob.name, knob.value, low, high, unit, name in turned)
        raise slip.usage() if name in turned else slip.error(given["value"].place)
    return knob, value


def step_of(values: Values, base: Quantity, unit: str) -> float:
    """Give a knob's step: as said, or 1 for whole numbers, mm and degrees, else a hundredth."""
    if "step" in values:
        return in_unit(values["step"].value, unit)
    value = in_unit(base.value, unit)
    return 1.0 if unit in ("mm", "deg", "%", "g") or value == round(value) else 0.01


def unit_for(found: Quantity) -> str:
    """Choose the unit a knob without a written one is shown in."""
    if found.share:
        return "%"
    for unit in ("mm", "deg", "g", "s", "C"):
        if quantity(1.0, unit).dimension == found.dimension:
            return unit
    return ""
