"""How cuts open: the slit-opening model."""

from scorecraft.opening.result import Opening as Opening
from scorecraft.opening.solve import solve as solve
