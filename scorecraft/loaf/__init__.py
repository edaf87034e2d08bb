"""The proofed loaf: its rim, its dome, and how it grows in the oven."""
