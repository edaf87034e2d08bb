"""The head of a pattern: title, notes, loaf, oven and bench."""

from collections.abc import Sequence
from dataclasses import replace

from scorecraft.arrays import Line
from scorecraft.cuts import Bench, Size, Stencil
from scorecraft.errors import PatternError, Place, Problem, ScorecraftError, lines_of
from scorecraft.expand import telling as say
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.read import Values, read
from scorecraft.language.parse import parse
from scorecraft.language.tree import Argument, Pattern, Statement
from scorecraft.language.words import WORDS
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.dough import Dough
from scorecraft.loaf.forms import FORMS, Form
from scorecraft.loaf.outline import traced_outlines
from scorecraft.loaf.sizing import Known, Sizing, height_from_dough, size_from_dough
from scorecraft.loaf.tin import PANS
from scorecraft.loaf.tinned import in_tin


def find(pattern: Pattern, word: str) -> Statement | None:
    """Find the header statement of a word; raises ScorecraftError at a second one."""
    found = [s for s in pattern.statements if s.word == word]
    if len(found) > 1:
        raise say.SECOND(word=word, line=found[0].place.line).error(found[1].place)
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
        raise ScorecraftError(say.ONE_STATEMENT.format(word=word), pattern.statements[1].place)
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


def bake_of(statement: Statement | None, dough: Dough) -> Bake:
    """Read how the loaf grows in the oven; what is not said of its spring, its dough says."""
    values = head_values("bake", statement)
    spring = values.get("spring", dough.spring(steam=values["steam"]))
    return Bake(spring=spring, spread=values["spread"], steam=values["steam"])


def bench_of(statement: Statement | None) -> Bench:
    """Read who cuts."""
    values = head_values("bench", statement)
    return Bench(
        hand=values["hand"],
        order=values["order"],
        skill=values["skill"],
        loaves=values["loaves"],
    )


def stencil_of(statement: Statement | None) -> Stencil:
    """Read what the pattern says of its stencil."""
    values = head_values("stencil", statement)
    sizes = {f"{key}_mm": values[key] for key in ("slot", "bridge", "web") if key in values}
    names = (name.strip() for name in values.get("fill", "").split(","))
    fill = tuple(name for name in names if name)
    return Stencil(sizes, fill, values.get("layers", ""), values.get("plate", ""))


def dough_of(said: Sequence[Statement | None]) -> Dough:
    """Read the dough from all statements that say something of it, the last of which stand.

    Besides `dough` these are `loaf`, which may give the proof, and `bench`: temperature and
    hydration. Raises ScorecraftError where a value is none.
    """
    word = WORDS["dough"]
    given: dict[str, Argument] = {}
    for statement in filter(None, said):
        given |= {each.key: each for each in statement.arguments if word.key(each.key)}
    place = next((each.place for each in filter(None, said)), Place("", 0, 0))
    values = read(word, tuple(given.values()), None, place)
    proof = "ready" if values["proof"] == "right" else values["proof"]
    warm = values["temperature"], values["kitchen"]
    return Dough(proof, values["culture"], values["hydration"], *warm)


def said_once(own: Sequence[Statement | None]) -> None:
    """Make sure that a pattern says each thing of its dough in one line.

    Raises ScorecraftError at the second.
    """
    seen: dict[str, Place] = {}
    for statement in filter(None, own):
        for each in statement.arguments:
            if WORDS["dough"].key(each.key) is None:
                continue
            if each.key in seen:
                first = seen[each.key].line
                raise say.SAID_TWICE(key=each.key, line=first).error(each.place)
            seen[each.key] = each.place


def loaf_of(statement: Statement | None, drawings: Drawings, dough: Dough) -> tuple[Loaf, Size]:
    """Make the loaf a pattern asks for; give it with how it came by its size.

    Raises ScorecraftError for a loaf that is not given or cannot be.
    """
    if statement is None:
        raise say.NO_LOAF.error()
    values = head_values("loaf", statement)
    try:
        made = sized(values, drawings, dough)
        return made.loaf, Size(made.steps, made.doubts, values.get("vessel"), values.get("dough"))
    except ScorecraftError as error:
        place = error.place or statement.place
        raise ScorecraftError(error.message, place, error.hint, error.quoted) from error


def sized(values: Values, drawings: Drawings, dough: Dough) -> Sizing:
    """Make the loaf from the sizes given; its dough, or habit, gives those that are not.

    Raises ScorecraftError where too little is known.
    """
    shape, profile = values["shape"], values.get("profile")
    powers = None if profile is None else (profile, 2.0)
    basket = basket_of(values)
    if "outline" in values:
        return traced_loaf(values, powers, drawings.rims(values["outline"]), dough)
    form = FORMS[shape]
    check_keys(form, values)
    if form.held:
        return from_tin(values, powers, dough)
    usual = usual_dough(form, values)
    hole, taper, grams = values.get("hole"), values.get("taper", 0.0), values.get("dough")
    if grams is not None:
        known = Known(values.get("width"), values.get("length"), values.get("height"), hole)
        found = size_from_dough(
            shape, grams, dough=dough, basket_mm=basket, known=known, profile=powers, taper=taper
        )
        doubts = (*found.doubts, *not_usual(form, grams))
        return Sizing(found.loaf, (*usual, *found.steps), doubts)
    width = values.get("width")
    if width is None:
        raise say.NO_SIZE.error()
    length = values.get("length", width * form.longer)
    height = values.get("height", width * form.stands * dough.stand)
    steps = []
    if "length" not in values and length != width:
        steps.append(say.NOT_GIVEN.format(what="length", usual_mm=length))
    if "height" not in values:
        steps.append(say.NOT_GIVEN.format(what="height", usual_mm=height))
    loaf = make_loaf(shape, width, length, height, powers, hole_mm=hole, taper=taper)
    return Sizing(loaf, tuple(steps))


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
    if by is not None and FORMS[shape].even and by != long:
        raise say.EVEN_BASKET(shape=shape).error()
    across = long / FORMS[shape].longer if by is None else by
    return min(across, long), max(across, long)


def check_keys(form: Form, values: Values) -> None:
    """Refuse sizes that a form does not have; raises ScorecraftError."""
    width, length = values.get("width"), values.get("length")
    if form.even and length is not None and length != width:
        raise say.EVEN_LOAF(shape=form.name).error()
    if "hole" in values and not form.hole:
        raise say.NO_HOLE(shape=form.name).error()
    if "taper" in values and not form.tapers:
        raise say.NO_TAPER(shape=form.name).error()
    if "pan" in values and not form.held:
        raise say.NO_PAN(shape=form.name).error()


def usual_dough(form: Form, values: Values) -> tuple[str, ...]:
    """Take the usual dough of a form made in one size where no size is given; say so."""
    if form.dough_g is None or {"dough", "width", "height"} & set(values):
        return ()
    values["dough"] = form.dough_g[1]
    least, usual, most = form.dough_g
    return (say.USUAL_DOUGH.format(form=form.name, least_g=least, usual_g=usual, most_g=most),)


def not_usual(form: Form, grams: float) -> tuple[tuple[str, str], ...]:
    """Doubt dough that is much more or less than a form made in one size has."""
    least, _, most = form.dough_g or (grams, grams, grams)
    if least <= grams <= most:
        return ()
    much = "much" if grams > most else "little"
    doubt = say.NOT_USUAL_DOUGH(form=form.name, grams=grams, much=much, least_g=least, most_g=most)
    return (doubt,)


def from_tin(values: Values, powers: tuple[float, float] | None, dough: Dough) -> Sizing:
    """Make the loaf that stands in a tin; raises ScorecraftError where too little is known."""
    known = Known(values.get("width"), values.get("length"), values.get("height"))
    if known.width_mm is None and not {"pan", "dough"} & set(values):
        raise say.NO_TIN.error()
    pan = PANS[values["pan"]] if "pan" in values else None
    return in_tin(pan, known, values.get("dough"), dough=dough, profile=powers)


def traced_loaf(
    values: Values, powers: tuple[float, float] | None, rims: Sequence[Line], dough: Dough
) -> Sizing:
    """Make a loaf whose rim is drawn in an SVG file, as large as drawn or scaled to a size.

    A second rim is that of a hole. Its height is what its dough makes of that rim, or the usual
    one. Raises ScorecraftError where
    both width and length are given.
    """
    drawn = rims[0].max(axis=0) - rims[0].min(axis=0)
    if "width" in values and "length" in values:
        raise say.TRACED_SIZE.error()
    factor, how = 1.0, say.AS_DRAWN
    for key, across in (("width", drawn[0]), ("length", drawn[1])):
        if key in values:
            factor, how = values[key] / float(across), say.SCALED.format(key=key)
    outline, *holes = traced_outlines([rim * factor for rim in rims])
    hole = holes[0] if holes else None
    usual = outline.width_mm * FORMS["ring" if hole else "round"].stands * dough.stand
    height = values.get("height")
    loaf = Loaf(outline, height or usual, powers or (2.0, 2.0), hole)
    steps = [say.RIM_SIZE.format(how=how, width_mm=outline.width_mm, length_mm=outline.length_mm)]
    if "dough" in values:
        found = height_from_dough(loaf, values["dough"], dough=dough, height_mm=height)
        return Sizing(found.loaf, (*steps, *found.steps), found.doubts)
    if height is None:
        steps.append(say.NOT_GIVEN.format(what="height", usual_mm=usual))
    return Sizing(loaf, tuple(steps))
