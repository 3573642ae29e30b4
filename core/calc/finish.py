"""Surface finish, in both units; what cannot be converted is refused."""

from dataclasses import dataclass
from enum import StrEnum

from core.errors import refuse
from core.tables.cut_practice import DECK, DECK_SOURCE
from core.unit_types import Millimetre
from core.verdict import PLAIN, Check, Verdict, judge

MICROMETRE: Millimetre = 1e-3
MICROINCH: Millimetre = 25.4e-6


class RoughnessParameter(StrEnum):
    """What a roughness value is the measure of."""

    RA = "Ra"
    RZ = "Rz"


@dataclass(frozen=True, slots=True, kw_only=True)
class Roughness:
    """A roughness value with its parameter.

    Parameters
    ----------
    value
        Roughness [mm].
    """

    parameter: RoughnessParameter
    value: Millimetre

    @property
    def micrometres(self) -> float:
        return self.value / MICROMETRE

    @property
    def microinches(self) -> float:
        return self.value / MICROINCH


def as_parameter(roughness: Roughness, parameter: RoughnessParameter) -> Roughness:
    """The same roughness, if it is a value of that parameter.

    Raises
    ------
    InputError
        If another parameter is asked: the ratio of Rz to Ra hangs on the shape of the profile.

    Source
    ------
    ISO 21920-2:2021: Ra is a mean over the profile, Rz a height between peaks and valleys.
    """
    if roughness.parameter is not parameter:
        raise refuse("finish", "finish.no_factor", had=roughness.parameter, wanted=parameter)
    return roughness


def finish_check(roughness: Roughness, roughest: Millimetre = DECK.finish) -> Check:
    """Whether a face is smooth enough under soft copper; only Ra is judged.

    Parameters
    ----------
    roughest
        Largest Ra [mm].

    Raises
    ------
    InputError
        If the value is not an Ra.

    Source
    ------
    *common practice, no source*: about 30 to 60 µin Ra, smoother is safer.
    """
    value = as_parameter(roughness, RoughnessParameter.RA).value
    slack = 1e-9 * roughest
    verdict = judge(roughest - value, float(value <= roughest + slack), PLAIN, slack)
    return Check(
        id="finish",
        verdict=verdict,
        word="smooth" if verdict is Verdict.PASS else "rough",
        value=value,
        limit=roughest,
        unit="mm",
        probability=None,
        rule=PLAIN.rule,
        source=DECK_SOURCE,
    )
