"""Stage 2: from the hardware of a piece to its hang points and holes, in its own frame."""
