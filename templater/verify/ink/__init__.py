"""Reads ink: what a PDF's pages and an SVG draw, in mm, knowing nothing of what it means."""
