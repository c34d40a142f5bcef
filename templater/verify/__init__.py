"""Stage 10: what was written, read back by other libraries and held against the Plan."""
