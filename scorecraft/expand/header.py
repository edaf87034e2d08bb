"""The head of a pattern: title, notes, loaf, oven and bench."""

from dataclasses import replace

from scorecraft.arrays import Line
from scorecraft.cuts import Bench, Size
from scorecraft.errors import PatternError, Place, Problem, ScorecraftError, lines_of
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.read import Values, read
from scorecraft.language.parse import parse
from scorecraft.language.tree import Pattern, Statement
from scorecraft.language.words import WORDS
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import traced_outline
from scorecraft.loaf.sizing import Known, height_from_dough, size_from_dough
from scorecraft.practice import HEIGHT_PER_WIDTH, LENGTH_PER_WIDTH


def find(pattern: Pattern, word: str) -> Statement | None:
    """Find the header statement of a word; raises ScorecraftError at a second one."""
    found = [s for s in pattern.statements if s.word == word]
    if len(found) > 1:
        hint = f"line {found[0].place.line} has one already"
        raise ScorecraftError(f'a second "{word}"', found[1].place, hint)
    return found[0] if found else None


def spoken(word: str, text: str) -> Statement:
    """Read one header statement from the command line, like `round width 180mm`.

    Raises PatternError that quotes the words themselves, ScorecraftError for more than one.
    """
    try:
        pattern = parse(f"{word} {text}", f"--{word}")
    except PatternError as error:
        raise PatternError([quoted_words(each, word, text) for each in error.problems]) from error
    if len(pattern.statements) != 1:
        raise ScorecraftError(f"--{word} takes one statement", pattern.statements[1].place)
    return pattern.statements[0]


def quoted_words(problem: Problem, word: str, text: str) -> Problem:
    """Let a problem in the words of an option quote them."""
    place = problem.place
    if place is None or place.file != f"--{word}":
        return problem
    return replace(problem, quoted=lines_of(f"{word} {text}")[place.line - 1])


def texts(pattern: Pattern, word: str) -> tuple[str, ...]:
    """Collect the texts of every statement of a word."""
    found = [s.arguments[0].value for s in pattern.statements if s.word == word]
    return tuple(getattr(value, "value", "") for value in found)


def head_values(word: str, statement: Statement | None) -> Values:
    """Read a header statement, or its defaults where the pattern has none."""
    arguments = statement.arguments if statement else ()
    place = statement.place if statement else Place("", 0, 0)
    return read(WORDS[word], arguments, None, place)


def bake_of(statement: Statement | None) -> Bake:
    """Read how the loaf grows in the oven."""
    values = head_values("bake", statement)
    return Bake(spring=values["spring"], spread=values["spread"], steam=values["steam"])


def bench_of(statement: Statement | None) -> Bench:
    """Read who cuts, and in what kitchen."""
    values = head_values("bench", statement)
    return Bench(values["hand"], values["order"], values["temperature"], values["hydration"])


def loaf_of(statement: Statement | None, drawings: Drawings) -> tuple[Loaf, Size]:
    """Make the loaf a pattern asks for; give it with how it came by its size.

    Raises ScorecraftError for a loaf that is not given or cannot be.
    """
    if statement is None:
        message, hint = "the pattern has no loaf", "like: loaf round width 220mm height 95mm"
        raise ScorecraftError(message, None, hint)
    values = head_values("loaf", statement)
    try:
        made = sized(values, drawings)
        return made, Size(values.get("steps", ()), values.get("doubts", ()), values.get("vessel"))
    except ScorecraftError as error:
        place = error.place or statement.place
        raise ScorecraftError(error.message, place, error.hint, error.quoted) from error


def sized(values: Values, drawings: Drawings) -> Loaf:
    """Make the loaf from the sizes given; its dough, or habit, gives those that are not.

    Raises ScorecraftError where too little is known.
    """
    shape, profile = values["shape"], values.get("profile")
    powers = None if profile is None else (profile, 2.0)
    basket = basket_of(values)
    if "outline" in values:
        return traced_loaf(values, powers, drawings.rim(values["outline"]))
    check_even(shape, values)
    if "dough" in values:
        return from_dough(values, powers, basket)
    width = values.get("width")
    if width is None:
        hint = "like: loaf round width 220mm height 95mm, or loaf round dough 900g"
        raise ScorecraftError("the loaf has no width and no dough", None, hint)
    length = values.get("length", width * LENGTH_PER_WIDTH[shape].value)
    height = values.get("height", width * HEIGHT_PER_WIDTH.value)
    usual = []
    if "length" not in values and length != width:
        usual.append(f"no length is given: {length:.0f} mm is usual for this width")
    if "height" not in values:
        usual.append(f"no height is given: {height:.0f} mm is usual for this width")
    values["steps"] = tuple(usual)
    return make_loaf(shape, width, length, height, powers)


def basket_of(values: Values) -> tuple[float, float] | None:
    """Give the basket's width and length (mm) across the top, the usual ones where one is given.

    Raises ScorecraftError for a basket that the loaf cannot have.
    """
    shape, long, by = values["shape"], values.get("basket"), values.get("by")
    if long is None:
        if by is not None:
            hint = "like: loaf oval dough 750g basket 25cm by 15cm"
            raise ScorecraftError('"by" is the width of a basket', None, hint)
        return None
    if "dough" not in values or "outline" in values:
        hint = "like: loaf round dough 900g basket 22cm"
        raise ScorecraftError("a basket sizes a loaf from its dough", None, hint)
    if by is not None and shape in ("round", "square") and by != long:
        hint = "use oval or long for a basket longer than it is wide"
        raise ScorecraftError(f"the basket of a {shape} loaf is as long as it is wide", None, hint)
    across = long / LENGTH_PER_WIDTH[shape].value if by is None else by
    return min(across, long), max(across, long)


def check_even(shape: str, values: Values) -> None:
    """Refuse a length other than the width for a round or square loaf; raises ScorecraftError."""
    width, length = values.get("width"), values.get("length")
    if shape in ("round", "square") and length is not None and length != width:
        hint = "use oval or long for a loaf longer than it is wide"
        raise ScorecraftError(f"a {shape} loaf is as long as it is wide", None, hint)


def from_dough(
    values: Values, powers: tuple[float, float] | None, basket: tuple[float, float] | None
) -> Loaf:
    """Make the loaf from its dough; a size that is given always stands."""
    shape = values["shape"]
    sizing = size_from_dough(
        shape,
        values["dough"],
        proof=values.get("proof", "right"),
        basket_mm=basket,
        known=Known(values.get("width"), values.get("length"), values.get("height")),
        profile=powers,
    )
    values["steps"], values["doubts"] = sizing.steps, sizing.doubts
    return make_loaf(shape, sizing.width_mm, sizing.length_mm, sizing.height_mm, powers)


def traced_loaf(values: Values, powers: tuple[float, float] | None, rim: Line) -> Loaf:
    """Make a loaf whose rim is drawn in an SVG file, as large as drawn or scaled to a size.

    Its height is what its dough makes of that rim, or the usual one. Raises ScorecraftError where
    both width and length are given.
    """
    drawn = rim.max(axis=0) - rim.min(axis=0)
    if "width" in values and "length" in values:
        hint = "give its width or its length: it keeps its proportions"
        raise ScorecraftError("a rim of your own has both already", None, hint)
    factor, how = 1.0, "as it is drawn"
    for key, across in (("width", drawn[0]), ("length", drawn[1])):
        if key in values:
            factor, how = values[key] / float(across), f"scaled to the {key} given"
    outline = traced_outline(rim * factor)
    usual = outline.width_mm * HEIGHT_PER_WIDTH.value
    profile = powers or (2.0, 2.0)
    loaf = Loaf(outline, values.get("height", usual), profile)
    size = f"{outline.width_mm:.0f} mm wide, {outline.length_mm:.0f} mm long"
    steps = [f"the rim is {how}: {size}"]
    if "dough" in values:
        proof = values.get("proof", "right")
        sizing = height_from_dough(
            loaf, values["dough"], proof=proof, height_mm=values.get("height")
        )
        loaf = Loaf(outline, sizing.height_mm, profile)
        steps += sizing.steps
        values["doubts"] = sizing.doubts
    elif "height" not in values:
        steps.append(f"no height is given: {usual:.0f} mm is usual for this width")
    values["steps"] = tuple(steps)
    return loaf
