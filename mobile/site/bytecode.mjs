// Start the phone's Python in Node.js and let it compile the archives of one folder.
import fs from "node:fs";
import { pathToFileURL } from "node:url";

const [runtime, folder, program] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${runtime}/pyodide.mjs`));
const python = await loadPyodide({
  indexURL: `${runtime}/`,
  packageBaseUrl: `${runtime}/`,
  // Tracebacks name lines, not columns: a quarter less to fetch.
  env: { PYTHONNODEBUGRANGES: "1" },
});
python.mountNodeFS("/work", folder);
try {
  python.runPython(fs.readFileSync(program, "utf8"));
} catch (error) {
  fs.writeSync(2, error.message);
  process.exit(1);
}
