"""Intake side of a V engine."""

TEXTS: dict[str, str] = {
    "vee.bank_angle": "must be more than 0 and less than 180 degrees; type the angle between the "
    "banks, such as 90.",
    "vee.face_angle": "no manifold sits between such faces; type the angle between deck face and "
    "intake face inside the head, more than {low:g} and less than {high:g} degrees.",
    "vee.level": "at {level:g} degrees the intake faces are level: no side spacer brings the ports "
    "back in line. They move sideways by {sideways:.3f} of the rise. Type another angle, or leave "
    "the intake side out.",
}
