"""The drape: the dough sheet with darts, so that paper lies on the dome."""
