"""The bench: in which order, how held and how fast a pattern is cut."""

from scorecraft.bench.planning import plan as plan
from scorecraft.bench.steps import Plan as Plan
