"""The commands, one module each, named as on the command line.

Every module offers ``SUMMARY`` (one line for the list of commands), ``EXPLANATION`` (what
``--help`` says beneath), ``add_arguments(parser)`` and ``run(arguments)``. The modules stay light:
they import what they need when they run, so that ``--help`` answers at once.
"""
