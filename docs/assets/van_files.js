// Vans as files, as links and beside one another: begin, open, save, send, remove.

import { part, show } from "./parts.js";
import * as store from "./van_store.js";

const LARGEST = 10_000_000; // bytes; no van is larger

export function filing(page) {
  const { root, van, ask, request, told, say } = page;

  const named = ({ name, copy }) => (copy ? `${name} (copy)` : name);

  async function listVans() {
    const which = part(root, "which");
    let vans = [];
    try {
      vans = await store.list();
    } catch {
      // told where something was to be kept
    }
    if (!vans.some((one) => one.id === van.id)) vans.unshift(van);
    which.replaceChildren(...vans.map((one) => new Option(named(one.id === van.id ? van : one), one.id)));
    which.value = van.id;
    offerKeeping(!van.count);
  }

  const offerKeeping = (offered) => (part(root, "stores").hidden = !offered);

  function save({ file, type, content }) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([content], { type }));
    link.download = file;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  }

  const write = (more) =>
    page.inTurn(async () => {
      const reply = await ask(request(more));
      if (!told(reply)) save(reply);
    });

  const begin = (more) =>
    page.inTurn(async () => {
      const reply = await ask(request(more));
      if (told(reply)) return;
      await page.open(reply, more.inspection === undefined ? "" : "van.name");
    });

  async function openFile(file) {
    if (file.size > LARGEST) return say("The file is too large for a van.");
    const source = await file.text();
    const rows = /\.[ct]sv$/i.test(file.name);
    await page.inTurn(async () => {
      const reply = await ask(request({ do: rows ? "add-circuits" : "open", source }));
      const list = part(root, "problems");
      const item = (words) => Object.assign(document.createElement("li"), { textContent: words });
      const problems = reply.problems ?? [];
      list.replaceChildren(...problems.map((one) => item([one.place, one.message].filter(Boolean).join(": "))));
      list.hidden = !problems.length;
      if (problems.length) return say("The file was not read. Each problem is listed below.");
      if (rows) {
        page.take(reply);
        await page.parts();
        return say(reply.said);
      }
      await page.open(reply);
      page.changed();
    });
  }

  async function link() {
    const start = location.href.split("#")[0];
    const reply = await ask(request({ do: "link", start: `${start}#` }));
    const place = part(root, "link-place");
    place.hidden = false;
    show(part(root, "link-said"), reply.problems ? reply.problems[0].message : reply.said);
    part(root, "link-box").value = reply.link ?? "";
    part(root, "link-box").hidden = !reply.link;
    part(root, "link-copy").hidden = !reply.link;
    part(root, "link-send").hidden = !reply.link || !navigator.share;
    part(root, "code").innerHTML = reply.code ?? "";
  }

  async function copyLink() {
    const box = part(root, "link-box");
    let done = true;
    try {
      await navigator.clipboard.writeText(box.value);
    } catch {
      box.select(); // browsers without that permission still copy a selection
      done = document.execCommand("copy");
    }
    say(done ? "Copied." : "Not copied: mark the link and copy it.");
  }

  async function removeVan() {
    part(root, "really").hidden = true;
    await store.remove(van.id);
    const [next] = await store.list();
    if (next) await page.open(next);
    else {
      part(root, "live").hidden = true;
      part(root, "start").hidden = false;
    }
    say("The van and its photos are removed from this device.");
  }

  const presses = {
    newVan: ({ newVan }) => begin({ do: "new", inspection: Boolean(newVan) }),
    demo: ({ demo }) => begin({ do: "demo", name: demo }),
    writes: ({ writes }) => write({ do: "write", as: writes }),
    writesTemplate: () => write({ do: "template" }),
    writesSheet: ({ writesSheet }) => write({ do: "sheet", sheet: writesSheet }),
    writesCsv: ({ writesCsv }) => write({ do: "csv", list: writesCsv }),
    makesLink: () => page.inTurn(link),
    linkCopy: copyLink,
    linkSend: () => navigator.share({ title: van.name, url: part(root, "link-box").value }).catch(() => {}),
    stores: () => page.inTurn(async () => {
      page.changed();
      await page.keepNow();
    }),
    removesVan: () => (part(root, "really").hidden = false),
    removesReally: () => page.inTurn(removeVan),
  };

  root.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    for (const [name, act] of Object.entries(presses)) if (button && name in button.dataset) act(button.dataset);
  });
  root.addEventListener("change", ({ target }) => {
    if ("which" in target.dataset) page.inTurn(() => page.openKept(target.value));
    if (!("file" in target.dataset) || !target.files.length) return;
    openFile(target.files[0]);
    target.value = "";
  });

  return { listVans, offerKeeping };
}
