"""Intake side of a V engine."""

TEXTS: dict[str, str] = {
    "vee.option.bank-angle": "angle between the banks, in degrees: 90",
    "vee.option.face-angle": "angle between deck face and intake face inside the head, in degrees: 80",
    "vee.option.raise": "how far both heads go up: 0.0315in; negative is down",
    "vee.row.face_gap": "Manifold where it was: gap at each intake face",
    "vee.row.port_offset": "Manifold where it was: head ports higher by",
    "vee.row.manifold_lift": "Manifold on its old gaskets: rises, rail gap opens by",
    "vee.row.riding_offset": "Manifold on its old gaskets: head ports higher by",
    "vee.row.side_spacer": "Ports back in line: spacer at each intake face",
    "vee.row.rail_gap": "Ports back in line: rail gap opens by",
    "vee.bank_angle": "must be more than 0 and less than 180 degrees; type the angle between the "
    "banks, such as 90.",
    "vee.face_angle": "no manifold sits between such faces; type the angle between deck face and "
    "intake face inside the head, more than {low:g} and less than {high:g} degrees.",
    "vee.level": "at {level:g} degrees the intake faces are level: no side spacer brings the ports "
    "back in line. They move sideways by {sideways:.3f} of the rise. Type another angle, or leave "
    "the intake side out.",
}
