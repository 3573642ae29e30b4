// The page around the app: the first picture, the service worker, and the messages to Python.
// What passes between page and Python is described in mobile/page_bridge.py.
"use strict";

const texts = JSON.parse(document.getElementById("texts").textContent);
const at = (id) => document.getElementById(id);

// ---- the first picture ----

const LAST_ANSWER = "last-answer";

function showLastAnswer() {
  let last = null;
  try {
    last = JSON.parse(localStorage.getItem(LAST_ANSWER));
  } catch {
    return; // no storage, or not ours: the picture is the same without it
  }
  if (!last) return;
  at("first-height").textContent = last.height;
  at("first-suggestion").textContent = last.suggestion;
  at("first-say").textContent = last.say;
  at("first-answer").hidden = false;
}

function showProgress(done, total) {
  at("first-step").textContent = texts.first_visit;
  at("first-progress").hidden = false;
  at("first-progress").max = total;
  at("first-progress").value = done;
}

function showStarting() {
  at("first-step").textContent = texts.starting;
  at("first-progress").hidden = true;
}

function removeFirstPicture() {
  const picture = at("first-picture");
  if (!picture) return;
  picture.classList.add("leaving");
  setTimeout(() => picture.remove(), 150);
}

// The screen's engine paints in an animation frame after it received the view.
function viewArrived() {
  requestAnimationFrame(() => requestAnimationFrame(removeFirstPicture));
  keepStorage();
}

function showTrouble(sentence, detail) {
  if (!at("trouble")) return; // the app is on screen and speaks for itself
  at("first-step").hidden = true;
  at("first-progress").hidden = true;
  at("trouble-say").textContent = sentence;
  at("trouble-detail").textContent = String(detail ?? "");
  at("trouble").hidden = false;
  at("first-picture").classList.remove("leaving");
}

// ---- the messages between page and Python ----

const toPython = new MessageChannel();
const state = { offline: "no", newVersion: false, kept: null, textScale: 1 };

function tell(changes) {
  Object.assign(state, changes);
  toPython.port1.postMessage(JSON.stringify({ kind: "state", ...state }));
}

const fromPython = {
  "ask": () => tell({}),
  "use-new-version": () => useNewVersion(),
  "link-taken": () => takeLinkAway(),
  "last-answer": ({ kind, ...answer }) => {
    localStorage.setItem(LAST_ANSWER, JSON.stringify(answer));
  },
};

toPython.port1.onmessage = (event) => {
  const message = JSON.parse(event.data);
  fromPython[message.kind](message);
};

// A link is used once: neither a reload nor the way back opens it again. The engine hears of an
// address through popstate alone.
function takeLinkAway() {
  history.replaceState(null, "", "#/");
  dispatchEvent(new PopStateEvent("popstate", { state: null }));
}

// The screen's engine multiplies text sizes with the root's font size over the usual 16 pixels.
const USUAL_FONT_SIZE = 16;

function followTextSize() {
  const measured = () => parseFloat(getComputedStyle(document.documentElement).fontSize);
  const look = () => {
    const textScale = measured() / USUAL_FONT_SIZE;
    if (textScale !== state.textScale) tell({ textScale });
  };
  new ResizeObserver(look).observe(at("text-size"));
  look();
}

async function keepStorage() {
  if (!navigator.storage?.persist) return;
  tell({ kept: (await navigator.storage.persisted()) || (await navigator.storage.persist()) });
}

// ---- the service worker: one build is one unit ----

const worker = navigator.serviceWorker;
let registration = null;

const fromServiceWorker = {
  "progress": ({ done, total }) => {
    tell({ offline: "fetching" });
    if (at("first-progress") && !started) showProgress(done, total);
  },
  "complete": ({ newer }) => tell({ offline: "ready", newVersion: state.newVersion || newer }),
  "changed": () => location.reload(), // page, worker and app are one unit
};

function listenToServiceWorker() {
  worker.addEventListener("message", (event) => fromServiceWorker[event.data.kind]?.(event.data));
  worker.addEventListener("controllerchange", () => {
    worker.controller.postMessage("complete?");
  });
  worker.startMessages();
  worker.controller?.postMessage("complete?");
}

async function registerServiceWorker() {
  registration = await worker.register("service-worker.js", { updateViaCache: "none" });
  if (registration.waiting && worker.controller) tell({ newVersion: true });
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming.addEventListener("statechange", () => {
      if (coming.state === "installed" && worker.controller) tell({ newVersion: true });
    });
  });
  document.addEventListener("visibilitychange", lookForNewVersion);
}

function lookForNewVersion() {
  // Fails without a network, which is how this app is meant to be used.
  if (document.visibilityState === "visible") registration.update().catch(() => {});
}

function useNewVersion() {
  (registration?.waiting ?? registration?.active)?.postMessage("use-new-version");
}

// On a first visit everything is fetched once, by the service worker, and only then started from.
function firstInstall() {
  return new Promise((resolve) => {
    worker.addEventListener("controllerchange", resolve, { once: true });
    const coming = registration.installing ?? registration.waiting;
    if (!coming) resolve(); // a forced reload: the page runs beside the worker this once
    coming?.addEventListener("statechange", () => {
      if (coming.state === "redundant") resolve(); // could not fetch all: start with what there is
    });
  });
}

async function prepareServiceWorker() {
  if (!worker) return tell({ offline: "unavailable" });
  listenToServiceWorker();
  const registered = registerServiceWorker().catch((error) => {
    console.warn("The service worker could not be registered:", error);
    tell({ offline: "unavailable" });
  });
  if (worker.controller) return;
  await registered;
  if (registration) await firstInstall();
}

// ---- start ----

let started = false;

function startEngine() {
  const script = document.createElement("script");
  script.src = "flutter_bootstrap.js";
  script.onerror = () => showTrouble(texts.trouble_files, script.src);
  document.body.append(script);
}

async function start() {
  showLastAnswer();
  followTextSize();
  await prepareServiceWorker();
  started = true;
  showStarting();
  startPython({ port: toPython.port2, viewArrived, showTrouble, texts });
  startEngine();
}

// WebKit restores a page from its back/forward cache with the engine's frames stopped: start anew.
addEventListener("pageshow", (event) => {
  if (event.persisted && navigator.vendor?.startsWith("Apple")) location.reload();
});

addEventListener("error", (event) => {
  if (event.message) showTrouble(texts.trouble_start, event.message);
});
addEventListener("unhandledrejection", (event) => {
  showTrouble(texts.trouble_start, event.reason?.message ?? event.reason);
});
at("trouble-again").addEventListener("click", () => location.reload());

start();
