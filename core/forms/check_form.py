"""The form of the quick check: from texts to what is asked."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from core.calc.fit import Measured
from core.calc.gasket import Face, HeadFace, HeightRule, Sheet
from core.calc.height import (
    DepthInstrument,
    Height,
    as_given,
    combine,
    from_depth,
    from_leaves,
    from_snug_leaf,
)
from core.calc.leaves import MOST_LEAVES, Stack
from core.calc.quick_check import FLAT_UNTIL_ASKED, QuickCheck
from core.errors import refuse
from core.forms.entries import Entries
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.tables.leaf_sets import INCH_SET, METRIC_SET, LeafSet
from core.tables.practice import HEIGHT, HeightPractice
from core.texts import text
from core.texts.length import Length
from core.unit_types import INCH
from core.units import Bare, Dimension, Field, Typed, read_quantity
from core.verdict import GUARDED, Acceptance, Rule


def _length(low: float, high: float) -> Field:
    return Field(name="", dimension=Dimension.LENGTH, low=low, high=high, bare=Bare.THOU_OR_INCH)


HEIGHT_FIELD = _length(0.0001 * INCH, 0.1 * INCH)
SPREAD_FIELD = _length(0.0, 0.05 * INCH)
OFFSET_FIELD = _length(-0.5 * INCH, 0.5 * INCH)
SHEET_FIELD = _length(0.005 * INCH, 0.25 * INCH)
WIRE_FIELD = _length(0.005 * INCH, 0.25 * INCH)
SHARE_FIELD = Field(
    name="", dimension=Dimension.RATIO, low=HEIGHT.bite_share, high=0.9, bare=Bare.NUMBER
)
CONFIDENCE_FIELD = Field(name="", dimension=Dimension.RATIO, low=0.5, high=0.9999, bare=Bare.NUMBER)

HEIGHT_FIELDS = ("go", "no-go", "snug", "height", "u", "caliper", "caliper-pair", "indicator")
FIELDS = (
    *HEIGHT_FIELDS,
    "straightedge",
    "caliper-limit",
    "caliper-step",
    "caliper-zero",
    "leaves",
    "gasket",
    "gasket-tol",
    "wire",
    "groove-width",
    "groove-depth",
    "shelf",
    "share",
    "rule",
    "confidence",
    "head-face",
)
MOST_IN_A_SET = 60
"""Every stack of three is tried; two large sets together have fewer leaves."""
SEVERAL_TIMES = ("caliper", "caliper-pair", "indicator")


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckForm:
    """A quick check as read, and how it was typed.

    Parameters
    ----------
    echoes
        How each typed size was understood, by field.
    metric
        Whether the height was typed in mm, so that it is said in mm.
    """

    asked: QuickCheck
    echoes: dict[str, str]
    metric: bool


def read_check(
    texts: Mapping[str, Sequence[str]],
    name: Callable[[str], str],
    half_widths: HalfWidths = ASSUMED_HALF_WIDTHS,
    *,
    closer: bool = False,
) -> CheckForm:
    """Read the whole form.

    Parameters
    ----------
    texts
        What was typed, by field of `FIELDS`.
    name
        How a sentence names a field.
    closer
        Whether a leaf is wanted although nothing hangs on it.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries(texts, name)
    half_widths = _instrument_limits(entries, half_widths)
    leaf_set = _leaf_set(entries)
    go, no_go = _stack(entries, "go"), _stack(entries, "no-go")
    height = entries.attempt(lambda: _height(entries, go, no_go, half_widths))
    sheet_error = _value(entries, "gasket-tol", SPREAD_FIELD, half_widths.sheet_measured)
    gasket = _sheet(entries.quantity("gasket", SHEET_FIELD), sheet_error)
    wire = _measured(entries, "wire", half_widths.wire_measured)
    width = _measured(entries, "groove-width", half_widths.groove_width)
    depth = _measured(entries, "groove-depth", half_widths.groove_depth)
    shelf = _shelf(entries, sheet_error)
    face = _face(entries)
    rule = _rule(entries)
    entries.finish()
    assert height is not None
    asked = QuickCheck(
        height=height,
        leaf_set=leaf_set,
        go=go,
        no_go=no_go,
        gasket=gasket,
        wire=wire,
        groove_width=width,
        groove_depth=depth,
        shelf=shelf,
        face=face,
        rule=rule,
        half_widths=half_widths,
        closer=closer,
    )
    return CheckForm(asked=asked, echoes=entries.echoes, metric=_is_metric(entries))


def _instrument_limits(entries: Entries, half_widths: HalfWidths) -> HalfWidths:
    return replace(
        half_widths,
        caliper=_value(entries, "caliper-limit", SPREAD_FIELD, half_widths.caliper),
        caliper_step=_value(entries, "caliper-step", SPREAD_FIELD, half_widths.caliper_step),
    )


def _value(entries: Entries, field: str, kind: Field, otherwise: float) -> float:
    value = entries.value(field, kind)
    return otherwise if value is None else value


def _leaf_set(entries: Entries) -> LeafSet:
    leaves = entries.list_of("leaves", HEIGHT_FIELD)
    if not leaves:
        return METRIC_SET if _is_metric(entries) else INCH_SET
    if len(leaves) > MOST_IN_A_SET:
        entries.add_fault("leaves", "height.many_leaves", most=MOST_IN_A_SET)
        return INCH_SET
    thicknesses = tuple(sorted({leaf.value for leaf in leaves}))
    return LeafSet(leaves=thicknesses, metric=_ends_in_mm(entries.text("leaves")))


def _is_metric(entries: Entries) -> bool:
    """Whether the height was typed in mm."""
    typed = next((entries.text(field) for field in HEIGHT_FIELDS if entries.typed(field)), None)
    return _ends_in_mm(typed)


def _ends_in_mm(typed: str | None) -> bool:
    return typed is not None and typed.lower().endswith("m")


def _stack(entries: Entries, field: str) -> Stack | None:
    leaves = entries.sum_of(field, HEIGHT_FIELD, MOST_LEAVES)
    return Stack(tuple(sorted((leaf.value for leaf in leaves), reverse=True))) if leaves else None


def _height(
    entries: Entries, go: Stack | None, no_go: Stack | None, half_widths: HalfWidths
) -> Height | None:
    straightedge = _value(entries, "straightedge", SPREAD_FIELD, 0.0)
    snug = _stack(entries, "snug")
    heights: list[Height] = []
    if go or no_go:
        heights.append(from_leaves(go, no_go, half_widths, straightedge))
    if go and no_go:
        heights += [
            from_leaves(go, None, half_widths, straightedge),
            from_leaves(None, no_go, half_widths, straightedge),
        ]
    if snug:
        heights.append(from_snug_leaf(snug, half_widths, straightedge))
    heights += _depth_readings(entries, half_widths)
    heights += _given(entries)
    if not heights and not any(map(entries.typed, HEIGHT_FIELDS)):
        entries.add_fault("go", "height.missing")
    return combine(heights) if heights else None


def _depth_readings(entries: Entries, half_widths: HalfWidths) -> list[Height]:
    zero = _value(entries, "caliper-zero", OFFSET_FIELD, 0.0)
    caliper = DepthInstrument(
        name=text("instrument.caliper"),
        limit=half_widths.caliper,
        step=half_widths.caliper_step,
        zero=zero,
    )
    indicator = DepthInstrument(name=text("instrument.indicator"), limit=half_widths.indicator)
    two_wires = (text("height.two_wires"),)
    heights = (
        _depth_reading(entries, "caliper", caliper, ()),
        _depth_reading(entries, "caliper-pair", caliper, two_wires),
        _depth_reading(entries, "indicator", indicator, ()),
    )
    return [height for height in heights if height]


def _depth_reading(
    entries: Entries, field: str, instrument: DepthInstrument, assumptions: tuple[str, ...]
) -> Height | None:
    readings = [typed.value for typed in entries.quantities(field, HEIGHT_FIELD)]
    if not readings:
        return None
    height = from_depth(readings, instrument, assumptions)
    if height.value <= 0.0:
        entries.add_fault(field, "height.below_deck")
    return height


def _given(entries: Entries) -> list[Height]:
    height = entries.quantity("height", HEIGHT_FIELD)
    u = entries.quantity("u", SPREAD_FIELD)
    if entries.typed("height") != entries.typed("u"):
        missing = "u" if entries.typed("height") else "height"
        entries.add_fault(missing, f"height.{missing}_missing")
    return [as_given(height.value, u.value)] if height and u else []


def _sheet(typed: Typed | None, half_width: float) -> Sheet | None:
    return None if typed is None else Sheet(thickness=typed.value, half_width=half_width)


def _shelf(entries: Entries, half_width: float) -> tuple[Sheet, ...]:
    return tuple(
        Sheet(thickness=thickness, half_width=half_width)
        for thickness in sorted({typed.value for typed in entries.list_of("shelf", SHEET_FIELD)})
    )


def _measured(entries: Entries, field: str, half_width: float) -> Measured | None:
    typed = entries.quantity(field, WIRE_FIELD)
    return None if typed is None else Measured(value=typed.value, half_width=half_width)


def _face(entries: Entries) -> HeadFace:
    face = entries.read("head-face", read_head_face)
    if face is None:
        return FLAT_UNTIL_ASKED
    depth = f":{Length(face.depth):in} in" if face.depth else ""
    entries.echoes["head-face"] = f"{face.face}{depth}"
    return face


def read_head_face(typed: str, name: str) -> HeadFace:
    """`flat`, `printed:DEPTH` or `receiver:DEPTH`."""
    word, _, depth = typed.lower().partition(":")
    if word not in set(Face) or (word == Face.FLAT) == bool(depth.strip()):
        raise refuse(name, "face.unknown")
    if word == Face.FLAT:
        return HeadFace(answered=True)
    value = read_quantity(depth, replace(HEIGHT_FIELD, name=name)).value
    return HeadFace(face=Face(word), depth=value, answered=True)


def _rule(entries: Entries) -> HeightRule:
    share = _value(entries, "share", SHARE_FIELD, HEIGHT.largest_share)
    confidence = _value(entries, "confidence", CONFIDENCE_FIELD, GUARDED.confidence)
    rule = entries.read("rule", _read_rule) or Rule.PLAIN
    borderline = max(HEIGHT.borderline_share, share)
    return HeightRule(
        practice=replace(HEIGHT, largest_share=share, borderline_share=borderline),
        acceptance=Acceptance(rule=rule, confidence=confidence),
    )


def _read_rule(typed: str, name: str) -> Rule:
    if typed.lower() not in set(Rule):
        raise refuse(name, "rule.unknown")
    return Rule(typed.lower())


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeForm:
    """What a gauge card is made from."""

    shelf: tuple[Sheet, ...]
    leaf_set: LeafSet
    practice: HeightPractice


def read_gauges(
    texts: Mapping[str, Sequence[str]],
    name: Callable[[str], str],
    half_widths: HalfWidths = ASSUMED_HALF_WIDTHS,
) -> GaugeForm:
    """Read the form of a gauge card: `shelf`, `leaves`, `share`.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries(texts, name)
    form = GaugeForm(
        shelf=_shelf(entries, half_widths.sheet_measured),
        leaf_set=_leaf_set(entries),
        practice=_rule(entries).practice,
    )
    entries.finish()
    return form
