"""One job: what decides, every cylinder, and the ways to everything else of it."""

import flet as ft

from core.forms.kept_verdicts import JudgedBank, JudgedRing, decided_sheet
from core.forms.kept_words import face_words, state_words
from core.records.model import JobState
from core.records.steps import STEPS
from core.records.view import live
from core.texts import text
from mobile.app.handover import desk as hand_over
from mobile.app.jobs import filing, passing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.told import deck_line, ring_line
from mobile.app.jobs.views.findings import decides, finding_row
from mobile.app.jobs.views.frame import Screen, chips, group, quiet, title, way, wide_button
from mobile.app.overview import desk as overview
from mobile.app.views.look import Look
from mobile.app.views.parts import button, said, words
from mobile.app.views.verdict_sign import sign


def job_screen(jobs: Jobs, look: Look) -> Screen:
    """The worst finding first, then the cylinders."""
    job = jobs.the_job
    banks = jobs.judged()
    return Screen(
        title=job.title or text("jobs.untitled"),
        undo=True,
        body=[
            *_deleted(jobs, look),
            *_demo(jobs, look),
            *_rivals(jobs, look),
            _decides(banks, look),
            *(part for bank in banks for part in _bank(jobs, bank, look)),
            *_ways(jobs, look),
            *_out(jobs, look),
            title(look, text("jobs.state")),
            *_states(jobs, look),
            *_more(jobs, look),
        ],
    )


def _decides(banks: tuple[JudgedBank, ...], look: Look) -> ft.Control:
    nothing = text("jobs.decides.nothing")
    return group(look, decides(deck_line(banks), nothing, look, "engine-decides"))


def _demo(jobs: Jobs, look: Look) -> list[ft.Control]:
    if not jobs.the_job.demo:
        return []
    line = text("jobs.demo.told")
    return [
        said(
            "demo-mark",
            line,
            words(look, line, look.body_size, bold=True, colour=look.palette.copper),
        )
    ]


def _deleted(jobs: Jobs, look: Look) -> list[ft.Control]:
    if not jobs.the_job.deleted:
        return []
    line = text("jobs.deleted")
    return [
        group(
            look,
            words(look, line, look.body_size, bold=True),
            wide_button(
                look, "restore-job", text("jobs.restore"), lambda: jobs.restore("job"), filled=True
            ),
        )
    ]


def _rivals(jobs: Jobs, look: Look) -> list[ft.Control]:
    """Values on which people differ wait for a word."""
    count = len(jobs.ledger().rivals())
    if not count:
        return []
    return [
        way(
            look,
            "rivals",
            text("jobs.rivals"),
            text("jobs.rivals.n", n=count),
            lambda: jobs.go("history", came_from="job", record=""),
            icon=ft.Icons.CALL_SPLIT,
        )
    ]


def _bank(jobs: Jobs, bank: JudgedBank, look: Look) -> list[ft.Control]:
    parts: list[ft.Control] = [title(look, bank.bank.name or text("jobs.bank.only"))]
    if bank.across:
        parts.append(finding_row(bank.across, look))
    parts += [_ring(jobs, ring, look) for ring in bank.rings]
    return parts


def _ring(jobs: Jobs, ring: JudgedRing, look: Look) -> ft.Control:
    number, line = ring.cylinder.number, ring_line(ring)
    worst = ring.worst
    mark = (
        sign(look, worst.verdict, worst.word, look.title_size)
        if worst
        else ft.Icon(ft.Icons.RADIO_BUTTON_UNCHECKED, color=look.palette.quiet, size=24)
    )
    face = ft.Container(
        padding=ft.Padding.symmetric(horizontal=6),
        content=ft.Row(
            [
                words(look, number, look.title_size, bold=True),
                mark,
                words(look, line, look.body_size, expand=True),
            ],
            spacing=10,
        ),
    )
    key = button(
        look,
        f"cylinder-{number}",
        text("jobs.ring.phrase", cylinder=number, line=line),
        face,
        lambda: jobs.go("cylinder", cylinder=ring.cylinder.id),
        height=max(60.0, 2.9 * look.body_size * look.text_scale + 8),
        expand=True,
        colour=look.palette.panel,
    )
    return ft.Row([key])


def _ways(jobs: Jobs, look: Look) -> list[ft.Control]:
    job = jobs.the_job
    sheet = decided_sheet(job)
    done = sum(each.done for each in job.steps)
    squeezes = len(live(job.squeezes))
    none = text("field.empty")
    return [
        way(
            look,
            "sheet",
            text("jobs.sheet"),
            sheet.typed if sheet else none,
            lambda: jobs.go("sheet"),
        ),
        way(
            look,
            "steps",
            text("jobs.steps"),
            text("jobs.steps.done", done=done, all=len(STEPS)),
            lambda: jobs.go("steps"),
        ),
        way(
            look,
            "squeeze",
            text("jobs.squeeze"),
            text("jobs.squeeze.n", n=squeezes) if squeezes else none,
            lambda: open_squeeze(jobs),
        ),
        way(
            look,
            "identity",
            text("jobs.identity"),
            " · ".join(filter(None, (job.engine, job.owner, face_words(job.head_face)))),
            lambda: jobs.go("identity"),
        ),
    ]


def _out(jobs: Jobs, look: Look) -> list[ft.Control]:
    """To a customer, a crew, a caller; and beside another job."""
    return [
        way(
            look,
            "give",
            text("giving.way"),
            text("giving.way.what"),
            lambda: jobs.run(hand_over.give, jobs),
            icon=ft.Icons.SEND,
        ),
        wide_button(look, "compare", text("compare.way"), lambda: overview.open_comparison(jobs)),
    ]


def open_squeeze(jobs: Jobs) -> None:
    """The last trial squeeze, or the first."""
    found = live(jobs.the_job.squeezes)
    if found:
        jobs.go("squeeze", record=found[-1].id)
    else:
        filing.open_new(jobs, "squeeze", "squeeze")


def _states(jobs: Jobs, look: Look) -> list[ft.Control]:
    choices = [(each.value, state_words(each)) for each in JobState]
    chosen = jobs.the_job.state.value
    return chips(look, "state", choices, chosen, lambda to: filing.choose_state(jobs, JobState(to)))


def _more(jobs: Jobs, look: Look) -> list[ft.Control]:
    job_id = jobs.desk.job
    parts = [
        *_cylinders_gone(jobs, look),
        wide_button(
            look, "add-cylinder", text("jobs.cylinder.add"), lambda: filing.add_cylinder(jobs)
        ),
        wide_button(look, "next-job", text("jobs.duplicate"), lambda: filing.begin_next(jobs)),
        quiet(look, text("jobs.duplicate.what")),
        wide_button(
            look, "keep-template", text("jobs.template.keep"), lambda: filing.keep_template(jobs)
        ),
        wide_button(
            look,
            "export-job",
            text("jobs.out.job"),
            lambda: jobs.run(passing.make_file, jobs, job_id),
            icon=ft.Icons.DOWNLOAD,
        ),
        *share_key(jobs, look),
    ]
    if not jobs.the_job.deleted:
        parts.append(
            wide_button(
                look,
                "delete-job",
                text("jobs.delete"),
                jobs.delete_job,
                icon=ft.Icons.DELETE_OUTLINE,
            )
        )
    return parts


def _cylinders_gone(jobs: Jobs, look: Look) -> list[ft.Control]:
    """Cylinders that were deleted can be brought back."""
    return [
        wide_button(
            look,
            f"restore-cylinder-{each.number}",
            text("jobs.cylinder.restore", number=each.number),
            lambda record=each.id: jobs.restore(record),
        )
        for each in jobs.the_job.cylinders
        if each.deleted
    ]


def share_key(jobs: Jobs, look: Look) -> list[ft.Control]:
    """Send the file that was just made."""
    if jobs.outgoing is None:
        return []
    label = text("jobs.out.share", name=jobs.outgoing.name)
    return [
        wide_button(
            look,
            "share-file",
            label,
            lambda: jobs.run(passing.share_file, jobs),
            icon=ft.Icons.SHARE,
        )
    ]
