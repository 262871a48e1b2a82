"""How was the shop's library made, step by step?

Each module in ``versions`` is one step of the schema, named for the form that it makes. A step that
has once been released is never changed; a new form is a new step. ``library_schema`` walks them;
the tables as they are after the last step are described in ``library_tables``.
"""
