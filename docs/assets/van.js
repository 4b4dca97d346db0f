// The page of a van. It carries texts between boxes, Python and this browser's store: it knows no
// part of a van, no unit and no formula. Python sends finished HTML, escaped there.

import { button, part, show, unescaped, whileHere } from "./parts.js";
import { ask as askPython } from "./python.js";
import { reason } from "./standing.js";
import * as store from "./van_store.js";
import { editing } from "./van_edit.js";
import { filing } from "./van_files.js";
import { photographing } from "./van_photos.js";
import { viewing } from "./van_views.js";

const KEEP_AFTER = 400;
const WORK_AFTER = 120; // milliseconds after a change, so that the next key is not kept waiting
const SAID_FOR = 6_000; // milliseconds that a message stands over the page, which it must not move
const MOST_STEPS = 200; // that can be undone
const OPEN = /^#open=([a-z0-9]+):?(.*)$/;
const LINK = /^#v=[0-9]+&van=/;
const LONGEST_LINK = 65_536; // a stranger may send megabytes, and reading them would hold the page

const REFUSED = "This browser keeps nothing here: a private window, or no room. Save the van as a file before you leave.";
const SILENT = "The calculation stopped responding. What you typed is still here: try again.";

let asks = 0;

// Asks Python; of asks with one key only the newest is answered, without one each.
export function ask(request, key = ++asks) {
  return new Promise((resolve, reject) => {
    const refuse = (why, words) => reject(new Error(why === "silent" ? SILENT : reason(why, words)));
    askPython(`van-${key}`, { van: request }, { needs: "van", take: resolve, refuse });
  });
}

function bind(root) {
  const home = location.pathname;
  const van = { id: "", text: "", drafts: {}, count: 0, name: "", copy: false, inspection: false };
  const [steps, undone] = [[], []];
  let merging = ""; // what the newest step changed: more of the same is the same step
  let dirty = false;
  let refused = false; // the store keeps nothing
  let [keeping, working] = [0, 0];
  let queue = Promise.resolve();
  let keepings = Promise.resolve();

  const here = () => root.isConnected && location.pathname === home;
  let saying = 0;

  function say(words) {
    clearTimeout(saying);
    show(part(root, "said"), words);
    standAside();
    saying = setTimeout(() => show(part(root, "said"), ""), SAID_FOR);
  }

  // A message stands at the foot of the window, or at its head where it would cover what has the focus.
  function standAside() {
    const [said, focused] = [part(root, "said"), document.activeElement];
    said.classList.remove("is-up");
    const [over, under] = [said, focused].map((one) => one.getBoundingClientRect());
    const covers = over.top < under.bottom && under.top < over.bottom;
    said.classList.toggle("is-up", covers && focused !== document.body && !said.contains(focused));
  }
  root.addEventListener("focusin", standAside);

  const request = (more) => ({ id: van.id, text: van.text, drafts: van.drafts, ...more });

  // Changes are made one after the other, each of what the one before has left.
  function inTurn(act) {
    queue = queue.then(act).catch((error) => {
      console.error(error);
      say(error.message);
    });
    return queue;
  }

  function told(reply) {
    if (reply.problems) say(reply.problems.map((one) => one.message).join(" "));
    return Boolean(reply.problems);
  }

  // Takes what Python made of the van; `what` names what was changed.
  function take(reply, what = "") {
    if (reply.text !== van.text || !what) {
      if (!what || what !== merging) {
        steps.push({ text: van.text, drafts: van.drafts });
        if (steps.length > MOST_STEPS) steps.shift();
      }
      undone.splice(0);
      merging = what;
    }
    hold(reply);
    changed();
  }

  function hold({ text, drafts, name, inspection }) {
    van.text = text;
    if (drafts) van.drafts = drafts;
    van.name = name;
    van.inspection = inspection;
  }

  function changed() {
    dirty = true;
    part(root, "undo").disabled = !steps.length;
    part(root, "redo").disabled = !undone.length;
    clearTimeout(keeping);
    keeping = setTimeout(keepNow, KEEP_AFTER);
    work();
  }

  function work() {
    clearTimeout(working);
    working = setTimeout(() => here() && views.work(), WORK_AFTER);
  }

  // One after the other: the next is made from the count that the one before has left.
  function keepNow() {
    clearTimeout(keeping);
    keepings = keepings.then(keepOnce);
    return keepings;
  }

  async function keepOnce() {
    if (!dirty || !van.text) return;
    dirty = false;
    const { id, text, drafts, name, copy } = van;
    try {
      const count = await store.keep({ id, text, drafts, name, copy, count: van.count });
      if (count === null) return await keepCopy();
      if (van.id === id) van.count = count;
      await store.setLast(id);
      isKept(true);
      files.listVans();
    } catch (error) {
      dirty = true;
      isKept(false);
      console.warn(error);
    }
  }

  // Another tab was first: what stands here goes on as a van of its own.
  async function keepCopy() {
    const from = van.id;
    Object.assign(van, { id: store.newId(), count: 0, copy: true });
    dirty = true;
    await keepOnce();
    await store.copyPhotos(from, van.id).catch(() => {});
    say("Another tab has changed this van. What you have here is kept beside it, as a copy.");
  }

  function isKept(kept) {
    refused = !kept;
    part(root, "kept-words").textContent = kept ? "Kept on this device" : "Not kept";
    show(part(root, "refused-words"), kept ? "" : REFUSED);
    part(root, "refused").hidden = kept;
  }

  async function step(from, to) {
    await edits.flush();
    const old = from.pop();
    if (!old) return;
    to.push({ text: van.text, drafts: van.drafts });
    merging = "";
    hold({ ...van, ...old });
    changed();
    await parts();
  }

  // Shows every part anew, with those unfolded that were.
  async function parts(at = "") {
    const reply = await ask(request({ do: "parts" }));
    if (told(reply)) return;
    hold(reply);
    edits.show(reply.html, at);
    views.mark();
  }

  // Opens a van: a kept one, or one that Python has just made.
  async function open(next, at = "") {
    await keepNow();
    [steps, undone].forEach((list) => list.splice(0));
    merging = "";
    Object.assign(van, { drafts: {}, count: 0, copy: false, id: store.newId() }, next);
    dirty = false;
    part(root, "kept-words").textContent = van.count ? "Kept on this device" : "Not kept yet";
    for (const name of ["undo", "redo"]) part(root, name).disabled = true;
    part(root, "start").hidden = true;
    part(root, "live").hidden = false;
    views.forget();
    await parts(at);
    work();
    files.listVans();
    if (van.count) store.setLast(van.id).catch(() => {});
  }

  async function openKept(id, at = "") {
    const kept = await store.get(id);
    if (kept) await open(kept, at);
    return Boolean(kept);
  }

  async function begin() {
    const link = location.hash.slice(0, LONGEST_LINK);
    const [, id, at] = OPEN.exec(link) ?? [];
    try {
      if (LINK.test(link)) return await fromLink(link);
      const kept = await store.lookedAt(id).catch((error) => {
        console.warn(error);
        isKept(false);
      });
      if (kept) return await open(kept, kept.id === id ? unescaped(at) : "");
    } catch (error) {
      console.warn(error);
      say(error.message);
      clearTimeout(saying); // it stands: nothing else here says what is wrong
      part(root, "said").append(" ", button("Try again", () => inTurn(begin)));
    }
    part(root, "start").hidden = false;
  }

  async function fromLink(link) {
    const reply = await ask({ do: "unpack", link });
    if (told(reply)) return (part(root, "start").hidden = false);
    await open(reply);
    say("This van came by a link. It is kept once you change it, or press “Keep it”.");
  }

  const page = { root, van, ask, request, inTurn, take, told, say, parts, open, openKept, keepNow, changed, work };
  page.photos = photographing(page);
  const edits = (page.edits = editing(page));
  const views = (page.views = viewing(page));
  const files = filing(page);

  root.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    if ("undo" in button.dataset) inTurn(() => step(steps, undone));
    if ("redo" in button.dataset) inTurn(() => step(undone, steps));
  });
  store.hear(({ id, count }) => {
    if (id === van.id && count !== van.count && !dirty) {
      if (!count) return say("Another tab has removed this van. It is kept again once you change it.");
      inTurn(async () => {
        await openKept(id);
        say("Another tab has changed this van. This is its state now.");
      });
    }
    files.listVans();
  });
  const signal = whileHere(root);
  signal.addEventListener("abort", keepNow);
  window.addEventListener("pagehide", keepNow, { signal });
  document.addEventListener("visibilitychange", () => document.hidden && keepNow(), { signal });
  window.addEventListener("beforeunload", (event) => refused && dirty && here() && event.preventDefault(), { signal });
  const follow = () => here() && (LINK.test(location.hash) || OPEN.test(location.hash)) && inTurn(begin);
  window.addEventListener("hashchange", follow, { signal });
  root.lugwiseVan = page;
  inTurn(begin);
}

// Binds the van of the page that is open, once.
export function arrive() {
  const root = document.querySelector("[data-van]");
  if (root && !root.lugwiseVan) bind(root);
}
