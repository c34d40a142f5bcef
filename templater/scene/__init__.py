"""Stage 7: drawings of the Plan: templates, the overview, instructions, the checklist."""
