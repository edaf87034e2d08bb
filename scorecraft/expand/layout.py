"""The one way from a pattern's tree to its layout."""

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

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


def expand(
    pattern: Pattern,
    text: str = "",
    *,
    loaf: str | None = None,
    bake: str | None = None,
    dough: str | None = None,
    knobs: Mapping[str, Quantity] | None = None,
    folder: Path | None = None,
    standing: Path | None = None,
) -> Layout:
    """Lay a pattern's cuts out on its loaf.

    `loaf` and `bake` replace the pattern's own statements (`round width 180mm`); what `dough` says
    (`over temperature 5C`) stands over the pattern's own, key by key; `knobs` turns knobs by name;
    `folder` is where the files a pattern names must lie. `standing` is the folder
    the user stands in, where the words of `loaf` are the user's own: a file they name is then
    looked up from there and may lie anywhere. Without it they may name no more than the pattern.
    Raises PatternError with every problem found, UsageError for a knob that cannot be turned so.
    """
    return laid_out(Walk, pattern, text, loaf, bake, dough, knobs, folder, standing)[0]


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
    if loaf is not None:
        head.loaf = head.attempt(lambda: spoken("loaf", loaf))
        head.said.append(head.loaf)
    if bake is not None:
        head.bake = head.attempt(lambda: spoken("bake", bake))
    if dough is not None:
        head.said.append(head.attempt(lambda: spoken("dough", dough)))
    mine = Drawings(standing, anywhere=True) if loaf is not None and standing else drawings
    problems = head.problems
    if problems:
        raise PatternError(problems, text)
    risen = head.attempt(lambda: dough_of(head.said))
    made = head.attempt(lambda: loaf_of(head.loaf, mine, risen or Dough()))
    growth = head.attempt(lambda: bake_of(head.bake, risen or Dough()))
    bench = head.attempt(lambda: bench_of(head.bench))
    stencil = head.attempt(lambda: stencil_of(head.stencil))
    if risen is None or made is None or growth is None or bench is None or stencil is None:
        said = [("loaf", loaf or ""), ("bake", bake or ""), ("dough", dough or "")]
        raise refusal(problems, pattern, said, text)
    shape, asked = made
    scope, turned = knobs_of(pattern, knobs or {}, problems, Scope(shape, crown()))
    walk = kind({rule_name(s): s for s in pattern.statements if s.word == "define"}, drawings)
    with suppress(EnoughError):  # the walk has kept the problem
        walk.block(pattern.statements, scope)
    marks = marks_of(pattern, scope, problems)
    problems += walk.problems.values()
    if problems:
        unique = list(dict.fromkeys(problems))[:MOST_PROBLEMS]
        raise PatternError(sorted(unique, key=lambda p: p.place or Place("", 0, 0)), text)
    titles = texts(pattern, "title")
    layout = Layout(
        title=titles[0] if titles else "",
        notes=texts(pattern, "note"),
        loaf=shape,
        bake=growth,
        cuts=held(walk.cuts, walk.unsaid, shape),
        marks=marks,
        knobs=turned,
        bench=bench,
        dough=risen,
        size=asked,
        stencil=stencil,
        remarks=tuple(remarks(walk)),
    )
    return layout, walk


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
        self.loaf = self.attempt(lambda: find(pattern, "loaf"))
        self.bake = self.attempt(lambda: find(pattern, "bake"))
        self.bench = self.attempt(lambda: find(pattern, "bench"))
        self.stencil = self.attempt(lambda: find(pattern, "stencil"))
        own = [self.bench, self.loaf, self.attempt(lambda: find(pattern, "dough"))]
        self.said: list[Statement | None] = own
        self.attempt(lambda: said_once(own))
        self.attempt(lambda: find(pattern, "title"))

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
        (told(count), place)
        for told, dropped in ((say.scraps, walk.crumbs), (say.short_strokes, walk.short))
        for place, count in dropped.items()
    ]
