// Live sheets. This file carries messages between the form and Python: it knows no field, no unit
// and no formula. Python sends finished HTML, escaped there.

import { inBox, isAsBuilt } from "./box.js";
import { part, show } from "./parts.js";
import { ask, isReady, start } from "./python.js";
import { cellsOf, fit, inForm, tend } from "./rows.js";
import { share } from "./share.js";
import { standing } from "./standing.js";

const OF_VAN = /&van=[^&]*$/; // which van of this device a link's values were taken from
const LONGEST_LINK = 65_536; // a stranger may send megabytes, and reading them would hold the page

function bind(sheet) {
  const id = sheet.dataset.sheet;
  const form = part(sheet, "form");
  const state = standing(sheet, () => request(last));
  const home = location.pathname;
  let last = {};
  let address = 0;
  let whose = ""; // the end of a link that a page about a van has led here by

  function request(more) {
    last = more;
    const take = (reply) => (reply.fields ? answered(reply, "fragment" in more) : goOn(reply));
    state.sent();
    ask(id, { sheet: id, ...more }, { take, refuse: state.refused, again: state.again });
  }

  const work = () => request(inForm(form));

  function changed() {
    state.changed();
    work();
  }

  function open() {
    if (location.hash.includes("=")) {
      clearTimeout(address); // of the figures that stood here before
      state.opened();
      if (whose || OF_VAN.test(location.hash)) forVan();
      const fragment = location.hash.slice(0, LONGEST_LINK).replace(OF_VAN, "");
      if (!isReady()) fillEarly(fragment);
      request({ fragment });
    } else if ([...form.elements].every(isAsBuilt)) work();
    else changed(); // typed before this script was here
  }

  // What a link holds stands in the boxes while Python is still starting.
  async function fillEarly(fragment) {
    const { fill } = await import("./early.js");
    if (!isReady()) fill(form, fragment);
  }

  async function forVan() {
    [whose = ""] = OF_VAN.exec(location.hash) ?? [];
    const { attach } = await import("./van_sheet.js");
    attach(sheet, whose);
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
    part(sheet, "link").value = `${location.href.split("#")[0]}#${reply.link}`;
    if (reply.answer) put(reply);
    else state.unusable(reply.status);
    state.tell(reply.status);
    clearTimeout(address);
    if (state.isTouched() && !fill) {
      // By then the reader may have gone to another guide, or come back: an address not ours to write.
      const here = () => sheet.isConnected && location.pathname === home;
      const write = () => here() && history.replaceState(history.state, "", `#${reply.link}${whose}`);
      address = setTimeout(write, 300);
    }
    document.documentElement.dataset.lugwise = "ready";
  }

  // A later stage of a long sum.
  function goOn(reply) {
    if (reply.rest < 1) part(sheet, "rest").value = reply.rest;
    else {
      put(reply);
      state.tell(reply.status);
    }
  }

  function put(reply) {
    if (!reply.answer) throw new Error("A sum was given up on the way");
    const [place, gist, key] = ["answer", "gist", "key"].map((name) => part(sheet, name));
    const opened = [...place.querySelectorAll("details[open]")].map((fold) => fold.dataset.fold);
    gist.innerHTML = reply.gist;
    key.innerHTML = reply.key;
    place.innerHTML = reply.answer;
    for (const fold of place.querySelectorAll("details")) fold.open = opened.includes(fold.dataset.fold);
    place.dataset.seq = Number(place.dataset.seq) + 1;
    state.put(reply.rest === 1);
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
  share(sheet, (link, use) => {
    ask("code", { code: link }, { take: ({ svg }) => use(svg), refuse: () => use("") });
  });
  part(sheet, "for-van").addEventListener("click", () => {
    import("./van_sheet.js").then((van) => van.offer(sheet)).catch(console.error);
  });
  part(sheet, "link").value = location.href; // until Python says it in full
  sheet.lugwiseOpen = open;
  sheet.dataset.live = "";
  open();
}

const everySheet = (act) => document.querySelectorAll("[data-sheet]").forEach(act);

// The theme replaces the page's content as one moves about, and says so on document$.
const arrive = () => {
  everySheet((sheet) => sheet.lugwiseOpen ?? bind(sheet));
  for (const fold of document.querySelectorAll("[data-practice-fold]")) {
    const open = () => import("./practice.js").then((practice) => practice.open(fold.closest("[data-practice]")));
    fold.addEventListener("toggle", () => open().catch(console.error), { once: true });
  }
  const set = document.querySelector("[data-practice-set]");
  if (set) import("./practice_set.js").then((practice) => practice.arrive(set), console.error);
  if (document.querySelector("[data-van]")) import("./van.js").then((van) => van.arrive(), console.error);
};
if (window.document$) window.document$.subscribe(arrive);
else arrive();
const openLink = () =>
  everySheet((sheet) => {
    if (!location.hash.includes("=")) return; // a heading's anchor
    sheet.lugwiseOpen?.();
    sheet.scrollIntoView();
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
