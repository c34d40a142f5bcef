"""Stage 8: drawings laid out on pages, in the order in which they are printed."""
