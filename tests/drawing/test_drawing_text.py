"""Letters: measured against the font file itself, read with fontTools."""

import numpy as np
import pytest
from fontTools.ttLib import TTFont

from scorecraft.drawing.text import (
    FONTS,
    cleaned,
    missing,
    outline,
    printable,
    shortened,
    width_mm,
    wrapped,
)


def box(text, size, bold=False):
    points = np.array(
        [p for _, segment in outline(text, size, bold=bold).segments for p in segment]
    )
    return points.min(axis=0), points.max(axis=0)


@pytest.mark.parametrize(("bold", "file"), [(False, "DejaVuSans"), (True, "DejaVuSans-Bold")])
def test_capital_has_the_height_and_advance_of_the_font_file(bold, file):
    font = TTFont(FONTS / f"{file}.ttf")
    units = font["head"].unitsPerEm
    low, high = box("H", 10, bold)
    glyph = font["glyf"]["H"]
    assert high[1] == pytest.approx(0, abs=1e-9)
    assert -low[1] == pytest.approx(10 * glyph.yMax / units)
    assert width_mm("H", 10, bold=bold) == pytest.approx(10 * font["hmtx"]["H"][0] / units)


def test_kerning_draws_a_pair_together():
    assert width_mm("To", 10) < width_mm("T", 10) + width_mm("o", 10) - 1


def test_accents_are_drawn_above_their_letter():
    assert -box("É", 10)[0][1] > -box("E", 10)[0][1] + 1


def test_letters_and_signs_of_european_bakeries_are_held():
    assert missing("Ähre épi żyto ąęłńś ψωμί хлеб bánh mì ẞ ½ × ° µ – — … ⅓ → ■ ● ▲") == ()


def test_what_is_missing_is_named_once_and_printed_as_a_question_mark():
    assert missing("麦 bread 麦 🍞") == ("麦", "🍞")
    assert printable("麦 bread 🍞") == "? bread ?"
    assert outline("麦", 5).segments == outline("?", 5).segments


def test_decomposed_accents_are_composed():
    assert cleaned("e\u0301pi") == "épi"


def test_control_characters_surrogates_and_line_breaks_do_not_survive():
    assert cleaned("a\x0bb\x00\ud800\n c\ufe0f\u200b") == "a b c"


def test_wrapped_lines_fit_and_keep_every_word():
    text = "Razor blades are sharp: keep fingers and the free hand behind the edge"
    lines = wrapped(text, 40, 3)
    assert len(lines) > 2
    assert " ".join(lines) == text
    assert all(width_mm(line, 3) <= 40 for line in lines)


def test_a_word_wider_than_the_room_is_broken():
    lines = wrapped("x" * 60, 20, 3)
    assert "".join(lines) == "x" * 60
    assert all(width_mm(line, 3) <= 20 for line in lines)


def test_shortened_text_fits_and_says_so():
    short = shortened("A very long name for a very small loaf", 30, 3)
    assert short.endswith("…")
    assert width_mm(short, 3) <= 30
    assert shortened("short", 30, 3) == "short"
