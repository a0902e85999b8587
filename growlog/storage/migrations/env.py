"""Runs the numbered steps on the connection that the caller hands over."""

from alembic import context

from growlog.storage.tables import Base

context.configure(
    connection=context.config.attributes["connection"], target_metadata=Base.metadata, render_as_batch=True
)
with context.begin_transaction():
    context.run_migrations()
