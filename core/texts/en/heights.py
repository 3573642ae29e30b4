"""Words of the heights from single and pair readings."""

TEXTS: dict[str, str] = {
    "command.heights": "Heights of single wires from a file of readings on one wire and across two.",
    "heights.option.readings": "file of readings; its form stands below",
    "heights.same_place": "two wires at one place make no span; type where each wire is crossed",
    "heights.unknown_wire": "wire {wire} is not in the list of wires; add it there, or name one that is",
    "heights.no_spread": "this spread must be above zero; type it, such as 0.0003 in",
    "heights.file.form": """form of the file: one JSON object; every size is text with its unit

  {{
    "wires": [{{"wire": "1", "at": "0in"}}, {{"wire": "2", "at": "4.4in"}}],
    "readings": [
      {{"across": ["1", "2"], "go": "0.010in", "no_go": "0.011in"}},
      {{"across": ["1", "2"], "part": "1/4", "height": "10.1 thou", "u": "0.5 thou"}},
      {{"across": ["1", "2"], "at": "5.5in", "go": "12 thou", "no_go": "13 thou"}},
      {{"wire": "1", "height": "0.26mm", "with": "caliper"}}
    ]
  }}

wires      every wire crossed; "at" along the straightedge may be left out
readings   "wire" for one, "across" for a straightedge on two, leaf under its
           middle unless "part" of the span (0 first, 1 second) or "at" says where;
           "go" and "no_go", or "height" with "u" (standard uncertainty) or
           "with" caliper or indicator; "name" if you like
           {{"across": ["1", "3"], "rocks": true}} for a straightedge that rocks
leaf       limit of error of the leaf set, "straightedge" of the straightedge
           and the deck under it; unless said ±{leaf:in} in and ±{straightedge:in} in
""",
    "heights.file.wire": "wire {number} of the list",
    "heights.file.reading": "reading {number}",
    "heights.file.too_long": "more than {most} characters; split the readings into several files",
    "heights.file.not_json": "not JSON at line {line}, column {column}; mend it there (commas, quotes, brackets)",
    "heights.file.nested": "nested too deeply; the form of the file is in --help",
    "heights.file.not_object": 'must be one object that holds "wires" and "readings"',
    "heights.file.not_utf8": "{path} is not text in UTF-8; save it as UTF-8",
    "heights.file.not_read": "{path} cannot be read; type the path of a file of readings",
    "heights.file.twice": "this key stands twice in one object; keep one",
    "heights.file.constant": "{typed} is no size; type what was read, in quotes with its unit",
    "heights.file.no_wires": 'a list of wires is needed; its form stands in --help',
    "heights.file.no_readings": 'a list of readings is needed; its form stands in --help',
    "heights.file.not_entry": "must be an object in braces",
    "heights.file.wire_name": 'needs a name in quotes, such as "wire": "1"',
    "heights.file.wire_twice": "wire {wire} stands in the list already; give each wire once",
    "heights.file.unknown": '"{entry}" is not known here; known are {known}',
    "heights.file.wire_or_across": 'say "wire" for a reading on one wire or "across" for one on two, and not both',
    "heights.file.across": 'name one wire as "wire": "1", or two different ones as "across": ["1", "2"]',
    "heights.file.rocks": 'a straightedge that rocks is "across": ["1", "3"], "rocks": true, and nothing else but a "name"',
    "heights.file.rocks_where": 'say "at" for both wires in the list of wires, so that it is known what lies between them',
    "heights.file.at_or_part": 'say where the leaf was by "at" or by "part", not by both',
    "heights.file.at_where": '"at" needs the place of both wires in the list of wires; type them there, or say "part"',
    "heights.file.leaves_or_height": 'say "go" and "no_go", or "height", and not both',
    "heights.file.one_side": "a leaf on one side alone is a bound and no reading; try a second leaf and type both",
    "heights.file.spread_of_leaves": 'the spread follows from "go" and "no_go"; leave out "u" and "with"',
    "heights.file.u_or_with": '"height" needs its "u", such as "0.3 thou", or "with" what it was read, and not both',
    "heights.file.with": "known are {known}",
    "heights.file.not_text": 'type it in quotes with its unit, such as "0.010in"',
    "heights.assumed.leaf": "Assumed: leaf set within ±{half:in} in, all leaves erring together.",
    "heights.assumed.straightedge": "Assumed: straightedge and deck within ±{half:in} in.",
    "heights.assumed.caliper": "Assumed: caliper within ±{half:mm} mm.",
    "heights.assumed.indicator": "Assumed: indicator within ±{half:in} in.",
    "heights.undetermined": "undetermined",
    "heights.height": "{value:in} in · {value:mm} mm",
    "heights.spread": "standard uncertainty {u:in} in",
    "heights.unread": "Wire {wire}: nothing was read on it.",
    "heights.see_saw": "Wires {wires}: no height is determined; {up} could be higher and {down} lower without any reading noticing. One direct reading on any of them settles all.",
    "heights.together": "Wires {wires}: no height is determined; all could be higher or lower without any reading noticing. One direct reading on any of them settles all.",
    "heights.scatter": "Chi-square {chi2:.2f} with {dof} to spare, chance {p:.0%}: {said}",
    "heights.agreement.nothing-to-compare": "Nothing is read twice, so nothing checks these readings.",
    "heights.agreement.agree": "The readings agree within their spreads.",
    "heights.agreement.disagree": "The readings contradict each other: a wire moved, a straightedge rocked or a leaf was misread.",
    "heights.agreement.closer-than-stated": "The readings agree far better than their spreads say: the spreads are generous, or a reading was copied.",
    "heights.suspect": "{name} reads {value:in} in where the others say {fitted:in} in: read it again.",
    "heights.outside": "{name} was read beyond both wires, where every error grows.",
    "heights.rocked": "The straightedge across {first} and {second} rocks: {over} stands above their line.",
    "heights.rocked_over_nothing": "The straightedge across {first} and {second} rocks, but no wire of the list lies between: look for a burr, or add the wire.",
    "heights.crossing.lifted": "{reading} passes over wire {over}, which stands {margin:in} in above the line of {first} and {second}: the straightedge does not touch both; leave this reading out.",
    "heights.crossing.unknown": "{reading} passes over wire {over}; whether it lifts the straightedge cannot be told from these readings.",
    "heights.crossing.rocks": "{reading}: wire {over} stands {margin:in} in above the line of {first} and {second} ({sure:.0%} sure), as the rocking says.",
    "heights.crossing.should-not-rock": "{reading}: by the heights found wire {over} does not stand above the line of {first} and {second} ({sure:.0%} sure that it does): read again.",
}
