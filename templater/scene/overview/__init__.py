"""The wall to scale: its elevation, larger parts of it, and its tables."""
