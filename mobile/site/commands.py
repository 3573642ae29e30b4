"""The site's commands: build, serve, and both when nothing is asked."""

import argparse
import sys
import webbrowser
from collections.abc import Callable
from pathlib import Path

from core.texts import text
from mobile.site import server
from mobile.site.build import build_site, is_current
from mobile.site.failure import BuildError
from mobile.site.places import SITE
from mobile.site.precache import LISTING

PORT = 8741
COULD_NOT = 2


def main(arguments: list[str]) -> int:
    """Run one of the commands; returns the exit code."""
    run = COMMANDS[arguments[0]] if arguments else build_and_serve
    try:
        return run(arguments[1:])
    except BuildError as failure:
        return say_why(str(failure))


def build(arguments: list[str]) -> int:
    parser = argparse.ArgumentParser("standproud build", description=text("site.build"))
    parser.add_argument("--out", type=Path, default=SITE, help=text("site.build_out"))
    parser.add_argument("--base", default="/", help=text("site.build_base"))
    options = parser.parse_args(arguments)
    build_site(options.out.resolve(), options.base)
    print(text("site.built", folder=options.out))
    return 0


def serve(arguments: list[str]) -> int:
    parser = argparse.ArgumentParser("standproud serve", description=text("site.serve"))
    parser.add_argument("--port", type=int, default=PORT, help=text("site.serve_port"))
    parser.add_argument("--open", action="store_true", help=text("site.serve_open"))
    parser.add_argument("--site", type=Path, default=SITE, help=text("site.serve_site"))
    options = parser.parse_args(arguments)
    if not (options.site / LISTING).exists():
        return say_why(text("site.not_built", folder=options.site))
    return serve_folder(options.site, options.port, open_it=options.open)


def build_and_serve(_arguments: list[str]) -> int:
    if not is_current(SITE):
        print(text("site.building"), flush=True)
        build_site(SITE)
    return serve_folder(SITE, PORT, open_it=False)


def serve_folder(folder: Path, port: int, *, open_it: bool) -> int:
    try:
        taken = server.listen(port)
    except (OSError, OverflowError):
        return say_why(text("site.port_taken", port=port))
    url = server.address(folder, port)
    print(text("site.serving", url=url), flush=True)
    if open_it:
        webbrowser.open(url)
    server.serve(folder, taken)
    return 0


def say_why(sentence: str) -> int:
    print(sentence, file=sys.stderr)
    return COULD_NOT


COMMANDS: dict[str, Callable[[list[str]], int]] = {"build": build, "serve": serve}
