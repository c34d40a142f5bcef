"""The pages for reading: cover, steps, print test, checklist, forms, spacers, calibration."""
