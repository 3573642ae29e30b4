"""One cylinder: what decides it, its ring, where to tap again, and everything measured."""

import flet as ft

from core.forms.kept_verdicts import JudgedRing
from core.forms.kept_words import place_words
from core.records.model import Place, Tapped
from core.records.view import live
from core.texts import text
from mobile.app.jobs import filing, passing, walking
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.findings import decides, hammer, ring_findings
from mobile.app.jobs.views.frame import Screen, group, quiet, title, way, wide_button
from mobile.app.jobs.views.ring_view import ring_view
from mobile.app.views.look import Look

LARGEST_RING = 340.0
RING_SHARE = 0.8


def cylinder_screen(jobs: Jobs, look: Look) -> Screen:
    """The verdict, the picture, the readings."""
    cylinder = jobs.cylinder
    assert cylinder is not None
    ring = jobs.judged_ring(cylinder)
    width = look.width - 20
    height = min(width * RING_SHARE, LARGEST_RING)
    return Screen(
        title=text("jobs.where.cylinder", cylinder=cylinder.number),
        undo=True,
        body=[
            group(look, decides(ring.worst, text("jobs.decides.nothing"), look)),
            *_tap_again(jobs, ring, look),
            _walk(jobs, ring, look),
            ring_view(ring, "", width, height, jobs.app.entry.metric, look),
            *_rest(ring, look),
            *_ways(jobs, ring, look),
        ],
    )


def _tap_again(jobs: Jobs, ring: JudgedRing, look: Look) -> list[ft.Control]:
    return [_tap_here(jobs, ring.cylinder.id, place, look) for place in ring.tap_again]


def _tap_here(jobs: Jobs, cylinder: str, place: Place, look: Look) -> ft.Control:
    return wide_button(
        look,
        f"tap-again-{place.replace(' ', '-')}",
        text("jobs.tap_again", place=place_words(place)),
        lambda: walking.begin(jobs, cylinder, place, Tapped.AFTER),
        icon=ft.Icons.HARDWARE,
        filled=True,
    )


def _walk(jobs: Jobs, ring: JudgedRing, look: Look) -> ft.Control:
    key = "jobs.walk.go_on" if ring.places else "jobs.walk.begin"
    return wide_button(
        look,
        "walk",
        text(key),
        lambda: walking.begin(jobs, ring.cylinder.id),
        icon=ft.Icons.ROTATE_RIGHT,
        filled=not ring.tap_again,
        height=64,
    )


def _rest(ring: JudgedRing, look: Look) -> list[ft.Control]:
    others = ring_findings(ring, look)
    told = hammer(ring, look)
    parts: list[ft.Control] = [group(look, *others)] if others else []
    if told:
        parts.append(group(look, title(look, text("check.tapped")), *told))
    return parts


def _ways(jobs: Jobs, ring: JudgedRing, look: Look) -> list[ft.Control]:
    cylinder = ring.cylinder
    wire = cylinder.wire.typed if cylinder.wire else text("field.empty")
    seen = live(cylinder.evidence)
    return [
        way(
            look,
            "sizes",
            text("jobs.sizes"),
            text("jobs.sizes.wire", wire=wire),
            lambda: jobs.go("sizes"),
        ),
        way(
            look,
            "readings",
            text("jobs.readings"),
            text("jobs.readings.n", n=len(live(cylinder.readings))),
            lambda: jobs.go("readings"),
        ),
        way(
            look,
            "evidence",
            text("jobs.evidence"),
            text("jobs.evidence.n", n=len(seen)) if seen else text("field.empty"),
            lambda: open_evidence(jobs),
        ),
        *_check(jobs, ring, look),
    ]


def open_evidence(jobs: Jobs) -> None:
    """What was last seen after running, or a new look."""
    cylinder = jobs.cylinder
    seen = live(cylinder.evidence) if cylinder else ()
    if seen:
        jobs.go("evidence", record=seen[-1].id)
        jobs.run(passing.fetch_pictures, jobs)
    else:
        filing.open_new(jobs, "evidence", "evidence")


def _check(jobs: Jobs, ring: JudgedRing, look: Look) -> list[ft.Control]:
    """The highest place as a quick check."""
    read = [each for each in ring.places if each.height]
    if not read:
        return [quiet(look, text("jobs.check.unread"))]
    highest = max(read, key=lambda each: each.height.value if each.height else 0.0)
    return [
        wide_button(
            look,
            "as-check",
            text("jobs.check.open", place=place_words(highest.place)),
            lambda: passing.check_this(jobs, ring.cylinder, highest.place),
            icon=ft.Icons.STRAIGHTEN,
        )
    ]
