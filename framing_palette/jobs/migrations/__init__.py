"""How was the shop's database made, step by step?

Each module in ``versions`` is one step of the schema, named for the form that it makes. A step that
has once been released is never changed; a new form is a new step. ``store_schema`` walks them; the
tables as they are after the last step are described in ``job_tables``.
"""
