"""Draw the icons from `section.svg`: `.venv/bin/python assets/icons/draw.py`.

A maskable icon keeps its picture inside the middle four fifths, so it is drawn smaller.
"""

from pathlib import Path

from playwright.sync_api import sync_playwright

HERE = Path(__file__).parent
GROUND = "#23262A"
ICONS = {
    "icon-192.png": (192, 1.0),
    "icon-512.png": (512, 1.0),
    "icon-maskable-192.png": (192, 0.74),
    "icon-maskable-512.png": (512, 0.74),
}


def draw_all() -> None:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium")
        for name, (size, share) in ICONS.items():
            page = browser.new_page(viewport={"width": size, "height": size})
            page.set_content(sheet(size * share))
            page.screenshot(path=HERE / name)
            page.close()
        browser.close()


def sheet(side: float) -> str:
    section = (HERE / "section.svg").read_text().replace("<svg ", f'<svg width="{side}" ')
    style = f"margin:0;height:100vh;display:grid;place-items:center;background:{GROUND}"
    return f'<body style="{style}">{section}</body>'


if __name__ == "__main__":
    draw_all()
