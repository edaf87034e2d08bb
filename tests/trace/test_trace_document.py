"""Everything that is not a plain drawing is refused, with its place and a way out."""

import pytest

from scorecraft.errors import UsageError
from scorecraft.trace import strokes

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">\n'
PATH = '<path d="M0 0h9"/>'

REFUSED = {
    "script": ("<script>alert(1)</script>", "<script> is not read"),
    "handler": ('<path d="M0 0h9" onclick="x()"/>', r"a script \(onclick\)"),
    "picture": ('<image href="#a"/>', "<image> is not read"),
    "clone": ('<use href="#a"/>', "<use> is not read"),
    "text": ("<text>rim</text>", "<text> is not read"),
    "foreign": ("<foreignObject/>", "<foreignObject> is not read"),
    "link": ('<a href="http://x.y/"><path d="M0 0h9"/></a>', "a reference to 'http://x.y/'"),
    "old link": ('<a xlink:href="file.svg">x</a>', "a reference to 'file.svg'"),
    "style": ("<style>@import 'x.css';</style>", "a style may not refer"),
    "style url": ('<path d="M0 0h9" style="fill:url( x.svg#a)"/>', "a style may not refer"),
    "nested": ("<svg/>", "a drawing inside the drawing"),
    "style transform": ('<g style="transform:scale(2)"/>', "a transform in a style"),
    "transform": ('<g transform="scale(2"/>', "cannot be read"),
    "transform name": ('<g transform="spin(2)"/>', "cannot be read"),
    "transform count": ('<g transform="rotate(1 2)"/>', "cannot be read"),
    "length": ('<circle r="2furlongs"/>', "is not a length"),
    "negative": ('<circle r="-2"/>', "must not be negative"),
    "data": ('<path d="M0 0 L 5 x"/>', r"cannot be read at 'x' \(character 10\)"),
    "data end": ('<path d="M0 0 L 5"/>', "cannot be read at its end"),
    "data start": ('<path d="L0 0"/>', "cannot be read"),
    "arc flag": ('<path d="M0 0 A5 5 0 2 1 9 9"/>', "cannot be read"),
    "far": ('<path d="M0 0 L1e9 0"/>', "reaches beyond 10,000 mm"),
    "infinite": ('<path d="M0 0 L1e999 0"/>', "cannot be read at '1e999 0'"),
    "huge radius": ('<path d="M0 0 A1e300 1e300 0 0 1 9 9"/>', "reaches beyond"),
}


@pytest.fixture
def drawing(tmp_path):
    def write(text):
        path = tmp_path / "drawing.svg"
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    return write


@pytest.mark.parametrize(("inside", "message"), REFUSED.values(), ids=REFUSED)
def test_what_is_not_plain_is_refused_with_its_line(drawing, inside, message):
    path = drawing(f"{OPEN}{PATH}\n{inside}\n</svg>")
    with pytest.raises(UsageError, match=message) as refused:
        strokes(path)
    assert refused.value.place.file == str(path)
    assert refused.value.place.line == 3


def test_entities_and_doctypes_are_refused(drawing):
    bomb = '<!DOCTYPE svg [<!ENTITY a "aaaaaaaa"><!ENTITY b "&a;&a;&a;">]>'
    for head in (bomb, '<!DOCTYPE svg SYSTEM "x.dtd">'):
        with pytest.raises(UsageError, match="DOCTYPE is not allowed") as refused:
            strokes(drawing(f'<?xml version="1.0"?>\n{head}{OPEN}{PATH}</svg>'))
        assert refused.value.place.line == 2


def test_style_sheets_beside_the_file_are_refused(drawing):
    with pytest.raises(UsageError, match="xml-stylesheet"):
        strokes(drawing(f'<?xml-stylesheet href="a.css"?>{OPEN}{PATH}</svg>'))


@pytest.mark.parametrize(
    "text", ["", "not xml", "<html/>", OPEN, OPEN + "<g></svg>", b"\xff\xfe\x00", "<svg>\x0b</svg>"]
)
def test_what_is_no_svg_is_refused(drawing, text):
    with pytest.raises(UsageError, match="not an SVG file"):
        strokes(drawing(text))


def test_an_unknown_encoding_is_refused(drawing):
    with pytest.raises(UsageError, match="not an SVG file"):
        strokes(drawing(f'<?xml version="1.0" encoding="klingon"?>{OPEN}{PATH}</svg>'))


def test_a_missing_file_is_told():
    with pytest.raises(UsageError, match=r"cannot read \"nowhere\.svg\": no such file"):
        strokes("nowhere.svg")


def test_an_empty_drawing_is_told(drawing):
    with pytest.raises(UsageError, match="draws no strokes"):
        strokes(drawing(OPEN + "<g/></svg>"))


def test_limits_are_told(drawing):
    with pytest.raises(UsageError, match="more than 2,000,000 bytes"):
        strokes(drawing(OPEN + " " * 2_000_000 + PATH + "</svg>"))
    with pytest.raises(UsageError, match="nested too deeply"):
        strokes(drawing(OPEN + "<g>" * 5000 + "</g>" * 5000 + "</svg>"))
    with pytest.raises(UsageError, match="too many elements"):
        strokes(drawing(OPEN + "<g/>" * 20_001 + "</svg>"))
    with pytest.raises(UsageError, match="too many lines and curves"):
        strokes(drawing(OPEN + f'<path d="M0 0{"h1h-1" * 101_000}"/></svg>'))


def test_inner_references_and_foreign_elements_do_no_harm(drawing):
    text = OPEN.replace(">", ' xmlns:tool="urn:tool" tool:version="9">', 1)
    inside = '<tool:view onward="1"/><title>rim</title><style>path{fill:url(#a)}</style>'
    inside = inside.replace(' onward="1"', "")
    lines = strokes(drawing(f'{text}{inside}<path fill="url( \'#a\')" d="M0 0h9"/></svg>'))
    assert len(lines) == 1


@pytest.mark.parametrize("box", ["0 0 10", "0 0 0 10", "a b c d", "0 0 1e999 5"])
def test_a_bad_view_box_is_refused(drawing, box):
    with pytest.raises(UsageError, match="viewBox"):
        strokes(drawing(OPEN.replace("<svg", f'<svg viewBox="{box}"') + PATH + "</svg>"))


def test_a_drawing_without_extent_is_refused(drawing):
    head = OPEN.replace("<svg", '<svg width="0" viewBox="0 0 9 9"')
    with pytest.raises(UsageError, match="width must be above 0"):
        strokes(drawing(head + PATH + "</svg>"))
