"""The bench: in which order, how held and how fast a pattern is cut."""

from scorecraft.bench.planning import work_of as work_of
from scorecraft.bench.steps import Work as Work
