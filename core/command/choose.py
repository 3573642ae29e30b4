"""`choose`: which sheets the engine of an exported job allows, and what each changes."""

import argparse
from dataclasses import asdict
from pathlib import Path
from typing import Any

from core.calc.choice import Choice, SheetRow, choose, reasons
from core.calc.overlap import Bound, Conflict, Overlap
from core.calc.swap import SwapCard, card_lines
from core.calc.windows import End, Window
from core.command.answer import Answer, add_fields, columns, new_command
from core.errors import RecordError, refuse
from core.forms.check_form import SHEET_FIELD
from core.forms.kept_engine import KeptChoice, kept_choice, sheet_of
from core.records.fold import Fold
from core.records.model import Length as Kept
from core.records.parcel import SHOP, Parcel, read_parcel
from core.records.view import job_view, shop_view
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.texts.length import Length
from core.units import Field, read_list

FILE = "JOBFILE"
JOB = "job-"


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "choose")
    parser.add_argument("jobfile", metavar=FILE, help=text("choose.option.jobfile"))
    add_fields(parser, {field: f"choose.option.{field}" for field in ("job", "shelf")})
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    kept = _kept(_read(options.jobfile), options.job)
    shelf = _typed_shelf(options.shelf) if options.shelf else kept.shelf
    found = choose(kept.engine, shelf, pairs=kept.pairs)
    return Answer(data=as_data(found, kept.metric), table=_table(found, kept.metric))


def _read(path: str) -> Parcel:
    try:
        parcel = read_parcel(Path(path).read_bytes())
        parcel.refuse_if_faulty()
    except OSError as error:
        raise refuse(FILE, "choose.no_file", reason=error.strerror or error) from error
    except RecordError as error:
        raise refuse(FILE, "choose.unreadable", reason=error) from error
    return parcel


def _kept(parcel: Parcel, wanted: str | None) -> KeptChoice:
    jobs = sorted(name for name in parcel.ledgers if name.startswith(JOB))
    names = ", ".join(name.removeprefix(JOB) for name in jobs)
    if wanted is None and len(jobs) != 1:
        raise refuse("--job", "choose.which_job" if jobs else "choose.no_job", jobs=names)
    name = jobs[0] if wanted is None else JOB + wanted
    if name not in parcel.ledgers:
        raise refuse("--job", "choose.unknown_job", jobs=names)
    shop = parcel.ledgers.get(SHOP)
    return kept_choice(
        job_view(Fold(parcel.ledgers[name])), None if shop is None else shop_view(Fold(shop))
    )


def _typed_shelf(typed: str) -> tuple[Any, ...]:
    field = Field(
        name="--shelf",
        dimension=SHEET_FIELD.dimension,
        low=SHEET_FIELD.low,
        high=SHEET_FIELD.high,
        bare=SHEET_FIELD.bare,
    )
    return tuple(
        sheet_of(Kept(typed=each.text, mm=each.value), ASSUMED_HALF_WIDTHS)
        for each in read_list(typed, field)
    )


def as_data(found: Choice, metric: bool) -> dict[str, Any]:
    """The JSON object."""
    return {
        "windows": [_window(each, metric) for each in found.windows],
        "left_out": [{"part": each.part, "because": each.because} for each in found.left_out],
        "overlap": _overlap(found.overlap),
        "conflict": _conflict(found.conflict, metric),
        "sheets": [_row(each, metric) for each in found.rows],
        "run_mm": _thickness(found.run),
        "sure_mm": _thickness(found.sure),
        "unchecked_mm": _thickness(found.unchecked),
        "say": [each.said(metric=metric) for each in reasons(found)],
        "caution": text("caution.main"),
    }


def _thickness(row: SheetRow | None) -> float | None:
    return None if row is None else row.candidate.sheet.thickness


def _window(window: Window, metric: bool) -> dict[str, Any]:
    return {
        "part": window.part,
        "low": _end(window.low),
        "high": _end(window.high),
        "borderline_mm": window.borderline,
        "rule": window.acceptance.rule,
        "confidence": window.acceptance.confidence,
        "source": str(window.source),
        "say": window.sentence.said(metric=metric),
    }


def _end(end: End | None) -> dict[str, Any] | None:
    if end is None:
        return None
    return {
        "allowed_mm": end.allowed,
        "at_mm": end.at,
        "sure_mm": end.sure,
        "out_mm": end.out,
        "decided_by": end.decided_by,
    }


def _overlap(found: Overlap | None) -> dict[str, Any] | None:
    if found is None:
        return None
    return {
        "low": _bound(found.low),
        "high": _bound(found.high),
        "sure_low_mm": found.sure_low,
        "sure_high_mm": found.sure_high,
    }


def _bound(bound: Bound | None) -> dict[str, Any] | None:
    if bound is None:
        return None
    end = bound.end
    return {"part": bound.part, "mm": end.allowed, "decided_by": end.decided_by}


def _conflict(found: Conflict | None, metric: bool) -> dict[str, Any] | None:
    if found is None:
        return None
    return {
        "thicker": _bound(found.thicker),
        "thinner": _bound(found.thinner),
        "by_mm": found.by,
        "changes": [
            {
                "kind": each.kind,
                "amount": each.amount,
                "unit": each.unit,
                "rings": dict(each.rings),
                "say": each.sentence.said(metric=metric),
            }
            for each in found.changes
        ],
        "say": found.sentence.said(metric=metric),
    }


def _row(row: SheetRow, metric: bool) -> dict[str, Any]:
    return {
        "thickness_mm": row.candidate.sheet.thickness,
        "parts_mm": [each.thickness for each in row.candidate.parts],
        "verdict": row.verdict,
        "word": row.fit.word if row.fit else None,
        "share": row.fit.share if row.fit else None,
        "ring": row.fit.ring if row.fit else None,
        "probability": row.fit.probability if row.fit else None,
        "excluded_by": list(row.excluded_by),
        "checks": [asdict(each) for each in row.parts],
        "card": _card(row.card, metric),
    }


def _card(card: SwapCard | None, metric: bool) -> dict[str, Any] | None:
    if card is None:
        return None
    moved = ("piston_to_head", "intake_valve", "exhaust_valve", "preload", "dowel", "thread")
    sizes = {f"{name}_mm": getattr(card, name) for name in moved}
    groups = sizes | {"ratio": card.ratio, "intake_mm": card.intake, "cam_rad": card.cam}
    return {
        "rise_mm": card.rise,
        **{name: None if each is None else asdict(each) for name, each in groups.items()},
        "pushrod_mm": card.pushrod,
        "say": [each.said(metric=metric) for each in card_lines(card)],
    }


def _table(found: Choice, metric: bool) -> str:
    parts = [
        "\n".join(each.said(metric=metric) for each in reasons(found)),
        "\n".join(each.sentence.said(metric=metric) for each in found.windows),
        columns([_cells(each, metric) for each in found.rows]) if found.rows else "",
        "\n".join(each.because for each in found.left_out),
        text("caution.main"),
    ]
    return "\n\n".join(part for part in parts if part)


def _cells(row: SheetRow, metric: bool) -> tuple[str, ...]:
    excluded = ", ".join(text(f"windows.name.{part}") for part in row.excluded_by)
    return (
        f"{Length(row.candidate.sheet.thickness).shown(metric=metric):size}",
        text(f"verdict.{row.verdict}"),
        f"{row.fit.share:.0%} {text(f'word.{row.fit.word}')}" if row.fit else "",
        row.card.head.said(metric=metric) if row.card else "",
        excluded,
    )
