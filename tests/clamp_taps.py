"""Taps on the clamp screen of a phone."""

from tests.phone import Phone


def pick(phone: Phone, **answers: str) -> None:
    """Tap an answer to each choice as it is asked."""
    for name, value in answers.items():
        phone.tap(f"pick-{name}-{value}")


def type_into(phone: Phone, name: str, field: str, keys: str) -> None:
    phone.tap(f"in-clamp-{name}")
    type_open(phone, field, keys)


def type_open(phone: Phone, field: str, keys: str) -> None:
    """Type into the field whose pad is open."""
    phone.phrase("typed", holding=f"{field}: ")
    for key in keys:
        phone.tap(f"key-{'point' if key == '.' else key}")
    phone.tap("key-done")
