// A client's page. It shows a link at once, by our own sentences: the link names them and brings the
// numbers, each of which must look like one. Then Python works the values anew, and says whether it
// agrees; until then, or for ever, what stands here is marked as not checked.

import { notCome, part, unescaped, whileHere } from "./parts.js";
import { ask } from "./python.js";
import { reason, remedy } from "./standing.js";

const LONGEST = 8_000; // characters of a link that are read
const VAN = "van"; // the name by which a link explains a van, not a sheet's answer
const LONG = 600; // characters of an address that paper has room for
const UNCHECKED = "From the link, not checked yet.";
const SHORT = [
  ["+", " "],
  ["_", "\u00a0"],
  ["*", "\u00b7"],
  ["!", "\u00b0"],
];
const NUMBER = /^[(\u2212-]*[\d\u202f.,/]{1,14}\u00b0?[).,]*$/;
const EDGES = /^\(+|[).,]+$/g;
const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}]/gu; // control characters, and marks that turn the direction of text

function written(text) {
  let plain = text ?? "";
  for (const [short, long] of SHORT) plain = plain.replaceAll(short, long);
  return unescaped(plain);
}

// Cut between two characters, and never within one.
const clean = (text, most) => [...written(text).replace(UNSEEN, "").trim()].slice(0, most).join("");
// A name may be one that every object of the language has.
const own = (table, name) => (Object.hasOwn(table, name) ? table[name] : undefined);

function read(hash) {
  const [name, ...pieces] = hash.replace(/^#/, "").slice(0, LONGEST).split("&");
  const told = pieces.filter((piece) => /^[.:]/.test(piece)).map((piece) => piece.split("="));
  const inputs = pieces.filter((piece) => !/^[.:]/.test(piece));
  return { name: /^[a-z-]{1,40}$/.test(name) ? name : "", inputs, said: new Map(told), pieces };
}

// A text of a link, if it is a number as Lugwise shows one, or one of the sheet's own phrases.
function shown(text, kit) {
  if (!text || text.length > 60) return null;
  if (kit.phrases.includes(text)) return text;
  const tokens = text.split(/[ \u00a0]+/);
  const known = (token) => NUMBER.test(token) || kit.words.includes(token.replace(EDGES, ""));
  return tokens.some((token) => NUMBER.test(token)) && tokens.every(known) ? text : null;
}

// An input of a link as it would be shown: a choice by its label, a number with the sign of its unit.
function given(text, kit) {
  const plain = written(text);
  const [, number, unit = ""] = /^([\u2212-]?[\d.,/]+)\s*(.*)$/.exec(plain) ?? [];
  const sign = own(kit.signs, unit) ?? unit;
  return own(kit.choices, plain) ?? shown(number && sign ? `${number}\u00a0${sign}` : number, kit);
}

// Unhides the sentences that the link names, and puts its numbers into their places.
function fill(place, link, kit) {
  const { said } = link;
  const current = link.inputs[0] === `v=${kit.set}`;
  const inputs = new Map(link.inputs.map((piece) => piece.split("=")));
  for (const slot of place.querySelectorAll("[data-value]")) {
    const name = slot.dataset.value;
    let words = current ? kit.usual[name] : null;
    if (name in kit.labels && inputs.has(name)) words = given(inputs.get(name), kit);
    else if (said.has(`:${name}`)) words = shown(written(said.get(`:${name}`)), kit);
    if (words) slot.textContent = words;
  }
  const found = (said.get(".found") ?? "").split("~").map(written);
  for (const item of place.querySelectorAll("[data-rule]")) {
    item.hidden = item.dataset.rule !== said.get(".rule");
    for (const slot of item.querySelectorAll("[data-found]")) {
      slot.textContent = shown(found[slot.dataset.found], kit) ?? slot.textContent;
    }
  }
  const [advice = "", reasons = "", neglect = ""] = (said.get(".say") ?? "").slice(0, 8).split(".");
  for (const item of place.querySelectorAll("[data-advice]")) item.hidden = item.dataset.advice !== advice;
  for (const item of place.querySelectorAll("[data-reason]")) item.hidden = !reasons.includes(item.dataset.reason);
  for (const item of place.querySelectorAll("[data-neglect]")) item.hidden = item.dataset.neglect !== neglect;
  const lengths = (said.get(".bar") ?? "").split(".");
  for (const row of place.querySelectorAll("[data-row]")) {
    const share = lengths[row.dataset.row];
    row.hidden = !/^(?:100|\d{1,2})$/.test(share ?? "");
    const drawn = part(row, "bar");
    if (!row.hidden) drawn.setAttribute(drawn.dataset.bar, `${share}%`);
  }
}

// The values of the link, as they stand there.
function list(link, kit) {
  const rows = link.inputs.map((piece) => piece.split("=")).filter(([key]) => own(kit.labels, key));
  const words = ([key, text]) => `${kit.labels[key]}: ${given(text, kit) ?? "…"}`;
  const item = (row) => Object.assign(document.createElement("li"), { textContent: words(row) });
  const all = document.createElement("ul");
  all.append(...rows.map(item));
  return all;
}

const signed = (link) => [clean(link.said.get(".by"), 40), clean(link.said.get(".note"), 160)];

function sender(link) {
  const [by, note] = signed(link);
  const [day] = /^\d{4}-\d\d-\d\d$/.exec(written(link.said.get(".on"))) ?? [];
  const when = new Date(day ?? "");
  const isolated = (text) => Object.assign(document.createElement("bdi"), { textContent: text });
  const parts = [];
  if (by) parts.push("Sent by ", isolated(by));
  if (!isNaN(when)) parts.push(by ? ", " : "Sent ", when.toLocaleDateString("en-GB", { dateStyle: "long" }));
  if (note) parts.push(parts.length ? ": “" : "Note: “", isolated(note), "”");
  return by || note ? [...parts, " (typed by the sender)"] : parts;
}

export function arrive() {
  const root = document.querySelector("[data-client]");
  if (!root || root.lugwiseOpen) return;
  const home = location.pathname;
  const told = part(root, "told");

  const open = () => opened().catch(notCome(root));

  async function opened() {
    if (!root.isConnected || location.pathname !== home) return;
    const hash = location.hash;
    const link = read(hash);
    const known = root.dataset.client.split(" ").includes(link.name) && (await kitOf(link.name));
    const van = known && link.name === VAN ? await import("./client_van.js") : null;
    if (hash !== location.hash) return;
    part(root, "body").hidden = !known;
    part(root, "none").hidden = Boolean(known);
    root.classList.toggle("is-open", Boolean(known));
    part(root, "mine").hidden = !known || !link.said.has(".mine");
    if (!known) return;
    const place = part(root, "said");
    root.dataset.checked = "no";
    part(root, "title").textContent = known.title;
    told.textContent = UNCHECKED;
    place.innerHTML = known.html; // ours, as it was built: nothing of the link is in it
    fill(place, link, known);
    van?.fill(place, link, known, { shown, written });
    part(root, "used").replaceChildren(list(link, known));
    part(root, "listed").textContent = known.listed ?? "Numbers used";
    part(root, "used").parentElement.hidden = Boolean(van);
    part(root, "working").href = van ? van.page(link) : `../checks/${link.name}/#${link.inputs.join("&")}`;
    whose(link);
    if (link.said.has(".mine")) (await import("./client_send.js")).attach(root, link, signed(link), () => whose(read(location.hash)));
    if (van && !link.inputs.length) told.textContent = `${UNCHECKED} ${van.UNSENT}`;
    else check(hash, place, van);
  }

  function whose(link) {
    part(root, "who").replaceChildren(...sender(link));
    part(root, "who").hidden = !part(root, "who").childNodes.length;
  }

  function check(hash, place, van, more = false) {
    const now = () => root.isConnected && hash.split("&.")[0] === location.hash.split("&.")[0];
    const take = (reply) => {
      if (!now()) return;
      if (reply.more) return void setTimeout(check, 0, hash, place, van, true);
      if (reply.problem) told.textContent = `${UNCHECKED} ${reply.problem}`;
      else {
        place.innerHTML = reply.html;
        told.innerHTML = reply.told;
        part(root, "used").innerHTML = reply.used;
        part(root, "used").parentElement.hidden = false;
        root.dataset.checked = reply.agrees ? "agrees" : "differs";
      }
      document.documentElement.dataset.lugwise = "ready";
    };
    const refuse = (why, words) => {
      if (!now()) return;
      told.replaceChildren(`${UNCHECKED} ${reason(why, words)} `, remedy(why, () => check(hash, place, van)));
    };
    const fragment = hash.slice(1, LONGEST);
    const request = van ? van.request(fragment, more) : { client: { do: "confirm", fragment } };
    ask("client", request, { take, refuse, needs: van ? VAN : "client" });
  }

  root.lugwiseOpen = true;
  const signal = whileHere(root);
  const beforePrint = () => {
    part(root, "printed").textContent = new Date().toLocaleDateString("en-GB", { dateStyle: "long" });
    const address = location.href.replace("&.mine=1", "");
    part(root, "address").textContent = address.length > LONG ? "in the link that was sent" : address;
  };
  window.addEventListener("hashchange", open, { signal });
  window.addEventListener("beforeprint", beforePrint, { signal });
  part(root, "prints").addEventListener("click", () => {
    const print = (svg) => {
      part(root, "qr").innerHTML = svg;
      setTimeout(() => window.print());
    };
    const address = location.href.replace("&.mine=1", "");
    ask("code", { code: address }, { take: ({ svg }) => print(svg), refuse: () => print("") });
  });
  open();
}

async function kitOf(name) {
  const reply = await fetch(new URL(`client/${name}.json`, import.meta.url)).catch(() => null);
  return reply?.ok ? reply.json() : null;
}

arrive();
