"""What the book says about saving, reading, taking in, and the steps of a job."""

TEXTS: dict[str, str] = {
    "records.busy": "The book is open in another window. Close it there, then open it here.",
    "records.caution.eyes": "Eye protection on.",
    "records.caution.fasteners": "Torque and stretch limits come from the fastener maker.",
    "records.caution.hot_engine": "Let the engine cool: hot metal and pressurised coolant burn.",
    "records.caution.hot_sheet": "Heated copper burns and does not look hot.",
    "records.caution.machines": "Rotating machinery: follow the shop's rules and local codes.",
    "records.caution.makers_data": (
        "Where the engine, fastener or gasket maker's own data differ, theirs win."
    ),
    "records.caution.sheet_edges": "Sheet edges cut.",
    "records.caution.water": (
        "A cylinder that took on water: plugs out and cylinder emptied before the engine is turned."
    ),
    "records.caution.wire_ends": "Wire ends spring and cut.",
    "records.cannot_read": "{name}: the disk does not give it back. Close the app and open it again.",
    "records.clock_went_back": (
        "This device's clock went back by {minutes} min. Nothing is lost; check its date and time."
    ),
    "records.cut_short": "the file ends before its last line",
    "records.damaged_line": (
        "{name}: line {line} is damaged ({size} bytes). It is left as it is; the rest is shown."
    ),
    "records.demo.bank": "Deck",
    "records.demo.decision_about": "Sheet for the first start",
    "records.demo.decision_reason": (
        "Ten thousandths proud after tapping; number 3 was high at three o'clock and went down."
    ),
    "records.demo.engine": "Four in line, boosted, made up for this demo",
    "records.demo.note": "Made up to look around in. Delete it whenever you like.",
    "records.demo.owner": "Demo",
    "records.demo.soot": "none outside the print",
    "records.demo.title": "Demo: four in line on the stand",
    "records.demo.who": "Demo",
    "records.disk_failed": "Not saved: the disk did not take {name} ({reason}). Try again.",
    "records.disk_full": (
        "Not saved: the disk is full ({name}). Make room, then save again; earlier work is kept."
    ),
    "records.export_file": "The file",
    "records.fewer_events": (
        "This job once held {missing} more entries than its file does now. Import the last backup."
    ),
    "records.from_the_future": (
        "Entries by {who} are dated more than a day ahead: that clock is or was wrong."
    ),
    "records.import_refused": (
        "Nothing was taken: {fault} (and {more} more). Get the file again, or take its good part."
    ),
    "records.job_unreadable": "One job cannot be opened. {reason}",
    "records.line_damaged": "damaged",
    "records.line_fault": "line {line}: {reason}",
    "records.line_missing": "missing, up to line {last}",
    "records.line_unknown": "says nothing known here",
    "records.line_unreadable": "cannot be read ({reason})",
    "records.list_damaged": (
        "The list of jobs was damaged and has been made anew from the jobs. No job is lost by that."
    ),
    "records.missing_lines": "{name}: lines {first} to {last} are missing. Import the last backup.",
    "records.newer": (
        "{name} was written by a newer version (format {version}; this one reads up to {ours}). "
        "Update the app; the file is left untouched."
    ),
    "records.nothing_readable": (
        "{name}: none of its {size} bytes can be read as ours. It is left untouched."
    ),
    "records.only_added": "Entries are only ever added, never taken out.",
    "records.other_file": "{name} is not what it should be: its first line names something else.",
    "records.picture_damaged": "picture {name} is not what was kept",
    "records.picture_missing": "picture {name} is not on this device",
    "records.slots_unmarked": (
        "{name}: two copies are there and neither says which is newer. Both are left untouched."
    ),
    "records.step.clearances": "Measure piston and valve clearance with clay or lead.",
    "records.step.deck_finished": "Deck finished, sleeves level.",
    "records.step.ends_square": "File both wire ends square, so that the joint closes up.",
    "records.step.evidence_read": (
        "After running: print, soot and water by clock place; measure the wire again."
    ),
    "records.step.groove_cut": "Cut the grooves.",
    "records.step.groove_measured": (
        "Measure width and depth at four clock places. Once the wire is in, nobody can."
    ),
    "records.step.height_measured": (
        "Measure the height at several places: bridge and both sides of the joint among them."
    ),
    "records.step.pressed_in": (
        "Press the wire in, starting and ending beside a head bolt; close the joint last."
    ),
    "records.step.retorqued_cold": "Retorque cold, one stud at a time.",
    "records.step.run": "Run the engine.",
    "records.step.sheet_annealed": "Anneal the sheet.",
    "records.step.sheet_chosen": "Choose the sheet for the height.",
    "records.step.tapped_down": (
        "Tap the wire down with a small block of softer material over it; measure again."
    ),
    "records.step.test_groove": (
        "Cut a test groove in scrap and press a piece of this spool into it."
    ),
    "records.step.torqued": "Torque in steps, as the fastener maker says.",
    "records.step.trial_squeeze": "Clamp a scrap of the same sheet and measure the print.",
    "records.step.wire_cut": "Cut the wire, a little over length.",
    "records.step.wire_miked": "Mike the wire at three places of the spool; never trust the label.",
    "records.sum_differs": "the checksum of the whole file differs",
    "records.torn_tail": (
        "{name}: an entry was cut off while it was being saved ({size} bytes). It had not been "
        "shown as saved; enter it again. Everything before it is here."
    ),
    "records.unfit": "this value cannot be kept: {reason}",
    "records.unnamed_device": "a device without a name",
    "records.unreadable_events": "{name}: {count} entries cannot be read. They are left as they are.",
    "records.unreadable_line": "{name}: line {number} holds no entries. It is left as it is.",
    "records.want_count": "type a whole number from 0 to {most}",
    "records.want_flag": "choose yes or no",
    "records.want_group": "it has the parts {parts}",
    "records.want_list": "it is a list",
    "records.want_number": "type a number",
    "records.want_text": "type at most {most} characters",
    "records.want_word": "choose one of {words}",
}
