"""What the checks of depth, dough, time and room say."""

from collections.abc import Sequence

from scorecraft.baking import USUAL_C
from scorecraft.checks.telling import Sentence, the
from scorecraft.cuts import Cut
from scorecraft.groups import called
from scorecraft.loaf.dough import Dough
from scorecraft.units import celsius_words, mm_words, percent_words

SHALLOWER_OR_TALLER = "cut it shallower, or shape a taller loaf"
SPACE_OR_OUT = "leave it out, or give it more space and cut it deeper"
TOO_DEEP = Sentence(
    "{cut:the} is {cut.depth_mm:mm} deep, {share:.0%} of the loaf's height: the loaf may collapse"
)
IT_NO_DEEPER = Sentence("cut it no deeper than {depth:mm}")


def too_shallow(cut: Cut) -> str:
    """Say that a cut is too shallow for what it is for."""
    job = "to give the loaf room" if cut.kind == "expansion" else "to part the skin"
    return f"{the(cut)} is only {mm_words(cut.depth_mm)} deep, too shallow {job}"


THIS_DEEP = Sentence("cut it {depth:mm} deep")
TOO_DENSE = Sentence(
    "{part} has {mm_per_cm2:.1f} mm of cut on every cm² of dough, {depth:.1f} mm deep on "
    "average: the skin may shred"
)
CUT_LESS = Sentence("remove about {excess} mm of cut there, or cut it shallower")
SOFT_SKIN = Sentence(
    "the deep cuts leave the skin {stiffness:.0%} of its stiffness: the loaf may flatten"
)
DEEP_CUTS_SHORTER = Sentence("make the deep cuts {percent}% shorter, or use fewer")


def one_sided(heavier: float, opening: bool, toward: str) -> str:
    """Say that one side is cut more, or opens more, than the other."""
    what = "opening" if opening else "cutting"
    side = toward.removeprefix("at ")
    share = percent_words(heavier)
    return f"{share} of the {what} is on the {side} side: the loaf will rise more there"


ADD_CUT = Sentence(
    "add about {length:.0f} mm of cut, {depth:mm} deep, {back}, {away:.0f} mm from the crown"
)
CUT_LESS_ON_ONE_SIDE = Sentence("shorten the deep cuts {toward}, or give those {back} more")
FITS = {
    "note": Sentence("the baked loaf, {across} across, will all but fill its {pot} pot"),
    "warning": Sentence("the loaf will bake to {across} across and touch its {pot} pot"),
    "stop": Sentence("the loaf is {across} across: it does not fit its {pot} pot"),
}
"""How a loaf fits its pot, by how grave it is."""
SMALLER_LOAF = Sentence("make it no more than {most} mm across, with about {less:.0%} less dough")

RAGGED = "nothing to do unless the edge looks ragged"
TOO_FEW_BAKES = Sentence(
    'the openings in "{source}" are too few, or differ too much, to be sure of the '
    "skin: the default of {skin:g} mm is used"
)

TOO_MANY_CUTS = "there are too many cuts for that"
DEPTHS_INSTEAD = "give these cuts a depth instead; until then the default depth is used"
ASK_LESS = "ask for less, or give some of these cuts a depth instead"
NO_DEPTHS = Sentence("no depths were found for the openings asked for: {why}")
OPENS_OTHERWISE = Sentence(
    "{cut:the} opens about {opens:.1f} mm, not the {cut.opens_mm:g} mm asked for: "
    "no depths give every cut the opening asked for"
)


def opens_only(cut: Cut, most_mm: float, bounded: bool) -> str:
    """Say that a cut cannot open as was asked for, perhaps since the loaf takes none deeper."""
    deepest = f"{mm_words(cut.depth_mm)} deep, as deep as this loaf takes"
    taken = deepest if bounded else "however deep you cut"
    return (
        f"{the(cut)} cannot open {cut.opens_mm:g} mm: {taken}, "
        f"it opens only {most_mm:.1f} mm between its neighbours"
    )


ASK_FOR = Sentence(
    "ask for {most:.1f} mm or less, make the cut longer, or give it fewer neighbours"
)


def too_slow(dough: Dough, takes: str, allowed: str) -> str:
    """Say that scoring takes longer than the dough holds."""
    kitchen = celsius_words(dough.kitchen_c)
    where = f" in a kitchen at {kitchen}" if dough.kitchen_c != USUAL_C.value else ""
    return (
        f"scoring takes about {takes}, but dough at {celsius_words(dough.temperature_c)} "
        f"and {percent_words(dough.hydration)} hydration{where} spreads after about {allowed}"
    )


def fewer_cuts(slowest: Cut, count: int, time: str) -> str:
    """Advise to cut less of what takes longest, so many cuts of a kind."""
    takes = "takes" if count == 1 else "take"
    return f"make fewer cuts: the {called(slowest, count)} alone {takes} {time}"


CHILL = Sentence(
    "chill the loaf: at {chilled:.0f} °C there is time for about {time} "
    "(write `dough temperature {chilled:.0f}C`)"
)

NO_CURE = (
    "no single cut fixes this: bake a larger or taller loaf, leave space for long expansion cuts "
    "between the others, or proof the dough further so that it springs less"
)
LIKELY_TO_BURST = "likely to burst"
JUST_ENOUGH = "barely enough room to spring; tightest"
ROUGHLY_FIX = "for exact widths try the expansion cuts alone, in a file without the decorative ones"
ROUGHLY_MODELLED = Sentence(
    "with {count:,} cuts, the model can only estimate roughly how wide each one opens"
)


def room_left(start: str, taken: float, least: str) -> str:
    """Say how much of the growth the cuts absorb; `least` is the direction with least room."""
    end = f", least {least}" if least else ""
    return f"{start}: the cuts absorb {percent_words(taken)} of the oven spring{end}"


DEEPER = Sentence("cut {those} {depth:mm} deep")
LONGER = Sentence("make {those} {both:mm} longer, {by:mm} at each end")
LONGER_AND_DEEPER = Sentence("{longer}, and {depth:mm} deep")


def those(cuts: Sequence[Cut]) -> str:
    """Call expansion cuts: `the slash`, `the leaf midribs`, or all of them."""
    if len({cut.name for cut in cuts}) > 1:
        return "the expansion cuts"
    return f"the {called(cuts[0], len(cuts))}"


def add_expansion(count: int, spans: list[str], long_mm: float, depth_mm: float) -> str:
    """Advise expansion cuts through the crown."""
    what = "an expansion cut" if count == 1 else f"{count} expansion cuts"
    along = " and ".join(spans)
    return f"add {what} through the crown {along}, {long_mm:.0f} mm long and {depth_mm:g} mm deep"


ADD_BESIDE = Sentence(
    "add two expansion cuts {along}, one on each side of the crown {aside:.0f} mm from it, "
    "{long:.0f} mm long and {depth:g} mm deep"
)
ADD_AROUND = Sentence(
    "add {count} curved expansion cuts around the crown, evenly spaced from {first}° on "
    "the turntable, {out:.0f} mm from the crown, {long:.0f} mm long and {depth:g} mm deep"
)
SPAN = Sentence("{hours} ({turn}° on the turntable)")
BLADE_UPRIGHT = Sentence("{told}, with the blade upright")
WITHOUT_LIGHT = Sentence("{told}, and leave out the light cuts in its way ({left_out})")

NO_STEAM = (
    "without steam the skin sets early: the cuts open less, and the growth that is left may burst "
    "at the side or the foot"
)
NO_STEAM_FIX = "bake with steam, or in a covered pot"
PROOF_LONGER = "proof it longer"
OVER_FIX = "cut it shallower, with fewer cuts, and bake it at once"
UNDERPROOFED = Sentence(
    "underproofed dough springs most and bursts where it is not cut: {depth:mm} is shallow for it"
)
UNDER_CURE = Sentence("cut {depth:mm} deep, or proof it longer")
OVERPROOFED = Sentence(
    "overproofed dough springs little: cuts barely open, and {depth:mm} deep it may sag"
)
OVER_CURE = Sentence("cut no deeper than {depth:mm}, with fewer cuts, and bake it at once")


def wants_more(stage: str, steam: bool) -> str:
    """Say why dough or oven make the room that is there count for less."""
    if not steam:
        return "; without steam the rest goes into a burst at the side or the foot"
    return "; underproofed dough asks for more" if stage == "under" else ""
