"""One cylinder under its clamp: what the wire takes, what the sheet keeps, what gas leaves."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from core.calc.bedding import (
    ANNEALED,
    Copper,
    Resistance,
    contact_half_width,
    depth_at,
    depths,
    line_load,
    resistances,
    ring_length,
)
from core.calc.fastener_layout import FastenerShare
from core.calc.fasteners import Fastener
from core.calc.gasket import Face, HeadFace
from core.calc.preload import TYPED, Preload, Tightening
from core.calc.separation import (
    PeakPressure,
    gas_force,
    left_at_peak,
    separation_factor,
    stud_at_peak,
)
from core.source import derived, published
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.uncertain import Explained, Term, coverage_factor, explain, rectangular
from core.unit_types import Millimetre, Newton, NewtonPerMillimetre, Number

RANGE_FACTOR = coverage_factor(0.95, math.inf)
CLAMP_SOURCE = derived(
    "preload times fasteners; random scatter over the square root of their number"
)
LEFT_SOURCE = published("Shigley's Mechanical Engineering Design, 9th ed., eq. 8-25")
AT_PEAK_SOURCE = published("Shigley's Mechanical Engineering Design, 9th ed., eq. 8-24")
BODY_SOURCE = derived(
    "clamp less the load that beds the wire: the wire and the body share the clamp"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """From low to high, in the unit of what it belongs to."""

    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """What all cylinders of an engine share.

    Parameters
    ----------
    load_share
        Part C of the gas load that the fasteners take; none where no stiffness is known: then 0
        against separation and 1 for the fastener's own load [1].
    """

    fastener: Fastener
    tightening: Tightening
    face: HeadFace
    copper: Copper = ANNEALED
    load_share: Number | None = None

    @property
    def separation_share(self) -> Number:
        """C used against separation [1]."""
        return self.load_share or 0.0

    @property
    def fastener_share(self) -> Number:
        """C used for the load of the fastener [1]."""
        return 1.0 if self.load_share is None else self.load_share


@dataclass(frozen=True, slots=True, kw_only=True)
class Cylinder:
    """One cylinder.

    Parameters
    ----------
    ring_diameter
        Centre diameter of the wire ring, which is the seal line [mm].
    wire_diameter
        Wire diameter [mm].
    height
        How far the wire stands proud of the deck [mm].
    height_u
        Standard uncertainty of the height [mm].
    fasteners
        Fasteners around this cylinder.
    pressure
        Peak pressure.
    wire_half_width
        Limit of error of the wire diameter [mm].
    """

    name: str
    ring_diameter: Millimetre
    wire_diameter: Millimetre
    height: Millimetre
    height_u: Millimetre
    fasteners: FastenerShare
    pressure: PeakPressure
    wire_half_width: Millimetre = ASSUMED_HALF_WIDTHS.wire_measured


@dataclass(frozen=True, slots=True, kw_only=True)
class BeddingCase:
    """What one answer for the copper, at one depth, makes of this cylinder.

    Parameters
    ----------
    depth
        How deep the wire must go for the sheet to lie on the deck [mm].
    line_load
        Load on each length of wire when it is that deep [N/mm].
    needed
        Load of the ring when it is that deep [N].
    carried
        What the ring carries: what is needed, or the whole clamp if that is less [N].
    body
        Clamp left for the body of the sheet [N].
    sunk
        How deep the wire goes under this clamp [mm].
    stands_off
        How far the sheet then stands off the deck [mm].
    slack_height
        Height of the wire from which the body has no load; none if no height can do it [mm].
    """

    resistance: Resistance
    depth: Millimetre
    line_load: NewtonPerMillimetre
    needed: Newton
    carried: Newton
    body: Newton
    sunk: Millimetre
    stands_off: Millimetre
    slack_height: Millimetre | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CylinderLoads:
    """Every load of one cylinder; a load bar is drawn from these fields alone.

    Parameters
    ----------
    clamp
        Clamp of the fasteners around it [N].
    clamp_range
        Its 95 % range, first order [N].
    proof
        Proof load of these fasteners together [N].
    gas
        Force of the gas inside the seal line at peak [N].
    gas_range
        Its limits [N].
    separation
        Clamp over what would part the joint [1].
    separation_range
        The same with the ends of clamp and gas [1].
    left
        Clamp left between head and block at peak [N].
    left_range
        Its 95 % range, first order [N].
    at_peak
        Load of one fastener at peak as a share of proof [1].
    at_peak_range
        Its 95 % range, first order [1].
    bedding
        Every answer, least load on the wire first.
    wire, body
        Load on wire and on the body of the sheet, over all answers [N].
    body_at_least, body_at_most
        Clamp less the load that beds the wire, hardest and softest answer [N].
    slack_height
        Height from which the body is slack, hardest and softest answer; an end is none if no
        height can do it [mm].
    """

    cylinder: Cylinder
    clamp: Explained
    clamp_range: Range
    proof: Newton
    gas: Newton
    gas_range: Range
    separation: Number
    separation_range: Range
    left: Explained
    left_range: Range
    at_peak: Explained
    at_peak_range: Range
    bedding: tuple[BeddingCase, ...]
    wire: Range
    body: Range
    body_at_least: Explained
    body_at_most: Explained
    slack_height: tuple[Millimetre | None, Millimetre | None]


def clamp_terms(preload: Preload, fasteners: FastenerShare) -> tuple[Term, ...]:
    """What the clamp of one cylinder rests on: what all fasteners share, then what they do not.

    Source
    ------
    *derived*: of a sum of n fasteners only the random part falls as 1/√n.
    """
    return (*preload.terms, _random_term(preload, fasteners.independent))


def _random_term(preload: Preload, independent: Number) -> Term:
    return Term(
        name=text("clamp.term.random"),
        value=1.0,
        u=preload.random / math.sqrt(independent),
        unit="1",
        source=preload.random_source,
    )


def clamp_force(preload: Preload, count: Number) -> Callable[..., Newton]:
    """Clamp [N] of `count` fasteners [1] as a function of the values of `clamp_terms`.

    Source
    ------
    *derived*: every fastener at the same preload.
    """
    return lambda *values: count * preload.force(*values[:-1]) * values[-1]


def pressure_term(pressure: PeakPressure) -> Term:
    """Peak pressure as an input.

    Source
    ------
    As the pressure says; its limit of error rectangular, JCGM 100:2008 (GUM), 4.3.7.
    """
    return Term(
        name=text("clamp.term.pressure"),
        value=pressure.value,
        u=rectangular(pressure.half_width),
        unit="MPa",
        source=pressure.source,
    )


def wire_terms(cylinder: Cylinder) -> tuple[Term, Term]:
    """Height and diameter of the wire as inputs.

    Source
    ------
    As typed; the limit of error of the wire rectangular, JCGM 100:2008 (GUM), 4.3.7.
    """
    height = Term(
        name=text("clamp.term.height"),
        value=cylinder.height,
        u=cylinder.height_u,
        unit="mm",
        source=TYPED,
    )
    wire = Term(
        name=text("clamp.term.wire"),
        value=cylinder.wire_diameter,
        u=rectangular(cylinder.wire_half_width),
        unit="mm",
        source=TYPED,
    )
    return height, wire


def bedding_load(
    resistance: Resistance, wire_diameter: Millimetre, depth: Millimetre, ring_diameter: Millimetre
) -> Newton:
    """Load of the whole ring when its wire is this deep in the copper [N].

    Parameters
    ----------
    wire_diameter
        Wire diameter [mm].
    depth
        Depth in the copper [mm].
    ring_diameter
        Centre diameter of the ring [mm].

    Source
    ------
    *derived*: pressure over the strip of contact, Q = p·2a·π·Dc.
    """
    half_width = contact_half_width(wire_diameter, depth)
    return line_load(resistance.pressure, half_width) * ring_length(ring_diameter)


def single_fastener_terms(preload: Preload) -> tuple[Term, ...]:
    """What the load of one fastener rests on.

    Source
    ------
    As the preload says.
    """
    return (*preload.terms, _random_term(preload, 1.0))


def cylinder_loads(joint: Joint, preload: Preload, cylinder: Cylinder) -> CylinderLoads:
    """Every load of one cylinder.

    Source
    ------
    *derived* from the formulas of `preload`, `separation` and `bedding`, whose sources stand there.
    """
    count = cylinder.fasteners.count
    clamp = _explained_clamp(preload, cylinder)
    clamp_range = _not_negative(_range(clamp))
    gas = gas_force(cylinder.ring_diameter, cylinder.pressure.value)
    off = gas_force(cylinder.ring_diameter, cylinder.pressure.half_width)
    gas_range = Range(low=gas - off, high=gas + off)
    share = joint.separation_share
    left = _explained_left(joint, preload, cylinder)
    at_peak = _explained_at_peak(joint, preload, cylinder)
    bedding = bedding_cases(joint, cylinder, clamp.value)
    return CylinderLoads(
        cylinder=cylinder,
        clamp=clamp,
        clamp_range=clamp_range,
        proof=count * joint.fastener.proof_load,
        gas=gas,
        gas_range=gas_range,
        separation=separation_factor(clamp.value, gas, share),
        separation_range=Range(
            low=separation_factor(clamp_range.low, gas_range.high, share),
            high=separation_factor(clamp_range.high, gas_range.low, share),
        ),
        left=left,
        left_range=_range(left),
        at_peak=at_peak,
        at_peak_range=_range(at_peak),
        bedding=bedding,
        wire=Range(low=bedding[0].carried, high=bedding[-1].carried),
        body=Range(low=bedding[-1].body, high=bedding[0].body),
        body_at_least=_explained_body(joint, preload, cylinder, bedding[-1]),
        body_at_most=_explained_body(joint, preload, cylinder, bedding[0]),
        slack_height=(bedding[-1].slack_height, bedding[0].slack_height),
    )


def _range(explained: Explained) -> Range:
    """95 % range, first order."""
    reach = RANGE_FACTOR * explained.u
    return Range(low=explained.value - reach, high=explained.value + reach)


def _not_negative(ends: Range) -> Range:
    """No fastener clamps by less than nothing."""
    return Range(low=max(ends.low, 0.0), high=ends.high)


def _explained_clamp(preload: Preload, cylinder: Cylinder) -> Explained:
    fasteners = cylinder.fasteners
    return explain(
        clamp_force(preload, fasteners.count),
        clamp_terms(preload, fasteners),
        unit="N",
        formula=f"F = n · Fi · random; {preload.formula}",
        source=CLAMP_SOURCE,
        assumptions=(text("clamp.assumes.scatter"), text("clamp.assumes.sharing")),
    )


def _bound(joint: Joint, key: str) -> tuple[str, ...]:
    """The bound that stands for a stiffness nobody gave."""
    return () if joint.load_share is not None else (text(f"clamp.assumes.{key}"),)


def _explained_left(joint: Joint, preload: Preload, cylinder: Cylinder) -> Explained:
    share = joint.separation_share
    force = clamp_force(preload, cylinder.fasteners.count)
    return explain(
        lambda *values: left_at_peak(
            force(*values[:-1]), gas_force(cylinder.ring_diameter, values[-1]), share
        ),
        (*clamp_terms(preload, cylinder.fasteners), pressure_term(cylinder.pressure)),
        unit="N",
        formula="F − (1 − C) · π/4 · Dc² · p",
        source=LEFT_SOURCE,
        assumptions=(
            text("clamp.assumes.seal_line"),
            text("clamp.assumes.cold"),
            *_bound(joint, "no_share"),
        ),
    )


def _explained_at_peak(joint: Joint, preload: Preload, cylinder: Cylinder) -> Explained:
    count, proof = cylinder.fasteners.count, joint.fastener.proof_load

    def share_of_proof(*values: float) -> Number:
        fastener = preload.force(*values[:-2]) * values[-2]
        gas = gas_force(cylinder.ring_diameter, values[-1]) / count
        return stud_at_peak(fastener, gas, joint.fastener_share) / proof

    return explain(
        share_of_proof,
        (*single_fastener_terms(preload), pressure_term(cylinder.pressure)),
        unit="1",
        formula="(Fi + C · P/n) ÷ (Sp · At)",
        source=AT_PEAK_SOURCE,
        assumptions=(text("clamp.assumes.even"), *_bound(joint, "all_share")),
    )


def bedding_cases(joint: Joint, cylinder: Cylinder, clamp: Newton) -> tuple[BeddingCase, ...]:
    """Every answer under a clamp [N], least load on the wire first.

    Source
    ------
    *derived*; pressures of Hill 1950, Tabor 1951 and Vickers hardness.
    """
    cases = [
        _bedding_case(resistance, depth, cylinder, clamp, joint.face)
        for resistance in resistances(joint.copper)
        for depth in depths(cylinder.height, joint.face)
    ]
    return tuple(sorted(cases, key=lambda case: case.needed))


def _bedding_case(
    resistance: Resistance,
    depth: Millimetre,
    cylinder: Cylinder,
    clamp: Newton,
    face: HeadFace,
) -> BeddingCase:
    wire, length = cylinder.wire_diameter, ring_length(cylinder.ring_diameter)
    needed = bedding_load(resistance, wire, depth, cylinder.ring_diameter)
    carried = min(needed, clamp)
    slack = _slack_depth(resistance, wire, length, clamp)
    sunk = depth if needed <= clamp or slack is None else slack
    full_depth = face.face is Face.FLAT or depth == cylinder.height
    return BeddingCase(
        resistance=resistance,
        depth=depth,
        line_load=needed / length,
        needed=needed,
        carried=carried,
        body=clamp - carried,
        sunk=sunk,
        stands_off=max(depth - sunk, 0.0),
        slack_height=None if slack is None else slack + (0.0 if full_depth else face.depth),
    )


def _slack_depth(
    resistance: Resistance, wire: Millimetre, length: Millimetre, clamp: Newton
) -> Millimetre | None:
    """Depth at which the ring takes the whole clamp; none if it never can."""
    half_width = clamp / (2.0 * resistance.pressure * length)
    return depth_at(wire, half_width) if half_width < 0.5 * wire else None


def _explained_body(
    joint: Joint, preload: Preload, cylinder: Cylinder, case: BeddingCase
) -> Explained:
    force = clamp_force(preload, cylinder.fasteners.count)
    less = cylinder.height - case.depth

    def body(*values: float) -> Newton:
        height, wire = values[-2:]
        needed = bedding_load(case.resistance, wire, height - less, cylinder.ring_diameter)
        return force(*values[:-2]) - needed

    return explain(
        body,
        (*clamp_terms(preload, cylinder.fasteners), *wire_terms(cylinder)),
        unit="N",
        formula="F − p · 2a · π · Dc, a = √(2Rδ − δ²)",
        source=BODY_SOURCE,
        assumptions=(
            text(f"clamp.model.{case.resistance.model}"),
            text(f"clamp.temper.{joint.copper.temper}"),
            text("clamp.assumes.sheet"),
            *(() if joint.face.answered else (text("clamp.assumes.flat"),)),
        ),
    )
