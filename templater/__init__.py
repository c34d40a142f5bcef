"""Full-scale paper templates for hanging framed work, with every hole marked."""

__version__ = "0.1.0"
