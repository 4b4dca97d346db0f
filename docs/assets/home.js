// What a phone remembers of the pages opened last.

import { recall, remember } from "./recall.js";
import { button } from "./parts.js";

const MOST = 6;

// Anything may stand there: only our own kind of address is a link again.
function read(name) {
  const kept = recall(name);
  const isOurs = (one) => /^(checks|van)\/[a-z0-9-]*\/?$/.test(one?.page) && typeof one.words === "string";
  return Array.isArray(kept) ? kept.filter(isOurs) : [];
}

const write = (name, kept) => remember(name, kept.length > 0 && kept);

const root = new URL("..", import.meta.url);

function note() {
  const page = location.href.split("#")[0].replace(root.href, "");
  const words = document.querySelector("article h1")?.textContent.trim().slice(0, 80);
  if (!/^(checks|van)\/[a-z0-9-]*\/$/.test(page) || !words) return;
  write("recent", [{ page, words }, ...without(read("recent"), page)].slice(0, MOST));
}

const without = (kept, page) => kept.filter((one) => one.page !== page);

// A link with the button that pins it: what is pinned comes first, and stays.
function chip({ page, words }, isPinned) {
  const node = Object.assign(document.createElement("span"), { className: "lw-chip" });
  const link = Object.assign(document.createElement("a"), { href: new URL(page, root).href, textContent: words });
  const name = `Pin: ${words}`;
  const pin = button(isPinned ? "★" : "☆", () => {
    const place = pin.closest("[data-recent]");
    write("pinned", [...without(read("pinned"), page), ...(isPinned ? [] : [{ page, words }])].slice(-MOST));
    list();
    place.querySelector(`[aria-label="${CSS.escape(name)}"]`)?.focus();
  });
  pin.setAttribute("aria-label", name);
  pin.setAttribute("aria-pressed", String(isPinned));
  node.append(link, pin);
  return node;
}

// In the page of questions, where there are any, and above the bar of a phone.
function list() {
  const pinned = read("pinned");
  const others = read("recent").filter(({ page }) => !pinned.some((one) => one.page === page));
  const isEmpty = !pinned.length && !others.length;
  for (const place of document.querySelectorAll("[data-recent]")) {
    place.hidden = isEmpty && !place.popover;
    const said = isEmpty ? "Nothing opened yet. What you open is listed here, on this device only. " : "Pinned and opened last, on this device only. ";
    const title = Object.assign(document.createElement("p"), { textContent: said });
    const where = new URL("units-links-privacy/#on-this-device", root).href;
    title.append(Object.assign(document.createElement("a"), { href: where, textContent: "Units, and erase this" }));
    place.replaceChildren(title, ...pinned.map((one) => chip(one, true)), ...others.map((one) => chip(one, false)));
  }
}

// Outside the US, until units are chosen: the button also resets its form, to the defaults in the new ones.
function offerMetric(line) {
  line.hidden = recall("measures") !== null || /-US\b/.test(navigator.language);
  line.onclick = ({ target }) => {
    if (!target.closest("button")) return;
    remember("measures", "metric");
    line.hidden = true;
  };
}

function arrive() {
  document.querySelectorAll("[data-metric]").forEach(offerMetric);
  for (const one of document.querySelectorAll("[data-open-search], [data-to-recent]")) one.hidden = false;
  note();
  list();
  if (document.querySelector("[data-device]")) import("./device.js").then((device) => device.arrive(), console.error);
}

document.addEventListener("click", ({ target }) => target.closest?.("#lw-recent a")?.closest("[popover]").hidePopover());
if (window.document$) window.document$.subscribe(arrive);
else arrive();
