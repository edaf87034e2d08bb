"""A picture of a loaf costs a fixed number of passes over its pixels."""

import numpy as np
from scipy import ndimage
from support.shelf_designs import shipped
from support.timing import ratio

from scorecraft.drawing.bloom.bloom import alone
from scorecraft.drawing.bloom.mouths import mouths_of
from scorecraft.drawing.bloom.relief import Bread


def test_the_pages_picture_costs_less_than_seventy_soft_blurs_of_it():
    """Measured: 37 (0.22 s on a quiet core, and 0.54 s for 1000 by 1000)."""
    design = shipped("leaf-crown")
    bread = Bread(design.layout, mouths_of(design.opening))
    pixels = np.random.default_rng(0).random((600, 600), dtype=np.float32)
    blur = ratio(lambda: alone(bread, 600), lambda: ndimage.gaussian_filter(pixels, 3.0), 70)
    assert blur <= 70
