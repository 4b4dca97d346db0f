// Says, in the one line that every page keeps for it, what is saved on this device. The figures
// are counted from the cache by the service worker (sw.js, one folder up). Whether the browser
// believes itself on line proves nothing, so it is never asked.

import "./install.js";
import { button } from "./parts.js";

const WORKER = new URL("../sw.js", import.meta.url);
const READ_MS = 6e3;
const SETTLE_MS = 5e3;
const BROKE = "the connection broke. It goes on when there is signal";
const ENDED = "the browser ended the saving. It goes on when there is signal";
const LOGIN = "the network sent a page of its own, such as a login page. Log in there, then try again";
const REFUSED = "this browser refuses to store files. The site works while there is signal";
const ERROR = "the site's server reports error";
const BEFORE = "before"; // of which no name has come
const RETRY_MS = [30e3, 2 * 60e3, 10 * 60e3, 30 * 60e3]; // a bad line costs data at every try

const container = (() => {
  try {
    return navigator.serviceWorker;
  } catch {
    return null; // refused
  }
})();
let registration = null;
let kept = null; // what the working version has, once it has said so
let coming = null; // what a version that is being saved has
let failed = ""; // why the last save broke off, in words
let isCounted = false; // that failure, which two may tell of
let opened = location.pathname; // of the page that stands here
const boot = () => document.querySelector("meta[name=lugwise-boot]")?.content;
const own = boot(); // of the edition whose scripts run here
let edition = ""; // by which this page was opened
let replaced = false; // a newer version has taken over behind this page
let pressed = false; // this page's reader asked for the newer version
let retries = 0;
let retryTimer = null;
let reading = null; // until the line that all is saved has been read
let isOld = Boolean(container?.controller); // saved before this page was opened

// The sentence and, where there is something to do, its button's label and act.
function line() {
  if (!window.isSecureContext) return ["The site is saved only from an https address."];
  if (!container) return ["This browser cannot save the site for later."];
  const whole = kept && kept.have === kept.total;
  const saved = whole && `Saved for use without signal: ${kept.have} of ${kept.total}`;
  const newer = whole ? "Saving a newer version" : "Saving for use without signal";
  if (replaced) return ["A newer version is in use", "Reload", reload];
  if (registration?.waiting && registration.active) {
    return ["A newer version is ready", "Use it now", useNew];
  }
  if (coming) return [`${newer}: ${coming.have} of ${coming.total} files`];
  if (failed) {
    const what = whole ? `${saved}. A newer version is not saved` : "Not saved";
    return [`${what}: ${failed}.`, "Try again", tryAgain];
  }
  if (saved) return [saved];
  if (kept) return [`Saving for use without signal: ${kept.have} of ${kept.total} files`];
  return ["Looking at what is saved on this device"];
}

function render() {
  if (!replaced) opened = location.pathname;
  const place = document.querySelector("[data-offline-line]");
  const [sentence, label, act] = line();
  if (place) hide(place, !label && sentence.startsWith("Saved for"));
  // An unchanged line is left alone: a screen reader would say it again.
  if (place && place.dataset.says !== sentence) {
    place.dataset.says = sentence;
    // While busy it is not read out: one announcement at the end, not one a file.
    place.setAttribute("aria-busy", String(!label && / of \d+ files$/.test(sentence)));
    place.replaceChildren(sentence, ...(label ? [" ", button(label, act)] : []));
  }
}

// Once all is saved there is nothing to say: the line goes, after it has been read.
function hide(place, isDone) {
  const isUnknown = isOld && !kept && !failed;
  if (!isDone && !isUnknown) isOld = false;
  place.hidden = isOld;
  if (!isDone || isOld) return;
  clearTimeout(reading);
  reading = setTimeout(() => {
    isOld = true;
    render();
  }, READ_MS);
}

// What was typed last is on its way into the address, which the page is opened by again.
async function settle() {
  const waits = [];
  document.dispatchEvent(new CustomEvent("lugwise-leave", { detail: waits }));
  await Promise.race([Promise.all(waits), new Promise((go) => setTimeout(go, SETTLE_MS))]);
}

async function reload() {
  await settle();
  location.reload();
}

async function useNew() {
  await settle();
  pressed = true;
  registration.waiting?.postMessage({ type: "use-new" });
}

function tryAgain() {
  failed = "";
  render();
  check();
}

function fail(reason) {
  [failed, coming] = [reason, null];
  if (!isCounted) retries += 1;
  isCounted = true;
  retryLater();
  render();
}

function retryLater() {
  clearTimeout(retryTimer);
  retryTimer = setTimeout(check, RETRY_MS[Math.min(Math.max(retries, 1), RETRY_MS.length) - 1]);
}

function watch(worker) {
  if (!worker) return;
  isCounted = false;
  let before = worker.state;
  worker.onstatechange = () => {
    // The browser ends a save that takes it too long, and the worker cannot say so.
    if (worker.state === "redundant" && before === "installing" && !isCounted) fail(ENDED);
    if (worker.state === "activated" || registration.waiting) coming = null;
    before = worker.state;
    askStatus();
    render();
  };
}

function askStatus() {
  for (const worker of [registration.active, registration.installing]) {
    worker?.postMessage({ type: "status" });
  }
}

function hear({ data, source }) {
  if (source.state === "activated") {
    edition ||= data.edition;
    if (edition === data.edition) replaced = false; // the same one, saved anew
  }
  if (data.type === "save-failed") return fail(data.reason);
  if (data.type === "progress") [failed, retries, isCounted] = ["", 0, false];
  if (source.state === "installing") coming = data;
  else if (source.state !== "redundant") kept = data;
  if (data.type === "status" && lacks() && !failed) repair();
  render();
}

const lacks = () => kept?.have < kept?.total || kept?.list === false;

// For files that the browser has dropped since they were saved.
function repair() {
  isCounted = false;
  registration.active?.postMessage({ type: "repair" });
}

async function check() {
  // Gone without a word where a reader has cleared the site's data.
  if (!registration?.active || !(await container.getRegistration(WORKER).catch(() => null))) return start();
  if (lacks()) repair();
  askStatus();
  try {
    await registration.update();
    if (registration.installing || !kept || lacks()) return;
    failed = ""; // nothing newer is there
    render();
  } catch {
    if (failed) retryLater(); // else without signal there is nothing newer to find
  }
}

async function start() {
  isCounted = false;
  kept = null;
  try {
    registration = await container.register(WORKER, { updateViaCache: "none" });
    registration.onupdatefound = () => watch(registration.installing);
    watch(registration.installing);
    askStatus();
    render();
  } catch (error) {
    fail(await whyNot(error));
  }
}

// Why the browser has not taken the worker: browsers say it each in their own way, so the host is asked.
async function whyNot({ name }) {
  const options = { cache: "no-store", redirect: "manual" };
  const reply = await fetch(WORKER, options).catch(() => null);
  if (!reply) return BROKE;
  if (reply.type === "opaqueredirect") return LOGIN;
  if (!reply.ok) return `${ERROR} ${reply.status}. It goes on when that is over`;
  if (/html/.test(reply.headers.get("Content-Type"))) return LOGIN;
  return name === "TypeError" ? BROKE : REFUSED;
}

// The theme replaces parts of the page as one moves about. Where nothing is saved, the host may have
// another edition by then.
window.document$?.subscribe(() => (boot() === own ? render() : location.reload()));
if (container && window.isSecureContext) {
  let controlled = Boolean(container.controller);
  container.addEventListener("message", hear);
  container.startMessages();
  container.addEventListener("controllerchange", () => {
    if (pressed) return location.reload();
    if (!container.controller) return void start(); // the site's data was cleared, and the worker with it
    if (controlled) {
      replaced = true; // never reload under someone's hands
      edition ||= BEFORE;
    }
    controlled = true;
    askStatus();
  });
  window.addEventListener("online", check);
  document.addEventListener("visibilitychange", () => document.hidden || check());
  // The page's own files first: saving starts when they are here.
  if (document.readyState === "complete") start();
  else window.addEventListener("load", start);
}
// Behind a newer version every move loads its page whole: the theme would put the newer version's
// page before the older one's Python.
document.addEventListener("click", (event) => replaced && event.target.closest?.("a[href]") && event.stopPropagation(), true);
window.addEventListener("popstate", (event) => {
  if (!replaced) return;
  event.stopImmediatePropagation();
  if (location.pathname !== opened) location.reload();
}, true);
render();
