"""How many cases a run takes, and the table of what was counted, printed at its end."""

import os

import pytest

COUNTED: list[str] = []
LONG = os.environ.get("STANDPROUD_LONG") == "1"


@pytest.fixture(scope="session")
def cases():
    """Full count of cases → how many this run takes: all with STANDPROUD_LONG=1, else a tenth."""
    return lambda full: full if LONG else full // 10


@pytest.fixture(scope="session")
def counted():
    """Says what was counted; printed after the tests."""
    return COUNTED.append


def pytest_terminal_summary(terminalreporter):
    for line in COUNTED:
        terminalreporter.write_line(f"counted: {line}")
