"""What is laid on the loaf or cut out: stencils, drapes, rings, drawings for cutters."""
