"""Form 1: jobs as documents, with what they are found by beside them."""

import sqlalchemy as sa
from alembic import op

revision = "1"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables of form 1 in an empty database."""
    op.create_table(
        "jobs",
        sa.Column("number", sa.Text, primary_key=True),
        sa.Column("title", sa.Text, nullable=False),
        sa.Column("client", sa.Text, nullable=False),
        sa.Column("client_key", sa.Text, nullable=False),
        sa.Column("status", sa.Text, nullable=False),
        sa.Column("created", sa.Text, nullable=False),
        sa.Column("changed", sa.Text, nullable=False),
        sa.Column("search", sa.Text, nullable=False),
        sa.Column("picture", sa.Text),
        sa.Column("version", sa.Integer, nullable=False),
        sa.Column("document", sa.Text, nullable=False),
    )
    op.create_index("jobs_changed", "jobs", ["changed"])
    op.create_index("jobs_status", "jobs", ["status", "changed"])
    op.create_index("jobs_created", "jobs", ["created"])
    op.create_index("jobs_client", "jobs", ["client_key"])
    op.create_index("jobs_picture", "jobs", ["picture"])
    op.create_table(
        "job_samples",
        sa.Column(
            "number",
            sa.Text,
            sa.ForeignKey("jobs.number", ondelete="CASCADE"),
            primary_key=True,
        ),
        sa.Column("code", sa.Text, primary_key=True),
    )
    op.create_index("job_samples_code", "job_samples", ["code"])
