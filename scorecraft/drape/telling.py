"""What is said where a drape cannot be made: the reason, and the way out."""

from scorecraft.errors import Slip

HAS_HOLE = "it has a hole in its middle"
TOO_LONG = "it is too long for its width"
NO_SUCH_FIT = Slip("paper cannot fit to within {fit_mm:g} mm", "use 0.5 mm or more")
TOO_CLOSE = Slip(
    "a drape of {petals} petals does not fit to within {fit_mm:g} mm",
    "allow more than {fit_mm:g} mm, like --fit 3mm",
)
CANNOT_LIE = Slip(
    "no sheet of paper joined at the crown can lie on this loaf: {reason}",
    "print the guide and mark the pattern on the dough with string lines",
)
TURNS_IN = "its rim turns in {where}"
WIDER = "{where} the dough is {more:.0%} wider around the crown than flat paper"
