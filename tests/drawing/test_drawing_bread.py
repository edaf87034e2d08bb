from itertools import pairwise

import numpy as np
import pytest

from scorecraft.drawing.bloom.bread import CRUMB, CRUST, MAP, channels, lit, mixed, on_ramp, written


def luminance(color):
    """Relative luminance of sRGB, IEC 61966-2-1 (recalled)."""
    share = channels(color) / 255
    linear = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return float(linear @ [0.2126, 0.7152, 0.0722])


def test_colours_are_read_and_written_back():
    assert written(channels("#0a7fff")) == "#0a7fff"
    assert written([-3, 300, 127.6]) == "#00ff80"


def test_a_ramp_gives_its_own_colours_and_what_lies_between():
    assert on_ramp(CRUST, 0.0) == CRUST[0][1] and on_ramp(CRUST, 9.0) == CRUST[-1][1]
    assert on_ramp(((0, "#000000"), (1, "#ffffff")), 0.5) == "#808080"


def test_light_makes_crust_brighter_and_shadow_darker_and_warmer():
    color = "#b06620"
    shades = [luminance(lit(color, shade)) for shade in np.linspace(0.2, 1.5, 14)]
    assert shades == sorted(shades)
    assert lit(color, 1.0) == color
    dark = channels(lit(color, 0.5)) / channels(color)
    assert dark[0] > dark[1] > dark[2]


def test_flour_on_crust_goes_by_way_of_gold_and_not_of_pink():
    crust, dust = "#b06620", "#fdfaf3"
    assert mixed(crust, dust, 0.0) == crust and mixed(crust, dust, 1.0) == dust
    red, green, blue = channels(mixed(crust, dust, 0.5))
    plain = (channels(crust) + channels(dust)) / 2
    assert blue < plain[2] - 5 and red > plain[0]
    assert red > green > blue


@pytest.mark.parametrize("ramp", [CRUST, [(0, each) for each in MAP]])
def test_ramps_darken_all_the_way(ramp):
    shades = [luminance(color) for _, color in ramp]
    assert shades == sorted(shades, reverse=True)
    assert min(a - b for a, b in pairwise(shades)) > 0.01


def test_crumb_is_cream_inside_and_brown_at_its_edge():
    shades = [luminance(color) for _, color in CRUMB]
    assert shades == sorted(shades)
    assert shades[0] < 0.15 and shades[-1] > 0.7
