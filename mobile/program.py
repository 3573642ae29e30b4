"""The `standproud` command: the site's commands in `mobile.site`, calculations in `core.command`.

Each half is imported only when asked for: a calculation needs no web server.
"""

import sys

from core.texts import text

SITE_COMMANDS = ("build", "serve")
HELP = ("-h", "--help")


def main(arguments: list[str] | None = None) -> int:
    """Run the command; without one, build the app if it is stale and serve it."""
    asked = sys.argv[1:] if arguments is None else arguments
    if not asked or asked[0] in SITE_COMMANDS:
        from mobile.site import commands

        return commands.main(asked)
    if asked[0] in HELP:
        print(text("site.overview"), flush=True)
    from core import command

    return command.main(asked)


if __name__ == "__main__":
    sys.exit(main())
