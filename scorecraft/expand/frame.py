"""Frames: where a figure stands on the sheet, which way is forward, and how large it is drawn."""

import math

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Frame:
    """An affine frame on the sheet: columns of `axes` (2 x 2) are its x and y, `origin` in mm."""

    axes: Floats
    origin: Floats

    def place(self, points: Line) -> Line:
        """Carry (N, 2) points of the frame onto the sheet."""
        carried: Line = points @ self.axes.T + self.origin
        return carried

    def local(self, points: Line) -> Line:
        """Carry (N, 2) points of the sheet into the frame: the way back of `place`."""
        carried: Line = (points - self.origin) @ np.linalg.inv(self.axes).T
        return carried

    def moved(self, x: float, y: float) -> "Frame":
        """Shift the origin by (x, y) mm of the frame itself."""
        return Frame(self.axes, self.origin + self.axes @ np.array([x, y]))

    def turned(self, clockwise_rad: float) -> "Frame":
        """Turn the frame about its origin."""
        c, s = math.cos(clockwise_rad), math.sin(clockwise_rad)
        return Frame(self.axes @ np.array([[c, s], [-s, c]]), self.origin)

    def scaled(self, factor: float) -> "Frame":
        """Draw everything in the frame `factor` times as large."""
        return Frame(self.axes * factor, self.origin)

    def mirrored(self, turntable_rad: float) -> "Frame":
        """Mirror the frame across the line through its origin in a direction of its own."""
        c, s = math.cos(2 * turntable_rad), math.sin(2 * turntable_rad)
        return Frame(self.axes @ np.array([[-c, s], [s, c]]), self.origin)

    def polar(self, radius_mm: float, turntable_rad: float, facing: str = "out") -> "Frame":
        """Go out from the origin in a direction, facing out, in or along (clockwise)."""
        extra = {"out": 0.0, "in": math.pi, "along": math.pi / 2}[facing]
        return self.turned(turntable_rad).moved(0.0, radius_mm).turned(extra)

    @property
    def theta_rad(self) -> float:
        """The direction from the crown, or of the frame's forward where it stands on the crown."""
        forward = self.axes[:, 1]
        way = self.origin if np.hypot(*self.origin) > 1e-6 else forward
        return math.atan2(way[1], way[0])


def crown() -> Frame:
    """Give the sheet's own frame: origin at the crown, forward to 12 o'clock."""
    return Frame(np.eye(2), np.zeros(2))
