"""What every run prints at its end."""

PUBLISHED = "tests/published/"


def pytest_terminal_summary(terminalreporter) -> None:
    """The table source → cases → result, wherever the published cases ran."""
    reports = terminalreporter.getreports("passed") + terminalreporter.getreports("failed")
    if not any(each.nodeid.startswith(PUBLISHED) for each in reports):
        return
    from tests.source_table import table

    terminalreporter.section("source → cases → result")
    terminalreporter.write_line(table())
