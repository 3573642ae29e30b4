"""What every run prints at its end: figures that tests noted, and how each source fares."""

PUBLISHED = "tests/published/"


def pytest_terminal_summary(terminalreporter) -> None:
    reports = terminalreporter.getreports("passed") + terminalreporter.getreports("failed")
    noted = [f"{name}: {value}" for each in reports for name, value in each.user_properties]
    if noted:
        terminalreporter.section("noted")
        terminalreporter.write_line("\n".join(noted))
    if any(each.nodeid.startswith(PUBLISHED) for each in reports):
        from tests.source_table import table

        terminalreporter.section("source → cases → result")
        terminalreporter.write_line(table())
