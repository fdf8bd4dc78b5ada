"""How does the database itself refuse a change? Triggers, for SQLite and PostgreSQL.

Revisions call these functions: what they make must not change; a new kind of guard is a new
function.
"""

from __future__ import annotations

from alembic import op

PREFIX = "guard_"


def guard(table: str, name: str, events: str, message: str, when: str = "") -> None:
    """Refuse ``events`` (such as ``UPDATE``, or ``UPDATE OR DELETE``) on a table.

    ``when`` is a condition in SQL that both databases read, on OLD and NEW rows; in it a query
    is allowed. ``message`` is what the database says.
    """
    if op.get_bind().dialect.name == "postgresql":
        _guard_postgresql(table, name, events, message, when)
    else:
        for event in events.split(" OR "):
            condition = f"WHEN {when} " if when else ""
            op.execute(
                f"CREATE TRIGGER {_trigger(table, name)}_{event.lower()} BEFORE {event} "
                f"ON {table} {condition}BEGIN SELECT RAISE(ABORT, '{message}'); END"
            )


def unguard(table: str, name: str, events: str) -> None:
    """Take away what ``guard`` made."""
    if op.get_bind().dialect.name == "postgresql":
        op.execute(f"DROP TRIGGER {_trigger(table, name)} ON {table}")
        op.execute(f"DROP FUNCTION {_trigger(table, name)}()")
    else:
        for event in events.split(" OR "):
            op.execute(f"DROP TRIGGER {_trigger(table, name)}_{event.lower()}")


def guard_append_only(table: str) -> None:
    """Let rows be added to a table, never changed, deleted or emptied away."""
    guard(table, "append", "UPDATE OR DELETE", f"{table} records are only ever added")
    if op.get_bind().dialect.name == "postgresql":
        op.execute(
            f"CREATE TRIGGER {_trigger(table, 'truncate')} BEFORE TRUNCATE ON {table} "
            f"EXECUTE FUNCTION {_trigger(table, 'append')}()"
        )


def unguard_append_only(table: str) -> None:
    """Take away what ``guard_append_only`` made."""
    if op.get_bind().dialect.name == "postgresql":
        op.execute(f"DROP TRIGGER {_trigger(table, 'truncate')} ON {table}")
    unguard(table, "append", "UPDATE OR DELETE")


def _trigger(table: str, name: str) -> str:
    return f"{PREFIX}{table}_{name}"


def _guard_postgresql(table: str, name: str, events: str, message: str, when: str) -> None:
    # A trigger's own WHEN may not hold a query on PostgreSQL, so the function asks.
    raising = f"RAISE EXCEPTION '{message}' USING ERRCODE = 'integrity_constraint_violation';"
    body = f"IF {when} THEN {raising} END IF;" if when else raising
    op.execute(
        f"CREATE FUNCTION {_trigger(table, name)}() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN "
        f"{body} IF TG_OP = 'DELETE' THEN RETURN OLD; END IF; RETURN NEW; END $$"
    )
    op.execute(
        f"CREATE TRIGGER {_trigger(table, name)} BEFORE {events} ON {table} "
        f"FOR EACH ROW EXECUTE FUNCTION {_trigger(table, name)}()"
    )
