"""What holds of many copies is told once, by the worst of them."""

from collections.abc import Hashable, Sequence

import numpy as np

from scorecraft.arrays import Floats, Ints


def told_once(keys: Sequence[Hashable], weights: Floats) -> list[tuple[int, Ints]]:
    """Sort cases by key: for each key the index of its weightiest case, and all of its cases."""
    members: dict[Hashable, list[int]] = {}
    for index, key in enumerate(keys):
        members.setdefault(key, []).append(index)
    groups = [np.array(found, dtype=np.intp) for found in members.values()]
    return [(int(found[np.argmax(weights[found])]), found) for found in groups]
