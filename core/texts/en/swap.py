"""What a change of sheet brings."""

TEXTS: dict[str, str] = {
    "swap.same": "Same thickness: the head stays where it is.",
    "swap.fit": "Wire: {now:.0%} {now_word} to {then:.0%} {word} ({ring})",
    "swap.piston_to_head": "Piston to head",
    "swap.intake_valve": "Intake valve to piston",
    "swap.exhaust_valve": "Exhaust valve to piston",
    "swap.preload": "Lifter preload",
    "swap.dowel": "Dowel in the head",
    "swap.thread": "Thread engaged",
    "swap.moved": "{what}: {now:size} to {then:size}",
    "swap.ratio": "Compression ratio: {now:.2f} to {then:.2f}",
    "swap.pushrod": "Pushrods for the same preload: {much:small} longer",
    "swap.intake": "Intake: spacer of {spacer:small} a side and rail gap up {rail:small} put "
    "ports in line; left alone they are {offset:small} off",
    "swap.left_out": "{because}",
    "swap.cam": "Cam: {retard:.2f}° of the crank later",
}
