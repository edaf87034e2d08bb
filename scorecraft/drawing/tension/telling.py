"""The words of the map of tension."""

TENSION = (
    "Tension left in the skin, in percent of what it would be without any cut (model estimate). "
    "The darker, the less room: that is where a loaf is most likely to burst. Around the tip of a "
    "cut it is always high; the cut may tear further there."
)
