"""Where the parts are joined: folders, the log file, and the commands reached through the module."""

import subprocess
import sys
from pathlib import Path

import pytest

from growlog import assemble

pytestmark = pytest.mark.slow

ROOT = Path(__file__).parents[1]


def test_the_users_files_lie_in_folders_of_the_platform_and_nothing_is_made(own_folders: Path) -> None:
    assemble.folders.cache_clear()
    found = assemble.folders()
    assemble.folders.cache_clear()
    assert own_folders in found.cache.parents
    assert own_folders in found.data.parents
    assert not found.cache.exists()


def test_what_comes_with_the_program_is_found_beside_a_checkout() -> None:
    assert assemble.beside_the_program("resources") == ROOT / "resources"


def test_what_is_packed_into_the_package_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "growlog" / "resources").mkdir(parents=True)
    (tmp_path / "resources").mkdir()
    monkeypatch.setattr(assemble, "__file__", str(tmp_path / "growlog" / "assemble.py"))
    assert assemble.beside_the_program("resources") == tmp_path / "growlog" / "resources"


def test_a_mistake_of_ours_is_logged_and_ends_the_program_loudly(own_folders: Path) -> None:
    code = (
        "import growlog.assemble as a, growlog.command_line.main as m\n"
        "def broken(*_): raise KeyError('ours')\n"
        "m.run = broken\n"
        "a.start(['list', 'x'])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == 1
    logs = [p.read_text(encoding="utf-8") for p in own_folders.rglob("*.log")]
    assert len(logs) == 1
    assert "KeyError: 'ours'" in logs[0]
