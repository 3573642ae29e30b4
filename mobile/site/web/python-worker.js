// Python in its own thread: the interpreter and the app archive load side by side, then the app
// starts and waits for the screen.
import { loadPyodide } from "./pyodide/pyodide.mjs";

const place = (path) => new URL(path, import.meta.url).href;
const archive = fetch(place("app.zip")).then((response) => {
  if (!response.ok) throw new Error(`app.zip: ${response.status}`);
  return response.arrayBuffer();
});
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
sys.path[:0] = ["/app", "/app/__pypackages__"]
from mobile.main import main
main()
`;

async function start({ documentUrl, port }) {
  self.sitePort = port;
  self.pyodide = await interpreter;
  fletPage.documentUrl = documentUrl;
  pyodide.registerJsModule("flet_js", fletPage);
  pyodide.unpackArchive(await archive, "zip", { extractDir: "/app" });
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
