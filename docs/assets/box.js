// One box of a form and what Python says of it: the figure as read, the sentence if it is wrong.

import { part, show } from "./parts.js";

// Whether a control of a form holds what the page was built with.
export function isAsBuilt(box) {
  const built = box.options ? ([...box.options].find((one) => one.defaultSelected) ?? box.options[0])?.value : box.defaultValue;
  return box.value === built || built === undefined;
}

// Whether a cell is in a row that somebody is filling in and has not come to yet.
function waits(box) {
  const row = box.closest("[data-row]");
  return !box.value && box !== document.activeElement && Boolean(row?.contains(document.activeElement));
}

// `place` holds the box and its sentence; `fill` says that the box takes what a link holds.
export function inBox(place, reply, fill) {
  const box = place.querySelector("input, select"); // by place: a field may be called `length`
  if (fill) {
    if (box.options) {
      box.querySelector("[data-foreign]")?.remove(); // of the link before this one
      if (![...box.options].some((option) => option.value === reply.fill)) {
        const foreign = new Option(reply.fill, reply.fill);
        foreign.dataset.foreign = "";
        box.add(foreign);
      }
    }
    box.value = reply.fill;
  }
  // The box may have been left before this reply came.
  else if (box.type === "text" && reply.shown && !reply.error && box !== document.activeElement) box.value = reply.entry;
  // A folded figure that is wrong, or that a link sets apart from the usual, must be seen.
  if (reply.error || (fill && !isAsBuilt(box))) place.closest("details")?.setAttribute("open", "");
  box.lugwiseEntry = reply.error ? null : reply.entry;
  const mark = () => {
    show(part(place, "error"), reply.error);
    box.setAttribute("aria-invalid", String(Boolean(reply.error)));
  };
  box.lugwiseMark = mark;
  clearTimeout(box.lugwiseScold);
  // Half-typed is not yet wrong: a box in use is told after a pause.
  if (reply.error && box === document.activeElement && !fill) box.lugwiseScold = setTimeout(mark, 700);
  else if (!(reply.error && waits(box) && !fill)) mark();
}
