"""The walk through a tree: runs each statement in its scope and collects the cuts."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace

import shapely

from scorecraft import regions
from scorecraft.arrays import Line
from scorecraft.cuts import Cut
from scorecraft.errors import EnoughError, Place, Problem, ScorecraftError, ToldError
from scorecraft.expand import telling as say
from scorecraft.expand.draw import (
    draw,
    dress,
    laid_side,
    said_blade,
    severed,
    strayed,
)
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.frame import crown
from scorecraft.expand.limits import (
    SHORTEST_STROKE_MM,
    Budget,
    SpentError,
    check_frame,
    check_near,
    lengths_mm,
)
from scorecraft.expand.placing import FAR_MM, PLACERS, gone_along
from scorecraft.expand.read import Values, own, read
from scorecraft.expand.scope import Scope
from scorecraft.language.evaluate import evaluate, holds
from scorecraft.language.keys import Word
from scorecraft.language.tree import (
    Figure,
    Join,
    Name,
    Region,
    Statement,
    as_expression,
    as_region,
)
from scorecraft.language.words import ATTRIBUTES, WORDS
from scorecraft.limits import CRUMB_MM, MOST_NESTING, MOST_PROBLEMS
from scorecraft.textures import fill

UPRIGHT = math.pi / 2
MOST_COPIES = 2_000
"""The most copies one placing may make."""
HEADER = ("title", "note", "loaf", "dough", "bake", "bench", "stencil", "knob", "marks", "define")


class Walk:
    """Runs statements and collects cuts and problems, within the limits of a run."""

    def __init__(self, rules: Mapping[str, Statement], drawings: Drawings) -> None:
        self.rules = rules
        self.drawings = drawings
        self.cuts: list[Cut] = []
        self.unsaid: list[int] = []
        self.problems: dict[tuple[Place | None, str], Problem] = {}
        self.families: dict[Place, int] = {}
        self.alike: dict[tuple[object, str], int] = {}
        self.crumbs: Counter[Place] = Counter()
        self.short: Counter[Place] = Counter()
        self.figures = 0
        self.budget = Budget()

    def block(self, block: tuple[Statement, ...], scope: Scope) -> None:
        """Run the statements of a block in order; a problem ends its own statement only."""
        for statement in block:
            try:
                self.budget.step()
                scope = self.statement(statement, scope)
            except SpentError as error:
                self.enough(error.place or statement.place, error.message, error.hint)
            except ScorecraftError as error:
                if not isinstance(error, ToldError):
                    (problem,) = error.problems
                    self.problem(replace(problem, place=error.place or statement.place))
                scope = without(statement, scope)

    def inner(self, block: tuple[Statement, ...], scope: Scope) -> None:
        """Run a block within a block."""
        self.budget.enter()
        self.block(block, scope)
        self.budget.leave()

    def problem(self, problem: Problem) -> None:
        """Keep a problem, once for all the copies that run into it.

        Raises EnoughError when there are too many.
        """
        self.problems.setdefault((problem.place, problem.message), problem)
        if len(self.problems) >= MOST_PROBLEMS:
            raise EnoughError

    def enough(self, place: Place, message: str, hint: str = say.FEWER) -> None:
        """End the walk: a limit of the program is reached; raises EnoughError always."""
        self.problem(Problem(message, place, hint))
        raise EnoughError

    def statement(self, statement: Statement, scope: Scope) -> Scope:
        """Run one statement; give the scope of the next one."""
        word = statement.word
        if word in HEADER:
            return scope
        if word == "let":
            return named(statement, scope)
        if word == "when":
            if holds(as_expression(statement.arguments[0].value), scope.names):
                self.inner(statement.body, self.inheriting(statement, scope))
        elif word in self.rules:
            self.rule(statement, scope)
        elif word == "fill":
            self.filled(statement, self.inheriting(statement, scope))
        elif WORDS[word].group == "motif":
            self.motif(statement, self.inheriting(statement, scope))
        else:
            self.placing(statement, self.inheriting(statement, scope))
        return scope

    def inheriting(self, statement: Statement, scope: Scope) -> Scope:
        """Take over the cut attributes that a statement gives."""
        names = {key.name for key in ATTRIBUTES}
        given = tuple(a for a in statement.arguments if a.key in names)
        if not given:
            return scope
        values = read(Word("cut", "rule", "", ATTRIBUTES), given, scope, statement.place)
        return replace(scope, attributes=scope.attributes.with_values(values))

    def placing(self, statement: Statement, scope: Scope) -> None:
        """Run the block of a placing in each of its scopes."""
        for inner in self.scopes(statement, scope):
            check_frame(inner.frame)
            self.inner(statement.body, inner)

    def scopes(self, statement: Statement, scope: Scope) -> Iterator[Scope]:
        """Give the scopes of a placing one by one."""
        if statement.word in ("inside", "outside"):
            region = self.on_sheet(as_region(statement.arguments[0].value), scope)
            if statement.word == "outside":
                region = shapely.difference(shapely.box(-FAR_MM, -FAR_MM, FAR_MM, FAR_MM), region)
            yield scope.within(region)
            return
        word = WORDS[statement.word]

        def values_in(there: Scope) -> Values:
            values = read(word, statement.arguments, there, statement.place)
            for argument in statement.arguments:
                if argument.key == "within":
                    values["within"] = self.on_sheet(as_region(argument.value), there)
                elif isinstance(argument.value, Figure):  # a path to go along
                    values["line"] = self.path(argument.value, there)
                    values["gone"] = gone_along(argument.value, values["line"], there)
            return {"within": None, **values}

        self.limit_copies(statement, values_in(scope))
        yield from PLACERS[statement.word](values_in, scope)

    def limit_copies(self, statement: Statement, values: Values) -> None:
        """Refuse a placing of too many copies; raises ScorecraftError."""
        if values.get("count", 0) <= MOST_COPIES:
            return
        argument = statement.get("count")
        place = argument.place if argument else statement.place
        raise say.TOO_MANY_COPIES(count=values["count"], most=MOST_COPIES).error(place)

    def rule(self, statement: Statement, scope: Scope) -> None:
        """Run a rule's block with the values given to it; all it draws is one figure."""
        rule = self.rules[statement.word]
        if len(scope.rules) >= MOST_NESTING:
            word, line = statement.word, rule.place.line
            endless = say.ENDLESS_RULE.format(word=word, most=MOST_NESTING, line=line)
            self.enough(statement.place, endless)
        inner = self.inheriting(statement, scope)
        given = {a.key: a.value for a in statement.arguments}
        values = {}
        for default in rule.arguments[1:]:
            value = given.get(default.key, default.value)
            values[default.key] = evaluate(as_expression(value), scope.names)
        inner = replace(
            inner,
            given={**scope.given, **values},
            rules=(*scope.rules, statement.word),
            figure=scope.figure if scope.figure is not None else self.new_figure(),
        )
        self.inner(rule.body, inner)

    def motif(self, statement: Statement, scope: Scope) -> None:
        """Draw a motif in its frame and keep its strokes."""
        word = WORDS[statement.word]
        values = read(word, statement.arguments, scope, statement.place)
        scope = strayed(scope.at(scope.frame.turned(values["turn"])), self.budget.steps)
        strokes = draw(word, values, self.drawings, scope)
        if "lay" in values:
            values["laid"] = laid_side(values["lay"], int(scope.names["k"].value))
        lines = [scope.frame.place(stroke.line) for stroke in strokes]
        parts = [stroke.part for stroke in strokes]
        self.keep(statement, scope, lines, parts, values)

    def filled(self, statement: Statement, scope: Scope) -> None:
        """Fill a region with a texture."""
        region, texture = (argument.value for argument in statement.arguments[:2])
        for argument in statement.arguments:
            region = argument.value if argument.key == "region" else region
            texture = argument.value if argument.key == "with" else texture
        assert isinstance(texture, Figure)
        word = WORDS[texture.word]
        values = read(word, texture.arguments, scope, texture.place)
        local = self.some_region(as_region(region), scope)
        found = fill(texture.word, local, **own(word, values))
        left, low, right, high = local.bounds
        cells = (right - left) * (high - low) / values["size"] ** 2
        self.budget.draw(int(cells))  # what is drawn and clipped away again
        self.crumbs[statement.place] += found.dropped
        lines = [scope.frame.place(line) for line in found.lines]
        self.keep(statement, scope, lines, [texture.word] * len(lines), values, texture.word)

    def keep(
        self,
        statement: Statement,
        scope: Scope,
        lines: list[Line],
        parts: list[str],
        values: Values,
        name: str = "",
    ) -> None:
        """Clip lines to the scope's region and keep them as cuts."""
        self.budget.draw(sum(len(line) for line in lines))
        if scope.region is not None and lines:
            clipped = regions.clip(lines, scope.region, shortest=CRUMB_MM)
            self.crumbs[statement.place] += clipped.dropped
            lines, parts = list(clipped.lines), [parts[i] for i in clipped.source]
        lines, parts = self.cuttable(statement, lines, parts)
        word = WORDS[name or statement.word]
        figure = scope.figure if scope.figure is not None else self.new_figure()
        said = {argument.key for argument in statement.arguments}
        worn = {part: dress(word, part, scope.attributes, values, said) for part in set(parts)}
        free = {part for part in worn if said_blade(part, scope.attributes, values) is None}
        called = scope.attributes.called or word.name
        family = self.family(statement, scope, (called, tuple(sorted(worn)), *worn.values()))
        for line, part in zip(lines, parts, strict=True):
            line.setflags(write=False)
            named = called if part == word.name else part
            made = severed(worn[part], line, scope.loaf)
            if part in free and made["blade_rad"] < UPRIGHT and "hinge_mm" not in made:
                self.unsaid.append(len(self.cuts))
            cut = Cut(line, called, named, figure, family, place=statement.place, **made)
            self.cuts.append(cut)
        self.kept(scope)

    def kept(self, scope: Scope) -> None:
        """Hear that cuts of a scope have been kept."""

    def family(self, statement: Statement, scope: Scope, cut: tuple[object, ...]) -> int:
        """Give a number to a statement's cuts: one for all of a rule that are cut alike."""
        if statement.place not in self.families:
            alike = (scope.rules[-1], repr(cut)) if scope.rules else (statement.place, "")
            number = self.alike.setdefault(alike, len(self.alike))
            self.families[statement.place] = number
        return self.families[statement.place]

    def cuttable(
        self, statement: Statement, lines: list[Line], parts: list[str]
    ) -> tuple[list[Line], list[str]]:
        """Leave out strokes that no blade can make; refuse those out of all reach."""
        if not lines:
            return lines, parts
        check_near(lines)
        lengths = lengths_mm(lines)
        chosen = lengths >= SHORTEST_STROKE_MM
        self.budget.keep(int(chosen.sum()), float(lengths[chosen].sum()))
        if chosen.all():
            return lines, parts
        self.short[statement.place] += int((~chosen).sum())
        picked = chosen.nonzero()[0].tolist()
        return [lines[i] for i in picked], [parts[i] for i in picked]

    def new_figure(self) -> int:
        """Give a new figure its number."""
        self.figures += 1
        return self.figures

    def region(self, value: Region, scope: Scope) -> shapely.Geometry:
        """Make a region in the scope's own frame.

        Raises ScorecraftError where its sizes make none.
        """
        if isinstance(value, Join):
            left, right = self.region(value.left, scope), self.region(value.right, scope)
            return left.union(right) if value.operator == "and" else left.difference(right)
        word = WORDS[value.word]
        values = read(word, value.arguments, scope, value.place)
        if value.word == "whole":
            made = regions.whole(scope.loaf, margin=values["margin"])
            return shapely.transform(made, scope.frame.local)
        sizes = {k: v for k, v in own(word, values).items() if k not in ("x", "y")}
        try:
            made = getattr(regions, value.word)(**sizes)
        except ScorecraftError as error:
            raise ScorecraftError(error.message, value.place, error.hint) from error
        return shapely.affinity.translate(made, values.get("x", 0.0), values.get("y", 0.0))

    def on_sheet(self, value: Region, scope: Scope) -> shapely.Geometry:
        """Make a region of the sheet from one in the scope's frame."""
        return shapely.transform(self.some_region(value, scope), scope.frame.place)

    def some_region(self, value: Region, scope: Scope) -> shapely.Geometry:
        """Make a region in the scope's frame; raises ScorecraftError if nothing is left of it."""
        found = self.region(value, scope)
        if found.is_empty:
            raise say.EMPTY_REGION.error(value.place)
        return found

    def path(self, value: Figure, scope: Scope) -> Line:
        """Draw a motif's first stroke as a path in the scope's frame."""
        word = WORDS[value.word]
        values = read(word, value.arguments, scope, value.place)
        line = draw(word, values, self.drawings, scope)[0].line
        return crown().turned(values["turn"]).place(line)


def without(statement: Statement, scope: Scope) -> Scope:
    """Give the scope after a statement that failed: its name is left without a value."""
    name = statement.get("name")
    if statement.word not in ("let", "knob") or name is None or not isinstance(name.value, Name):
        return scope
    return scope.losing(name.value.name)


def named(statement: Statement, scope: Scope) -> Scope:
    """Run a let: give the scope that knows its name."""
    name, value = statement.get("name"), statement.get("value")
    assert name is not None and value is not None and isinstance(name.value, Name)
    return scope.naming(name.value.name, evaluate(as_expression(value.value), scope.names))
