"""Near pairs are found all, once, and do together what each does alone."""

import numpy as np
import pytest

from scorecraft.opening import near as room
from scorecraft.opening.near import Near, count, pairs


def places(number, seed=0):
    random = np.random.default_rng(seed)
    return random.uniform(-50, 50, number) + 1j * random.uniform(-20, 20, number)


@pytest.mark.parametrize("reach", [0.5, 7.0, 300.0])
@pytest.mark.parametrize("block", [50, 1 << 14])
def test_pairs_are_all_that_are_near(reach, block, monkeypatch):
    monkeypatch.setattr(room, "BLOCK", block)
    place = np.append(places(300), places(20))  # some lie on one another
    one, other = pairs(place, reach)
    found = np.zeros((320, 320), dtype=int)
    np.add.at(found, (one, other), 1)
    assert (found * found.T == np.diag(found.diagonal())).all()  # each once
    near = np.abs(np.subtract.outer(place, place)) < reach
    np.testing.assert_array_equal(np.maximum(found, found.T), near)
    assert 2 * len(one) - 320 <= count(place, reach) <= 320**2


def test_product_is_the_sum_over_pairs():
    place = places(200)
    one, other = pairs(place, 20.0)
    random = np.random.default_rng(1)
    alike, mirrored, jumps = random.standard_normal((3, len(one), 2)) @ [1, 1j]
    alike[one == other] = 1.0  # on itself an end acts as it is acted on
    near = Near.both_ways(one, other, alike, mirrored)
    jumps = jumps[:200]
    expected = np.zeros(200, dtype=complex)
    np.add.at(expected, one, alike * jumps[other] + mirrored * jumps[other].conj())
    back = one != other
    one, other, alike, mirrored = (each[back] for each in (other, one, alike.conj(), mirrored))
    np.add.at(expected, one, alike * jumps[other] + mirrored * jumps[other].conj())
    np.testing.assert_allclose(near.times(jumps), expected, atol=1e-12)
