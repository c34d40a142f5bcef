"""``python -m templater`` is the command line."""

from templater.cli import main

main()
