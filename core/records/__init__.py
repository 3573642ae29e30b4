"""What is kept: every job, every reading, every decision, with who and when.

`open_book` is the way in; it gives a `Book`, whose jobs are `JobBook` and whose shared things are
a `ShopBook`. Below lie, from the disk upwards: a `Port` to one kept file (`file_storage`,
`mobile.opfs_storage`), `lines` with checksums, the `journal` of them, TinyDB over it (`store`),
the `fold` from events to current values, the `ledger` to enter and take back, and the `view` as
frozen values of the `model`.
"""

from core.records.book import Backup, Book, Incoming, open_book
from core.records.job_book import JobBook, ShopBook
from core.records.job_index import JobLine
from core.records.ledger import Change, Device, Merged, Rivals, Saved
from core.records.parcel import Parcel, read_parcel
from core.records.steps import STEPS, Step
from core.records.view import live

__all__ = [
    "STEPS",
    "Backup",
    "Book",
    "Change",
    "Device",
    "Incoming",
    "JobBook",
    "JobLine",
    "Merged",
    "Parcel",
    "Rivals",
    "Saved",
    "ShopBook",
    "Step",
    "live",
    "open_book",
    "read_parcel",
]
