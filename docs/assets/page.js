// Live sheets. This file carries messages between the form and Python: it knows no field, no unit
// and no formula. Python sends finished HTML, escaped there.

import { inBox, part, show } from "./box.js";
import { ask, isReady, start } from "./python.js";
import { cellsOf, fit, tend, typed } from "./rows.js";
import { share } from "./share.js";

// Says how the answer below stands to the fields; a stale answer is seen to be one.
function say(sheet, words, stale) {
  show(part(sheet, "standing"), words);
  sheet.classList.toggle("is-stale", stale);
}

function bind(sheet) {
  const id = sheet.dataset.sheet;
  const form = part(sheet, "form");
  let newest = 0;
  let touched = false; // the fields are no longer those of the answer that came with the page
  let speak = 0;
  let address = 0;
  const home = location.pathname;

  function request(more) {
    const mine = ++newest;
    // A long sum comes in parts, each asked for by itself, so that newer figures need not wait.
    const take = (reply) => {
      if (mine !== newest) return;
      if (reply.fields) answered(reply, "fragment" in more);
      else if (reply.answer) {
        put(reply);
        tell(reply);
      }
      if (reply.rest === 1) return;
      part(sheet, "rest").value = reply.rest;
      ask(id, { sheet: id, rest: true }, take, refuse);
    };
    const refuse = (words) => {
      if (mine !== newest) return;
      const why = words
        ? `This could not be worked: ${words}`
        : "The live sheet could not start in this browser. The figures shown are the sheet’s own example.";
      say(sheet, why, touched);
    };
    ask(id, { sheet: id, ...more }, take, refuse);
  }

  function work() {
    const values = typed(form);
    const units = {};
    for (const [name, value] of new FormData(form)) {
      if (name.endsWith(".unit")) units[name.slice(0, -5)] = value;
      else values[name] = value;
    }
    request({ values, units });
  }

  function changed() {
    touched = true;
    if (!isReady()) say(sheet, "Starting the sheet; your answer follows.", true);
    work();
  }

  function open() {
    if (!location.hash.includes("=")) return work();
    touched = true;
    clearTimeout(address); // of the figures that stood here before
    if (!isReady()) say(sheet, "Working out the figures of this link; those below are the sheet’s own example.", true);
    request({ fragment: location.hash });
  }

  function beside(field, reply, fill) {
    const picker = part(field, "unit");
    field.hidden = !reply.shown;
    show(part(field, "note"), reply.note);
    if (!reply.rows) {
      if (picker && reply.unit) picker.value = reply.unit;
      return inBox(field, reply, fill);
    }
    show(part(field, "error"), reply.error);
    if (fill) fit(field, reply.rows.length);
    for (const [cell, said] of cellsOf(field, reply.rows)) inBox(cell, said, fill);
  }

  function answered(reply, fill) {
    for (const field of form.querySelectorAll("[data-field]")) {
      beside(field, reply.fields[field.dataset.field], fill);
    }
    if (fill) {
      const item = (words) => Object.assign(document.createElement("li"), { textContent: words });
      part(sheet, "notes").replaceChildren(...reply.notes.map(item));
      part(sheet, "notes").hidden = !reply.notes.length;
    }
    if (reply.answer) put(reply);
    else part(sheet, "gist").textContent = reply.status;
    say(sheet, reply.answer ? "" : "The answer below is that of the last complete figures.", !reply.answer);
    tell(reply);
    clearTimeout(address);
    part(sheet, "link").value = `${location.href.split("#")[0]}#${reply.link}`;
    if (touched && !fill) {
      // By then the reader may have gone to another guide, or come back: an address not ours to write.
      const here = () => sheet.isConnected && location.pathname === home;
      const write = () => here() && history.replaceState(history.state, "", `#${reply.link}`);
      address = setTimeout(write, 300);
    }
    document.documentElement.dataset.lugwise = "ready";
  }

  function tell(reply) {
    clearTimeout(speak);
    if (touched) speak = setTimeout(() => (part(sheet, "status").textContent = reply.status), 800);
  }

  function put(reply) {
    const place = part(sheet, "answer");
    const opened = [...place.querySelectorAll("details[open]")].map((fold) => fold.dataset.fold);
    place.innerHTML = reply.answer;
    for (const fold of place.querySelectorAll("details")) fold.open = opened.includes(fold.dataset.fold);
    place.dataset.seq = Number(place.dataset.seq) + 1;
    part(sheet, "gist").innerHTML = reply.gist;
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", ({ target }) => {
    target.lugwiseEntry = null; // what Python read before is no longer what stands in the box
    changed();
  });
  form.addEventListener("reset", () => {
    part(sheet, "notes").hidden = true;
    setTimeout(changed);
  });
  form.addEventListener("change", ({ target }) => {
    if (target.type === "text" && target.lugwiseEntry != null) target.value = target.lugwiseEntry;
  });
  for (const list of form.querySelectorAll("[data-rows]")) tend(list);
  share(sheet, (link, take) => ask("code", { code: link }, (reply) => take(reply.svg), () => take("")));
  part(sheet, "link").value = location.href; // until Python says it in full
  sheet.lugwiseOpen = open;
  open();
}

const everySheet = (act) => document.querySelectorAll("[data-sheet]").forEach(act);

// The theme replaces the page's content as one moves about, and says so on document$.
const arrive = () => everySheet((sheet) => sheet.lugwiseOpen ?? bind(sheet));
if (window.document$) window.document$.subscribe(arrive);
else arrive();
const openLink = () =>
  everySheet((sheet) => {
    if (!location.hash.includes("=")) return; // a heading's anchor
    sheet.lugwiseOpen?.();
    // Where an answer leads on, the next step is what one looks for, not the figures above it.
    (part(sheet, "ways") ? part(sheet, "answer") : sheet).scrollIntoView();
  });
window.addEventListener("hashchange", openLink);
// A link from an example to the sheet above it: the theme would load the page anew, and stay below.
document.addEventListener(
  "click",
  (event) => {
    const link = event.target.closest?.("a[href*='#v=']");
    if (!link || link.pathname !== location.pathname || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    event.stopPropagation();
    // The address of a step is what the browser's own way back leads to.
    const sheet = link.closest("[data-sheet]");
    if (sheet) history.replaceState(history.state, "", part(sheet, "link").value);
    if (location.hash === link.hash) return everySheet((sheet) => sheet.scrollIntoView());
    // Setting the hash instead would wake the theme: it fetches this page and scrolls back down.
    history.pushState(null, "", link.hash);
    openLink();
  },
  true,
);
// Elsewhere Python starts when the page has nothing better to do, so that the first sheet is quick.
const idle = window.requestIdleCallback ?? ((act) => setTimeout(act, 2000));
window.addEventListener("load", () => idle(start));
