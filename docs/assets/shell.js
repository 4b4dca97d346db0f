// The search as a dialog of the browser's own, and the theme's keys where they are wanted.

const toggle = document.getElementById("__search"); // by which the theme knows whether one searches
const dialog = document.querySelector(".lw-search");
const query = dialog.querySelector("[name=query]");
const OF_SEARCH = ["ArrowUp", "ArrowDown", "Enter"];

function set(open) {
  if (toggle.checked !== open) toggle.click();
}

toggle.addEventListener("change", () => {
  if (toggle.checked && !dialog.open) {
    dialog.showModal();
    query.focus();
    query.select();
  }
  if (!toggle.checked) dialog.close();
});
dialog.addEventListener("close", () => set(false));
dialog.addEventListener("click", ({ target }) => {
  if (target === dialog || target.closest("[data-close-search]")) set(false);
});
document.addEventListener("click", ({ target }) => {
  if (target.closest?.("[data-open-search]")) set(true);
});
// The theme listens on the window: single letters would search or turn the page, Tab would shut the
// search, and Shift would leave the list.
document.addEventListener("keydown", (event) => {
  // It also takes what it has found out of the order of Tab.
  if (event.key === "Tab") dialog.querySelectorAll("a[tabindex]").forEach((link) => link.removeAttribute("tabindex"));
  if (!(dialog.open && OF_SEARCH.includes(event.key))) event.stopPropagation();
});
// It looks for what is typed when a key comes up; text that is pasted or spoken comes without one.
query.addEventListener("input", () => query.dispatchEvent(new Event("keyup")));

// Which of the three colour schemes is in use: the theme says so on the body only.
const scheme = document.getElementById("lw-scheme");
scheme.addEventListener("toggle", () => {
  for (const choice of scheme.querySelectorAll("input")) choice.checked = choice.dataset.mdColorMedia === document.body.dataset.mdColorMedia;
});
