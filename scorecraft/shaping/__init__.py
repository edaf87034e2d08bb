"""What hands do with dough that is cut right through: pull it open, lay its pieces aside."""
