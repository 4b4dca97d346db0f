// Live sheets. This file carries messages between the form and Python: it knows no field, no unit
// and no formula. Python sends finished HTML, escaped there.

import { inBox, isAsBuilt } from "./box.js";
import { fillFolds, keepOpen, notCome, openFolds, part, show } from "./parts.js";
import { ask, isReady, start } from "./python.js";
import { habits, lastValues, noteHabit, recall } from "./recall.js";
import { cellsOf, fit, inForm, tend } from "./rows.js";
import { share } from "./share.js";
import { standing } from "./standing.js";
import { easeTyping } from "./typing.js";

const OF_VAN = /&van=[^&]*$/; // which van of this device a link's values were taken from
const LONGEST_LINK = 65_536; // a stranger may send megabytes, and reading them would hold the page
const [FROM_LINK, FROM_UNITS] = ["link", "measures"]; // where values come from that fill the boxes

function bind(sheet) {
  const id = sheet.dataset.sheet;
  const form = part(sheet, "form");
  const state = standing(sheet, () => request(last));
  const home = location.pathname;
  let last = {};
  let address = 0;
  let write = null; // writes the address, while that waits
  let settled = null; // told once the address holds what was typed
  let whose = ""; // the end of a link that a page about a van has led here by
  let now = ""; // the link of the answer that stands there
  let below = ""; // and of that whose folds stand there, also while the boxes cannot be read
  let kept; // the link of an answer that is kept to compare with
  let typed = false; // the reader's own values, which this device may remember

  function request(more) {
    last = more;
    const fill = "fragment" in more ? FROM_LINK : "measures" in more && FROM_UNITS;
    const take = (reply) => (reply.folds ? filled(reply) : reply.fields ? answered(reply, fill) : goOn(reply));
    state.sent();
    const asked = { sheet: id, ...habits(), beside: kept, unfolded: openFolds(sheet), ...more };
    ask(id, asked, { take, refuse: state.refused, again: state.again });
  }

  // What is folded away belongs to no other answer than the one above it.
  const filled = ({ folds, link }) => link === below && fillFolds(sheet, folds);
  const work = () => request(inForm(form));
  const lasts = lastValues(sheet, goTo);

  // The defaults, in the units that this device remembers; the last values are a press away.
  function begin() {
    lasts.offer();
    const measures = recall("measures");
    if (typeof measures === "string") request({ measures });
    else work();
  }

  function goTo(link) {
    history.replaceState(history.state, "", `#${link}`);
    open();
  }

  function changed() {
    state.changed();
    work();
  }

  function open() {
    if (location.hash.includes("=")) {
      clearTimeout(address); // of the figures that stood here before
      write = null;
      state.linked();
      if (whose || OF_VAN.test(location.hash)) forVan();
      const fragment = location.hash.slice(0, LONGEST_LINK).replace(OF_VAN, "");
      if (!isReady()) fillEarly(fragment);
      request({ fragment });
    } else if ([...form.elements].every(isAsBuilt)) begin();
    else changed(); // typed before this script was here
  }

  // What a link holds stands in the boxes while Python is still starting.
  async function fillEarly(fragment) {
    const { fill } = await import("./early.js");
    if (!isReady()) fill(form, fragment);
  }

  async function forVan() {
    [whose = ""] = OF_VAN.exec(location.hash) ?? [];
    await import("./van_sheet.js").then(({ attach }) => attach(sheet, whose), notCome(sheet));
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
    if (fill === FROM_LINK) {
      const item = (words) => Object.assign(document.createElement("li"), { textContent: words });
      part(sheet, "notes").replaceChildren(...reply.notes.map(item));
      part(sheet, "notes").hidden = !reply.notes.length;
    }
    part(sheet, "link").value = `${location.href.split("#")[0]}#${reply.link}`;
    if (reply.answer) put(reply);
    else state.unusable(reply.status);
    state.tell(reply.status);
    now = reply.answer ? reply.link : "";
    below = now || below;
    clearTimeout(address);
    if (state.isTouched() && fill !== FROM_LINK) {
      write = () => {
        clearTimeout(address);
        write = null;
        // By then the reader may have gone to another guide, or come back: an address not ours to write.
        if (!sheet.isConnected || location.pathname !== home) return;
        history.replaceState(history.state, "", `#${reply.link}${whose}`);
        if (typed && reply.answer) lasts.keep(reply.link, reply.changed);
      };
      if (settled) write();
      else address = setTimeout(write, 300);
    }
    settled?.();
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
    if (!reply.answer) throw new Error("A calculation was given up on the way");
    const [place, gist, key] = ["answer", "gist", "key"].map((name) => part(sheet, name));
    const asBefore = keepOpen(sheet, key);
    gist.innerHTML = reply.gist;
    key.innerHTML = reply.key;
    place.innerHTML = reply.answer;
    const fold = part(sheet, "fold-words"); // of a form that is folded away
    if (fold) fold.textContent = reply.fold;
    asBefore();
    place.dataset.seq = Number(place.dataset.seq) + 1;
    state.put(reply.rest === 1);
  }

  form.addEventListener("input", ({ target }) => {
    target.lugwiseEntry = null; // what Python read before is no longer what stands in the box
    noteHabit(target);
    lasts.hide();
    typed = true;
    changed();
  });
  form.addEventListener("reset", () => {
    write?.(); // what stands here becomes the last values
    typed = false; // and stays so until something else is typed
    part(sheet, "notes").hidden = true;
    setTimeout(() => {
      state.changed();
      begin();
    });
  });
  sheet.addEventListener("click", ({ target }) => {
    const { keep, keptBack, keptEnd } = target.closest("button")?.dataset ?? {};
    if (keptBack !== undefined) return goTo(kept);
    if (keptEnd !== undefined) kept = undefined;
    else if (keep === undefined || !now) return;
    else kept = now;
    work();
    sheet.scrollIntoView();
  });
  form.addEventListener("change", ({ target }) => {
    if (target.type === "text" && target.lugwiseEntry != null) target.value = target.lugwiseEntry;
  });
  for (const list of form.querySelectorAll("[data-rows]")) tend(list);
  easeTyping(form);
  share(sheet, {
    code: (link, use) => ask("code", { code: link }, { take: ({ svg }) => use(svg), refuse: () => use("") }),
    words: (link, use) => {
      const request = { sheet: id, ...habits(), fragment: now, address: link };
      ask(`words-${id}`, request, { take: (reply) => use(reply.text), refuse: () => use("") });
    },
  });
  part(sheet, "for-van").addEventListener("click", () => {
    import("./van_sheet.js").then((van) => van.offer(sheet)).catch(notCome(sheet));
  });
  part(sheet, "link").value = location.href; // until Python says it in full
  sheet.lugwiseOpen = open;
  sheet.lugwiseSettle = () => {
    write?.();
    return "behind" in sheet.dataset ? new Promise((resolve) => (settled = resolve)) : null;
  };
  sheet.dataset.live = "";
  delete document.documentElement.dataset.byLink; // from now on the sheet says it by itself
  open();
}

const everySheet = (act) => document.querySelectorAll("[data-sheet]").forEach(act);

// The theme replaces the page's content as one moves about, and says so on document$.
let led = false; // by an answer's way to another sheet: the theme leaves the page scrolled as it was
const arrive = () => {
  everySheet((sheet) => sheet.lugwiseOpen ?? bind(sheet));
  if (led) setTimeout(() => scrollTo(0, 0));
  led = false;
  for (const fold of document.querySelectorAll("[data-practice-fold]")) {
    const open = () => import("./practice.js").then((practice) => practice.open(fold.closest("[data-practice]")));
    fold.addEventListener("toggle", () => open().catch(notCome(fold)), { once: true });
  }
  for (const name of ["practice_set", "client", "van"]) {
    const place = document.querySelector(`[data-${name.replace("_", "-")}]`);
    if (place) import(`./${name}.js`).then((page) => page.arrive(place), notCome(place));
  }
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
// Another version of the site is about to load this page anew: what was typed must be in the address.
document.addEventListener("lugwise-leave", ({ detail }) => everySheet((sheet) => detail.push(sheet.lugwiseSettle?.())));
// A link from an example to the sheet above it: the theme would load the page anew, and stay below.
document.addEventListener(
  "click",
  (event) => {
    const jump = event.target.closest?.("[data-jump]");
    if (jump) {
      event.preventDefault();
      event.stopPropagation(); // the address goes on holding the values
      return document.getElementById(jump.hash.slice(1)).scrollIntoView();
    }
    const way = event.target.closest?.("a.lw-move");
    led = Boolean(way) && way.pathname !== location.pathname;
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
