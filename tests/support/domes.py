"""What is measured of a dome in one number, by the measures that the product takes."""

import numpy as np


def dome_area(loaf):
    """Area of the dough's skin (mm2): its patches, many of them."""
    return float(loaf.patches(720, 64)[1].sum())


def length_on_dough(loaf, line):
    """True length (mm) on the dough of one sheet line (N, 2)."""
    return float(loaf.lengths_on_dough([np.asarray(line, dtype=np.float64)])[0])
