"""The head of a pattern: title, notes, loaf, oven and bench."""

from dataclasses import replace

from scorecraft.arrays import Line
from scorecraft.cuts import Bench, Size
from scorecraft.errors import PatternError, Place, Problem, ScorecraftError, lines_of
from scorecraft.expand import telling as say
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
        raise say.second(word, found[0].place.line).error(found[1].place)
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
        raise ScorecraftError(say.one_statement(word), pattern.statements[1].place)
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
    return Bench(
        hand=values["hand"],
        order=values["order"],
        temperature_c=values["temperature"],
        hydration=values["hydration"],
        skill=values["skill"],
        loaves=values["loaves"],
    )


def loaf_of(statement: Statement | None, drawings: Drawings) -> tuple[Loaf, Size]:
    """Make the loaf a pattern asks for; give it with how it came by its size.

    Raises ScorecraftError for a loaf that is not given or cannot be.
    """
    if statement is None:
        raise say.NO_LOAF.error()
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
        raise say.NO_SIZE.error()
    length = values.get("length", width * LENGTH_PER_WIDTH[shape].value)
    height = values.get("height", width * HEIGHT_PER_WIDTH.value)
    usual = []
    if "length" not in values and length != width:
        usual.append(say.not_given("length", length))
    if "height" not in values:
        usual.append(say.not_given("height", height))
    values["steps"] = tuple(usual)
    return make_loaf(shape, width, length, height, powers)


def basket_of(values: Values) -> tuple[float, float] | None:
    """Give the basket's width and length (mm) across the top, the usual ones where one is given.

    Raises ScorecraftError for a basket that the loaf cannot have.
    """
    shape, long, by = values["shape"], values.get("basket"), values.get("by")
    if long is None:
        if by is not None:
            raise say.BY_ALONE.error()
        return None
    if "dough" not in values or "outline" in values:
        raise say.BASKET_ALONE.error()
    if by is not None and shape in ("round", "square") and by != long:
        raise say.even_basket(shape).error()
    across = long / LENGTH_PER_WIDTH[shape].value if by is None else by
    return min(across, long), max(across, long)


def check_even(shape: str, values: Values) -> None:
    """Refuse a length other than the width for a round or square loaf; raises ScorecraftError."""
    width, length = values.get("width"), values.get("length")
    if shape in ("round", "square") and length is not None and length != width:
        raise say.even_loaf(shape).error()


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
        raise say.TRACED_SIZE.error()
    factor, how = 1.0, say.AS_DRAWN
    for key, across in (("width", drawn[0]), ("length", drawn[1])):
        if key in values:
            factor, how = values[key] / float(across), say.scaled(key)
    outline = traced_outline(rim * factor)
    usual = outline.width_mm * HEIGHT_PER_WIDTH.value
    profile = powers or (2.0, 2.0)
    loaf = Loaf(outline, values.get("height", usual), profile)
    steps = [say.rim_size(how, outline.width_mm, outline.length_mm)]
    if "dough" in values:
        proof = values.get("proof", "right")
        sizing = height_from_dough(
            loaf, values["dough"], proof=proof, height_mm=values.get("height")
        )
        loaf = Loaf(outline, sizing.height_mm, profile)
        steps += sizing.steps
        values["doubts"] = sizing.doubts
    elif "height" not in values:
        steps.append(say.not_given("height", usual))
    values["steps"] = tuple(steps)
    return loaf
