"""The SQLite file: opened for safety, known by its application id, brought to the present schema."""

import sqlite3
from importlib import import_module
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event
from sqlalchemy.exc import OperationalError

from growlog.storage.problems import LogbookNotWritable, NewerLogbook, NotALogbook
from growlog.words import say

APPLICATION_ID = 0x47524C42  # "GRLB": another program's file is refused
HEAD_REVISION = "0002"
_BUSY_SECONDS = 10.0
_MIGRATION_TOOLS = (
    "alembic.command",
    "alembic.config",
    "alembic.runtime.environment",
    "alembic.script",
    "mako.template",
)


def engine_of(path: Path, *, writable: bool = True) -> Engine:
    """An engine on an existing file. Foreign keys on, full synchronous, rollback journal."""
    mode = "rw" if writable else "ro"
    url = URL.create("sqlite+pysqlite", database=f"{path.resolve().as_uri()}", query={"mode": mode, "uri": "true"})
    engine = create_engine(url, connect_args={"timeout": _BUSY_SECONDS})
    event.listen(engine, "connect", _set_safely)
    return engine


def make_database(path: Path) -> None:
    """Makes a new, empty logbook database; FileExistsError if something is there."""
    try:
        with path.open("xb"):
            pass
        _set_application_id(path)
        migrate(path)
    except FileExistsError:
        raise
    except OSError as error:
        raise _not_made(path, error.strerror or str(error)) from error
    except (sqlite3.OperationalError, OperationalError) as error:  # such as a full disk
        path.unlink(missing_ok=True)
        raise _not_made(path, str(getattr(error, "orig", error))) from error


def _not_made(path: Path, reason: str) -> LogbookNotWritable:
    return LogbookNotWritable(say("{path} cannot be written: {reason}.", path=path, reason=reason))


def check_is_logbook(path: Path) -> None:
    """NotALogbook unless the file carries our application id. Reads only."""
    refusal = say("{folder} is not a logbook. It was left as it is.", folder=path.parent)
    if not path.is_file():
        raise NotALogbook(refusal)
    try:
        found = _read_only(path, "PRAGMA application_id")
    except (sqlite3.Error, OSError) as error:
        raise NotALogbook(refusal) from error
    if found != APPLICATION_ID:
        raise NotALogbook(refusal)


def revision_of(path: Path) -> str | None:
    """The schema revision of a file, None for a file without one. Reads only."""
    try:
        found = _read_only(path, "SELECT version_num FROM alembic_version")
    except sqlite3.Error:
        return None
    return None if found is None else str(found)


def check_not_newer(path: Path) -> None:
    """NewerLogbook if a later version of the program wrote it. Revisions are numbered, so text order is age."""
    revision = revision_of(path)
    if revision is not None and revision > HEAD_REVISION:
        raise NewerLogbook(
            say(
                "{folder} was written by a newer version of this program (schema {found}, this one knows {known})."
                " It was left as it is; open it with the newer version.",
                folder=path.parent,
                found=revision,
                known=HEAD_REVISION,
            )
        )


def load_migration_tools() -> None:
    """Imports what `migrate` needs, for a caller that must not leave this to another thread."""
    for name in _MIGRATION_TOOLS:
        import_module(name)


def migrate(path: Path, to: str = "head") -> None:
    """Brings the file's schema to a revision in one transaction: a step that fails leaves the file as it was.

    Tables are rebuilt while foreign keys rest; before anything is kept, every one of them must hold.
    """
    # Alembic is needed only here, and it takes time to import: an up-to-date logbook opens without it.
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations").replace("%", "%%"))
    engine = engine_of(path)
    try:
        with engine.connect() as connection:
            connection.exec_driver_sql("PRAGMA foreign_keys = OFF")
            # The driver would begin only at the first row written, so that changes of tables were kept one by one.
            connection.exec_driver_sql("BEGIN IMMEDIATE")
            config.attributes["connection"] = connection
            command.upgrade(config, to)
            _check_foreign_keys(connection)
            connection.commit()
    finally:
        engine.dispose()


def _set_safely(connection: Any, _record: Any) -> None:
    # The driver's own transaction handling would begin late; SQLAlchemy's begin event does it for reads too.
    # Changed pages wait in memory for the commit: one that spilled to the file would lock all readers out until then,
    # and half a million samples take a while.
    for pragma in ("foreign_keys = ON", "synchronous = FULL", "trusted_schema = OFF", "cache_spill = OFF"):
        connection.execute(f"PRAGMA {pragma}")


def _check_foreign_keys(connection: Connection) -> None:
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").first()
    if broken is not None:
        raise RuntimeError(f"a migration left a row of {broken[0]} without its {broken[2]}")


def _set_application_id(path: Path) -> None:
    connection = sqlite3.connect(path)
    try:
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute("PRAGMA journal_mode = DELETE")
        connection.commit()
    finally:
        connection.close()


def _read_only(path: Path, statement: str) -> Any:
    connection = sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)
    try:
        row = connection.execute(statement).fetchone()
        return None if row is None else row[0]
    finally:
        connection.close()
