// The boxes of a van: what is typed goes to Python in turn, and what Python says goes beside them.

import { inBox } from "./box.js";
import { part } from "./parts.js";
import { tend, typed } from "./rows.js";
import { easeTyping } from "./typing.js";

export function editing(page) {
  const { root, van } = page;
  const place = part(root, "panel-parts");
  const waiting = new Map(); // place -> change that Python has not read yet
  const filling = new Map(); // fold -> its form, on its way
  let asked = false;

  const rowAt = (at) => place.querySelector(`[data-place="${CSS.escape(at)}"]`);
  const foldAt = (at) => place.querySelector(`[data-part="${CSS.escape(at)}"]`);

  // What stands in a row, as it goes to Python.
  function changeIn(row) {
    const list = part(row, "rows");
    if (list) return { rows: typed(list.form)[list.dataset.rows] };
    const box = row.querySelector("input, select");
    return { typed: box.value, unit: part(row, "unit")?.value ?? "", by: part(row, "by")?.value ?? "" };
  }

  function change(row, what = changeIn(row)) {
    waiting.set(row.dataset.place, what);
    if (asked) return;
    asked = true;
    page.inTurn(flush);
  }

  // Sends all that waits. What fails stays, and goes with the next.
  async function flush() {
    asked = false;
    if (!waiting.size) return;
    const changes = Object.fromEntries(waiting);
    const reply = await page.ask(page.request({ do: "change", changes }));
    for (const [at, what] of Object.entries(changes)) if (waiting.get(at) === what) waiting.delete(at);
    if (page.told(reply)) return;
    page.take(reply, Object.keys(changes).join());
    for (const [at, said] of Object.entries(reply.fields)) beside(at, said, changes[at]);
    for (const [at, html] of Object.entries(reply.lines)) redraw(at, html);
    count(reply.counts);
    page.views.mark();
    if (reply.whole) await page.parts();
  }

  function redraw(at, html) {
    const line = place.querySelector(`[data-line="${CSS.escape(at)}"]`);
    if (line && line.innerHTML !== html) line.innerHTML = html;
  }

  function count(counts) {
    for (const [kind, words] of Object.entries(counts)) {
      const shown = place.querySelector(`[data-count="${kind}"]`);
      if (shown) shown.textContent = words;
    }
  }

  function beside(at, said, sent) {
    const row = rowAt(at);
    if (!row || waiting.has(at)) return;
    if (part(row, "rows")) {
      Object.assign(part(row, "error"), { textContent: said.error, hidden: !said.error });
      return;
    }
    inBox(row, said, "says" in sent);
    const [note, unit, by] = ["note", "unit", "by"].map((name) => part(row, name));
    Object.assign(note, { textContent: said.note, hidden: !said.note });
    if (unit && said.unit) unit.value = said.unit;
    row.dataset.is = said.is;
    if (by) by.hidden = !said.by;
    if (said.by && by) by.value = said.by;
    for (const button of row.querySelectorAll("[data-says]")) {
      button.setAttribute("aria-pressed", String(button.dataset.is === said.is));
    }
  }

  // Puts the form of a part into its fold, for all at once who want it there.
  function fill(fold) {
    if (!filling.has(fold)) filling.set(fold, fetchForm(fold).finally(() => filling.delete(fold)));
    return filling.get(fold);
  }

  async function fetchForm(fold) {
    const at = fold.dataset.part;
    const reply = await page.ask(page.request({ do: "part", place: at }), `part-${at}`);
    if (page.told(reply) || !fold.isConnected) return;
    const body = part(fold, "body");
    body.innerHTML = reply.html;
    for (const list of body.querySelectorAll("[data-rows]")) tend(list);
    page.photos.fill(body);
    link(at, part(body, "links")).catch(console.warn);
  }

  // The ways into worksheets come when the boxes are there already.
  async function link(at, links) {
    const reply = links && (await page.ask(page.request({ do: "sheet-links", place: at }), `links-${at}`));
    if (reply && !reply.problems) links.innerHTML = reply.html;
  }

  async function unfold(at, box) {
    const fold = foldAt(at.replace(/\.[a-z_]+$/, ""));
    if (!fold) return;
    for (let outer = fold; outer; outer = outer.parentElement.closest("details")) outer.open = true;
    if (!part(fold, "body").firstElementChild) await fill(fold);
    const row = rowAt(box || at);
    row?.closest("details").setAttribute("open", "");
    (row ?? fold).scrollIntoView();
    (row?.querySelector("input, select") ?? fold.querySelector("summary")).focus({ preventScroll: true });
  }

  // Shows every part anew, with those unfolded that were, and the one at `at`.
  function show(html, at) {
    const opened = [...place.querySelectorAll("details[open]")].map((fold) => fold.dataset.part ?? fold.dataset.group);
    place.innerHTML = html;
    for (const fold of place.querySelectorAll("details")) {
      fold.open = opened.includes(fold.dataset.part ?? fold.dataset.group);
    }
    if (at) unfold(at);
  }

  // Asks for a change of a list, and shows the list as it is then.
  const alter = (more) =>
    page.inTurn(async () => {
      await flush();
      const reply = await page.ask(page.request(more));
      if (page.told(reply)) return;
      page.take(reply);
      if (reply.many) place.querySelector(`[data-list-of="${reply.of}"]`).innerHTML = reply.html;
      else {
        const fold = foldAt(reply.of);
        part(fold, "line").innerHTML = reply.html;
        if (fold.open) await fill(fold);
      }
      count(reply.counts);
      page.views.mark();
      page.say(reply.said);
      if (reply.many && reply.where) await unfold(reply.where, reply.box);
    });

  const acts = {
    add: ({ add }, button) => {
      const loads = part(button.closest("[data-group]"), "ready");
      if (!loads) return alter({ do: "add", of: add });
      loads.hidden = !loads.hidden;
      if (loads.hidden) return;
      loads.scrollIntoView();
      loads.querySelector("button").focus({ preventScroll: true }); // the button that opened it is above the window
    },
    readyLoad: ({ readyLoad }, button) => alter({ do: "add", of: button.closest("[data-group]").dataset.group, ready: readyLoad }),
    copies: ({ copies }) => alter({ do: "copy", place: copies }),
    shiftPart: ({ shiftPart, shiftBy }) => alter({ do: "move", place: shiftPart, by: Number(shiftBy) }),
    removes: ({ removes }) => alter({ do: "remove", place: removes }),
    whole: ({ whole, of }) => alter({ do: "whole", of, says: whole }),
    says: ({ says }, button) => {
      const pressed = button.getAttribute("aria-pressed") === "true";
      change(button.closest("[data-place]"), pressed ? { typed: "", says: "" } : { says });
    },
  };

  place.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    for (const [name, act] of Object.entries(acts)) {
      if (button && name in button.dataset) act(button.dataset, button);
    }
  });
  place.addEventListener("submit", (event) => event.preventDefault());
  place.addEventListener("input", ({ target }) => {
    const row = target.closest("[data-place]");
    if (!row) return;
    target.lugwiseEntry = null; // what Python read before is no longer what stands in the box
    change(row);
  });
  place.addEventListener("change", ({ target }) => {
    if (target.type === "text" && target.lugwiseEntry != null) target.value = target.lugwiseEntry;
  });
  easeTyping(place);
  // A fold is filled when it is first opened.
  place.addEventListener(
    "toggle",
    ({ target }) => {
      if (!target.open || !target.dataset.part || part(target, "body").firstElementChild) return;
      fill(target).catch((error) => page.say(error.message));
    },
    true,
  );

  return { flush, show, unfold, redraw };
}
