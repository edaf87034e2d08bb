"""Paper: sheets, tiles, rules, and blocks of words on them."""
