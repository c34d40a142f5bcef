"""Stage 5: the rules of the trade held against the Plan; one file a rule."""
