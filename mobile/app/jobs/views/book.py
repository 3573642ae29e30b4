"""How safe the book is: backup, room, whether the browser keeps it, and the way out and in."""

import flet as ft

from core.handover.coming import Coming, coming
from core.texts import text
from mobile.app.jobs import passing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.passing import IncomingFile, fault_lines
from mobile.app.jobs.state.room import backup_words, room_words
from mobile.app.jobs.views.frame import Screen, action_key, group, quiet, title, way, wide_button
from mobile.app.jobs.views.job import share_key
from mobile.app.jobs.views.list import ask_name
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words


def book_screen(jobs: Jobs, look: Look) -> Screen:
    """Backup first."""
    assert jobs.book is not None
    backup = backup_words(jobs.book.backup, jobs.now())
    take = ft.PickFiles(jobs.picker, with_data=True)
    name = jobs.book.device.name or text("jobs.nobody")
    return Screen(
        title=text("jobs.book"),
        body=[
            said("backup", backup, words(look, backup, look.row_size, bold=True)),
            quiet(look, text("jobs.backup.what")),
            wide_button(
                look,
                "export-all",
                text("jobs.out.everything"),
                lambda: jobs.run(passing.make_file, jobs, None),
                icon=ft.Icons.DOWNLOAD,
                filled=True,
            ),
            *share_key(jobs, look),
            action_key(look, "import", text("jobs.in.pick"), take, ft.Icons.UPLOAD_FILE),
            title(look, text("device.title")),
            group(look, *_device(jobs, look)),
            way(
                look,
                "device-name",
                text("jobs.device.title"),
                name,
                lambda: ask_name(jobs),
                icon=ft.Icons.EDIT,
            ),
        ],
    )


def _device(jobs: Jobs, look: Look) -> list[ft.Control]:
    kept = {True: "yes", False: "no", None: "unknown"}[jobs.app.page_state.kept]
    lines = {"kept": text(f"device.kept.{kept}"), "room": room_words(jobs.room)}
    return [said(name, line, words(look, line, look.body_size)) for name, line in lines.items()]


def incoming_screen(jobs: Jobs, look: Look) -> Screen:
    """What a file would bring; nothing changed so far."""
    file = jobs.incoming
    if file is None:
        return Screen(title=text("jobs.in.title"), body=[quiet(look, text("jobs.in.gone"))])
    told = text("jobs.in.summary", name=file.name, new=file.new)
    return Screen(
        title=text("jobs.in.title"),
        body=[
            said("incoming", told, words(look, told, look.body_size, bold=True)),
            *_faults(file, look),
            *(_ledger(coming(each), number, look) for number, each in enumerate(file.ledgers, 1)),
            wide_button(
                look,
                "take-in",
                text("jobs.in.take_good" if file.parcel.faults else "jobs.in.take"),
                lambda: jobs.run(passing.take_in, jobs),
                filled=True,
            ),
            wide_button(look, "leave-out", text("jobs.in.leave"), jobs.back),
        ],
    )


def _faults(file: IncomingFile, look: Look) -> list[ft.Control]:
    lines = fault_lines(file.parcel)
    if not lines:
        return []
    told = text("jobs.in.faults", lines="; ".join(lines))
    return [said("faults", told, words(look, told, look.body_size, colour=look.palette.failed))]


def _ledger(found: Coming, number: int, look: Look) -> ft.Control:
    """One job, or what all jobs share: what is new, and what differs from what is here."""
    tint = look.palette.undecided
    differing = [each.words for each in found.differences]
    phrase = " ".join((found.title, found.headline, *found.new, *differing))
    return said(
        f"ledger-{number}",
        phrase,
        group(
            look,
            words(look, found.title, look.row_size, bold=True),
            words(look, found.headline, look.body_size),
            *(quiet(look, each) for each in found.new),
            *(words(look, each, look.body_size, colour=tint) for each in differing),
        ),
    )
