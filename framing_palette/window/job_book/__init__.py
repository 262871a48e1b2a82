"""Which jobs has the shop, and what became of them?

The book is the window's way to the shop's jobs: it keeps the one on the desk while it is worked on,
finds older ones, and looks after backups. Its work runs on threads of its own, so that no long
reading of a picture holds up a save; only the shell and the steps may import it.
"""
