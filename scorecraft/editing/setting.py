"""Exact values: a key of a statement is written, changed or taken away, as it is typed."""

from scorecraft.editing import telling as say
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import LockedError, Way, slot
from scorecraft.editing.written import Edit, Written, edited
from scorecraft.errors import ScorecraftError
from scorecraft.expand.traced import Step
from scorecraft.language.evaluate import evaluate
from scorecraft.language.kinds import DIMENSIONS
from scorecraft.language.parse import parse
from scorecraft.language.tree import Measure, Statement, as_expression
from scorecraft.language.words import WORDS, keys_of
from scorecraft.units import plain


def set_key(scene: Scene, step: Step, key: str, value: str, way: Way = "") -> list[Edit]:
    """Write a value as it is typed; an empty one takes the key away.

    Where a knob stands and a number is typed, the knob is turned. Raises LockedError where it
    does not go so far, ScorecraftError for what does not fit.
    """
    statement, written = step.statement, scene.written
    argument = statement.get(key)
    if value and way != "own" and argument:
        turned = knob_turned(scene, step, key, value)
        if turned is not None:
            return turned
    if argument is None:
        at = written.code_end(statement)
        edit = Edit(at, at, f" {key} {value}") if value else Edit(at, at, "")
    elif value:
        edit = written.replaced(argument.span, value)
    else:
        start, end = written.span(argument.place)[0], written.span(argument.span)[1]
        edit = Edit(len(written.text[:start].rstrip(" \t")), end, "")
    check_said(written, statement, edit, key, bool(value))
    return [edit]


def knob_turned(scene: Scene, step: Step, key: str, value: str) -> list[Edit] | None:
    """Turn the knob that stands at a key to a typed number; None where it is another case.

    Raises LockedError for a number beyond the knob's range.
    """
    known = keys_of(WORDS[step.statement.word]).get(key) if step.statement.word in WORDS else None
    found = slot(scene, step, key) if known and known.kind in DIMENSIONS else None
    if found is None or found.form != "knob":
        return None
    typed = as_expression(parse(f"let typed {value}").statements[0].arguments[1].value)
    if not isinstance(typed, Measure):
        return None
    number = evaluate(typed, {})
    wanted = number.value * (step.scope.reach_mm if number.share and found.unit == "%" else 1.0)
    edits, made = found.turned(wanted)
    if abs(made - wanted) > 1e-6 * max(1.0, abs(wanted)):
        ends = say.KNOB_ENDS(name=found.name, value=plain(made / found.per))
        raise LockedError(found, ends, ("own",))
    return edits


def check_said(written: Written, statement: Statement, edit: Edit, key: str, kept: bool) -> None:
    """Make sure that a statement says what was asked for, and else what it said before.

    Raises ScorecraftError where it does not.
    """
    there = Written.read(edited(written.text, [edit])).statements.get(statement.place.line)
    before = {each.key: str(each.value) for each in statement.arguments if each.key != key}
    after = {each.key: str(each.value) for each in there.arguments} if there else {}
    same = there is not None and there.word == statement.word
    if (after.pop(key, None) is not None) != kept or after != before or not same:
        raise ScorecraftError(say.MORE_THAN_ONE.message, statement.place, say.MORE_THAN_ONE.hint)
