"""Choosing a sheet from an exported job."""

TEXTS: dict[str, str] = {
    "choose.option.jobfile": "file that the app exported",
    "choose.option.job": "key of the job, where the file holds several",
    "choose.option.shelf": "sheets to choose from, instead of the shop's: 0.040in,0.050in",
    "choose.no_file": "cannot be opened, {reason}; type the path of a file that the app exported.",
    "choose.unreadable": "{reason} Type the path of a file that the app exported.",
    "choose.no_job": "the file holds no job; export one from the app.",
    "choose.which_job": "the file holds several jobs; type one of {jobs}.",
    "choose.unknown_job": "the file holds no such job; type one of {jobs}.",
    "choose.word": "is not known here; type one of {words}.",
    "choose.cylinder": "cylinder {cylinder}",
    "choose.ring": "cylinder {cylinder} at {place}",
}
