// Live sheets. This file carries messages between the form and the Python in worker.js: it knows
// no field, no unit and no formula. Python sends finished HTML, escaped there.

import { share } from "./share.js";

const START_LIMIT = 60_000; // a refused wasm makes the loader wait for ever, so the page holds the clock
const NO_START =
  "The live sheet could not start in this browser. The figures shown are the sheet’s own example.";

let worker = null;
let ready = false;
let clock = 0;
let asked = 0;
const waiting = new Map(); // id of an ask -> what to do with its reply

function start() {
  if (worker) return;
  worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
  clock = setTimeout(() => stop(NO_START), START_LIMIT);
  worker.onmessage = ({ data }) => {
    if (data.type === "ready") {
      ready = true;
      clearTimeout(clock);
    } else if (data.type === "answer") {
      const take = waiting.get(data.id);
      waiting.delete(data.id);
      take?.(JSON.parse(data.response));
    } else if (data.type === "failed" && !ready) stop(NO_START);
    else if (data.type === "failed") {
      waiting.delete(data.id);
      everySheet((sheet) => say(sheet, `This could not be worked: ${data.message}`));
    }
  };
  worker.onerror = () => ready || stop(NO_START);
}

function stop(reason) {
  clearTimeout(clock);
  worker?.terminate();
  [worker, ready] = [null, false];
  waiting.clear();
  everySheet((sheet) => say(sheet, reason));
}

function ask(key, request, take) {
  start();
  waiting.set(++asked, take);
  worker.postMessage({ type: "ask", id: asked, key, request: JSON.stringify(request) });
}

const everySheet = (act) => document.querySelectorAll("[data-sheet]").forEach(act);
const part = (sheet, name) => sheet.querySelector(`[data-${name}]`);

// One line about the state of the answer below it; empty when the answer is that of the fields.
function say(sheet, words) {
  const line = part(sheet, "state");
  line.textContent = words;
  line.hidden = !words;
  sheet.classList.toggle("is-stale", Boolean(words));
}

function show(element, words) {
  element.textContent = words;
  element.hidden = !words;
}

function bind(sheet) {
  const id = sheet.dataset.sheet;
  const form = part(sheet, "form");
  let newest = 0;
  let speak = 0;
  let address = 0;
  let scold = 0;

  const request = (more) => {
    const mine = ++newest;
    ask(id, { sheet: id, ...more }, (reply) => mine === newest && take(reply, "fragment" in more));
  };

  const work = () => {
    const values = {};
    const units = {};
    for (const [name, value] of new FormData(form)) {
      if (name.endsWith(".unit")) units[name.slice(0, -5)] = value;
      else values[name] = value;
    }
    if (!ready) say(sheet, "Starting the sheet; your answer follows.");
    request({ values, units });
  };

  const beside = (field, reply, fill) => {
    const box = field.querySelector("input, select"); // by place: a field may be called `length`
    const picker = part(field, "unit");
    field.hidden = !reply.shown;
    show(part(field, "note"), reply.note);
    if (picker && reply.unit) picker.value = reply.unit;
    if (fill) {
      if (box.options && ![...box.options].some((option) => option.value === reply.fill)) {
        box.add(new Option(reply.fill, reply.fill));
      }
      box.value = reply.fill;
    }
    // A folded figure that is wrong, or that a link sets apart from the usual, must be seen.
    const usual = box.options ? box.options[box.selectedIndex].defaultSelected : box.value === box.defaultValue;
    if (reply.error || (fill && !usual)) field.closest("details")?.setAttribute("open", "");
    box.lugwiseEntry = reply.error ? null : reply.entry;
    const mark = () => {
      show(part(field, "error"), reply.error);
      box.setAttribute("aria-invalid", String(Boolean(reply.error)));
    };
    // Half-typed is not yet wrong: a box in use is told after a pause.
    if (reply.error && box === document.activeElement && !fill) scold = setTimeout(mark, 700);
    else mark();
  };

  const take = (reply, fill) => {
    clearTimeout(scold);
    for (const field of form.querySelectorAll("[data-field]")) {
      beside(field, reply.fields[field.dataset.field], fill);
    }
    if (fill) {
      const notes = part(sheet, "notes");
      notes.replaceChildren(...reply.notes.map((words) => Object.assign(document.createElement("li"), { textContent: words })));
      notes.hidden = !reply.notes.length;
    }
    if (reply.answer) answer(reply);
    say(sheet, reply.answer ? "" : "The answer below is that of the last complete figures.");
    clearTimeout(speak);
    speak = setTimeout(() => (part(sheet, "status").textContent = reply.status), 800);
    clearTimeout(address);
    sheet.lugwiseLink = `${location.href.split("#")[0]}#${reply.link}`;
    part(sheet, "link").value = sheet.lugwiseLink;
    if (!fill) {
      address = setTimeout(() => history.replaceState(history.state, "", `#${reply.link}`), 300);
    }
    document.documentElement.dataset.lugwise = "ready";
  };

  const answer = (reply) => {
    const place = part(sheet, "answer");
    const open = [...place.querySelectorAll("details[open]")].map((fold) => fold.dataset.fold);
    place.innerHTML = reply.answer;
    for (const fold of place.querySelectorAll("details")) fold.open = open.includes(fold.dataset.fold);
    place.dataset.seq = Number(place.dataset.seq) + 1;
    part(sheet, "gist").innerHTML = reply.gist;
  };

  const open = () => {
    const fragment = location.hash;
    if (!fragment.includes("=")) return work();
    say(sheet, ready ? "" : "Working out the figures of this link; those below are the sheet’s own example.");
    request({ fragment });
  };

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", work);
  form.addEventListener("reset", () => setTimeout(work));
  form.addEventListener("change", ({ target }) => {
    if (target.type === "text" && target.lugwiseEntry != null) target.value = target.lugwiseEntry;
  });
  window.addEventListener("hashchange", () => sheet.isConnected && open());
  share(sheet, (link, take) => ask("code", { code: link }, (reply) => take(reply.svg)));
  open();
}

// The theme replaces the page's content as one moves about, and says so on document$.
function arrive() {
  everySheet((sheet) => {
    if (sheet.dataset.bound || !part(sheet, "form")) return;
    sheet.dataset.bound = "";
    bind(sheet);
  });
}

if (window.document$) window.document$.subscribe(arrive);
else arrive();
// Elsewhere Python starts when the page has nothing better to do, so that the first sheet is quick.
const idle = window.requestIdleCallback ?? ((act) => setTimeout(act, 2000));
window.addEventListener("load", () => idle(start));
