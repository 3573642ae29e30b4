"""`vee`: what a rise of both heads does on the intake side of a V engine."""

import argparse
import math
from dataclasses import asdict
from typing import Any

from core.calc.vee import SOURCE
from core.command.answer import Answer, add_fields, as_option, columns, new_command, typed_fields
from core.forms.vee_form import FIELDS, VeeForm, read_vee
from core.texts import text
from core.texts.length import Length


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "vee")
    add_fields(parser, {field: f"vee.option.{field}" for field in FIELDS})
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_vee(typed_fields(options, FIELDS), as_option)
    return Answer(data=as_data(form), table=_table(form))


def as_data(form: VeeForm) -> dict[str, Any]:
    """The JSON object."""
    shift = {f"{part}_mm": value for part, value in asdict(form.shift).items()}
    lean = math.degrees(form.vee.face_lean)
    return shift | {"face_lean_deg": lean, "source": str(SOURCE), "caution": text("caution.main")}


def _table(form: VeeForm) -> str:
    rows = [
        (text(f"vee.row.{part}"), f"{Length(value):in} in · {Length(value):mm} mm")
        for part, value in asdict(form.shift).items()
    ]
    return "\n\n".join((columns(rows), text("caution.main")))
