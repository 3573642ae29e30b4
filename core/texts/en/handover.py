"""Handing a job over and taking one in."""

TEXTS: dict[str, str] = {
    "handover.nothing": "No hand-over stands in this. Copy the whole link, or pick the file.",
    "handover.newer": "A newer version wrote this (format {version}; this one reads up to {ours}). Update the app; nothing was changed.",
    "handover.part_damaged": "Part {part} of {of} is cut or changed: get it again.",
    "handover.unreadable": "This hand-over cannot be read. Nothing was changed; get it again.",
    "handover.sum_differs": "The parts do not make what was sent. Nothing was changed; get all of them again.",
    "handover.shop": "What all jobs share",
    "handover.known": "Nothing new: all {n} entries are here already.",
    "handover.all_new": "New here: {n} entries.",
    "handover.some_new": "{n} new entries, {known} are here already.",
    "handover.count": "{kind}: {n} new",
    "handover.clashing": "{n} entries are not what is here under the same mark; what is here stays.",
    "handover.both": "{about}: {here} here, {there} comes. Both are kept until you settle it.",
    "handover.replaced": "{about}: {here} becomes {there}.",
    "handover.signed": "{value} ({who})",
}
