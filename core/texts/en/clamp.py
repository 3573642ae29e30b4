"""Clamp load: what it rests on, what it does, and what would settle a doubt."""

TEXTS: dict[str, str] = {
    "command.clamp": "Clamp load, gas load, and how wire and gasket body share the clamp, of one cylinder.",
    "clamp.caution": "Estimates to support a qualified person, never a substitute for the data of "
    "the engine, fastener or gasket maker; where those differ, theirs win. Torque and stretch "
    "limits come from the fastener maker.",
    # options
    "clamp.option.thread": "thread: 7/16-14 or M12x1.75",
    "clamp.option.grade": "grade or property class: 5, 8, 8.8, 9.8, 10.9, 12.9",
    "clamp.option.proof-strength": "own fastener: its maker's proof strength, 180ksi or 1200MPa",
    "clamp.option.yield-strength": "own fastener: yield strength, of which 85 % is taken as proof",
    "clamp.option.preload": "share of proof load aimed at: 75%",
    "clamp.option.by": "how that is reached: torque-estimated, torque-tested, impact, angle, stretch",
    "clamp.option.torque": "tightening torque: 65lbf.ft, 90N.m; with --angle the snug torque",
    "clamp.option.friction": "torque coefficient K of T = K·F·d: 0.18; there is no default",
    "clamp.option.friction-tol": "how far K may be off: 0.03",
    "clamp.option.lubricant": "dry, oil, phosphate-oil, zinc, cadmium or anti-seize, with everything "
    "printed for it as the range",
    "clamp.option.angle": "turn after the snug torque: 90deg; needs --grip and --load-share",
    "clamp.option.stretch": "measured stretch of the stud: 0.006in; needs --grip",
    "clamp.option.grip": "length of stud that stretches",
    "clamp.option.shank": "plain part of that length, at full diameter",
    "clamp.option.load-share": "part C of the gas load that the fasteners take: 0.2; without it 0 is "
    "taken against lifting and 1 for the fastener",
    "clamp.option.fasteners": "fasteners for each cylinder, shared ones by their part: 4.25",
    "clamp.option.ring": "centre diameter of the wire ring: 4.300in",
    "clamp.option.pressure": "peak cylinder pressure: 1500psi, 100bar",
    "clamp.option.pressure-tol": "how far the peak pressure may be off",
    "clamp.option.compression": "compression ratio, where no peak pressure is known: 9.5",
    "clamp.option.boost": "boost above atmosphere, with --compression: 20psi",
    "clamp.option.wire": "wire diameter",
    "clamp.option.height": "height of the wire",
    "clamp.option.u": "standard uncertainty of the height",
    "clamp.option.gasket": "sheet thickness, for the quarter line",
    "clamp.option.copper": "annealed, cold-rolled or hard; annealed unless said",
    "clamp.option.hardness": "Vickers hardness measured on this sheet: 51",
    "clamp.option.head-face": "flat, printed:DEPTH or receiver:DEPTH",
    "clamp.option.seed": "whole number that starts ten thousand draws as a cross-check",
    # entries that cannot be used
    "clamp.thread.unread": "'{typed}' is no thread; type one like 7/16-14 or M12x1.75.",
    "clamp.thread.pitch": "the pitch of '{typed}' is not known; type it too, like M12x1.75.",
    "clamp.thread.per_inch": "type the threads per inch too: {choices}.",
    "clamp.thread.size": "'{typed}' is no thread of a cylinder head; type one like 7/16-14 or M12x1.75.",
    "clamp.grade.unknown": "the standard has no grade '{typed}' for {thread}; type one of {grades}, "
    "or the maker's proof strength.",
    "clamp.missing.thread": "type the thread, like 7/16-14 or M12x1.75.",
    "clamp.missing.grade": "type the grade, like 8 or 10.9, or the maker's proof strength.",
    "clamp.missing.preload": "type how the fasteners are tightened: a share of proof such as 75%, a "
    "torque, an angle or a measured stretch.",
    "clamp.missing.friction": "nothing is computed until a friction is chosen: type K of this "
    "lubricant, such as 0.18, or choose a lubricant. Sources disagree: for zinc they print "
    "0.17 to 0.35.",
    "clamp.missing.fasteners": "type how many fasteners clamp one cylinder, shared ones by their part.",
    "clamp.missing.ring": "type the centre diameter of the wire ring.",
    "clamp.missing.wire": "type the wire diameter.",
    "clamp.missing.height": "type the height of the wire.",
    "clamp.missing.pressure": "type the peak cylinder pressure; or the compression ratio, which gives "
    "only a floor.",
    "clamp.missing.spacing": "type the distance from bore centre to bore centre.",
    "clamp.whole": "type a whole number.",
    "clamp.missing.grip": "type the length of stud that stretches.",
    "clamp.missing.load-share": "type the part of an outside load that the stud takes, such as 0.2.",
    "clamp.missing.torque": "type the snug torque before the turn.",
    "clamp.or": " or ",
    "clamp.one_only": "type one of {fields}, not several.",
    "clamp.needless": "goes only with {other}; leave it out, or type {other} too.",
    "clamp.choice": "'{typed}' is not one of {choices}.",
    "clamp.friction_tol": "must be smaller than the friction itself.",
    "clamp.shank": "cannot be longer than the grip.",
    "clamp.seed": "type a whole number.",
    "clamp.load_share": "must be from 0 to less than 1; type 0.2 for a fifth.",
    "clamp.cylinder.none": "type at least one cylinder.",
    "clamp.cylinder.height": "the wire cannot stand as high as it is thick; type the height above the deck.",
    "clamp.cylinder.ring": "is too small for this wire; type the centre diameter of the ring.",
    "clamp.cylinder.pressure": "must be smaller than the pressure itself.",
    "clamp.cylinder.fasteners": "must be more than zero.",
    "clamp.layout.bores": "two bores stand at one place along the bank; type their centres.",
    "clamp.layout.empty": "type the places of bores and fasteners.",
    "clamp.layout.bare": "no fastener is near one of the bores; type the places of all fasteners.",
    # terms
    "clamp.term.share": "share of proof aimed at",
    "clamp.term.torque": "torque wrench",
    "clamp.term.friction": "friction",
    "clamp.term.method": "way of tightening",
    "clamp.term.turn": "load from the turn",
    "clamp.term.stretch": "measured stretch",
    "clamp.term.stud": "stiffness of the stud",
    "clamp.term.random": "scatter from fastener to fastener",
    "clamp.term.pressure": "peak pressure",
    "clamp.term.height": "wire height",
    "clamp.term.wire": "wire diameter",
    # assumptions
    "clamp.assumes.scatter": "an error of friction or wrench moves all fasteners together; only the "
    "scatter from fastener to fastener averages out",
    "clamp.assumes.sharing": "each fastener clamps the cylinders beside it by its part",
    "clamp.assumes.seal_line": "gas acts on the circle of the wire",
    "clamp.assumes.cold": "clamp as tightened cold; heat of the engine and later creep are not in it",
    "clamp.assumes.no_share": "the fasteners take none of the gas load: the safe side against lifting",
    "clamp.assumes.all_share": "the fasteners take the whole gas load: the safe side for them",
    "clamp.assumes.even": "gas load is shared evenly by the fasteners of the cylinder",
    "clamp.assumes.area": "tensile stress area at nominal size; a waisted stud carries less",
    "clamp.assumes.sheet": "no pile-up; head, deck and the clamped sheet around keep the copper from "
    "spreading",
    "clamp.assumes.flat": "for a flat head face",
    "clamp.model.slip-line-tresca": "slip line, Tresca",
    "clamp.model.slip-line-mises": "slip line, von Mises",
    "clamp.model.hardness": "hardness",
    "clamp.temper.annealed": "sheet annealed",
    "clamp.temper.cold-rolled": "sheet cold rolled",
    "clamp.temper.hard": "sheet hard",
    # words and checks
    "word.below-proof": "BELOW PROOF",
    "word.will-yield": "WILL YIELD",
    "word.holds-down": "HOLDS DOWN",
    "word.lifts": "LIFTS",
    "word.beds": "BEDS",
    "word.beds-close": "BEDS, CLOSE",
    "word.will-not-bed": "WILL NOT BED",
    "word.does-not-touch": "DOES NOT TOUCH",
    "check.clamp-to-proof": "Clamp to proof",
    "check.fastener-at-peak": "Fastener at peak",
    "check.separation": "Lifting at peak",
    "check.beds": "Wire beds",
    # reasons
    "clamp.proof.below-proof": "{best} of proof, {high} at the low-friction end of the range",
    "clamp.proof.undecided": "{best} of proof, {high} at the low-friction end of the range",
    "clamp.proof.will-yield": "{best} of proof, but {high:.1f} at the low-friction end of the range: "
    "the fastener will yield",
    "clamp.at_peak.bound": "at most {share} of proof at peak ({high} at 95 %), if the fasteners took "
    "the whole gas load",
    "clamp.at_peak.given": "{share} of proof at peak ({high} at 95 %), the fasteners taking {taken} of "
    "the gas load",
    "clamp.separation.peak": "clamp {clamp:lbf} lbf · {clamp:kN} kN against gas {gas:lbf} lbf · "
    "{gas:kN} kN: {low:.1f} to {high:.1f} times",
    "clamp.separation.floor": "clamp {clamp:lbf} lbf · {clamp:kN} kN against gas of at least {gas:lbf} "
    "lbf · {gas:kN} kN, no combustion in it: at best {low:.1f} to {high:.1f} times",
    "clamp.beds.beds": "bedding takes {low:lbf} to {high:lbf} lbf of {clamp:lbf} lbf; {sure} sure by "
    "the hardest answer",
    "clamp.beds.beds-close": "bedding takes {low:lbf} to {high:lbf} lbf of {clamp:lbf} lbf; {sure} sure "
    "by the hardest answer",
    "clamp.beds.will-not-bed": "bedding takes {low:lbf} to {high:lbf} lbf, more than the clamp of "
    "{clamp:lbf} lbf: the head is held off the rest of the sheet",
    "clamp.beds.undecided": "bedding takes {low:lbf} to {high:lbf} lbf of {clamp:lbf} lbf, by the "
    "softest and the hardest answer for the copper",
    "clamp.beds.does-not-touch": "the print in the head is as deep as the wire stands proud: nothing "
    "bites",
    # what settles it, what to change
    "clamp.settle.input": "{share} of the doubt comes from the {input}: narrow that",
    "clamp.settle.stiffness": "give the part of the gas load that the fasteners take, from the "
    "stiffness of stud and joint",
    "clamp.settle.pressure": "enter the peak cylinder pressure: compression and boost give only a floor",
    "clamp.settle.hardness": "measure the hardness of this sheet, or clamp a scrap of it and measure "
    "the print",
    "clamp.settle.receiver": "whether the full height or the height past the receiver counts is not "
    "agreed: clamp a scrap in place and measure the print",
    "clamp.change.proof": "aim at no more than {share} of proof, or narrow the friction",
    "clamp.change.at_peak": "stronger fasteners, or less pressure",
    "clamp.change.separation": "more clamp within the maker's limits, stronger fasteners, or less "
    "pressure",
    "clamp.change.beds": "it just beds at a height of {low:in} in · {low:mm} mm by the hardest answer, "
    "{high:in} in · {high:mm} mm by the softest",
    "clamp.change.beds_from": "it just beds at a height of {low:in} in · {low:mm} mm by the hardest "
    "answer, at any height by the softest",
    # tightening
    "clamp.step": "step {number}: every fastener in its order to {share} of the final value",
    "clamp.retorque.first": "retorque cold after the first heat cycle",
    "clamp.retorque.how": "one fastener at a time, in the same order: slack off, then to the full value",
    "clamp.retorque.again": "check again after a few cycles: copper creeps and the wire beds",
    # the table
    "clamp.row.preload": "Preload of one fastener",
    "clamp.row.clamp": "Clamp of the cylinder",
    "clamp.row.gas": "Gas at peak",
    "clamp.row.gas_floor": "Gas, floor",
    "clamp.row.left": "Clamp left at peak",
    "clamp.row.wire": "On the wire",
    "clamp.row.body": "On the gasket body",
    "clamp.row.slack": "Body slack from height",
    "clamp.row.quarter": "Quarter of the sheet",
    "clamp.any_height": "no height",
    "clamp.range": "{low:lbf} to {high:lbf} lbf · {low:kN} to {high:kN} kN",
    "clamp.value_range": "{value:lbf} lbf ({low:lbf} to {high:lbf}) · {value:kN} kN ({low:kN} to {high:kN})",
    "clamp.decides": "{share} of the doubt about the clamp comes from the {input}.",
    "clamp.draws.near": "{quantity}: spread {drawn:lbf} lbf drawn, {first:lbf} lbf first order",
    "clamp.draws.far": "{quantity}: spread {drawn:lbf} lbf drawn, {first:lbf} lbf first order: not "
    "near linear, believe the draws",
    "clamp.quantity.clamp": "Clamp",
    "clamp.quantity.left": "Left at peak",
    "clamp.quantity.body-at-least": "Body, hardest answer",
    "clamp.quantity.body-at-most": "Body, softest answer",
}
