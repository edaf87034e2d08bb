import numpy as np
import pytest

from scorecraft.motifs.wave import wave


@pytest.mark.parametrize("waves", [0.5, 1, 2, 3.5])
def test_a_wave_has_its_length_height_and_crossings(waves):
    (stroke,) = wave(length=120, height=16, waves=waves)
    x, y = stroke.line.T
    assert (y[0], y[-1]) == (-60, 60)
    assert x.max() == pytest.approx(8, abs=0.05)
    crossings = np.count_nonzero(np.diff(np.sign(x[1:-1])))
    assert crossings == round(2 * waves) - 1
