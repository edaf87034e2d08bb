import pytest

from scorecraft.loaf.baskets import takes, too_much


def test_between_common_baskets_it_is_a_straight_line_by_their_side():
    assert takes((170, 170)) == pytest.approx((300, 425))
    assert takes((265, 265)) == pytest.approx((1050, 1450))
    side = (200 * 130) ** 0.5
    middle = (side + (250 * 150) ** 0.5) / 2
    assert takes((middle / 1.2, middle * 1.2)) == pytest.approx((550, 725))
    assert takes((middle * 1.2, middle / 1.2)) == pytest.approx((550, 725))


def test_beyond_common_baskets_it_goes_by_the_cube():
    assert takes((80, 80)) == pytest.approx((250 / 8, 350 / 8))
    assert takes((560, 560)) == pytest.approx((1200 * 8, 1700 * 8))
    assert takes((100, 65)) == pytest.approx((400 / 8, 550 / 8))


def test_a_basket_a_little_longer_than_wide_is_round():
    nearly, oval = (takes((220, 220 * longer)) for longer in (1.14, 1.15))
    assert nearly == pytest.approx(takes((220 * 1.14**0.5,) * 2))
    assert oval == pytest.approx(takes((200, 242 * 1.15)))


def test_too_much_is_a_fifth_more_than_the_most():
    assert not too_much(1080, 900) and too_much(1081, 900)
