"""Letters: sizes, accents, and what the data set does not have."""

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.motifs.letters import letters


def written(text, height=42.0, style="plain", spacing=0.0):
    return [s.line for s in letters(text=text, height=height, style=style, spacing=spacing)]


def test_a_capital_is_as_high_as_asked_and_centred():
    points = np.concatenate(written("HEH"))
    assert points[:, 1].min() == pytest.approx(-21) and points[:, 1].max() == pytest.approx(21)
    assert abs(points[:, 0].min() + points[:, 0].max()) < 0.1
    wider = np.concatenate(written("HEH", spacing=10.0))
    assert np.ptp(wider[:, 0]) == pytest.approx(np.ptp(points[:, 0]) + 20)


def test_a_round_letter_is_one_stroke_and_a_corner_begins_another():
    assert len(written("O")) == 1 and len(written("S")) == 1
    assert len(written("L")) == 2 and len(written("H")) == 3


def test_joined_handwriting_runs_from_letter_to_letter():
    assert len(written("nn", style="script")) < 2 * len(written("n", style="script"))


def test_accents_stand_over_their_letters():
    for plain, marked in zip("aeinou", "àéîñöů", strict=True):
        without, having = written(plain), written(marked)
        if plain != "i":  # the dot of an i gives way
            assert len(having) > len(without)
        tops = [np.concatenate(each)[:, 1].max() for each in (without, having)]
        assert tops[1] > tops[0] - (6 if plain == "i" else 0)
    assert np.concatenate(written("ç"))[:, 1].min() < np.concatenate(written("c"))[:, 1].min()


@pytest.mark.parametrize("text", ["Ø", "ạ", "茶", "ł"])
def test_what_the_data_set_does_not_have_is_told(text):
    with pytest.raises(UsageError, match="letters cannot write") as caught:
        written(text)
    assert "A to Z" in caught.value.hint


def test_a_text_has_a_length():
    for text in ("", "  ", "a" * 61):
        with pytest.raises(UsageError, match="1 to 60 letters"):
            written(text)
