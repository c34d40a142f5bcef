"""Stage 6: the best ways to hang a group that leaves something open."""
