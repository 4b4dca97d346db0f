// Typing with a thumb: a tap marks what stands in a box, a press of “next” leads to the next one, below
// a box stands its hint once it is used, and above it while it is, keys for what a telephone's keys for
// numbers lack: the units, and the minus.

import { button } from "./parts.js";

const KEYS = "lw-keys";

const isBox = (target) => target.matches?.("input[type=text]:not([readonly])");

// The units are the words of the picker beside the box, or those that the box itself lists.
function wordsFor(box) {
  const picker = box.parentElement.querySelector("[data-unit]");
  const listed = box.dataset.keys?.split("|") ?? [];
  return [...listed, ...(picker ? [...picker.options].map((option) => option.text) : [])];
}

// Puts a unit behind the number, or in place of the one that stands there: `3` and `3 ft 6` go on.
function press(box, word) {
  const digits = box.value.trim();
  if (word === "−") box.value = digits.startsWith("-") ? digits.slice(1) : `-${digits}`;
  else box.value = `${digits.replace(/[^\d]+$/, "")} ${word} `;
  box.setSelectionRange(box.value.length, box.value.length);
  box.dispatchEvent(new Event("input", { bubbles: true }));
}

function offerKeys(box) {
  const words = wordsFor(box);
  if (!words.length || !matchMedia("(pointer: coarse)").matches) return;
  const keys = document.createElement("div");
  keys.className = KEYS;
  keys.append(...words.map((word) => button(word, () => press(box, word))));
  // The box keeps the focus, and the telephone its keys.
  keys.addEventListener("pointerdown", (event) => event.preventDefault());
  keys.addEventListener("mousedown", (event) => event.preventDefault());
  box.parentElement.append(keys);
}

// A hint that went as its box is left would move what the finger is about to press; those further down
// cannot.
function useOnly(place, used) {
  for (const row of place.querySelectorAll("[data-used]")) {
    if (used.compareDocumentPosition(row) & Node.DOCUMENT_POSITION_FOLLOWING) delete row.dataset.used;
  }
  used.dataset.used = "";
}

export function easeTyping(place) {
  let fresh = null; // came into use with the tap that is going on
  place.addEventListener("submit", (event) => event.preventDefault()); // each key is answered already
  place.addEventListener("focusin", ({ target }) => {
    const row = target.closest(".lw-field, .lv-row");
    if (row) useOnly(place, row);
    if (!isBox(target)) return;
    target.select();
    fresh = target;
    offerKeys(target);
  });
  place.addEventListener("focusout", () => place.querySelector(`.${KEYS}`)?.remove());
  place.addEventListener("click", ({ target }) => {
    if (target === fresh && target.selectionStart === target.selectionEnd) target.select();
    fresh = null;
  });
  place.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !isBox(event.target)) return;
    event.preventDefault();
    const boxes = [...event.target.form.querySelectorAll("input[type=text], select:not([data-unit], [data-by])")];
    const seen = boxes.filter((box) => box.checkVisibility());
    (seen[seen.indexOf(event.target) + 1] ?? event.target).focus();
  });
}
