"""The choice of a sheet in the built app: everything at once, and the picture under a finger."""

import json
import random
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import sync_playwright

from core.calc.choice import choose
from core.calc.gasket import Sheet
from tests import forward
from tests.bench.windows import CYLINDERS, RUNS, SHEETS, THOU
from tests.forward import complete_engine
from tests.measured import Row, median_seconds
from tests.phone import Phone
from tests.served_site import built, served

LINK = "#/check?go=0.011in&no-go=0.013in&gasket=0.040in&shelf={shelf}"
SHELF = [15 + 7 * step for step in range(SHEETS)]
TEXTS = {
    "sheet-on": "0.040 in",
    "rod": "steel",
    "intake-least": "80 thou",
    "exhaust-least": "100 thou",
    "bore": "4.125 in",
    "stroke": "3.75 in",
    "gasket-bore": "4.2 in",
    "chamber": "64 cc",
    "lowest-ratio": "9.5",
    "highest-ratio": "11.5",
    "valve-gear": "pushrods",
    "pushrod-length": "8 in",
    "preload": "30 thou",
    "preload-least": "10 thou",
    "bank-angle": "90 °",
    "face-angle": "80 °",
    "largest-offset": "20 thou",
    "dowel-proud": "280 thou",
    "dowel-least": "200 thou",
    "thread-engaged": "0.8 in",
    "thread-least": "0.7 in",
}
CYLINDER = {"piston-deck": "5 thou", "intake-valve": "95 thou", "exhaust-valve": "115 thou"}
CHOOSE = """
import json, random, statistics, time
from core.calc.choice import choose
from core.calc.gasket import Sheet
engines = [complete_engine(random.Random(seed), cylinders=CYLINDERS) for seed in range(RUNS)]
shelf = [Sheet(thickness=(15 + 7 * step) * 0.0254, half_width=0.01) for step in range(SHEETS)]
times = []
for engine in engines:
    started = time.perf_counter()
    choose(engine, shelf)
    times.append(time.perf_counter() - started)
json.dumps(statistics.median(times))
"""
ENTER = """
import gc, json
gc.unfreeze()
from mobile.app.engine.sheet.entry import SheetEntry
from mobile.app.state.sizes_form import SizesForm
texts, own = json.loads(TEXTS), json.loads(OWN)
entry = SheetEntry(
    form=SizesForm(texts={**texts, **own}),
    cylinders={str(number): own for number in range(1, CYLINDERS + 1)},
)
for each in gc.get_objects():
    if type(each).__name__ == "SheetChoice":
        each.take(entry)
gc.freeze()
"""
WATCH = """([x, y, width, height]) => {
  const flutter = [document, ...[...document.querySelectorAll('*')].map((e) => e.shadowRoot)]
    .filter(Boolean).flatMap((root) => [...root.querySelectorAll('canvas')]);
  const strip = new OffscreenCanvas(width, height).getContext('2d', {willReadFrequently: true});
  window.watch = {pictures: 0, frames: 0, worst: 0};
  let before = '', last = 0;
  const frame = () => {
    strip.clearRect(0, 0, width, height);
    for (const each of flutter) {
      const scale = each.width / each.getBoundingClientRect().width;
      strip.drawImage(each, x * scale, y * scale, width * scale, height * scale,
                      0, 0, width, height);
    }
    const now = strip.getImageData(0, 0, width, height).data.join();
    watch.frames += 1;
    if (now !== before) {
      if (watch.pictures === 1) { watch.from = performance.now(); watch.first = watch.frames; }
      if (watch.pictures > 1) watch.worst = Math.max(watch.worst, performance.now() - last);
      watch.pictures += 1;
      watch.to = last = performance.now();
    }
    before = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}"""
DRAW = """async ([left, right, y]) => {
  const view = document.querySelector('flutter-view') ?? document.body;
  const finger = (kind, x) => view.dispatchEvent(new PointerEvent(kind, {
    pointerId: 7, pointerType: 'touch', isPrimary: true, buttons: kind === 'pointerup' ? 0 : 1,
    clientX: x, clientY: y, bubbles: true, cancelable: true, composed: true,
  }));
  const start = performance.now();
  finger('pointerdown', left);
  for (let x, now; (now = performance.now() - start) < SECONDS * 1000;) {
    const way = (now / 1000) % 2;
    finger('pointermove', left + (right - left) * (way < 1 ? way : 2 - way));
    await new Promise(requestAnimationFrame);
  }
  finger('pointerup', left);
}"""
SECONDS = 10
REST = 3000
STRIP = 4.0
"""Height of what is compared of the chart [px]."""
VALVES = 0.42
"""Where the bar of the exhaust valves lies, from top to bottom of the chart."""
LOWEST = 720.0
"""Where the slider is scrolled to, so that most of the chart is in view with it [px]."""


def rows() -> Iterator[Row]:
    with (
        tempfile.TemporaryDirectory() as place,
        sync_playwright() as playwright,
        served(built()) as origin,
    ):
        phone = Phone(playwright, Path(place) / "profile", f"{origin}/")
        phone.open(LINK.format(shelf=",".join(f"{each}thou" for each in SHELF)))
        phone.read_aloud()
        phone.phrase("suggestion")
        yield everything(phone)
        yield from under_a_finger(phone)
        phone.close()


def everything(phone: Phone) -> Row:
    source = Path(forward.__file__).read_text(encoding="utf-8")
    sizes = f"CYLINDERS, SHEETS, RUNS = {CYLINDERS}, {SHEETS}, {RUNS}\n"
    engines = [complete_engine(random.Random(seed), cylinders=CYLINDERS) for seed in range(RUNS)]
    shelf = [Sheet(thickness=each * THOU, half_width=0.01) for each in SHELF]
    return Row(
        what=f"all windows and cards, {CYLINDERS} cylinders × {SHEETS} sheets, browser, "
        f"median of {RUNS}",
        value=1e3 * json.loads(phone.python(source + sizes + CHOOSE)),
        unit="ms",
        goal=60.0,
        peer="the same in CPython",
        peer_value=1e3 * median_seconds(lambda engine: choose(engine, shelf), engines),
    )


def scroll(phone: Phone, down: float) -> None:
    phone.page.mouse.move(195.0, 500.0)
    phone.page.mouse.wheel(0.0, down)


def without_a_screen_reader(phone: Phone, way: dict[str, float], down: float) -> None:
    """The same screen again, as who looks at it has it: nothing is described beside it."""
    phone.open()
    phone.wait_for_view()
    phone.page.wait_for_timeout(REST)
    phone.page.mouse.click(way["x"] + way["width"] / 2, way["y"] + way["height"] / 2)
    phone.page.wait_for_timeout(REST)
    scroll(phone, down)
    phone.page.wait_for_timeout(REST)


def under_a_finger(phone: Phone) -> Iterator[Row]:
    """A finger that moves with every frame: how often the chart itself is painted anew."""
    enter = f"TEXTS, OWN, CYLINDERS = {json.dumps(TEXTS)!r}, {json.dumps(CYLINDER)!r}, {CYLINDERS}"
    phone.python(f"{enter}\n{ENTER}")
    way = phone.box("way-engine")
    phone.tap("way-engine")
    phone.phrase("windows-chart", holding="Piston to head: ")
    down = phone.box("slide-deck-cut")["y"] - LOWEST
    scroll(phone, down)
    chart, slider = phone.box("windows-chart"), phone.box("slide-deck-cut")
    phone.close()
    without_a_screen_reader(phone, way, down)
    strip = [chart["x"] + 8.0, chart["y"] + VALVES * chart["height"], chart["width"] - 16.0, STRIP]
    phone.page.evaluate(WATCH, [round(each) for each in strip])
    left, right = (slider["x"] + part * slider["width"] for part in (0.2, 0.8))
    middle = slider["y"] + 0.5 * slider["height"]
    phone.page.evaluate(DRAW.replace("SECONDS", str(SECONDS)), [left, right, middle])
    seen = json.loads(phone.page.evaluate("() => JSON.stringify(watch)"))
    pictures = max(1, seen["pictures"] - 2)
    yield Row(
        what=f"what-if: between two pictures of the chart as painted, a slider under a finger, "
        f"{pictures} pictures in {(seen['to'] - seen['from']) / 1e3:.1f} s",
        value=(seen["to"] - seen["from"]) / pictures,
        unit="ms",
        goal=1e3 / 30.0,
        peer="two frames of the browser in the same seconds",
        peer_value=(seen["to"] - seen["from"]) / max(1, seen["frames"] - seen["first"]),
    )
    yield Row(what="  longest wait between two of them", value=seen["worst"], unit="ms")
