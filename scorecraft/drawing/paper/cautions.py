"""What every print says about safety."""

BLADE = (
    "Razor blades are sharper than they look: pull away from the other hand, cap or bin the blade."
)
OVEN = "Hot vessels, lids and steam burn: dry gloves, long sleeves, face and arms clear of the lid."
CAUTIONS = (
    BLADE,
    OVEN,
    "Paper and ink never touch the dough unless they are food-safe: look at this sheet, "
    "do not lay it on.",
)
