"""The words of the pattern language for the page's help: the data that `scorecraft words` tells."""

from scorecraft.json_data import JsonObject
from scorecraft.language.goals import GOALS, Goal, words_of
from scorecraft.language.keys import Key, Word
from scorecraft.language.reference import at_hand, key_notes, own_keys, takes
from scorecraft.language.words import ATTRIBUTES, WORDS

LEAD = "The words of a pattern text, by what you want to do, with an example of each."
MORE = "Say how a cut is made"


def word_list() -> JsonObject:
    """List every word by what it is for, the cut attributes, and what always holds."""
    return {
        "lead": LEAD,
        "more": MORE,
        "groups": [goal_data(goal) for goal in GOALS],
        "attributes": [
            {"name": key.name, "notes": f"{takes(key)}; {key.help}"} for key in ATTRIBUTES
        ],
        "about": " ".join(at_hand().replace("`", "").split()),
    }


def goal_data(goal: Goal) -> JsonObject:
    """Tell what one wants to do, and the words that do it."""
    return {"title": goal.says, "words": [word_data(WORDS[name]) for name in words_of(goal)]}


def word_data(word: Word) -> JsonObject:
    """Tell a word: what it does, the keys of its own, and an example."""
    keys = [key_data(word, key) for key in own_keys(word)]
    return {"name": word.name, "help": word.help, "keys": keys, "example": word.example}


def key_data(word: Word, key: Key) -> dict[str, str]:
    """Tell a key: what it takes, its default, what it is for."""
    notes = "; ".join(key_notes(word, key)).replace("; (", " (").replace("; [", " [")
    return {"name": key.name, "notes": notes}
