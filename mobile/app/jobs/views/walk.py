"""The way round the rings: where to lay the leaf now, what was saved, one tap back."""

import flet as ft

from core.forms.kept_words import place_words
from core.records.model import ReadingKind, Tapped
from core.texts import text
from mobile.app.jobs import walking
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.told import capital
from mobile.app.jobs.state.walk import SIDES, Walk, read_stops, stops
from mobile.app.jobs.views.findings import decides
from mobile.app.jobs.views.frame import Screen, chips, group, wide_button
from mobile.app.jobs.views.ring_view import ring_view
from mobile.app.views.leaf_pad import leaf_pad
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import button, on_fill, said, words

LEAST_RING, LARGEST_RING = 130.0, 300.0
REST = 430.0
"""What stands above and below the ring where leaves are tapped [px]."""
PLACE_KEY = 56.0


def walk_screen(jobs: Jobs, look: Look) -> Screen:
    """Ring and place above, leaves or keys below."""
    walk = walking.the_walk(jobs)
    cylinder = jobs.cylinder
    assert cylinder is not None
    ring = jobs.judged_ring(cylinder)
    width = look.width - 20
    height = max(LEAST_RING, min(0.72 * width, LARGEST_RING, look.height - REST))
    picture = ring_view(ring, walk.place, width, height, jobs.app.entry.metric, look)
    if not walk.place:
        nothing = text("jobs.decides.nothing")
        done = [_all_read(look), group(look, decides(ring.worst, nothing, look)), picture]
        return Screen(
            title=text("jobs.walk.title"), undo=True, body=[*done, *_ways(jobs, walk, look)]
        )
    return Screen(
        title=text("jobs.where.cylinder", cylinder=cylinder.number),
        undo=True,
        body=[picture, *_ways(jobs, walk, look)],
        foot=_foot(jobs, walk, look),
    )


def _all_read(look: Look) -> ft.Control:
    line = text("jobs.walk.done")
    return said("walk-done", line, words(look, line, look.row_size, bold=True), live=True)


def _foot(jobs: Jobs, walk: Walk, look: Look) -> ft.Control:
    pad = (
        leaf_pad(walking.WalkPad(jobs), look)
        if walk.by_leaves
        else number_pad(walking.keys(jobs), look)
    )
    keys = ft.Container(
        padding=ft.Padding.symmetric(horizontal=6), content=ft.Row(_keys(jobs, look), spacing=4)
    )
    return ft.Column([_place(jobs, walk, look), keys, pad], spacing=4, tight=True)


def _place(jobs: Jobs, walk: Walk, look: Look) -> ft.Control:
    """Where to measure now, large, and how far the walk is."""
    order, read = stops(jobs.the_job), read_stops(jobs.the_job, walk.tapped)
    far = text("jobs.walk.far", read=len(read & set(order)), all=len(order))
    place = place_words(walk.place)
    line = text("jobs.walk.at", place=place, tapped=text(f"kept.tapped.{walk.tapped}"), far=far)
    parts = [words(look, place, look.height_size, bold=True, one_line=True, expand=True)]
    if look.roomy:
        side = words(look, text(f"kept.tapped.{walk.tapped}"), look.small_size)
        count = words(look, far, look.small_size, colour=look.palette.quiet)
        parts.append(
            ft.Column(
                [side, count],
                spacing=0,
                tight=True,
                horizontal_alignment=ft.CrossAxisAlignment.END,
            )
        )
    content = ft.Container(padding=ft.Padding.symmetric(horizontal=12), content=ft.Row(parts))
    return said("place", line, content, live=True)


def _keys(jobs: Jobs, look: Look) -> list[ft.Control]:
    walk = walking.the_walk(jobs)
    return [
        _key("place-before", ft.Icons.ARROW_BACK, False, lambda: walking.go_back(jobs), look),
        _key("rocks", ft.Icons.SWAP_VERT, False, lambda: walking.keep_rocking(jobs), look, 2),
        _key(
            "place-next",
            ft.Icons.ARROW_FORWARD,
            bool(walk.reading),
            lambda: walking.go_on(jobs),
            look,
        ),
    ]


def _key(
    name: str, icon: ft.IconData, filled: bool, on_tap, look: Look, share: int = 1
) -> ft.Control:
    label, tint = text(f"jobs.walk.{name}"), on_fill(look, filled)
    content: list[ft.Control] = [ft.Icon(icon, color=tint, size=24)]
    if look.roomy or share > 1:
        content.append(words(look, label, look.body_size, bold=True, one_line=True, colour=tint))
    face = ft.Row(content, spacing=4, alignment=ft.MainAxisAlignment.CENTER)
    return button(
        look, f"walk-{name}", label, face, on_tap, height=PLACE_KEY, expand=share, filled=filled
    )


def _ways(jobs: Jobs, walk: Walk, look: Look) -> list[ft.Control]:
    """Before or after the hammer, and what is measured with."""
    sides = [(each.value, capital(text(f"kept.tapped.{each}"))) for each in SIDES]
    found = walking.instruments(jobs)
    kinds = [
        ("0", capital(text("kept.by.leaves"))),
        *((str(n), each[2]) for n, each in enumerate(found, 1)),
    ]
    chosen = next(
        (str(n) for n, each in enumerate(found, 1) if each[:2] == (walk.kind, walk.instrument)), "0"
    )

    def choose(number: str) -> None:
        kind, record, _ = found[int(number) - 1] if int(number) else (ReadingKind.LEAVES, "", "")
        walking.choose_kind(jobs, kind, record)

    parts = [
        *chips(
            look,
            "tapped",
            sides,
            walk.tapped,
            lambda to: walking.choose_side(jobs, Tapped(to)),
            columns=2,
        ),
        *chips(look, "with", kinds, chosen, choose),
    ]
    if walk.reading:
        parts.append(
            wide_button(
                look,
                "drop-reading",
                text("jobs.walk.drop", place=place_words(walk.place)),
                lambda: walking.drop_reading(jobs),
                icon=ft.Icons.DELETE_OUTLINE,
            )
        )
    return parts
