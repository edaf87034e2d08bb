"""What the checks of depth, dough, time and room say."""

from collections.abc import Sequence
from math import ceil

from scorecraft.baking import USUAL_C
from scorecraft.checks.telling import the
from scorecraft.cuts import Cut
from scorecraft.groups import called
from scorecraft.loaf.dough import Dough
from scorecraft.units import celsius_words, mm_words, mm_words_apart, percent_words

SHALLOWER_OR_TALLER = "cut it shallower, or shape a taller loaf"
SPACE_OR_OUT = "leave it out, or give it more space and cut it deeper"


def too_deep(cut: Cut, share: float) -> str:
    """Say that a cut is too deep for the loaf's height."""
    return (
        f"{the(cut)} is {mm_words(cut.depth_mm)} deep, {percent_words(share)} of the loaf's "
        "height: the loaf may collapse"
    )


def it_no_deeper(depth_mm: float) -> str:
    """Advise to cut a cut shallower."""
    return f"cut it no deeper than {mm_words(depth_mm)}"


def too_shallow(cut: Cut) -> str:
    """Say that a cut is too shallow for what it is for."""
    job = "to give the loaf room" if cut.kind == "expansion" else "to part the skin"
    return f"{the(cut)} is only {mm_words(cut.depth_mm)} deep, too shallow {job}"


def this_deep(depth_mm: float) -> str:
    """Advise a depth."""
    return f"cut it {mm_words(depth_mm)} deep"


def too_dense(part: str, mm_per_cm2: float, depth_mm: float) -> str:
    """Say that a part of the loaf is cut too much."""
    return (
        f"{part} has {mm_per_cm2:.1f} mm of cut on every cm² of dough, {depth_mm:.1f} mm deep on "
        "average: the skin may shred"
    )


def cut_less(excess_mm: float) -> str:
    """Advise to leave out some of the cutting."""
    return f"remove about {ceil(excess_mm / 10) * 10} mm of cut there, or cut it shallower"


def soft_skin(stiffness: float) -> str:
    """Say that deep cuts leave the skin slack."""
    return (
        f"the deep cuts leave the skin {percent_words(stiffness)} of its stiffness: "
        "the loaf may flatten"
    )


def deep_cuts_shorter(share: float) -> str:
    """Advise to shorten the deep cuts."""
    return f"make the deep cuts {ceil(100 * share)}% shorter, or use fewer"


def one_sided(heavier: float, opening: bool, toward: str) -> str:
    """Say that one side is cut more, or opens more, than the other."""
    what = "opening" if opening else "cutting"
    side = toward.removeprefix("at ")
    share = percent_words(heavier)
    return f"{share} of the {what} is on the {side} side: the loaf will rise more there"


def add_cut(length_mm: float, depth_mm: float, back: str, away_mm: float) -> str:
    """Advise a cut on the other side."""
    return (
        f"add about {length_mm:.0f} mm of cut, {mm_words(depth_mm)} deep, {back}, "
        f"{away_mm:.0f} mm from the crown"
    )


def cut_less_on_one_side(toward: str, back: str) -> str:
    """Advise to cut less where the other side has no space for another cut."""
    return f"shorten the deep cuts {toward}, or give those {back} more"


def fills_its_pot(baked_mm: float, pot_mm: float) -> str:
    """Say that the baked loaf nearly touches its pot."""
    baked, pot = mm_words_apart(baked_mm, pot_mm)
    return f"the baked loaf, {baked} across, will all but fill its {pot} pot"


def touches_its_pot(baked_mm: float, pot_mm: float) -> str:
    """Say that the loaf grows against the wall of its pot."""
    baked, pot = mm_words_apart(baked_mm, pot_mm)
    return f"the loaf will bake to {baked} across and touch its {pot} pot"


def too_wide_for_its_pot(loaf_mm: float, pot_mm: float) -> str:
    """Say that the loaf does not go into its pot."""
    loaf, pot = mm_words_apart(loaf_mm, pot_mm)
    return f"the loaf is {loaf} across: it does not fit its {pot} pot"


def smaller_loaf(most_mm: int, less_dough: float) -> str:
    """Advise a loaf that fits its pot."""
    less = percent_words(less_dough)
    return f"make it no more than {most_mm} mm across, with about {less} less dough"


RAGGED = "nothing to do unless the edge looks ragged"


def too_few_bakes(source: str, skin_mm: float) -> str:
    """Say that a baker's openings do not tell the skin, and which is used."""
    return (
        f'the openings in "{source}" are too few, or differ too much, to be sure of the '
        f"skin: the default of {skin_mm:g} mm is used"
    )


TOO_MANY_CUTS = "there are too many cuts for that"
DEPTHS_INSTEAD = "give these cuts a depth instead; until then the default depth is used"
ASK_LESS = "ask for less, or give some of these cuts a depth instead"


def no_depths(why: str) -> str:
    """Say that no depths were looked for."""
    return f"no depths were found for the openings asked for: {why}"


def opens_otherwise(cut: Cut, opens_mm: float) -> str:
    """Say that a cut opens other than was asked for."""
    return (
        f"{the(cut)} opens about {opens_mm:.1f} mm, not the {cut.opens_mm:g} mm asked for: "
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


def ask_for(most_mm: float) -> str:
    """Advise an opening within reach."""
    return f"ask for {most_mm:.1f} mm or less, make the cut longer, or give it fewer neighbours"


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


def chill(chilled_c: float, time: str) -> str:
    """Advise to chill the loaf."""
    return (
        f"chill the loaf: at {celsius_words(chilled_c)} there is time for about {time} "
        f"(write `dough temperature {chilled_c:.0f}C`)"
    )


NO_CURE = (
    "no single cut fixes this: bake a larger or taller loaf, leave space for long expansion cuts "
    "between the others, or proof the dough further so that it springs less"
)
LIKELY_TO_BURST = "likely to burst"
JUST_ENOUGH = "barely enough room to spring; tightest"
ROUGHLY_FIX = "for exact widths try the expansion cuts alone, in a file without the decorative ones"


def roughly_modelled(count: int) -> str:
    """Say that a layout has so many cuts that the model takes them coarsely."""
    return f"with {count:,} cuts, the model can only estimate roughly how wide each one opens"


def room_left(start: str, taken: float, least: str) -> str:
    """Say how much of the growth the cuts absorb; `least` is the direction with least room."""
    end = f", least {least}" if least else ""
    return f"{start}: the cuts absorb {percent_words(taken)} of the oven spring{end}"


def deeper(cuts: Sequence[Cut], depth_mm: float) -> str:
    """Advise to deepen expansion cuts."""
    return f"cut {_those(cuts)} {mm_words(depth_mm)} deep"


def longer(cuts: Sequence[Cut], by_mm: float) -> str:
    """Advise to make expansion cuts longer, by so much at each end."""
    return f"make {_those(cuts)} {mm_words(2 * by_mm)} longer, {mm_words(by_mm)} at each end"


def longer_and_deeper(cuts: Sequence[Cut], by_mm: float, depth_mm: float) -> str:
    """Advise to make expansion cuts longer and deeper."""
    return f"{longer(cuts, by_mm)}, and {mm_words(depth_mm)} deep"


def _those(cuts: Sequence[Cut]) -> str:
    """Call expansion cuts: `the slash`, `the leaf midribs`, or all of them."""
    if len({cut.name for cut in cuts}) > 1:
        return "the expansion cuts"
    return f"the {called(cuts[0], len(cuts))}"


def add_expansion(count: int, spans: list[str], long_mm: float, depth_mm: float) -> str:
    """Advise expansion cuts through the crown."""
    what = "an expansion cut" if count == 1 else f"{count} expansion cuts"
    along = " and ".join(spans)
    return f"add {what} through the crown {along}, {long_mm:.0f} mm long and {depth_mm:g} mm deep"


def add_beside(along: str, long_mm: float, aside_mm: float, depth_mm: float) -> str:
    """Advise a pair of expansion cuts, one on each side of the crown."""
    return (
        f"add two expansion cuts {along}, one on each side of the crown {aside_mm:.0f} mm from it, "
        f"{long_mm:.0f} mm long and {depth_mm:g} mm deep"
    )


def add_around(count: int, from_deg: int, long_mm: float, out_mm: float, depth_mm: float) -> str:
    """Advise round expansion cuts about the crown, the first at an angle of the turntable."""
    return (
        f"add {count} curved expansion cuts around the crown, evenly spaced from {from_deg}° on "
        f"the turntable, {out_mm:.0f} mm from the crown, {long_mm:.0f} mm long and {depth_mm:g} mm "
        "deep"
    )


def span(hours: str, turn_deg: int) -> str:
    """Say where a straight cut through the crown runs."""
    return f"{hours} ({turn_deg}° on the turntable)"


def blade_upright(cure: str) -> str:
    """Advise a cut that is made with the blade upright."""
    return f"{cure}, with the blade upright"


def without_light(cure: str, left_out: int) -> str:
    """Advise a cut that takes the place of light ones."""
    return f"{cure}, and leave out the light cuts in its way ({left_out})"
