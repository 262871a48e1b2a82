"""Form 1: samples as records with the shop's edits beside them, imports and what they changed."""

import sqlalchemy as sa
from alembic import op

revision = "1"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables of form 1 in an empty database."""
    no = sa.false()
    op.create_table(
        "library_facts",
        sa.Column("name", sa.Text, primary_key=True),
        sa.Column("value", sa.Text),
    )
    op.create_table(
        "library_samples",
        sa.Column("code", sa.Text, primary_key=True),
        sa.Column("place", sa.Integer, nullable=False),
        sa.Column("record", sa.Text, nullable=False),
        sa.Column("digest", sa.Text, nullable=False),
        sa.Column("edits", sa.Text, nullable=False, server_default=""),
        sa.Column("favourite", sa.Boolean, nullable=False, server_default=no),
        sa.Column("discontinued", sa.Boolean, nullable=False, server_default=no),
        sa.Column("hidden", sa.Boolean, nullable=False, server_default=no),
        sa.Column("removed", sa.Boolean, nullable=False, server_default=no),
        sa.Column("revision", sa.Integer, nullable=False, server_default="1"),
    )
    op.create_index("library_samples_place", "library_samples", ["place"])
    op.create_table(
        "library_imports",
        sa.Column("number", sa.Integer, primary_key=True),
        sa.Column("at", sa.Text, nullable=False),
        sa.Column("source", sa.Text, nullable=False),
        sa.Column("summary", sa.Text, nullable=False),
        sa.Column("undone", sa.Boolean, nullable=False, server_default=no),
    )
    op.create_table(
        "library_changes",
        sa.Column("import_number", sa.Integer, primary_key=True),
        sa.Column("code", sa.Text, primary_key=True),
        sa.Column("before", sa.Text),
        sa.Column("was_discontinued", sa.Boolean),
    )
