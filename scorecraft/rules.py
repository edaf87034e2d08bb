"""What a rule of thumb is: a number, what it says, and where it comes from."""

from scorecraft.frozen import dataclass

COMMON = "common practice, no source"
SET = "chosen by us on drawings; not on bakes"


@dataclass(frozen=True, slots=True)
class Rule:
    """A number with its unit, what it says in a sentence, and its source where it has one."""

    value: float
    unit: str
    says: str
    source: str = COMMON


@dataclass(frozen=True, slots=True)
class Subject:
    """What the rules below it are about, down to the next one."""

    name: str
