// Python in its own thread: the interpreter and the app archive load side by side, then the app
// starts and waits for the screen.
import { loadPyodide } from "./pyodide/pyodide.mjs";

const place = (path) => new URL(path, import.meta.url).href;
const fetched = ["packages.zip", "app.zip"].map(async (name) => {
  const response = await fetch(place(name));
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response.arrayBuffer();
});
for (const each of fetched) each.catch(() => {}); // heard of below, where it is awaited
const interpreter = loadPyodide({
  indexURL: place("pyodide/"),
  packageBaseUrl: place("pyodide/"),
});

// What Flet's Python side expects of its page, by its names.
const fletPage = {};

function sendToEngine(message) {
  const bytes = message.toJs();
  self.postMessage(bytes, [bytes.buffer]);
}

const START = `
import os, sys
os.chdir("/app")
sys.path[:0] = ["/app", "/packages"]
from mobile.main import main
main()
`;

async function start({ documentUrl, port }) {
  self.sitePort = port;
  self.pyodide = await interpreter;
  fletPage.documentUrl = documentUrl;
  pyodide.registerJsModule("flet_js", fletPage);
  const [packages, app] = await Promise.all(fetched);
  pyodide.unpackArchive(packages, "zip", { extractDir: "/packages" });
  pyodide.unpackArchive(app, "zip", { extractDir: "/app" });
  await pyodide.runPythonAsync(START);
  await fletPage.start_connection(sendToEngine);
}

self.onmessage = async ({ data }) => {
  self.onmessage = (event) => fletPage.send(event.data);
  try {
    await start(data);
    self.postMessage({ kind: "ready" });
  } catch (error) {
    self.postMessage({ kind: "failed", detail: String(error) });
  }
};
