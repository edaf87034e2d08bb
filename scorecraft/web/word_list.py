"""The words of the pattern language for the page's help: the data that `scorecraft words` tells."""

from typing import Any

from scorecraft.language.reference import GROUPS, at_hand, key_notes, own_keys, takes
from scorecraft.language.words import ATTRIBUTES, WORDS, Key, Word


def word_list() -> dict[str, Any]:
    """List every word by its group, the cut attributes, and what holds of all expressions."""
    return {
        "groups": [group_data(group, title) for group, title in GROUPS.items()],
        "attributes": [
            {"name": key.name, "notes": f"{takes(key)}; {key.help}"} for key in ATTRIBUTES
        ],
        "about": " ".join(at_hand().replace("`", "").split()),
    }


def group_data(group: str, title: str) -> dict[str, Any]:
    """Tell a group of words under its title."""
    found = [word_data(word) for word in WORDS.values() if word.group == group]
    return {"title": title.replace("`", ""), "words": found}


def word_data(word: Word) -> dict[str, Any]:
    """Tell a word: what it does, the keys of its own, and an example."""
    keys = [key_data(word, key) for key in own_keys(word)]
    return {"name": word.name, "help": word.help, "keys": keys, "example": word.example}


def key_data(word: Word, key: Key) -> dict[str, str]:
    """Tell a key: what it takes, its default, what it is for."""
    return {"name": key.name, "notes": "; ".join(key_notes(word, key))}
