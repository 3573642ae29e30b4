"""The phone app, its site builder and server, and the `standproud` command."""
