"""The commands, a module each: what may be asked, what is done for it, and what is said of it."""
