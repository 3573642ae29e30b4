"""The unit in a docstring is the unit in the annotation, and every formula names its source."""

from tests.docstrings import UNITS, Documented, documented

ALL = tuple(documented())


def test_units_and_sources_of_every_calculation():
    faults = [fault for each in ALL for fault in each.faults()]
    assert not faults, "\n".join(faults)


def test_there_is_something_to_read():
    assert len(UNITS) > 10
    assert sum(len(each.units) for each in ALL) > 300
    assert sum(each.formula for each in ALL) > 100


def test_another_unit_a_lost_unit_and_a_lost_source_are_found():
    formula = next(each for each in ALL if each.where.endswith("groove.py:segment_area"))
    assert list(formula.faults()) == []
    for old, new in (("[mm]", "[in]"), ("[mm]", ""), ("[mm²]", "[mm]"), ("Source\n------", "")):
        spoilt = Documented(
            where=formula.where,
            units=formula.units,
            returns=formula.returns,
            formula=True,
            docstring=formula.docstring.replace(old, new),
        )
        assert list(spoilt.faults()), (old, new)
