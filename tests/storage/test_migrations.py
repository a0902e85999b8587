"""The migrations make the schema that the models describe."""

import sqlite3
from pathlib import Path

import pytest
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine

from growlog.records.entry import KINDS
from growlog.storage import database, migrations
from growlog.storage.database import HEAD_REVISION, make_database, migrate, revision_of
from growlog.storage.logbook_folder import DATABASE
from growlog.storage.row_translation import DETAIL_MODELS
from growlog.storage.tables import Base
from tests.storage.old_logbooks import restore

pytestmark = pytest.mark.slow


def schema(path: Path) -> dict[str, set[str]]:
    """The columns and constraints of each table, in no order."""
    connection = sqlite3.connect(path)
    rows = connection.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL AND type != 'trigger'")
    found = {name: {line.strip().rstrip(",") for line in sql.splitlines()} for name, sql in rows}
    connection.close()
    found.pop("alembic_version", None)
    return {name: {line.replace('"', "") for line in lines} for name, lines in found.items()}


def test_migrating_from_nothing_gives_the_schema_of_the_models(tmp_path: Path) -> None:
    make_database(tmp_path / "migrated.sqlite3")
    engine = create_engine(f"sqlite:///{tmp_path / 'direct.sqlite3'}")
    Base.metadata.create_all(engine)
    engine.dispose()
    migrated, direct = schema(tmp_path / "migrated.sqlite3"), schema(tmp_path / "direct.sqlite3")
    assert len(migrated) > 30
    assert migrated.keys() == direct.keys()
    for table in migrated:
        assert migrated[table] == direct[table], table


def test_the_known_head_is_the_newest_numbered_step() -> None:
    config = Config()
    config.set_main_option("script_location", str(Path(migrations.__file__).parent))
    scripts = ScriptDirectory.from_config(config)
    assert scripts.get_current_head() == HEAD_REVISION
    assert all(s.revision.isdigit() and len(s.revision) == 4 for s in scripts.walk_revisions())


@pytest.mark.parametrize(
    ("statement", "constraint"),
    [
        ("INSERT INTO entry_feed (entry_id, ph, water_only) VALUES ('e', 15, 0)", "ph_range"),
        (
            "INSERT INTO entry_feed (entry_id, strength_percent, water_only) VALUES ('e', 401, 0)",
            "strength_percent_range",
        ),
        (
            "INSERT INTO source_water (id, version, name, ca_mg_per_l, note) VALUES ('w', 1, 'x', -1, '')",
            "ca_mg_per_l_range",
        ),
        (
            "INSERT INTO logbook (id, version, name, currency, labour_rate_minor_per_h) VALUES ('l', 1, 'x', '', -1)",
            "labour_rate_minor_per_h_range",
        ),
        ("INSERT INTO entry_pick (entry_id, fruit_count) VALUES ('e', -1)", "fruit_count_range"),
        ("INSERT INTO entry_problem (entry_id, sort, name, severity) VALUES ('e', 'ghost', 'x', 1)", "sort_word"),
        ("INSERT INTO entry (id, version, kind, day, note) VALUES ('e', 1, 'note', '2026-01-01', '')", "one_owner"),
    ],
)
def test_the_database_itself_refuses_what_the_limits_refuse(tmp_path: Path, statement: str, constraint: str) -> None:
    make_database(tmp_path / "x.sqlite3")
    connection = sqlite3.connect(tmp_path / "x.sqlite3")
    with pytest.raises(sqlite3.IntegrityError, match=constraint):
        connection.execute(statement)
    connection.close()


def test_the_rule_of_a_routine_is_a_word_though_its_column_is_named_as_sql_names_a_thing(tmp_path: Path) -> None:
    make_database(tmp_path / "x.sqlite3")
    connection = sqlite3.connect(tmp_path / "x.sqlite3")
    statement = """INSERT INTO routine (id, version, name, who, "when", entry_kind, in_the_morning, is_on, note)
                   VALUES ('r', 1, 'x', 'room', ?, '', 0, 1, '')"""
    with pytest.raises(sqlite3.IntegrityError, match="when_word"):
        connection.execute(statement, ("sometimes",))
    connection.execute(statement, ("on-day",))
    connection.close()


def test_a_step_that_fails_leaves_the_file_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    restore("0001", tmp_path)
    path = tmp_path / DATABASE
    before = schema(path)

    def fail(*_: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(database, "_check_foreign_keys", fail)
    with pytest.raises(ZeroDivisionError):
        migrate(path)
    assert revision_of(path) == "0001"
    assert schema(path) == before


def test_a_migration_that_would_tear_a_reference_is_not_kept(tmp_path: Path) -> None:
    restore("0001", tmp_path)
    path = tmp_path / DATABASE
    connection = sqlite3.connect(path)
    connection.execute("DELETE FROM cultivar")  # a plain connection does not hold foreign keys
    connection.commit()
    connection.close()
    with pytest.raises(RuntimeError, match="crop without its cultivar"):
        migrate(path)
    assert revision_of(path) == "0001"


def test_the_history_stays_append_only_through_every_step(tmp_path: Path) -> None:
    restore("0001", tmp_path)
    path = tmp_path / DATABASE
    migrate(path)
    connection = sqlite3.connect(path)
    for statement in ("UPDATE change SET action = 'add'", "DELETE FROM change"):
        with pytest.raises(sqlite3.IntegrityError, match="append-only"):
            connection.execute(statement)
    connection.close()


def test_every_kind_has_its_narrow_table() -> None:
    assert {m.__tablename__ for m in DETAIL_MODELS.values()} <= set(Base.metadata.tables)
    assert len({m.__tablename__ for m in DETAIL_MODELS.values()}) == len(KINDS)
