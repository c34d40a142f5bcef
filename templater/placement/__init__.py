"""Stage 3: from what the layout asks for to the Plan, where everything has its place on the wall."""
