"""Texts that try to be something else: markup, a script, a formula, a path, a template."""

from core.records import Book, JobBook
from core.records.model import Measured, ReadingKind, Tapped
from tests.eight_cylinders import finish, inches, new_book

HOSTILE = (
    "<script>window.pwned=1</script>",
    '"><img src=x onerror="window.pwned=1">',
    "</style></title></textarea><svg/onload=window.pwned=1>",
    "javascript:window.pwned=1",
    "{{ job.__class__.__mro__ }}{% raw %}",
    "&lt;b&gt; &#x3C;i&#x3E;",
    '=HYPERLINK("http://evil.example")',
    "+1+1",
    "-2+3",
    "@SUM(A1)",
    "＝1+1",
    "\t=1+1",
    "\r\n=1+1",
    '","=1+1',
    "../../etc/passwd",
    "C:\\con",
    "nul\x00\x1b[31m\u202egnp.exe",
    "x" * 3000,
)


def hostile_job(typed: str) -> tuple[Book, JobBook]:
    """A job with this text in every place where somebody can type one."""
    book = new_book(3, name=typed[:200])
    fields = ("title", "engine", "owner", "block", "head", "note")
    job = finish(book.new_job(**dict.fromkeys(fields, typed)))
    job.add_bank(typed, (typed,), {"wire": inches("0.041"), "spool": typed, "joint": typed})
    cylinder = job.job.cylinders[0].id
    job.enter_all([(cylinder, "groove_width@12", inches("0.040")), (cylinder, "note", typed)])
    job.add_reading(
        Measured(
            cylinder=cylinder,
            kind=ReadingKind.LEAVES,
            place=typed,
            tapped=Tapped.BEFORE,
            go=inches("0.010"),
            no_go=inches("0.011"),
            instrument=typed,
        )
    )
    job.add("decision", about=typed, chosen=typed, reason=typed, sheet=inches("0.050"))
    job.enter("limits", rod="steel", note=typed)
    evidence = job.add("evidence", cylinder=cylinder, note=typed)
    job.enter_all([(evidence, "soot@12", typed), (evidence, f"pictures@{'0' * 32}", typed)])
    return book, job
