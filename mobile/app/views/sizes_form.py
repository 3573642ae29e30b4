"""A form of sizes on the screen: each field a button that opens the number pad."""

from collections.abc import Callable, Sequence
from functools import partial

import flet as ft

from core.texts import text
from mobile.app.state import sizes_form as forms
from mobile.app.state.keys import Keys
from mobile.app.state.sizes_form import Kinds, SizesForm
from mobile.app.views.look import Look
from mobile.app.views.parts import button, field_height, in_rows, two_lines

Change = Callable[[Callable[[SizesForm], SizesForm]], None]
"""Takes a transition and applies it to the form as it stands then: quick taps are never lost."""


def size_buttons(
    form: SizesForm,
    names: Sequence[str],
    change: Change,
    look: Look,
    columns: int | None = None,
) -> list[ft.Control]:
    """Rows of fields; each opens the number pad."""
    return in_rows([_field(form, name, change, look) for name in names], look, columns=columns)


def _field(form: SizesForm, name: str, change: Change, look: Look) -> ft.Control:
    value = form.texts.get(name, "")
    typing = form.open_field == name
    label = text(f"field.{name}")
    return button(
        look,
        f"in-{name}",
        text("field.phrase", field=label, value=value or text("field.empty")),
        two_lines(look, label, value or "–", typing),
        lambda: change(partial(forms.open_field, name=name)),
        height=field_height(look),
        expand=True,
        filled=typing,
    )


def form_keys(form: SizesForm, kinds: Kinds, change: Change) -> Keys:
    """The number pad's keys for the open field of a form."""
    return Keys(
        title=text(f"field.{form.open_field}"),
        typed=form.typing,
        told=forms.told(form, kinds),
        press=lambda key: change(partial(forms.press, kinds=kinds, key=key)),
        erase=lambda: change(partial(forms.erase, kinds=kinds)),
        clear=lambda: change(partial(forms.clear, kinds=kinds)),
        done=lambda: change(forms.close),
        signed=kinds[form.open_field or ""].low < 0.0,
    )
