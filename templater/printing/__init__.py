"""Stage 4: how each template is cut into sheets of paper."""
