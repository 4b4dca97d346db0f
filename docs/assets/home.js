// What a phone remembers of the pages opened last, and the buttons that open the search.

import { button } from "./parts.js";

const KEY = "lugwise.recent";
const MOST = 6;

function read() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    // Anything may stand there: only our own kind of address is a link again.
    return kept.filter(({ page, words }) => /^(checks|van)\/[a-z0-9-]*\/?$/.test(page) && typeof words === "string");
  } catch {
    return [];
  }
}

function write(kept) {
  try {
    if (kept.length) localStorage.setItem(KEY, JSON.stringify(kept));
    else localStorage.removeItem(KEY);
  } catch {
    // Where the browser keeps nothing, nothing is remembered.
  }
}

const root = new URL("..", import.meta.url);

function remember() {
  const page = location.href.split("#")[0].replace(root.href, "");
  const words = document.querySelector("article h1")?.textContent.trim().slice(0, 80);
  if (!/^(checks|van)\/[a-z0-9-]*\/$/.test(page) || !words) return;
  write([{ page, words }, ...read().filter((one) => one.page !== page)].slice(0, MOST));
}

function list() {
  const place = document.querySelector("[data-recent]");
  const kept = place ? read() : [];
  if (!place) return;
  place.hidden = !kept.length;
  const title = Object.assign(document.createElement("p"), { textContent: "Opened last, on this device only" });
  const links = kept.map(({ page, words }) => Object.assign(document.createElement("a"), { href: new URL(page, root).href, textContent: words }));
  place.replaceChildren(title, ...links, button("Forget these", () => (write([]), list())));
}

function arrive() {
  for (const one of document.querySelectorAll("[data-open-search]")) one.hidden = false;
  remember();
  list();
}

document.addEventListener("click", (event) => {
  if (!event.target.closest?.("[data-open-search]")) return;
  const drawer = document.getElementById("__search");
  drawer.checked = true;
  drawer.dispatchEvent(new Event("change", { bubbles: true }));
  document.querySelector(".md-search__input").focus();
});
if (window.document$) window.document$.subscribe(arrive);
else arrive();
