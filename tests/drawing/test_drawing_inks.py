from scorecraft.drawing.inks import CUT_INKS, band, band_words, cut_ink


def test_depth_is_told_by_three_different_black_lines():
    assert [band(depth) for depth in (10, 6, 5.9, 3, 2.9)] == [
        "deep",
        "deep",
        "medium",
        "medium",
        "shallow",
    ]
    assert len({(ink.width, ink.dash) for ink in CUT_INKS.values()}) == 3
    assert {ink.color for ink in CUT_INKS.values()} == {"#000000"}
    assert len({band_words(each) for each in CUT_INKS}) == 3


def test_a_short_shallow_cut_still_shows_three_dashes():
    for length in (60.0, 12.0, 7.0, 2.0):
        dash, gap = cut_ink(2.0, length).dash
        assert 3 * dash + 2 * gap <= length + 1e-9
    assert cut_ink(2.0, 60.0).dash == (3.0, 1.5)
