"""Frozen dataclasses as in the standard library, set up in a fraction of its time.

That writes and compiles six functions for every class, which for all that a check loads takes a
tenth of the check. Here `__init__` alone is written, when the first thing is made of a class, and
the others are the same for all. What mypy reads is the library's own.
"""

import dataclasses
from collections.abc import Callable
from dataclasses import MISSING
from dataclasses import field as field
from dataclasses import fields as fields
from dataclasses import replace as replace
from functools import cache
from operator import attrgetter
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:

    def dataclass(*, frozen, eq=True, kw_only=False, slots=False):
        """Make a dataclass of what stands below; mypy alone minds the `slots`."""
        assert frozen, "things that change are the library's dataclasses"
        made = dataclasses.dataclass(init=False, repr=False, eq=False, kw_only=kw_only)

        def prepared(cls):
            def first(self, *given, **named):
                cls.__init__ = _written(cls)
                cls.__init__(self, *given, **named)

            cls.__init__, cls.__repr__ = first, _shown
            cls.__setattr__ = cls.__delattr__ = _refused
            if eq:
                cls.__eq__, cls.__hash__ = _alike, _hashed
            return made(cls)

        return prepared


def _written(cls: type) -> Callable[..., None]:
    """Write the `__init__` of a dataclass, which puts its fields in their places."""
    usual: dict[str, Any] = {}
    taken, put = ["self"], []
    for each in sorted((each for each in fields(cls) if each.init), key=attrgetter("kw_only")):
        name, value, usual[f"usual_{each.name}"] = each.name, each.name, each.default
        if each.default_factory is not MISSING:
            usual[f"usual_{name}"] = each.default_factory
            value = f"usual_{name}() if {name} is usual_{name} else {name}"
        if each.kw_only and "*" not in taken:
            taken.append("*")
        taken.append(name if usual[f"usual_{name}"] is MISSING else f"{name}=usual_{name}")
        put.append(f"{name}={value}")
    after = "; self.__post_init__()" if hasattr(cls, "__post_init__") else ""
    exec(f"def __init__({', '.join(taken)}): self.__dict__.update({', '.join(put)}){after}", usual)
    written: Callable[..., None] = usual["__init__"]
    return written


@cache
def _compared(cls: Any) -> Callable[[object], object]:
    """Give what takes from a thing the fields that it is compared by."""
    names = [each.name for each in fields(cls) if each.compare]
    return attrgetter(*names) if names else lambda thing: ()


def _alike(self: Any, other: Any) -> Any:
    if self.__class__ is not other.__class__:
        return NotImplemented
    compared = _compared(self.__class__)
    return compared(self) == compared(other)


def _hashed(self: Any) -> int:
    return hash(_compared(self.__class__)(self))


def _shown(self: Any) -> str:
    shown = (f"{each.name}={getattr(self, each.name)!r}" for each in fields(self) if each.repr)
    return f"{type(self).__qualname__}({', '.join(shown)})"


def _refused(self: object, name: str, *_: object) -> None:
    raise dataclasses.FrozenInstanceError(f'"{name}" of a {type(self).__name__} stays as it is')
