"""Text to tree to text to tree is an identity, over trees made from the table of words."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.language.evaluate import FUNCTIONS
from scorecraft.language.keys import Key, Word
from scorecraft.language.parse import parse
from scorecraft.language.tree import (
    Argument,
    Binary,
    Call,
    Expression,
    Figure,
    Join,
    Measure,
    Name,
    Pattern,
    Points,
    Statement,
    Text,
    Unary,
    as_expression,
    as_region,
)
from scorecraft.language.words import AT_HAND, WORDS, keys_of
from scorecraft.units import in_unit

UNITS_FOR = {
    "length": ("mm", "cm", "in", "%"), "size": ("mm", "cm", "in"), "angle": ("deg",),
    "number": ("",), "count": ("",), "mass": ("g", "kg", "oz", "lb"), "temperature": ("C",),
    "any": ("", "mm", "deg", "%"),
}  # fmt: skip
VALUES = st.floats(0.001, 1e6).map(lambda v: float(f"{v:.6g}"))


def measures(units: tuple[str, ...], values=VALUES):
    return st.builds(Measure, values, st.sampled_from(units))


OPERANDS = measures(("", "mm", "deg", "%")) | st.sampled_from(AT_HAND).map(Name)


def wider(inner):
    arithmetic = st.sampled_from(["+", "-", "*", "/"])
    return (
        st.builds(Binary, arithmetic, inner, inner)
        | st.builds(Unary, st.just("-"), inner)
        | st.builds(lambda a: Call("sin", (a,)), inner)
        | st.builds(lambda *a: Call("max", a), inner, inner)
    )


EXPRESSIONS = st.recursive(OPERANDS, wider, max_leaves=6)
COMPARISONS = st.builds(
    Binary, st.sampled_from(["<", "<=", ">", ">=", "==", "!="]), EXPRESSIONS, EXPRESSIONS
)
CONDITIONS = st.recursive(
    COMPARISONS,
    lambda inner: (
        st.builds(Binary, st.sampled_from(["and", "or"]), inner, inner)
        | st.builds(Unary, st.just("not"), inner)
    ),
    max_leaves=4,
)
TEXTS = st.text(
    st.characters(min_codepoint=32, max_codepoint=0x2FFF, categories=("L", "N", "P", "S", "Zs")),
    max_size=12,
).map(Text)


def literal(key: Key):
    """Draw a value of the key's kind that its range allows."""
    low = key.least if key.least is not None and key.least > 0 else None
    if key.kind == "count":
        least, most = int(key.least or 0), int(min(key.most or 1e6, 1e6))
        return st.integers(least, most).map(lambda n: Measure(float(n)))
    if key.kind == "number":
        return st.floats(low or 0.001, key.most or 1e6).map(Measure)
    return st.sampled_from(UNITS_FOR[key.kind]).flatmap(lambda unit: measure(key, unit, low))


def measure(key: Key, unit: str, low: float | None):
    """Draw a measure in a unit, within the key's range and the share a length may be."""
    most = 1000.0 if unit == "%" else 1e6 if key.most is None else in_unit(key.most, unit) - 0.01
    least = 0.001 if low is None or unit == "%" else in_unit(low, unit) + 0.01
    return st.floats(least, most).map(lambda v: Measure(float(f"{v:.6g}"), unit))


def value(key: Key):
    if key.kind in UNITS_FOR:
        return literal(key) | EXPRESSIONS.filter(lambda e: not isinstance(e, Measure))
    if key.choices:
        return st.sampled_from(key.choices).map(Name)
    pairs = st.tuples(EXPRESSIONS, EXPRESSIONS)
    return {
        "text": TEXTS,
        "condition": CONDITIONS,
        "pair": st.builds(lambda p: Points((p,)), pairs),
        "points": st.builds(lambda p: Points(tuple(p)), st.lists(pairs, min_size=1, max_size=3)),
        "region": regions(),
        "texture": st.deferred(lambda: figures("texture")),
        "path": st.deferred(lambda: figures("motif")),
    }[key.kind]


@st.composite
def arguments(draw, keys: dict[str, Key]):
    wanted = [k for k in keys.values() if k.kind != "new name"]
    chosen = (
        draw(st.lists(st.sampled_from(wanted), max_size=4, unique_by=lambda k: k.name))
        if wanted
        else []
    )
    chosen += [k for k in wanted if k.needed and k not in chosen]
    return tuple(Argument(key.name, draw(value(key))) for key in draw(st.permutations(chosen)))


@st.composite
def figures(draw, group: str):
    word = draw(st.sampled_from([w for w in WORDS.values() if w.group == group]))
    return Figure(word.name, draw(arguments({key.name: key for key in word.keys})))


def regions():
    shapes = st.deferred(lambda: figures("region"))
    return st.recursive(
        shapes,
        lambda inner: st.builds(Join, st.sampled_from(["and", "less"]), inner, shapes),
        max_leaves=3,
    )


@st.composite
def statements(draw, depth: int = 0):
    def fits(word: Word) -> bool:
        if word.group in ("region", "texture") or word.name in ("define", "knob", "let"):
            return False
        return not (depth and word.group == "header") and not (depth > 1 and word.body)

    word = draw(st.sampled_from([w for w in WORDS.values() if fits(w)]))
    body = ()
    if word.body:
        body = tuple(draw(st.lists(statements(depth + 1), min_size=1, max_size=2)))
    return Statement(word.name, draw(arguments(keys_of(word))), body)


@st.composite
def patterns(draw):
    """A knob, a let and a rule, then statements of all kinds, the rule among them."""
    defaults = (Argument("size", Measure(30.0, "mm")), Argument("n", draw(EXPRESSIONS)))
    rule = Statement("define", (Argument("name", Name("twig")), *defaults), (draw(statements(1)),))
    use = Statement("twig", (Argument("n", draw(EXPRESSIONS)),))
    knob = Statement(
        "knob",
        (Argument("name", Name("petals")), Argument("value", Measure(8.0)),
         Argument("max", Measure(12.0))),
    )  # fmt: skip
    let = Statement("let", (Argument("name", Name("tip")), Argument("value", draw(EXPRESSIONS))))
    rest = draw(st.lists(statements(), max_size=4))
    return Pattern((knob, let, rule, *rest, use))


@settings(max_examples=120)
@given(patterns())
def test_a_tree_written_out_reads_back_as_itself(tree):
    text = str(tree)
    again = parse(text)
    assert again == tree
    assert str(again) == text


@settings(max_examples=200)
@given(EXPRESSIONS)
def test_an_expression_keeps_its_shape(expression: Expression):
    (statement,) = parse(
        str(Statement("slash", (Argument("length", Binary("*", expression, Measure(1.0))),)))
    ).statements
    assert statement.arguments[0].value == Binary("*", expression, Measure(1.0))


def test_places_do_not_count_but_values_do():
    assert parse("slash 3mm") == parse("\n\n  # x\nslash    3mm")
    assert parse("slash 3mm") != parse("slash 3cm")


def test_every_function_prints_as_a_call():
    for name in FUNCTIONS:
        assert str(Call(name, (Measure(1.0),))) == f"{name}(1)"


def test_values_are_taken_only_as_what_they_are():
    statements = parse("inside disc radius 5mm:\n    slash 9mm\n", "p").statements
    region, length = statements[0].arguments[0].value, statements[0].body[0].arguments[0].value
    assert as_region(region) is region
    assert as_expression(length) is length
    with pytest.raises(TypeError, match="no expression"):
        as_expression(region)
    with pytest.raises(TypeError, match="no region"):
        as_region(length)
