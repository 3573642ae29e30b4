"""`ratio`: the compression ratio with a sheet, and the sheet for a ratio."""

import argparse
from typing import Any

from core.calc.clearances import piston_to_head
from core.calc.compression import Compression, compression
from core.command.answer import Answer, add_fields, as_option, columns, new_command, typed_fields
from core.forms.volume_form import FIELDS, VolumeForm, read_volumes
from core.texts import text
from core.texts.length import Length
from core.unit_types import CC, THOU, Millimetre


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "ratio")
    add_fields(parser, {field: f"ratio.option.{field}" for field in FIELDS})
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_volumes(typed_fields(options, FIELDS), as_option)
    found = None if form.sheet is None else compression(form.cylinder, form.sheet)
    return Answer(data=as_data(form, found), table=_table(form, found))


def as_data(form: VolumeForm, found: Compression | None) -> dict[str, Any]:
    """The JSON object."""
    data: dict[str, Any] = {}
    if found and form.sheet is not None:
        data |= _ratio_data(found)
        data["piston_to_head_mm"] = piston_to_head(form.cylinder.deck, form.sheet)
    if form.wanted_sheet is not None:
        data["gasket_mm"] = form.wanted_sheet
    return data | {"caution": text("caution.main")}


def _ratio_data(found: Compression) -> dict[str, Any]:
    shares = zip(found.ratio.terms, found.ratio.shares, strict=True)
    return {
        "ratio": found.ratio.value,
        "u": found.ratio.u,
        "swept_cc": found.swept / CC,
        "clearance_cc": found.clearance / CC,
        "gasket_cc": found.gasket / CC,
        "deck_cc": found.deck / CC,
        "per_thou": found.slope * THOU,
        "shares": {term.name: share for term, share in shares},
        "formula": found.ratio.formula,
        "assumptions": list(found.ratio.assumptions),
        "left_out": list(found.left_out),
        "source": str(found.ratio.source),
    }


def _table(form: VolumeForm, found: Compression | None) -> str:
    parts = [columns([*_ratio_rows(form, found), *_wanted_rows(form.wanted_sheet)])]
    if found:
        parts.append(text("ratio.left_out", parts="; ".join(found.left_out)))
    return "\n\n".join((*parts, text("caution.main")))


def _ratio_rows(form: VolumeForm, found: Compression | None) -> list[tuple[str, str]]:
    if found is None or form.sheet is None:
        return []
    gap = Length(piston_to_head(form.cylinder.deck, form.sheet))
    return [
        (text("ratio.row.ratio"), f"{found.ratio.value:.2f} ± {2 * found.ratio.u:.2f}"),
        (text("ratio.row.per_thou"), f"{found.slope * THOU:+.4f}"),
        (text("ratio.row.swept"), f"{found.swept / CC:.1f} cc"),
        (text("ratio.row.clearance"), f"{found.clearance / CC:.2f} cc"),
        (text("ratio.row.gasket"), f"{found.gasket / CC:.2f} cc"),
        (text("ratio.row.piston_to_head"), _both(gap)),
    ]


def _wanted_rows(sheet: Millimetre | None) -> list[tuple[str, str]]:
    return [] if sheet is None else [(text("ratio.row.sheet"), _both(Length(sheet)))]


def _both(length: Length) -> str:
    return f"{length:in} in · {length:mm} mm"
