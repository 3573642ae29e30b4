"""What taking a job in would change is told before anything changes."""


from core.handover.coming import coming
from core.handover.parts import join, split
from core.records import Parcel, live
from core.records.demo import DEMO_JOB
from tests.eight_cylinders import eight_cylinders, finish, inches, new_book


def run(coroutine):
    return finish(coroutine)


def handed(job, since=0):
    """A parcel as it comes through a link."""
    return Parcel(ledgers=join(split({f"job-{job.id}": list(job.fold)}, 700)))


def told(book, parcel):
    (incoming,) = run(book.preview(parcel))
    return coming(incoming)


def two_books():
    here, there = new_book(1, "Stand"), new_book(2, "Track")
    job = eight_cylinders(here)
    run(there.take(handed(job)))
    return here, there, job, run(there.open_job(job.id))


def test_a_job_that_is_new_here_is_told_by_kind():
    here, there = new_book(1), new_book(2)
    job = eight_cylinders(here)
    found = told(there, handed(job))
    assert found.title == "Pulling engine, second build"
    assert found.headline == f"New here: {len(job)} entries."
    assert {"Cylinder: 8 new", "Reading: 48 new", "Evidence: 8 new"} <= set(found.new)
    assert found.differences == ()
    assert there.jobs() == ()


def test_what_is_here_already_changes_nothing():
    _, there, job, _ = two_books()
    found = told(there, handed(job))
    assert found.nothing
    assert found.headline == f"Nothing new: all {len(job)} entries are here already."


def test_a_later_value_and_a_disagreement_are_told_apart():
    _, there, job, theirs = two_books()
    cylinder = job.job.cylinders[0].id
    job.enter(cylinder, wire=inches("0.0415"))
    job.enter("job", owner="Team Copper, north")
    theirs.enter("job", owner="Team Copper, south")
    found = {each.about: each for each in told(there, handed(job)).differences}
    assert found["Cylinder 1, wire"].words == (
        "Cylinder 1, wire: 0.041 in becomes 0.0415 in (Stand)."
    )
    assert found["Job, owner"].words == (
        "Job, owner: Team Copper, south here, Team Copper, north (Stand) comes. "
        "Both are kept until you settle it."
    )
    assert set(found) == {"Cylinder 1, wire", "Job, owner"}


def test_there_and_back_twice_with_edits_on_both_sides_loses_and_doubles_nothing():
    here, there, job, theirs = two_books()
    job.add("decision", about="first", sheet=inches("0.043"))
    theirs.add("decision", about="second", sheet=inches("0.062"))
    for _ in range(2):
        run(there.take(handed(job)))
        run(here.take(handed(theirs)))
    assert {event.id for event in job.fold} == {event.id for event in theirs.fold}
    assert job.job == theirs.job
    assert [each.about for each in live(job.job.decisions)].count("first") == 1
    assert len(live(job.job.decisions)) == 3


def test_a_value_corrected_twice_here_is_not_a_disagreement_there():
    _, there, job, theirs = two_books()
    cylinder = job.job.cylinders[0].id
    for wire in ("0.0412", "0.0413"):
        job.enter(cylinder, wire=inches(wire))
    run(there.take(handed(job)))
    assert theirs.rivals() == ()
    assert theirs.job.cylinders[0].wire == inches("0.0413")


def test_the_demo_travels_too():
    here, there = new_book(1), new_book(2)
    run(here.add_demo())
    demo = run(here.open_job(DEMO_JOB))
    run(there.take(handed(demo)))
    assert run(there.open_job(DEMO_JOB)).job == demo.job
