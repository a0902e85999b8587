"""The layers point one way, and each contract is shown to bite."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]

# One forbidden import for each direction, and the contract that must catch it.
PLANTED = [
    ("calculations/units.py", "import growlog.records", "Layers point one way"),
    ("records/crop.py", "import growlog.services", "Layers point one way"),
    ("storage/database.py", "import growlog.photos", "Layers point one way"),
    ("photos/previews.py", "import growlog.storage", "Layers point one way"),
    ("sharing/__init__.py", "import growlog.services", "Layers point one way"),
    ("services/crops.py", "import growlog.desktop", "Layers point one way"),
    ("services/crops.py", "import growlog.command_line", "Layers point one way"),
    ("desktop/selection.py", "import growlog.command_line", "Layers point one way"),
    ("desktop/selection.py", "import growlog.assemble", "Layers point one way"),
    ("command_line/__init__.py", "import growlog.assemble", "Layers point one way"),
    ("words.py", "import growlog.calculations", "Layers point one way"),
    ("newcomer.py", "", "Layers point one way"),
    ("services/crops.py", "import PySide6", "Qt lives in desktop only"),
    ("command_line/__init__.py", "import pyqtgraph", "Qt lives in desktop only"),
    ("calculations/light.py", "import pathlib", "Calculations and records touch nothing outside"),
    ("records/crop.py", "import random", "Calculations and records touch nothing outside"),
    ("services/crops.py", "import sqlalchemy", "The database is known to storage only"),
    ("sharing/__init__.py", "import sqlite3", "The database is known to storage only"),
    ("services/crops.py", "import growlog.storage.tables", "The database is known to storage only"),
    ("services/crops.py", "import PIL", "Pixel libraries are known to photos only"),
    ("desktop/selection.py", "import PIL", "Pixel libraries are known to photos only"),
    ("desktop/selection.py", "import growlog.storage.database", "Desktop asks services"),
    ("desktop/selection.py", "import growlog.photos.previews", "Desktop asks services"),
    ("command_line/__init__.py", "import growlog.sharing.cells", "Commands ask services"),
]


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    """import-linter on a copy of the package."""
    code = "import sys; from importlinter.cli import lint_imports_command; sys.exit(lint_imports_command())"
    return subprocess.run(
        [sys.executable, "-c", code, "--no-cache"], cwd=folder, capture_output=True, text=True, check=False,
        env={"PYTHONPATH": str(folder), "PATH": "", "COLUMNS": "200"},
    )  # fmt: skip


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the package and its contracts."""
    shutil.copytree(ROOT / "growlog", tmp_path / "growlog", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path


@pytest.mark.slow
def test_the_package_keeps_all_contracts(copy: Path) -> None:
    result = lint(copy)
    assert result.returncode == 0, result.stdout
    assert "7 kept, 0 broken" in result.stdout


@pytest.mark.slow
@pytest.mark.parametrize(("file", "line", "contract"), PLANTED)
def test_a_planted_forbidden_import_breaks_its_contract(copy: Path, file: str, line: str, contract: str) -> None:
    target = copy / "growlog" / file
    target.parent.mkdir(exist_ok=True)
    before = target.read_text(encoding="utf-8") if target.exists() else '"""New."""\n'
    target.write_text(f"{before}\n\ndef _planted() -> None:\n    {line or 'pass'}\n", encoding="utf-8")
    result = lint(copy)
    assert result.returncode != 0
    broken = result.stdout if line else result.stdout + result.stderr
    assert contract.lower() in broken.lower() or "newcomer" in broken
    assert f"{contract}" not in [k.removesuffix(" KEPT") for k in result.stdout.splitlines() if k.endswith("KEPT")]
