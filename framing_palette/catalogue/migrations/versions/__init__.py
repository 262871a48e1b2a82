"""Which steps lead from an empty database to the present form of the library?

One module a step, in the manner of alembic: ``revision`` names the form that the step makes and
``down_revision`` the one that it starts from.
"""
