"""Frozen things behave like the standard library's, whatever they are made of."""

import dataclasses
import pickle

import pytest

from scorecraft import frozen


def both(make):
    """Give a class made by the library, and by the house."""
    return make(dataclasses.dataclass), make(frozen.dataclass)


def loaf(dataclass):
    @dataclass(frozen=True, slots=True)
    class Loaf:
        """Fields of every kind."""

        name: str
        width: float = 220.0
        cuts: list = dataclasses.field(default_factory=list)
        place: int = dataclasses.field(default=3, compare=False, repr=False)
        twice: float = dataclasses.field(init=False, compare=False)

        def __post_init__(self):
            object.__setattr__(self, "twice", 2 * self.width)

    return Loaf


def named(dataclass):
    @dataclass(frozen=True)
    class Rule:
        """What others go on from."""

        value: float

    @dataclass(frozen=True, kw_only=True)
    class Basket(Rule):
        """Fields given by name, after those of the class below."""

        long: bool
        low: float = 1.0

    return Basket


def told(act):
    """Give what an act comes to, or how it is refused."""
    try:
        return act()
    except (TypeError, AttributeError) as error:
        return type(error).__mro__[-4:]


@pytest.mark.parametrize(
    "act",
    [
        lambda made: made("boule"),
        lambda made: dataclasses.replace(made("boule", 200.0, [1]), width=1.0),
        lambda made: made(),
        lambda made: made("a", size=3),
        lambda made: dataclasses.asdict(made("a", cuts=[2])),
        lambda made: [each.name for each in dataclasses.fields(made)],
        lambda made: made("a", place=1) == made("a", place=2) != made("b"),
        lambda made: made("a") == 3,
        lambda made: made("a").cuts is made("a").cuts,
        lambda made: hash(made("a")),
        lambda made: setattr(made("a"), "width", 2.0),
        lambda made: delattr(made("a"), "width"),
        lambda made: (made("a").twice, made.__match_args__, made.__doc__),
    ],
)
def test_things_are_like_the_librarys(act):
    theirs, ours = both(loaf)
    assert repr(told(lambda: act(ours))) == repr(told(lambda: act(theirs)))


@pytest.mark.parametrize(
    "act",
    [
        lambda made: made(3.0, long=True),
        lambda made: made(3.0, True),
        lambda made: len({made(3.0, long=True), made(3.0, long=True), made(2.0, long=True)}),
    ],
)
def test_classes_go_on_from_others(act):
    theirs, ours = both(named)
    assert repr(told(lambda: act(ours))) == repr(told(lambda: act(theirs)))


def test_a_thing_comes_back_from_another_process():
    leaf = pickle.loads(pickle.dumps(Leaf(2)))
    assert leaf == Leaf(2) and leaf.size == 2


@frozen.dataclass(frozen=True, slots=True)
class Leaf:
    """A thing with a name that can be found."""

    size: int
