// The Python worker, started with the page and not after the screen's first frame. The screen's
// engine connects later through jsConnect, jsSend and jsDisconnect, which it calls by these names.
"use strict";

const python = { worker: null, ready: null, received: 0 };

function startPython({ port, viewArrived, showTrouble, texts }) {
  python.worker = new Worker("python-worker.js", { type: "module" });
  python.ready = new Promise((resolve, reject) => {
    const failed = (detail) => {
      showTrouble(texts.trouble_python, detail);
      reject(new Error(detail));
    };
    python.worker.onerror = (event) => failed(event.message ?? texts.trouble_files);
    python.worker.onmessage = ({ data }) => {
      if (data instanceof Uint8Array) return receive(data, viewArrived);
      if (data.kind === "ready") return resolve();
      return failed(data.detail);
    };
  });
  python.ready.catch(() => {}); // shown already; the engine hears of it in jsConnect
  python.worker.postMessage({ documentUrl: document.URL, port }, [port]);
}

// The first packet answers the engine's greeting, the second carries the app's first view.
function receive(packet, viewArrived) {
  python.toEngine(packet);
  python.received += 1;
  if (python.received === 2) viewArrived();
}

globalThis.jsConnect = async (id, settings, toEngine) => {
  python.toEngine = toEngine;
  await python.ready;
};

globalThis.jsSend = async (id, packet) => python.worker.postMessage(packet, [packet.buffer]);

globalThis.jsDisconnect = async () => python.worker.terminate();
