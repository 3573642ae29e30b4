"""The ring of a cylinder on the screen."""

import flet as ft
import flet.canvas as cv

from core.forms.kept_verdicts import JudgedRing, ReadPlace
from core.forms.kept_words import place_words, reading_words
from core.records.model import Place
from core.texts import text
from core.texts.length import Length
from mobile.app.drawing.ring import RingPicture, RingPlace, draw_ring
from mobile.app.jobs.state.told import place_short
from mobile.app.jobs.state.walk import JOINT_AFTER, JOINT_BEFORE, places_of
from mobile.app.views.look import Look
from mobile.app.views.parts import said
from mobile.app.views.section_view import drawn

JOINTS = (JOINT_BEFORE, JOINT_AFTER)
ASIDE = {JOINT_BEFORE: -0.85, JOINT_AFTER: 0.85}
"""How far from the joint its places are drawn, so that both can be seen [h]."""
LARGEST_LETTERS = 0.07
"""Against the lesser side of the picture."""
JOINT_OTHERWISE, BRIDGE_AT = 4.5, 10.5
"""Where the joint is drawn while nobody entered it, and the bridge, wherever it is [h]."""


def ring_view(
    ring: JudgedRing, here: Place, width: float, height: float, metric: bool, look: Look
) -> ft.Control:
    """Places with their heights; proud ones and the one to read stand out."""
    read = {each.place: each for each in ring.places}
    joint = float(ring.cylinder.joint) if ring.cylinder.joint.isdecimal() else JOINT_OTHERWISE
    picture = RingPicture(
        places=tuple(
            _place(place, joint, read.get(place), place == here, metric) for place in _every(ring)
        ),
        joint=joint,
        middle=(text("jobs.where.cylinder", cylinder=ring.cylinder.number), _median(ring, metric)),
    )
    shapes = draw_ring(picture, width, height, _letters(min(width, height), look))
    canvas = cv.Canvas(
        width=width, height=height, shapes=[drawn(each, look.palette) for each in shapes]
    )
    return said("ring", ring_phrase(ring), canvas)


def _letters(side: float, look: Look) -> float:
    """Size of the words: as the system wants it, as far as the dots have room for it [px]."""
    return min(look.small_size * look.text_scale, LARGEST_LETTERS * side)


def _every(ring: JudgedRing) -> tuple[Place, ...]:
    """Places to read, and others that were read all the same."""
    asked = places_of(ring.cylinder)
    return (*asked, *(each.place for each in ring.places if each.place not in asked))


def _place(
    place: Place, joint: float, read: ReadPlace | None, here: bool, metric: bool
) -> RingPlace:
    beside = place in JOINTS
    return RingPlace(
        hour=_drawn_at(place, joint),
        role=_role(read),
        inside=_height(read, metric),
        outside="" if beside else place_short(place),
        here=here,
        inner=beside,
    )


def _drawn_at(place: Place, joint: float) -> float:
    if place.isdecimal():
        return float(place)
    return joint + ASIDE[place] if place in ASIDE else BRIDGE_AT


def _role(read: ReadPlace | None) -> str:
    if read is None:
        return "line"
    if read.rocks or read.proud:
        return "failed"
    return "passed" if read.over_median is not None else "undecided"


def _height(read: ReadPlace | None, metric: bool) -> str:
    if read is None:
        return ""
    if read.rocks:
        return text("jobs.ring.high")
    if read.height is None:
        return "?"
    return f"{Length(read.height.value):{'mm' if metric else 'thou'}}"


def _median(ring: JudgedRing, metric: bool) -> str:
    if ring.median is None:
        return ""
    return text("jobs.ring.median", height=Length(ring.median).shown(metric=metric))


def ring_phrase(ring: JudgedRing) -> str:
    """Every reading of a ring, as it is said."""
    told = [
        text(
            "jobs.ring.place",
            place=place_words(each.place),
            read=reading_words(each.reading.measured),
        )
        for each in ring.places
        if each.reading.measured
    ]
    return " ".join(told) or text("jobs.ring.unread")
