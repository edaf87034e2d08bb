"""Plain data as JSON has it: what is told to other programs, the page and the log."""

from collections.abc import Mapping, Sequence
from typing import TypeAlias

Json: TypeAlias = Mapping[str, "Json"] | Sequence["Json"] | str | float | bool | None
"""A value of JSON; whole numbers are floats too."""
JsonObject: TypeAlias = dict[str, Json]
