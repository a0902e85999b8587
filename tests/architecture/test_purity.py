"""What import contracts cannot see: calls in calculations and records that reach outside, and state in modules."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "growlog"
PURE = sorted([*(PACKAGE / "calculations").rglob("*.py"), *(PACKAGE / "records").rglob("*.py")])
FORBIDDEN_CALLS = {"open", "print", "input", "exec", "eval", "now", "today", "utcnow", "getenv"}


def offences(source: str) -> list[str]:
    """Calls and statements of a module that a pure one must not have."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call):
            name = getattr(node.func, "id", getattr(node.func, "attr", ""))
            if name in FORBIDDEN_CALLS:
                found.append(f"line {node.lineno}: {name}()")
        if isinstance(node, ast.Global):
            found.append(f"line {node.lineno}: global")
    return found


def test_calculations_and_records_ask_no_clock_and_open_no_file() -> None:
    assert len(PURE) > 15
    found = {str(p): offences(p.read_text(encoding="utf-8")) for p in PURE}
    assert {p: o for p, o in found.items() if o} == {}


@pytest.mark.parametrize(
    "planted",
    ["x = datetime.now()", "with open('a') as f: pass", "print(1)", "def f():\n    global x\n    x = 1"],
)
def test_a_planted_offence_is_seen(planted: str) -> None:
    assert len(offences(planted)) == 1
