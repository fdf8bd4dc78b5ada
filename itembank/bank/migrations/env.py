"""What does Alembic run against? The one connection that ``itembank.bank.opening`` hands over.

The revisions say what they create in full and read no tables of the program: so a bank made
years ago is brought up by the same steps, and tables of higher packages need no import here.
"""

from alembic import context

context.configure(
    connection=context.config.attributes["connection"],
    # All or nothing, on SQLite too (Alembic's default there is one commit a statement).
    transactional_ddl=True,
)
with context.begin_transaction():
    context.run_migrations()
