"""Every screen of the jobs at every size: names, phrases, targets that a thumb hits."""

import flet as ft
import pytest

from mobile.app.theme import DARK, LIGHT
from mobile.app.views.look import Look
from tests.jobs_without_page import JobsWithoutPage

LOOKS = {
    "phone": Look(palette=LIGHT, width=390, height=844, text_scale=1.0),
    "small": Look(palette=LIGHT, width=320, height=568, text_scale=1.0),
    "small, doubled text": Look(palette=DARK, width=320, height=568, text_scale=2.0),
    "wide": Look(palette=LIGHT, width=1280, height=800, text_scale=1.0),
}
WAYS = {
    "list": (),
    "new": ("new-job", "banks-2"),
    "book": ("book",),
    "shop": ("shop",),
    "spool": ("shop", "new-spool"),
    "groove": ("shop", "new-test-groove"),
    "instrument": ("shop", "new-instrument"),
    "job": ("demo",),
    "identity": ("demo", "identity", "face-printed"),
    "steps": ("demo", "steps"),
    "sheet": ("demo", "sheet"),
    "squeeze": ("demo", "squeeze"),
    "words": ("demo", "identity", "words-title"),
    "cylinder": ("demo", "cylinder-3"),
    "sizes": ("demo", "cylinder-3", "sizes", "in-job-bore"),
    "readings": ("demo", "cylinder-3", "readings", "delete-reading-1"),
    "history": ("demo", "cylinder-3", "readings", "history-reading-1"),
    "evidence": ("demo", "cylinder-3", "evidence"),
    "walk": ("demo", "cylinder-3", "walk"),
    "walk by caliper": ("demo", "cylinder-3", "walk", "with-1"),
}
LEAST_TARGET = 48.0


@pytest.mark.parametrize("size", LOOKS)
@pytest.mark.parametrize("screen", WAYS)
def test_every_screen_stands_at_every_size(screen, size):
    phone = JobsWithoutPage()
    phone.tap(*WAYS[screen])
    names = phone.names(LOOKS[size])
    assert "title" in names or size == "wide"
    for name, each in names.items():
        if each.button:
            assert each.label, name
            box = each.content
            assert isinstance(box, ft.Container)
            assert box.height is None or box.height >= LEAST_TARGET, name
            assert box.width is None or box.width >= LEAST_TARGET, name
