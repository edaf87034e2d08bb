"""The words of the pictures of the baked loaf."""

SCORED = "scored"
BAKED = "baked (model estimate)"
SEPARATE = "the loaf before, alone and as a tension map are different pictures"
ASK_FOR_ONE = "ask for one of before, proofed and tension"
TENSION_FROM_TOP = "the tension map is drawn from the top only"
LEAVE_OUT_VIEW = "leave out the view"
VIEWS = "use top, front, side or an angle above the bench from 0 to 90 (degrees)"


def baked_words(cuts: int, widest_mm: float) -> str:
    """Say what the picture of a baked loaf shows, for who cannot see it."""
    return (
        f"The baked loaf, a model estimate. {cuts} cuts have opened, the widest to "
        f"{widest_mm:.0f} mm."
    )


def no_view(view: str | float) -> str:
    """Refuse a view that is not there."""
    return f'a loaf cannot be viewed from "{view}"'
