"""What a quick check under way tells: an answer, or what is missing, or what is wrong."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from core.calc.quick_check import Answer, answer
from core.errors import Fault, InputError, fault
from core.forms.check_form import FIELDS, HEIGHT_FIELDS, read_check
from core.texts import text
from mobile.app.state.entry import FACES_WITH_DEPTH, Entry
from mobile.app.state.own_leaves import leaf_set


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What can be said of an entry.

    Parameters
    ----------
    answer
        None while no height is read or a field is wrong.
    metric
        Whether it is said in mm.
    faults
        What is wrong, by field.
    echoes
        How each size was understood, by field.
    """

    answer: Answer | None = None
    metric: bool = False
    faults: tuple[Fault, ...] = ()
    echoes: Mapping[str, str]


def field_name(field: str) -> str:
    """What a sentence calls a field on the screen."""
    return text(f"field.{field}")


def form_texts(entry: Entry) -> dict[str, list[str]]:
    """The fields that go into the calculation, each filled or left out."""
    texts = {field: [each] for field, each in entry.texts.items() if field in FIELDS}
    face = entry.texts.get("face")
    if face:
        depth = entry.texts.get("face-depth", "")
        texts["head-face"] = [f"{face}:{depth}" if face in FACES_WITH_DEPTH else face]
    return texts


def lacks_depth(entry: Entry) -> bool:
    """Whether a print or a receiver waits for its depth."""
    return entry.texts.get("face") in FACES_WITH_DEPTH and not entry.texts.get("face-depth")


def tell(entry: Entry) -> Told:
    """Judge what stands in an entry; nothing is computed from an incomplete one."""
    texts = form_texts(entry)
    if not any(texts.get(field) for field in HEIGHT_FIELDS):
        return Told(echoes={}, metric=entry.metric)
    if lacks_depth(entry):
        lacking = fault(field_name("face-depth"), "face.depth_missing")
        return Told(faults=(lacking,), echoes={}, metric=entry.metric)
    try:
        form = read_check(texts, field_name)
    except InputError as error:
        return Told(faults=error.faults, echoes={}, metric=entry.metric)
    asked = replace(form.asked, leaf_set=leaf_set(entry))
    return Told(answer=answer(asked), metric=entry.metric, echoes=form.echoes)
