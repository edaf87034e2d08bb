from scorecraft.language.goals import GOALS, words_of
from scorecraft.language.words import WORDS


def test_every_word_has_one_place_among_the_goals():
    assert sorted(name for goal in GOALS for name in words_of(goal)) == sorted(WORDS)
