"""What colour every place of a loaf has taken: crumb, crust and flour, by the heat it took."""

import numpy as np

from scorecraft.arrays import Field
from scorecraft.drawing.bloom.relief import Bread, Skin, smooth, wideness

TONES = ("#faeedc", "#f1d5aa", "#dfab70", "#be793c", "#8d4b21", "#552913", "#27130b")
"""Crust from pale to nearly burnt: cream, straw, gold, caramel, chestnut, dark, black."""
DOUGH = "#f3e6cf"
CUT_DOUGH = "#d9bd93"
FLOUR = "#f8f3e9"
TABLE = "#e9e2d6"
DARKEST = 0.8
"""No usual bake burns a lip or an ear more."""
COVERING = np.array(
    [np.linspace(0, 1, 1024) ** gold for gold in (0.85, 1.0, 1.3)], dtype=np.float32
)
"""Shares of the white of flour in small steps: red pales first and blue last, for a plain mix of
brown and white is pink."""


def linear(color: str) -> Field:
    """Read `#rrggbb` as three shares of light (IEC 61966-2-1, recalled)."""
    share = np.array([int(color[at : at + 2], 16) for at in (1, 3, 5)]) / 255
    light = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return light.astype(np.float32)


LADDER = np.array(
    [np.interp(np.linspace(0, 1, 1024), np.linspace(0, 1, len(TONES)), tones)
     for tones in np.transpose([linear(tone) for tone in TONES])],
    dtype=np.float32,
)  # fmt: skip
"""The tones in small steps: light of three channels."""


def colored(bread: Bread, skin: Skin) -> list[Field]:
    """Give the three shares of light that every pixel throws back."""
    edge = np.minimum(skin.mouth.out, skin.groove.out)
    heat = (np.clip(browned(bread, skin), 0, 1) * np.float32(1023)).astype(np.intp)
    dust = floured(bread, skin) * (1 - smooth(-0.1, 0.5, -skin.mouth.out))
    raw = np.float32(1 - min(1.0, bread.share / 0.7) ** 2)
    layers = []
    white = (dust * np.float32(1023)).astype(np.intp)
    for channel, covering in enumerate(COVERING):
        color = LADDER[channel][heat]
        if raw > 0:
            dough, cut = linear(DOUGH)[channel], linear(CUT_DOUGH)[channel]
            color += raw * (dough + smooth(-0.2, 0.3, -edge) * (cut - dough) - color)
        color += covering[white] * (linear(FLOUR)[channel] - color)
        layers.append(color)
    return layers


def browned(bread: Bread, skin: Skin) -> Field:
    """How brown the oven has made every place, 0 (cream) to 1 (burnt)."""
    mouth, groove = skin.mouth, skin.groove
    ragged = skin.fine.bumps(8, (9.0, 0.8), (4.0, 1.0), (2.0, 0.3))
    heat = 0.045 * skin.broad.bumps(6, (40.0, 1.0), (18.0, 0.6))
    calm = 1 - 0.75 * (1 - wideness(mouth)) * (mouth.out < 1.5)
    heat += 0.55 + 0.10 * (skin.normal[2] - 0.7) + calm * np.clip(0.28 * skin.ridge, -0.03, 0.16)
    ear = np.clip(skin.rises, 0, 5)
    edge = np.maximum(mouth.out - 0.2, 2.5 * (0.2 - mouth.out))
    burnt = (0.27 + 0.05 * np.clip(skin.rises, -2.5, 5)) * calm
    heat += burnt * (1 + 0.15 * ragged) * np.exp(-edge / (0.4 + 0.1 * ear))
    warm = (0.05 + 0.02 * ragged + 0.035 * ear) * (mouth.out < 12)
    heat += warm * np.exp(-np.maximum(mouth.out, 0) / (1.5 + ear))
    heat += 0.1 * smooth(-0.1, 0.35, -groove.out)
    heat += 0.05 * np.exp(-np.abs(groove.out) / 0.4) * (groove.out < 3)
    inside = smooth(0.0, 0.4, -mouth.out)
    heat += inside * (crumb(skin, ragged) - heat)
    return np.asarray(np.minimum(heat, DARKEST) + bread.brown * (1 - 0.35 * inside))


def crumb(skin: Skin, ragged: Field) -> Field:
    """How brown the torn crumb is: palest where it opened last, in the middle or under the ear."""
    mouth = skin.mouth
    wide = wideness(mouth)
    part = np.clip(-mouth.out / np.maximum(mouth.half, 0.3), 0, 1)
    late = part + np.clip(0.12 * skin.rises, -0.5, 0.5)
    heat = 0.40 - wide * 0.19 * np.clip(late, 0, 1) + 0.06 * ragged
    heat += (1 - wide) * (0.12 * part + 0.02 * ragged - 0.02)
    heat += wide * 0.08 * np.exp(-np.maximum(-mouth.out, 0) / 1.2)
    return np.asarray(heat + wide * np.clip(0.3 * skin.ridge, -0.03, 0.2))


def floured(bread: Bread, skin: Skin) -> Field:
    """How much of every place its flour covers, 0 to 1.

    It lies on what faces up and stays in hollows.
    """
    if bread.flour <= 0:
        return np.zeros_like(skin.dome)
    patches = skin.broad.bumps(9, (28.0, 1.0), (12.0, 0.6))
    grains = skin.fine.bumps(10, (2.2, 0.5), (0.8, 1.0), (0.5, 0.7))
    amount = bread.flour * (0.05 + 0.85 * smooth(0.15, 0.95, skin.normal[2]))
    amount += 0.11 * patches + np.clip(0.3 * skin.hollow, -0.25, 0.15) + 0.09 * grains
    mouth = skin.mouth
    width = np.minimum(0.1 + 0.2 * mouth.half, 1.3) + np.clip(skin.rises, 0, 5)
    parted = smooth(0.0, 1.3, mouth.out / width + 0.25 * patches + 0.1 * grains)
    parted *= smooth(-0.05, 0.5, skin.groove.out + 0.05 * grains) * smooth(-0.1, 0.35, mouth.out)
    return np.asarray(smooth(0.0, 1.0, amount) * parted * np.float32(0.92))
