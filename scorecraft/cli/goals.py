"""The list of `scorecraft words`: all words by what one wants to do."""

from scorecraft.language.goals import GOALS, words_of
from scorecraft.language.words import ATTRIBUTES, WORDS

HOW = "Say how a cut is made (after any figure, fill or placing)"
CHECKS_SAY = "Understand what a check says"
MORE = "Explain one: scorecraft words leaf. Everything at once: scorecraft words --all."


def listed() -> str:
    """Write all words under what they are for, each with what it does in a line."""
    from scorecraft.checks import CHECKS  # it loads the checks, which one word does not need

    parts = [
        section(goal.says, [(name, WORDS[name].help) for name in words_of(goal)]) for goal in GOALS
    ]
    parts.append(section(HOW, [(key.name, key.help) for key in ATTRIBUTES]))
    parts.append(section(CHECKS_SAY, [(each.name, each.says) for each in CHECKS.values()]))
    return "\n".join([*parts, MORE]) + "\n"


def section(heading: str, rows: list[tuple[str, str]]) -> str:
    """Write a heading and its rows."""
    return "\n".join([heading, *(f"  {name:<15} {says}" for name, says in rows), ""])
