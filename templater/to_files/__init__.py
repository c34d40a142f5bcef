"""Stage 9: pages and tables written to files, whole or not at all."""
