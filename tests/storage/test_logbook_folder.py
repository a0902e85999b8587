"""A logbook on disk: made, opened by one writer, refused where it is not ours or newer, migrated after a backup."""

import hashlib
import sqlite3
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy.exc import OperationalError

from growlog.storage import database
from growlog.storage.backup import KEPT, back_up
from growlog.storage.database import APPLICATION_ID, HEAD_REVISION
from growlog.storage.logbook_folder import DATABASE, make_logbook, open_logbook
from growlog.storage.problems import LogbookInUse, LogbookNotWritable, NewerLogbook, NotALogbook

pytestmark = pytest.mark.slow

NOW = datetime(2026, 3, 7, 12, tzinfo=UTC)


def clock() -> datetime:
    return NOW


def pragma(path: Path, name: str) -> object:
    connection = sqlite3.connect(path)
    try:
        return connection.execute(f"PRAGMA {name}").fetchone()[0]
    finally:
        connection.close()


def test_a_new_logbook_is_a_plain_folder_with_our_application_id(tmp_path: Path) -> None:
    make_logbook(tmp_path / "Ä room, 2nd")
    names = {p.name for p in (tmp_path / "Ä room, 2nd").iterdir()}
    assert names == {"logbook.sqlite3", "photos", "backups"}
    assert pragma(tmp_path / "Ä room, 2nd" / DATABASE, "application_id") == APPLICATION_ID
    assert pragma(tmp_path / "Ä room, 2nd" / DATABASE, "journal_mode") == "delete"


def test_connections_are_safe_rather_than_fast(tmp_path: Path) -> None:
    make_logbook(tmp_path / "room")
    disk = open_logbook(tmp_path / "room", clock)
    with disk._engine.connect() as connection:
        assert connection.exec_driver_sql("PRAGMA foreign_keys").scalar() == 1
        assert connection.exec_driver_sql("PRAGMA synchronous").scalar() == 2  # FULL
    disk.close()


def test_a_second_writer_is_told_and_may_read(tmp_path: Path) -> None:
    make_logbook(tmp_path / "room")
    first = open_logbook(tmp_path / "room", clock)
    with pytest.raises(LogbookInUse, match="another window"):
        open_logbook(tmp_path / "room", clock)
    reader = open_logbook(tmp_path / "room", clock, read_only=True)
    assert not reader.writable
    reader.close()
    first.close()
    open_logbook(tmp_path / "room", clock).close()


def test_a_folder_that_is_not_a_logbook_is_refused_untouched(tmp_path: Path) -> None:
    other = tmp_path / DATABASE
    connection = sqlite3.connect(other)
    connection.execute("CREATE TABLE t (x)")
    connection.commit()
    connection.close()
    before = hashlib.sha256(other.read_bytes()).hexdigest()
    with pytest.raises(NotALogbook, match="left as it is"):
        open_logbook(tmp_path, clock)
    assert hashlib.sha256(other.read_bytes()).hexdigest() == before
    assert [p.name for p in tmp_path.iterdir()] == [DATABASE]


@pytest.mark.parametrize("content", [b"", b"not a database at all", b"SQLite format 3\x00" + b"\xff" * 200])
def test_a_broken_database_file_is_refused_with_a_sentence(tmp_path: Path, content: bytes) -> None:
    (tmp_path / DATABASE).write_bytes(content)
    with pytest.raises(NotALogbook):
        open_logbook(tmp_path, clock)
    assert (tmp_path / DATABASE).read_bytes() == content


def test_a_newer_schema_is_refused_untouched(tmp_path: Path) -> None:
    make_logbook(tmp_path / "room")
    database = tmp_path / "room" / DATABASE
    connection = sqlite3.connect(database)
    connection.execute("UPDATE alembic_version SET version_num = '9999'")
    connection.commit()
    connection.close()
    before = database.read_bytes()
    with pytest.raises(NewerLogbook, match="9999"):
        open_logbook(tmp_path / "room", clock)
    assert database.read_bytes() == before


def test_making_a_logbook_refuses_a_folder_that_holds_something(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(NotALogbook, match="not empty"):
        make_logbook(tmp_path)
    make_logbook(tmp_path / "room")
    with pytest.raises(LogbookNotWritable, match="already holds"):
        make_logbook(tmp_path / "room")


def test_a_folder_without_rights_is_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "mkdir", refuse)
    with pytest.raises(LogbookNotWritable, match="Permission denied"):
        make_logbook(tmp_path / "room")


def test_a_full_disk_is_a_sentence_and_the_folder_can_be_used_once_there_is_space(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OperationalError("COMMIT", {}, sqlite3.OperationalError("database or disk is full"))

    with monkeypatch.context() as patched:
        patched.setattr(database, "migrate", full)
        with pytest.raises(LogbookNotWritable, match="disk is full"):
            make_logbook(tmp_path / "room")
    assert not (tmp_path / "room" / DATABASE).exists()
    make_logbook(tmp_path / "room")
    assert (tmp_path / "room" / DATABASE).is_file()


def test_a_backup_is_a_whole_copy_and_only_the_newest_are_kept(tmp_path: Path) -> None:
    make_logbook(tmp_path / "room")
    database, backups = tmp_path / "room" / DATABASE, tmp_path / "backups"
    for minute in range(KEPT + 2):
        newest = back_up(database, backups, NOW.replace(minute=minute))
    assert len(list(backups.iterdir())) == KEPT
    assert newest.name == f"2026-03-07_12{KEPT + 1:02}00.sqlite3"
    assert pragma(newest, "application_id") == APPLICATION_ID
    assert pragma(newest, "integrity_check") == "ok"
    assert HEAD_REVISION == "0002"
