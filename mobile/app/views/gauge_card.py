"""The gauge card: for each sheet the leaf that must go and the leaf that must not."""

import flet as ft

from core.calc.gauge_card import Gauge, gauge_card
from core.calc.leaves import Stack
from core.calc.say import marks
from core.forms.check_form import read_gauges
from core.texts import text
from core.texts.length import Length
from mobile.app.model import App
from mobile.app.state.own_leaves import leaf_set
from mobile.app.state.told import field_name
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words


def gauge_card_view(app: App, look: Look) -> ft.Control:
    """One panel a sheet, thinnest first."""
    shelf = app.entry.texts.get("shelf", "")
    form = read_gauges({"shelf": [shelf]}, field_name)
    gauges = gauge_card(form.shelf, leaf_set(app.entry), form.practice)
    return ft.Column(
        [
            words(look, text("gauges.title"), look.title_size, bold=True),
            words(look, text("gauges.how"), look.body_size),
            *(_gauge(gauge, app.entry.metric, look) for gauge in gauges),
            *([] if gauges else [words(look, text("screen.no_shelf"), look.body_size)]),
        ],
        spacing=8,
    )


def _gauge(gauge: Gauge, metric: bool, look: Look) -> ft.Control:
    sheet = f"{Length(gauge.sheet.thickness):in}"
    goes, stops = _leaf(gauge.must_go, metric), _leaf(gauge.must_not_go, metric)
    phrase = text("gauges.phrase", sheet=sheet, goes=goes, stops=stops)
    lines = (
        (ft.Icons.CHECK, text("gauges.goes", leaf=goes), look.palette.passed),
        (ft.Icons.CLOSE, text("gauges.stops", leaf=stops), look.palette.failed),
    )
    return said(
        f"gauge-{sheet}",
        phrase,
        panel(
            look,
            words(look, text("gauges.sheet", sheet=sheet), look.row_size, bold=True),
            *(
                ft.Row(
                    [
                        ft.Icon(icon, color=tint, size=look.row_size * look.text_scale),
                        words(look, line, look.row_size, expand=True),
                    ],
                    spacing=8,
                )
                for icon, line, tint in lines
            ),
        ),
    )


def _leaf(stack: Stack | None, metric: bool) -> str:
    return text("table.no_leaf") if stack is None else " + ".join(marks(stack, metric))
