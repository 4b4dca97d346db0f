// What a client's page does otherwise where a van is explained: the link names findings by our ids
// and brings their numbers, and the names of parts, which are shown in quotes, cut and as text.

import { part } from "./parts.js";

const NAME = /^[\p{L}\d][\p{L}\p{M}\d .,'()/-]{0,39}$/u;
const own = (all, name) => (Object.hasOwn(all, name ?? "") ? all[name] : "");
const isolated = (text) => Object.assign(document.createElement("bdi"), { textContent: text });
const quoted = (text) => (NAME.test(text) ? [isolated(`“${text}”`)] : []);

// Our word for a part with its number, and what the van calls it.
function whose(said, n, kit, written) {
  const [, kind, number] = /^([a-z_]{1,20})(?:\.(\d{1,3}))?$/.exec(said.get(`.p${n}`) ?? "") ?? [];
  const word = own(kit.kinds, kind);
  const ours = [word, word && number].filter(Boolean).join(" ");
  const name = written(said.get(`.n${n}`));
  const named = name.toLowerCase() === ours ? [] : quoted(name);
  return [ours, ours && named.length ? " " : "", ...named].filter(Boolean);
}

export function fill(place, { said }, kit, { shown, written }) {
  for (const item of place.querySelectorAll("[data-point]")) {
    const n = item.dataset.point;
    const html = own(kit.findings, written(said.get(`.r${n}`)));
    item.hidden = !html;
    if (!html) continue;
    const words = whose(said, n, kit, written);
    part(item, "where").replaceChildren(...words, words.length ? ": " : "");
    part(item, "headline").innerHTML = html; // ours, as it was built
    const found = (said.get(`.f${n}`) ?? "").split("~").map(written);
    for (const slot of item.querySelectorAll("[data-found]")) {
      const text = found[slot.dataset.found];
      const number = shown(text, kit);
      if (number) slot.textContent = number;
      else if ("named" in slot.dataset) slot.replaceChildren(...quoted(text ?? ""));
    }
  }
  for (const slot of place.querySelectorAll("[data-first]")) {
    const words = whose(said, 1, kit, written);
    if (words.length) slot.replaceChildren(...words);
  }
}

// The van itself, where the link has room for it: its page, and what is asked of Python.
export const page = (link) => `../van/${link.inputs.length ? `#${link.inputs.join("&")}` : ""}`;
export const request = (fragment, more) => ({ van: { do: "client-check", fragment, more } });
export const UNSENT = "The van is too large for a link: ask for its file to check it.";
