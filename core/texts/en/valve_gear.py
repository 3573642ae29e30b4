"""Pushrods, lifters and cam drives."""

TEXTS: dict[str, str] = {
    "valve_gear.length": "must be more than zero; type the measured length.",
    "valve_gear.tilt": "must lie within {most:g} degrees; type the angle as measured.",
    "valve_gear.preload": "is past any pushrod of this length; type it as measured.",
    "valve_gear.turn": "must be {most:g} degrees of the crank or less; type what the engine allows.",
    "valve_gear.banks": "one chain over two banks can move them in opposite senses; the "
    "timing must be measured. Type 1 if each bank has its own chain.",
    "valve_gear.teeth": "must be {fewest} or more; count the teeth of the crank sprocket.",
    "valve_gear.two_to_one": "a cam driven straight from the crank has twice its teeth, {teeth}; "
    "another drive is not solved here. Count again, or measure the timing.",
    "valve_gear.touching": "the sprockets would touch; type a distance of more than "
    "{least:.1f} mm.",
}
