// One box of a form and what Python says of it: the figure as read, the sentence if it is wrong.

import { part, show } from "./parts.js";

const radiosIn = (group) => [...group.querySelectorAll("input")];
const isGroup = (box) => box.getAttribute("role") === "radiogroup";

// The control of a field: a box, a list of choices, or a group of buttons of which one is pressed.
// By place, not by name: a field may be called `length`.
export const controlIn = (place) => place.querySelector("[role=radiogroup]") ?? place.querySelector("input, select");

// Whether a control of a form holds what the page was built with.
export function isAsBuilt(box) {
  if (isGroup(box)) return radiosIn(box).every(isAsBuilt);
  if (box.type === "radio") return box.checked === box.defaultChecked;
  const built = box.options ? ([...box.options].find((one) => one.defaultSelected) ?? box.options[0])?.value : box.defaultValue;
  return box.value === built || built === undefined;
}

// Whether a cell is in a row that somebody is filling in and has not come to yet.
function waits(box) {
  const row = box.closest("[data-row]");
  return !box.value && box !== document.activeElement && Boolean(row?.contains(document.activeElement));
}

// Puts the text of a link into a control; a choice that there is not is added as it stands.
function put(box, text) {
  box.querySelector("[data-foreign]")?.remove(); // of the link before this one
  if (isGroup(box)) {
    const found = radiosIn(box).find((one) => one.value === text) ?? addRadio(box, text);
    found.checked = true;
    return;
  }
  if (box.options && ![...box.options].some((option) => option.value === text)) {
    const foreign = new Option(text, text);
    foreign.dataset.foreign = "";
    box.add(foreign);
  }
  box.value = text;
}

function addRadio(group, text) {
  const label = group.lastElementChild.cloneNode(true);
  const radio = label.querySelector("input");
  label.dataset.foreign = "";
  label.lastElementChild.textContent = text;
  radio.defaultChecked = false;
  radio.value = text;
  group.append(label);
  return radio;
}

// `place` holds the box and its sentence; `fill` says that the box takes what a link holds.
export function inBox(place, reply, fill) {
  const box = controlIn(place);
  const inUse = box.contains(document.activeElement);
  if (fill) put(box, reply.fill);
  // The box may have been left before this reply came.
  else if (box.type === "text" && reply.shown && !reply.error && !inUse) box.value = reply.entry;
  else if (isGroup(box) && !reply.error) box.querySelector("[data-foreign]")?.remove();
  // A folded figure that is wrong, or that a link sets apart from the usual, must be seen.
  if (fill && !isAsBuilt(box)) place.closest("[data-more]")?.setAttribute("open", "");
  for (let fold = reply.error && place.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  box.lugwiseEntry = reply.error ? null : reply.entry;
  const mark = () => {
    show(part(place, "error"), reply.error);
    box.setAttribute("aria-invalid", String(Boolean(reply.error)));
  };
  box.lugwiseMark = mark;
  clearTimeout(box.lugwiseScold);
  // Half-typed is not yet wrong: a box in use is told after a pause.
  if (reply.error && inUse && !fill) box.lugwiseScold = setTimeout(mark, 700);
  else if (!(reply.error && waits(box) && !fill)) mark();
}
