"""The phone's entry point."""

import flet as ft

from mobile.app.start import show


def main() -> None:
    """Run the app in this browser."""
    ft.run(show)


if __name__ == "__main__":
    main()
