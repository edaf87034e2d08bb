"""What is said where a drape cannot be made: the reason, and the way out."""

LEAST_FIT = "use 0.5 mm or more"
INSTEAD = "print the guide and mark the pattern on the dough with string lines"
HAS_HOLE = "it has a hole in its middle"
TOO_LONG = "it is too long for its width"


def no_such_fit(fit_mm: float) -> str:
    """Refuse a fit that is no length."""
    return f"paper cannot fit to within {fit_mm:g} mm"


def too_close(petals: int, fit_mm: float) -> tuple[str, str]:
    """Say that even the most petals do not fit so closely, and what to ask for."""
    message = f"a drape of {petals} petals does not fit to within {fit_mm:g} mm"
    return message, f"allow more than {fit_mm:g} mm, like --fit 3mm"


def cannot_lie(reason: str) -> str:
    """Say that flat paper cannot lie on a loaf."""
    return f"no sheet of paper joined at the crown can lie on this loaf: {reason}"


def turns_in(where: str) -> str:
    """Say where the rim is hollow."""
    return f"its rim turns in {where}"


def wider(where: str, percent: float) -> str:
    """Say where the dough is too wide around."""
    return f"{where} the dough is {percent:.0f}% wider around the crown than flat paper"
