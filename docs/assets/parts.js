// Small helpers for the parts of a page, which the markup names by data attributes.

export const part = (place, name) => place.querySelector(`[data-${name}]`);

export function show(element, words) {
  element.textContent = words;
  element.hidden = !words;
}

// What stands escaped in an address; a broken escape is nothing.
export function unescaped(written) {
  try {
    return decodeURIComponent(written);
  } catch {
    return "";
  }
}

// A signal for listeners of the window: they end when the theme has put another page in the place of
// `root`'s, which they would keep in memory.
export function whileHere(root) {
  const end = standing.get(root) ?? new AbortController();
  standing.set(root, end);
  return end.signal;
}

const standing = new Map();
window.document$?.subscribe(() => {
  for (const [root, end] of standing) {
    if (root.isConnected) continue;
    standing.delete(root);
    end.abort();
  }
});

// A script of the page that did not come: said in `place`, with a press that loads the page anew.
export const notCome = (place) => (error) => {
  console.error(error);
  const said = Object.assign(document.createElement("p"), { className: "lw-notes" });
  said.setAttribute("role", "status");
  said.append("A file of this page could not be loaded. Check the connection, then ", button("try again", () => location.reload()), ".");
  place.querySelector(":scope > .lw-notes[role=status]")?.remove();
  place.prepend(said);
};

export function button(label, act) {
  const node = document.createElement("button");
  node.type = "button";
  node.textContent = label;
  node.addEventListener("click", act);
  return node;
}

// What had the focus last; it loses it, unsaid, when it is hidden or taken out.
let last;
document.addEventListener("focusin", ({ target }) => (last = target));

// What had the focus in `place` keeps it while that is made anew, by its like in what is made, and is
// in the window afterwards; without a like, the place itself has it.
export function steadily(place, change) {
  const focused = document.activeElement;
  const inside = place.contains(focused);
  change();
  if (!inside) return;
  // The theme marks what the keys have reached.
  const marked = ({ dataset }) => JSON.stringify({ ...dataset, focusVisibleAdded: undefined });
  const named = (one) => `${one.localName} ${marked(one)} ${one.textContent}`;
  const like = () => [...place.querySelectorAll(focused.localName)].find((one) => named(one) === named(focused));
  const now = focused.isConnected ? focused : (like() ?? place);
  if (now === place) place.tabIndex = -1;
  if (now !== focused) now.focus({ preventScroll: true });
  if (now !== place) requestAnimationFrame(() => now.scrollIntoView({ block: "nearest" }));
}

export const openFolds = (sheet) => [...sheet.querySelectorAll("details[data-fold][open]")].map((fold) => fold.dataset.fold);

// What belongs into folds that Python has left empty, by their names.
export function fillFolds(sheet, html) {
  for (const [name, inside] of Object.entries(html)) {
    const fold = sheet.querySelector(`details[data-fold="${CSS.escape(name)}"]`);
    if (!fold) continue;
    while (fold.lastElementChild.localName !== "summary") fold.lastElementChild.remove();
    fold.lastElementChild.insertAdjacentHTML("afterend", inside);
  }
}

// An answer is made anew: what was unfolded is so again, and what had the focus has it by the fold of
// the same name, or else the answer has it. To be called before, and what it returns after.
export function keepOpen(sheet, answer) {
  const opened = openFolds(sheet);
  const focused = [document.activeElement, last].find((element) => sheet.contains(element));
  const { fold: name } = focused?.closest("summary")?.parentElement.dataset ?? {};
  return () => {
    for (const fold of sheet.querySelectorAll("details[data-fold]")) fold.open = opened.includes(fold.dataset.fold);
    if (!focused || focused.isConnected) return;
    answer.tabIndex = -1;
    (sheet.querySelector(`details[data-fold="${name}"] > summary`) ?? answer).focus({ preventScroll: true });
  };
}
