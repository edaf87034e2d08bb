"""The one way from a pattern's tree to its layout."""

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TypedDict, TypeVar, Unpack

from scorecraft.cuts import Layout
from scorecraft.errors import EnoughError, PatternError, Place, Problem, ScorecraftError
from scorecraft.expand import telling as say
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.frame import crown
from scorecraft.expand.header import (
    bake_of,
    bench_of,
    dough_of,
    find,
    loaf_of,
    quoted_words,
    said_once,
    spoken,
    stencil_of,
    texts,
)
from scorecraft.expand.knobs import knobs_of
from scorecraft.expand.lean import held
from scorecraft.expand.marks import marks_of
from scorecraft.expand.scope import Scope
from scorecraft.expand.walk import Walk
from scorecraft.language.tree import Pattern, Statement
from scorecraft.limits import MOST_PROBLEMS
from scorecraft.loaf.dough import Dough
from scorecraft.units import Quantity

T = TypeVar("T")
W = TypeVar("W", bound=Walk)


class Asked(TypedDict, total=False):
    """What is said beside a pattern.

    `loaf` and `bake` replace the pattern's own statements (`round width 180mm`); what `dough` says
    (`over temperature 5C`) stands over the pattern's own, key by key; `knobs` turns knobs by name;
    `folder` is where the files a pattern names must lie. `standing` is the folder
    the user stands in, where the words of `loaf` are the user's own: a file they name is then
    looked up from there and may lie anywhere. Without it they may name no more than the pattern.
    """

    loaf: str | None
    bake: str | None
    dough: str | None
    knobs: Mapping[str, Quantity] | None
    folder: Path | None
    standing: Path | None


def expand(pattern: Pattern, text: str = "", **asked: Unpack[Asked]) -> Layout:
    """Lay a pattern's cuts out on its loaf, as is `asked`.

    Raises PatternError with every problem found, UsageError for a knob that cannot be turned so.
    """
    return laid_out(Walk, pattern, text, **asked)[0]


def laid_out(
    kind: type[W],
    pattern: Pattern,
    text: str,
    loaf: str | None = None,
    bake: str | None = None,
    dough: str | None = None,
    knobs: Mapping[str, Quantity] | None = None,
    folder: Path | None = None,
    standing: Path | None = None,
) -> tuple[Layout, W]:
    """Lay a pattern's cuts out as `expand` does, by a kind of walk; give that walk too.

    Raises PatternError and UsageError as `expand` does.
    """
    head, drawings = Head(pattern), Drawings(folder)
    head.hear(loaf, bake, dough)
    if head.problems:
        raise PatternError(head.problems, text)
    mine = Drawings(standing, anywhere=True) if loaf is not None and standing else drawings
    base = head.layout(pattern, mine)
    if base is None:
        said = [("loaf", loaf or ""), ("bake", bake or ""), ("dough", dough or "")]
        raise refusal(head.problems, pattern, said, text)
    problems = head.problems
    scope, turned = knobs_of(pattern, knobs or {}, problems, Scope(base.loaf, crown()))
    walk = kind({rule_name(s): s for s in pattern.statements if s.word == "define"}, drawings)
    with suppress(EnoughError):  # the walk has kept the problem
        walk.block(pattern.statements, scope)
    marks = marks_of(pattern, scope, problems)
    problems += walk.problems.values()
    if problems:
        unique = list(dict.fromkeys(problems))[:MOST_PROBLEMS]
        raise PatternError(sorted(unique, key=lambda p: p.place or Place("", 0, 0)), text)
    cuts = held(walk.cuts, walk.unsaid, base.loaf)
    return replace(base, cuts=cuts, marks=marks, knobs=turned, remarks=tuple(remarks(walk))), walk


def refusal(
    problems: Sequence[Problem], pattern: Pattern, said: Sequence[tuple[str, str]], text: str
) -> PatternError:
    """Refuse a header, shown in the pattern or in the words `said` in its stead."""
    start = pattern.statements[0].place if pattern.statements else Place("pattern", 1, 1)
    placed = [replace(problem, place=problem.place or start) for problem in problems]
    for word, words in said:
        placed = [quoted_words(problem, word, words) for problem in placed]
    return PatternError(placed, text)


class Head:
    """The header statements of a pattern, and what is wrong with them."""

    def __init__(self, pattern: Pattern) -> None:
        self.problems: list[Problem] = []
        self.loaf, self.bake, self.bench, self.stencil, dough = (
            self.attempt(partial(find, pattern, word))
            for word in ("loaf", "bake", "bench", "stencil", "dough")
        )
        self.said: list[Statement | None] = [self.bench, self.loaf, dough]
        self.attempt(lambda: said_once(self.said))
        self.attempt(lambda: find(pattern, "title"))

    def hear(self, loaf: str | None, bake: str | None, dough: str | None) -> None:
        """Take what is said beside the pattern in the place of its own statements."""
        if loaf is not None:
            self.loaf = self.attempt(lambda: spoken("loaf", loaf))
            self.said.append(self.loaf)
        if bake is not None:
            self.bake = self.attempt(lambda: spoken("bake", bake))
        if dough is not None:
            self.said.append(self.attempt(lambda: spoken("dough", dough)))

    def layout(self, pattern: Pattern, drawings: Drawings) -> Layout | None:
        """Lay out the loaf without cuts yet; None where something is wrong with the header."""
        dough = self.attempt(lambda: dough_of(self.said))
        made = self.attempt(lambda: loaf_of(self.loaf, drawings, dough or Dough()))
        bake = self.attempt(lambda: bake_of(self.bake, dough or Dough()))
        bench = self.attempt(lambda: bench_of(self.bench))
        stencil = self.attempt(lambda: stencil_of(self.stencil))
        if dough is None or made is None or bake is None or bench is None or stencil is None:
            return None
        titles = texts(pattern, "title")
        return Layout(
            title=titles[0] if titles else "",
            notes=texts(pattern, "note"),
            loaf=made[0],
            bake=bake,
            cuts=(),
            bench=bench,
            dough=dough,
            size=made[1],
            stencil=stencil,
        )

    def attempt(self, do: Callable[[], T]) -> T | None:
        """Do something; keep the problem and give None if it fails."""
        try:
            return do()
        except ScorecraftError as error:
            self.problems += error.problems
            return None


def rule_name(statement: Statement) -> str:
    """Give the name of the rule that a define makes."""
    return str(statement.arguments[0].value)


def remarks(walk: Walk) -> list[tuple[str, Place | None]]:
    """Say what was dropped on the way."""
    return [
        (told[count > 1].format(count=count), place)
        for told, dropped in ((say.SCRAPS, walk.crumbs), (say.SHORT_STROKES, walk.short))
        for place, count in dropped.items()
        if count
    ]
