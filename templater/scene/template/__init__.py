"""One piece at full size, and what every sheet of it carries."""
