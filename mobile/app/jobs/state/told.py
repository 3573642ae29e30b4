"""What is told of jobs, each as one phrase."""

from core.forms.kept_verdicts import Finding, JudgedBank, JudgedRing, worst
from core.forms.kept_words import field_words, place_words, state_words
from core.records.job_index import JobLine
from core.records.model import Place
from core.texts import text
from core.texts.share import Sureness
from mobile.app.jobs.state.when import when
from mobile.app.state import phrases


def place_short(place: Place) -> str:
    """A place beside its dot."""
    return place if place.isdecimal() else text(f"jobs.short.{place.replace(' ', '-')}")


def capital(line: str) -> str:
    """The same with a capital, for a label."""
    return line[:1].upper() + line[1:]


def label_of(field: str) -> str:
    """Name of a field of a record, as a label."""
    return capital(field_words(field))


def where(finding: Finding) -> str:
    """Cylinder and place that a finding is about."""
    if finding.cylinder and finding.place:
        place = place_words(finding.place)
        return text("jobs.where.place", cylinder=finding.cylinder, place=place)
    if finding.cylinder:
        return text("jobs.where.cylinder", cylinder=finding.cylinder)
    return ""


def finding_words(finding: Finding) -> str:
    """Name and word of a finding."""
    return text(
        "jobs.finding",
        name=text(f"check.{finding.id}"),
        word=text(f"word.{finding.word}"),
    )


def finding_phrase(finding: Finding) -> str:
    """A finding with its place, verdict, value and limit."""
    place = where(finding)
    said = (
        phrases.verdict_phrase(finding.check)
        if finding.check
        else text(
            "jobs.finding.bare",
            name=text(f"check.{finding.id}"),
            verdict=text(f"verdict.{finding.verdict}"),
            word=text(f"word.{finding.word}"),
        )
    )
    return f"{place}: {said}" if place else said


def against(finding: Finding) -> str:
    """Place, value and limit, small beneath a finding."""
    check = finding.check
    parts = [place_words(finding.place)] if finding.place else []
    if check:
        sure = (
            ""
            if check.probability is None
            else text("phrase.sure", sure=Sureness(check.probability))
        )
        parts.append(
            text(
                "jobs.against",
                value=phrases.amount(check.value, check.unit),
                limit=phrases.amount(check.limit, check.unit),
                sure=sure,
            )
        )
    return " · ".join(parts)


def ring_line(ring: JudgedRing) -> str:
    """What decides a ring, or what it still lacks."""
    if not ring.places:
        return text("jobs.ring.unread")
    return finding_words(ring.worst) if ring.worst else text("jobs.ring.read", n=len(ring.places))


def hammer_words(finding: Finding) -> str:
    """What the hammer did at one place."""
    assert finding.check is not None
    return text(
        f"jobs.hammer.{finding.word}",
        place=place_words(finding.place),
        drop=phrases.amount(abs(finding.check.value), "mm"),
    )


def deck_line(banks: tuple[JudgedBank, ...]) -> Finding | None:
    """What decides the whole engine."""
    return worst([each.worst for each in banks if each.worst])


def job_phrase(line: JobLine, now: int) -> str:
    """A job of the list as one phrase."""
    return text(
        "jobs.line.phrase",
        title=line.title or text("jobs.untitled"),
        state=state_words(line.state),
        touched=when(line.touched, now),
        counts=counts(line),
    )


def counts(line: JobLine) -> str:
    """How many cylinders and readings."""
    return text("jobs.line.counts", cylinders=line.cylinders, readings=line.readings)
