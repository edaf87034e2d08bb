"""What the checks say of cuts right through, and of cuts with scissors."""

from scorecraft.checks.telling import Sentence

LEAVE_OPEN = "leave a gap in it, or cut it less deep"
FALLS_OUT = Sentence("{cut:the} goes right through and all around: the piece falls out")
CORNER = Sentence("{cuts} meet right through the dough: the corner between them tears off")
STRIP = Sentence("the strip between {cuts} is {wide:mm} wide: it tears when it is pulled")
LEAVE_STRIP = Sentence("leave {least:mm} or more between them")
EDGE = Sentence("{cut:the} leaves {wide:mm} of dough at the edge: it tears when it is pulled")
LEAVE_EDGE = Sentence("end it {least:mm} or more from the edge")
PULLED_TOO_FAR = Sentence(
    "{cut:the}, {length:mm} long, is pulled {cut.pulled_mm:mm} open: its ends tear"
)
PULL_LESS = Sentence("pull it {most:mm} at most, or cut it {length:mm} long")

THIN_HINGE = Sentence(
    "{cut:the} leaves {cut.hinge_mm:mm} uncut: the piece tears off when it is laid aside"
)
STIFF_HINGE = Sentence("{cut:the} leaves {cut.hinge_mm:mm} uncut: the piece cannot be laid aside")
LEAVE_HINGE = Sentence("leave {least:mm} to {most:mm} uncut, 6 mm is usual")
HELD_FLAT = Sentence(
    "{cut:the} is made with scissors at {held:.0f}°: its tongue is too thin to be laid"
)
HELD_STEEP = Sentence(
    "{cut:the} is made with scissors at {held:.0f}°: its piece is blunt, not a grain"
)
HOLD_BETWEEN = Sentence("hold them at {flat:.0f} to {steep:.0f}° to the dough")
UNDER_THE_NEXT = Sentence(
    "{cut:the} is {apart:mm} from the next one and runs under it: it cuts it off"
)
FURTHER_APART = Sentence("make them {least:mm} apart or more, or hold the scissors more steeply")
