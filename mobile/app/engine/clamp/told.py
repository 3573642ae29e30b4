"""What a clamp entry amounts to: what is needed, what cannot be used, or the engine judged."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from core.calc.engine_clamp import EngineClamp, JudgedCylinder, engine_clamp
from core.errors import InputError
from core.forms.clamp_engine_form import ClampEngineForm, read_clamp_engine
from core.texts import text
from mobile.app.engine.clamp.entry import ClampEntry, form_texts, label, needs

OWN = "height-"
CALLED = {"head-face": "face"}
"""Fields of the form that the screen calls otherwise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampTold:
    """The answer to an entry.

    Parameters
    ----------
    needs
        Choices and fields that are still lacking.
    faults
        Sentences about what cannot be used.
    form, engine
        As read and as judged; none while something is lacking.
    texts
        What the answer was made from.
    """

    needs: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    form: ClampEngineForm | None = None
    engine: EngineClamp | None = None
    texts: Mapping[str, Sequence[str]] | None = None


def tell(entry: ClampEntry, before: ClampTold | None = None) -> ClampTold:
    """Answer an entry; the answer before is kept where nothing it rests on has changed."""
    lacking = needs(entry)
    if lacking:
        return ClampTold(needs=lacking)
    texts = form_texts(entry)
    if before is not None and before.texts == texts:
        return before
    try:
        form = read_clamp_engine(texts, lambda field: _name(entry, field))
        engine = engine_clamp(form.joint, form.cylinders)
    except InputError as error:
        return ClampTold(faults=tuple(each.sentence for each in error.faults), texts=texts)
    return ClampTold(form=form, engine=engine, texts=texts)


def _name(entry: ClampEntry, field: str) -> str:
    if field.startswith(OWN):
        return text("clamp.own_height", cylinder=field.removeprefix(OWN))
    return label(entry, CALLED.get(field, field))


def shown_cylinder(entry: ClampEntry, engine: EngineClamp) -> JudgedCylinder:
    """The cylinder that was picked, else the weakest."""
    named = (each for each in engine.cylinders if each.loads.cylinder.name == entry.cylinder)
    return next(named, engine.weakest)
