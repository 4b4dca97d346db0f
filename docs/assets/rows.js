// Lists in a form: rows are added, removed and put back. Python reads the cells and says what is
// wrong with each; here they are only gathered in order and counted.

import { part } from "./parts.js";

const rowsOf = (list) => [...part(list, "list").querySelectorAll("[data-row]")];
const boxesOf = (row) => [...row.querySelectorAll("input, select")];

// What stands in every cell of every list, row by row.
export function typed(form) {
  const values = {};
  for (const list of form.querySelectorAll("[data-rows]")) {
    values[list.dataset.rows] = rowsOf(list).map((row) => boxesOf(row).map((box) => box.value));
  }
  return values;
}

// What stands in a form: every value by its name, and the unit picked beside it.
export function inForm(form) {
  const values = typed(form);
  const units = {};
  for (const [name, value] of new FormData(form)) {
    if (name.endsWith(".unit")) units[name.slice(0, -5)] = value;
    else values[name] = value;
  }
  return { values, units };
}

// The cells of a list in the order of a reply, each with its part of it.
export function cellsOf(list, rows) {
  const pairs = [];
  rowsOf(list).forEach((row, place) => {
    row.querySelectorAll("[data-cell]").forEach((cell, column) => {
      if (rows[place]) pairs.push([cell, rows[place][column]]);
    });
  });
  return pairs;
}

// Makes as many rows as a link holds.
export function fit(list, count) {
  while (rowsOf(list).length < count) part(list, "list").append(spare(list));
  for (const row of rowsOf(list).slice(count)) row.remove();
  renumber(list);
  tell(list, "");
}

const spare = (list) => part(list, "spare").content.firstElementChild.cloneNode(true);

function renumber(list) {
  const rows = rowsOf(list);
  rows.forEach((row, index) => {
    const [old, now] = [`${list.id}-${row.dataset.row}-`, `${list.id}-${index + 1}-`];
    row.dataset.row = index + 1;
    for (const number of row.querySelectorAll("[data-number]")) number.textContent = index + 1;
    for (const name of ["id", "for", "aria-describedby"]) {
      for (const element of row.querySelectorAll(`[${name}]`)) {
        element.setAttribute(name, element.getAttribute(name).replaceAll(old, now));
      }
    }
  });
  part(list, "add").disabled = rows.length >= Number(list.dataset.most);
}

// Says what has happened to the row of that number; what could be put back no longer can.
function tell(list, words, number) {
  part(list, "said").textContent = words.replace("#", number);
  part(list, "gone").hidden = true;
}

export function tend(list) {
  const place = part(list, "list");
  const gone = part(list, "gone"); // stands where a row was removed, and can put it back
  const first = rowsOf(list).map((row) => row.cloneNode(true));
  let taken = null;
  const changed = () => list.dispatchEvent(new Event("input", { bubbles: true }));

  function add() {
    const row = spare(list);
    place.append(row);
    renumber(list);
    tell(list, part(list, "add").disabled ? list.dataset.full : list.dataset.added, row.dataset.row);
    boxesOf(row)[0].focus();
    changed();
  }

  function remove(row) {
    const number = row.dataset.row;
    taken = row;
    row.before(gone);
    row.remove();
    if (!rowsOf(list).length) place.append(spare(list));
    renumber(list);
    tell(list, list.dataset.removed, number);
    part(gone, "gone-words").textContent = part(list, "said").textContent;
    gone.hidden = false;
    part(gone, "undo").focus(); // a second tap of a glove brings the row back, and takes no other
    changed();
  }

  function undo() {
    const untouched = (box) => box.options || box.value === box.defaultValue;
    const [only, ...others] = rowsOf(list);
    gone.before(taken);
    // The empty row that stood in for the last one goes again.
    if (!others.length && boxesOf(only).every(untouched) && !boxesOf(only)[0].value) only.remove();
    renumber(list);
    tell(list, "");
    boxesOf(taken)[0].focus();
    changed();
  }

  list.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    if ("add" in button.dataset) add();
    if ("undo" in button.dataset) undo();
    if ("remove" in button.dataset) remove(button.closest("[data-row]"));
  });
  // What was left alone while the row was being filled in is told when it is left.
  list.addEventListener("focusout", ({ target, relatedTarget }) => {
    const row = target.closest("[data-row]");
    if (!row || row.contains(relatedTarget)) return;
    for (const box of boxesOf(row)) box.lugwiseMark?.();
  });
  list.form.addEventListener("reset", () => {
    place.after(gone);
    place.replaceChildren(...first.map((row) => row.cloneNode(true)));
    renumber(list);
    tell(list, "");
  });
}
