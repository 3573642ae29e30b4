"""Where the site's sources stand and where built things go."""

from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
ASSETS = ROOT / "assets"
LOCKS = ROOT / "mobile" / "locks"
WEB = Path(__file__).resolve().parent / "web"

OUTPUT = ROOT / ".build"
WHEELS = OUTPUT / "wheels"
SITE = OUTPUT / "site"
