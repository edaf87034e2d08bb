"""From where to where each value stands."""

import pytest

from scorecraft.language.parse import parse
from scorecraft.language.tree import Figure


def shown(text, place):
    return text.splitlines()[place.line - 1][place.column - 1 :][: place.length]


@pytest.mark.parametrize(
    ("line", "values"),
    [
        ("slash 1/2in turn -30°  # a", ["1/2in", "-30°"]),
        ("slash (2 * (k + 1) * 9mm) bend - 4mm", ["(2 * (k + 1) * 9mm)", "- 4mm"]),
        ('slash called "the \\"ear\\"" depth 4mm', ['"the \\"ear\\""', "4mm"]),
        ("path (1mm, 2mm*3) ((4mm), -5%) smooth no", ["(1mm, 2mm*3) ((4mm), -5%)", "no"]),
        (
            "fill disc 9mm and box width 4mm length (3mm) with hatch size 8mm depth 2mm",
            ["disc 9mm and box width 4mm length (3mm)", "hatch size 8mm", "2mm"],
        ),
        ("knob n 8 min 5 max (2 * 6)", ["n", "8", "5", "(2 * 6)"]),
    ],
)
def test_a_span_is_the_whole_value(line, values):
    (statement,) = parse(line).statements
    assert [shown(line, each.span) for each in statement.arguments] == values
    assert shown(line, statement.span) == line.split("#")[0].rstrip()


def test_points_and_figures_have_spans_of_their_own():
    text = "define t a=(3 * 2mm):\n    path (1mm, 2mm*3) ((4mm), -5%)\nt\n"
    rule, _ = parse(text).statements
    assert shown(text, rule.get("a").span) == "(3 * 2mm)"
    assert shown(text, rule.span) == "define t a=(3 * 2mm):"
    points = rule.body[0].get("points").value
    spans = [shown(text, place) for pair in points.spans for place in pair]
    assert spans == ["1mm", "2mm*3", "(4mm)", "-5%"]
    line = "fill wedge from 1deg to (2 * 9deg) with hatch 8mm"
    region = parse(line).statements[0].get("region").value
    assert isinstance(region, Figure)
    assert [shown(line, each.span) for each in region.arguments] == ["1deg", "(2 * 9deg)"]
