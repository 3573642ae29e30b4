"""`clamp`: clamp load, gas load, and how wire and gasket body share the clamp."""

import argparse
from collections.abc import Iterable
from random import Random
from typing import Any

from core.calc.clamp import CylinderLoads, Range
from core.calc.clamp_draws import Compared, cross_check
from core.calc.clamp_verdicts import Judgement, deciding_input
from core.calc.engine_clamp import EngineClamp, engine_clamp
from core.calc.load_curve import LoadCurve, load_curve
from core.calc.tightening import reminders, steps
from core.command.answer import Answer, add_fields, as_option, columns, new_command, typed_fields
from core.forms.clamp_form import FIELDS, ClampForm, read_clamp
from core.texts import text
from core.texts.force import Force
from core.texts.length import Length
from core.texts.share import Share, Sureness
from core.uncertain import Explained


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "clamp")
    add_fields(parser, {field: f"clamp.option.{field}" for field in FIELDS})
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_clamp(typed_fields(options, FIELDS), as_option)
    engine = engine_clamp(form.joint, [form.cylinder])
    compared = _compared(form, engine)
    return Answer(data=as_data(form, engine, compared), table=_table(form, engine, compared))


def _compared(form: ClampForm, engine: EngineClamp) -> tuple[Compared, ...]:
    if form.seed is None:
        return ()
    *_, last = cross_check(engine, Random(form.seed))
    return last.compared or ()


def judgements(engine: EngineClamp) -> tuple[Judgement, ...]:
    """Proof first, then the verdicts of the only cylinder."""
    return (engine.proof, *engine.weakest.judgements)


def as_data(
    form: ClampForm, engine: EngineClamp, compared: Iterable[Compared] = ()
) -> dict[str, Any]:
    """The JSON object."""
    loads = engine.weakest.loads
    curve = load_curve(form.joint, loads, form.sheet)
    told = judgements(engine)
    return {
        "preload_n": {"value": engine.preload.best} | _range(_preload_ends(engine)),
        "clamp_n": _explained(loads.clamp, loads.clamp_range),
        "gas_n": loads.gas,
        "gas_range_n": _range(loads.gas_range),
        "gas_is_floor": loads.cylinder.pressure.is_floor,
        "separation": loads.separation,
        "separation_range": _range(loads.separation_range),
        "left_n": _explained(loads.left, loads.left_range),
        "proof_share": {
            "value": engine.proof_share.value,
            "high": engine.proof_share_high,
            "source": str(engine.proof_share.source),
        },
        "proof_share_at_peak": _explained(loads.at_peak, loads.at_peak_range),
        "wire_n": _range(loads.wire) | {"models": _models(loads)},
        "body_n": _range(loads.body),
        "beds": told[-1].check.verdict,
        "heights": _heights(curve),
        "verdicts": [_verdict(each) for each in told],
        "draws": [_drawn(each) for each in compared],
        "steps": [each.share for each in steps()],
        "retorque": [str(each) for each in reminders()],
        "caution": str(engine.caution),
    }


def _preload_ends(engine: EngineClamp) -> Range:
    return Range(low=engine.preload.low_end, high=engine.preload.high_end)


def _range(ends: Range) -> dict[str, Any]:
    return {"low": ends.low, "high": ends.high}


def _explained(explained: Explained, ends: Range) -> dict[str, Any]:
    shares = zip(explained.terms, explained.shares, strict=True)
    return {
        "value": explained.value,
        **_range(ends),
        "u": explained.u,
        "shares": {term.name: share for term, share in shares if share},
        "formula": explained.formula,
        "assumptions": list(explained.assumptions),
        "source": str(explained.source),
    }


def _models(loads: CylinderLoads) -> list[dict[str, Any]]:
    return [
        {
            "model": case.resistance.model,
            "pressure_mpa": case.resistance.pressure,
            "depth_mm": case.depth,
            "line_load_n_per_mm": case.line_load,
            "needed_n": case.needed,
            "carried_n": case.carried,
            "body_n": case.body,
            "stands_off_mm": case.stands_off,
            "slack_height_mm": case.slack_height,
            "source": str(case.resistance.source),
        }
        for case in loads.bedding
    ]


def _heights(curve: LoadCurve) -> dict[str, Any]:
    low, high = curve.slack_height
    return {
        "today_mm": curve.today,
        "quarter_mm": curve.quarter,
        "slack_mm": {"low": low, "high": high},
        "slack_at_low_clamp_mm": curve.slack_at_low_clamp,
    }


def _verdict(judgement: Judgement) -> dict[str, Any]:
    check = judgement.check
    return {
        "id": check.id,
        "verdict": check.verdict,
        "word": text(f"word.{check.word}"),
        "value": check.value,
        "limit": check.limit,
        "unit": check.unit,
        "probability": check.probability,
        "rule": check.rule,
        "because": str(judgement.because),
        "settle": judgement.settle and str(judgement.settle),
        "change": judgement.change and str(judgement.change),
        "source": str(check.source),
    }


def _drawn(row: Compared) -> dict[str, Any]:
    return {
        "of": row.quantity,
        "mean_n": row.mean,
        "u_n": row.u,
        "first_order_u_n": row.first_order_u,
        "above_zero": row.above_zero,
        "first_order_above_zero": row.first_order_above_zero,
        "near_linear": row.near_linear,
    }


def _table(form: ClampForm, engine: EngineClamp, compared: Iterable[Compared]) -> str:
    loads = engine.weakest.loads
    term, share = deciding_input(loads.clamp)
    lines = [_load_rows(form, engine, loads), columns(_verdict_rows(engine)), _reasons(engine)]
    lines.append(text("clamp.decides", input=term.name, share=Share(share)))
    lines.append("\n".join(_drawn_line(each) for each in compared))
    lines.append("\n".join(str(each) for each in (*(s.say for s in steps()), *reminders())))
    lines.append(str(engine.caution))
    return "\n\n".join(each for each in lines if each)


def _load_rows(form: ClampForm, engine: EngineClamp, loads: CylinderLoads) -> str:
    gas = "gas_floor" if loads.cylinder.pressure.is_floor else "gas"
    rows = [
        ("preload", _with_value(engine.preload.best, _preload_ends(engine))),
        ("clamp", _with_value(loads.clamp.value, loads.clamp_range)),
        (gas, _with_value(loads.gas, loads.gas_range)),
        ("left", _with_value(loads.left.value, loads.left_range)),
        ("wire", _ends(loads.wire)),
        ("body", _ends(loads.body)),
        ("slack", " · ".join(dict.fromkeys(map(_height, loads.slack_height)))),
    ]
    if form.sheet is not None:
        rows.append(("quarter", _height(load_curve(form.joint, loads, form.sheet).quarter)))
    return columns([(text(f"clamp.row.{key}"), cell) for key, cell in rows])


def _with_value(value: float, ends: Range) -> str:
    return text("clamp.value_range", value=Force(value), low=Force(ends.low), high=Force(ends.high))


def _ends(ends: Range) -> str:
    return text("clamp.range", low=Force(ends.low), high=Force(ends.high))


def _height(height: float | None) -> str:
    return text("clamp.any_height") if height is None else f"{Length(height):in} in"


def _verdict_rows(engine: EngineClamp) -> list[tuple[str, ...]]:
    return [
        (
            text(f"check.{check.id}"),
            text(f"verdict.{check.verdict}"),
            text(f"word.{check.word}"),
            ""
            if check.probability is None
            else text("table.sure", sure=Sureness(check.probability)),
            f"{text(f'rule.{check.rule}')}; {check.source}",
        )
        for check in (each.check for each in judgements(engine))
    ]


def _reasons(engine: EngineClamp) -> str:
    return "\n".join(
        f"{text(f'check.{each.check.id}')}: "
        + "; ".join(str(part) for part in (each.because, each.settle, each.change) if part)
        for each in judgements(engine)
    )


def _drawn_line(row: Compared) -> str:
    return text(
        f"clamp.draws.{'near' if row.near_linear else 'far'}",
        quantity=text(f"clamp.quantity.{row.quantity}"),
        drawn=Force(row.u),
        first=Force(row.first_order_u),
    )
