// A worksheet for a van that this browser keeps: its values are filled in from the van, and put back
// when that is asked for. Until then a change on the sheet changes nothing in the van.

import { button, part, unescaped } from "./parts.js";
import { ask as askPython } from "./python.js";
import { inForm } from "./rows.js";
import { reason } from "./standing.js";
import * as store from "./van_store.js";

const ask = (request) =>
  new Promise((resolve, reject) => {
    const refuse = (why, words) => reject(new Error(reason(why, words)));
    askPython(`van-${request.do}`, { van: request }, { needs: "van", take: resolve, refuse });
  });

const line = (tag, ...children) => {
  const node = document.createElement(tag);
  node.append(...children);
  return node;
};

function boxOn(sheet) {
  let box = part(sheet, "of-van");
  if (!box) {
    box = document.createElement("div");
    box.dataset.ofVan = "";
    box.className = "lw-notes";
    part(sheet, "form").before(box);
  }
  return box;
}

const wordsOf = (reply) => reply.problems?.map((one) => one.message).join(" ") || reply.said;

// For what of a van the sheet can be opened, each with the link that fills it.
async function targets(sheet, van) {
  const reply = await ask({ do: "sheets", text: van.text, id: van.id, sheet: sheet.dataset.sheet });
  if (reply.problems) throw new Error(wordsOf(reply));
  return reply.targets;
}

// Says above the fields for which part of which van they are, by the end of the link, `whose`.
export async function attach(sheet, whose) {
  const [id, place] = unescaped(whose.replace("&van=", "")).split(":");
  const van = whose && (await store.get(id).catch(() => null));
  if (!van) return part(sheet, "of-van")?.remove();
  let found;
  try {
    found = (await targets(sheet, van)).find((one) => one.where === place);
  } catch ({ message }) {
    return boxOn(sheet).replaceChildren(`${message} `, button("Try again", () => attach(sheet, whose)));
  }
  if (!found) return part(sheet, "of-van")?.remove();
  const said = Object.assign(line("p"), { role: "status" });
  const back = Object.assign(line("a", "Back to the van"), {
    href: `../../van/#open=${id}:${encodeURIComponent(place)}`,
    className: "lw-button lw-plain",
  });
  async function putBack() {
    const now = await store.get(id); // it may have been changed since
    if (!now) return (said.textContent = "This van is no longer kept on this device.");
    const reply = await ask({ do: "put", text: now.text, sheet: sheet.dataset.sheet, place, ...inForm(part(sheet, "form")) });
    if (!reply.problems && (await store.keep({ ...now, text: reply.text })) === null) {
      said.textContent = "Another tab has just changed this van. Press again.";
    } else said.textContent = wordsOf(reply);
  }
  const put = button("Put it into the van", () => {
    putBack().catch((error) => (said.textContent = `It is not in the van (${error.message}).`));
  });
  put.className = "lw-button";
  const words = line("p", line("strong", "For ", line("bdi", van.name), ": ", line("bdi", found.label), ". "), found.said);
  boxOn(sheet).replaceChildren(words, line("p", put, " ", back), said);
}

// Setting the hash instead would wake the theme: it fetches the page, and puts a new sheet in this one's place.
function follow(sheet, link) {
  history.pushState(null, "", `#${link}`);
  sheet.lugwiseOpen();
}

// Offers the vans of this device, and for what of each the sheet can be filled.
export async function offer(sheet) {
  const box = boxOn(sheet);
  const vans = await store.list().catch(() => []);
  if (!vans.length) {
    const begin = Object.assign(line("a", "Begin one"), { href: "../../van/" });
    return box.replaceChildren(line("p", "No van is kept on this device. ", begin, "."));
  }
  const choose = document.createElement("select");
  choose.append(...vans.map((one) => new Option(one.name, one.id)));
  const label = line("label", "Fill this sheet from ", choose);
  const list = line("p");
  const fill = async () => {
    const van = vans.find((one) => one.id === choose.value);
    const found = await targets(sheet, van).catch((error) => ((list.textContent = error.message), []));
    const press = (one) => Object.assign(button("", () => follow(sheet, one.link)), { className: "lw-button lw-plain" });
    const offered = found.map((one) => {
      const node = press(one);
      node.append(line("bdi", one.label));
      return node;
    });
    if (offered.length) list.replaceChildren(...offered.flatMap((one) => [one, " "]));
    else if (!list.textContent) list.textContent = "This van has nothing that this sheet is about.";
  };
  choose.addEventListener("change", fill);
  box.replaceChildren(line("p", label), list);
  await fill();
}
