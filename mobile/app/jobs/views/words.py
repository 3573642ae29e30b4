"""One text on a screen of its own; what stands there is kept while it is typed."""

from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.frame import Screen, text_input, wide_button
from mobile.app.views.look import Look

LONG = ("note", "reason")


def words_screen(jobs: Jobs, look: Look) -> Screen:
    """The text and the key that keeps it."""
    asked = jobs.desk.words
    assert asked is not None
    long = asked.field.partition("@")[0] in (*LONG, "soot", "water", "pictures")
    return Screen(
        title=asked.title,
        body=[
            text_input(
                look,
                "words",
                asked.title,
                asked.text,
                lambda typed: filing.type_words(jobs, typed),
                on_submit=None if long else lambda: filing.keep_words(jobs),
                lines=4 if long else 1,
                autofocus=True,
            ),
            wide_button(
                look, "keep-words", text("jobs.keep"), lambda: filing.keep_words(jobs), filled=True
            ),
        ],
    )
