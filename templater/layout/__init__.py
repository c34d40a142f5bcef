"""Stage 1: the layout file, read into values in millimetres that know their place in the file."""
