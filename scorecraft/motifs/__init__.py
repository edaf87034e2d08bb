"""Small figures made of cuts: one file a motif, one plain function each."""
