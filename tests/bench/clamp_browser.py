"""The clamp in the built app: an engine judged, and ten thousand draws with the screen alive."""

import json
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.bench.clamp import REPEATS, clamped
from tests.clamp_taps import pick, type_into, type_open
from tests.measured import Row, median_seconds
from tests.phone import Phone
from tests.served_site import built, served

ENGINE = """
import json, random, statistics, time
from core.calc.clamp import Cylinder, Joint
from core.calc.engine_clamp import engine_clamp
from core.calc.fastener_layout import Place, share_fasteners
from core.calc.fasteners import read_thread, standard_fastener
from core.calc.gasket import HeadFace
from core.calc.preload import PercentOfProof
from core.calc.separation import entered_pressure

def bank():
    spacing = 4.4 * 25.4
    bores = [Place(x=spacing * i, y=0.0) for i in range(4)]
    rows = [Place(x=spacing * (i - 0.5), y=y) for i in range(5) for y in (-60.0, 60.0)]
    inner = [Place(x=spacing * i, y=70.0) for i in range(4)]
    ends = [Place(x=spacing * (i - 0.5), y=85.0) for i in (0, 2, 4)]
    return share_fasteners(bores, rows + inner + ends)

def judged(seed):
    rng = random.Random(seed)
    joint = Joint(
        fastener=standard_fastener(read_thread("7/16-14", "thread"), "8", "grade"),
        tightening=PercentOfProof(share=rng.uniform(0.6, 0.8)),
        face=HeadFace(answered=True),
    )
    return engine_clamp(joint, [
        Cylinder(
            name=str(number + 1), ring_diameter=109.22, wire_diameter=1.0414,
            height=rng.uniform(0.008, 0.014) * 25.4, height_u=0.0003 * 25.4, fasteners=share,
            pressure=entered_pressure(rng.uniform(6.0, 11.0)),
        )
        for number, share in enumerate(bank() + bank())
    ])

times = []
for seed in range(REPEATS):
    started = time.perf_counter()
    judged(seed)
    times.append(time.perf_counter() - started)
json.dumps(statistics.median(times))
"""
WATCH = """() => {
  window.watch = {worst: 0, frames: 0, from: performance.now(), last: performance.now()};
  const frame = (now) => {
    watch.worst = Math.max(watch.worst, now - watch.last);
    watch.last = now;
    watch.frames += 1;
    if (!watch.over) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}"""
DRAWN = """() => {
  const drawn = document.querySelector('[flt-semantics-identifier="drawn-clamp"]');
  if (!drawn) return null;
  watch.over = true;
  return JSON.stringify({...watch, took: performance.now() - watch.from});
}"""
STILL = """() => { watch.over = true; return watch.worst; }"""
IDLE = 2000
SIZES = {"Pressure": "1500", "Ring diameter": "4.3", "Wire": "41", "Wire height": "10.5"}
TALL = {"width": 390, "height": 1500}


def rows() -> Iterator[Row]:
    with (
        tempfile.TemporaryDirectory() as place,
        sync_playwright() as playwright,
        served(built()) as origin,
    ):
        phone = Phone(playwright, Path(place) / "profile", f"{origin}/", viewport=TALL)
        phone.open()
        phone.read_aloud()
        yield engine(phone)
        yield from draws(phone)
        phone.close()


def engine(phone: Phone) -> Row:
    seconds = json.loads(phone.python(ENGINE.replace("REPEATS", str(REPEATS))))
    return Row(
        what=f"8 cylinders, 34 fasteners, places to verdicts, browser, median of {REPEATS}",
        value=1e3 * seconds,
        unit="ms",
        goal=30.0,
        peer="the same in CPython",
        peer_value=1e3 * median_seconds(clamped, range(REPEATS)),
    )


def enter(phone: Phone) -> None:
    """Two banks of four cylinders, by taps."""
    phone.tap("clamp-answer")
    pick(phone, size="7/16", thread="7/16-14", strength="8", tightened="preload")
    type_open(phone, "Share of proof", "75")
    pick(phone, around="fasteners")
    type_open(phone, "Per cylinder", "4.25")
    pick(phone, peak="pressure")
    for field, keys in SIZES.items():
        type_open(phone, field, keys)
    type_into(phone, "cylinders", "Bores in a bank", "4")
    type_into(phone, "banks", "Banks", "2")


def draws(phone: Phone) -> Iterator[Row]:
    """From the tap to the figures on the screen, and the longest wait between two frames."""
    phone.tap("way-engine")
    phone.tap("engine-clamp")
    enter(phone)
    phone.tap("clamp-spread")
    phone.phrase("spread-shares", holding="Clamp")
    phone.page.evaluate(WATCH)
    phone.page.wait_for_timeout(IDLE)
    idle = phone.page.evaluate(STILL)
    phone.page.evaluate(WATCH)
    phone.tap("draw")
    told = json.loads(phone.page.wait_for_function(DRAWN, polling=50).json_value())
    yield Row(
        what="10000 draws of 8 cylinders, browser, from the tap to the figures on the screen",
        value=told["took"] / 1e3,
        unit="s",
        goal=3.0,
    )
    yield Row(
        what=f"  longest wait between two of its {told['frames']} frames",
        value=told["worst"],
        unit="ms",
        goal=100.0,
        peer=f"the same screen left alone for {IDLE / 1e3:.0f} s",
        peer_value=idle,
    )
