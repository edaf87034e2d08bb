"""Straight cuts scattered at random, the same every time; and lines turned about the origin."""

import numpy as np


def scattered(count, length=80.0, half=100.0, seed=2):
    """Cuts of one length in all directions, their middles in a square of twice `half` a side."""
    random = np.random.default_rng(seed)
    lines = []
    for angle in random.uniform(0, np.pi, count):
        step = length / 2 * np.array([np.cos(angle), np.sin(angle)])
        middle = random.uniform(-half, half, 2)
        lines.append(np.array([middle - step, middle + step]))
    return lines


def turned(line, angle):
    """A line (N, 2) turned counter-clockwise by an angle in radians."""
    c, s = np.cos(angle), np.sin(angle)
    return line @ np.array([[c, s], [-s, c]])
