"""The app's screens."""

import flet as ft


def show(page: ft.Page) -> None:
    """Fill the page."""
    route = ft.Text(page.route)

    def route_changed(_event: ft.RouteChangeEvent) -> None:
        route.value = page.route
        page.update()

    page.on_route_change = route_changed
    page.add(
        ft.Semantics(identifier="height", container=True, content=ft.Text("no reading yet")),
        ft.Semantics(identifier="route", container=True, content=route),
    )
