// Handing an answer on: copy its link, send it by the system's own sheet, print it with its code.

import { notCome, part, whileHere } from "./parts.js";

// The link is written with the answer: until that has come it would open other values.
function hasLink(sheet) {
  const has = !("behind" in sheet.dataset);
  part(sheet, "copied").textContent = has ? "" : "No link yet: your values have not been calculated.";
  return has;
}

async function copy(sheet) {
  if (!hasLink(sheet)) return;
  const box = part(sheet, "link");
  let done = true;
  try {
    await navigator.clipboard.writeText(box.value);
  } catch {
    part(sheet, "copy-box").hidden = false;
    box.select(); // browsers without that permission still copy a selection
    done = document.execCommand("copy");
  }
  part(sheet, "copy-box").hidden = done;
  part(sheet, "copied").textContent = done ? "Copied." : "Not copied: mark the link below and copy it.";
}

// The text comes from Python: some browsers let a page copy only what it promises at the press.
async function copyWords(sheet, words) {
  if (!hasLink(sheet)) return;
  const text = new Promise((resolve, reject) => {
    words(part(sheet, "link").value, (found) => (found ? resolve(found) : reject(new Error("no text"))));
  });
  let done = true;
  try {
    const blob = text.then((found) => new Blob([found], { type: "text/plain" }));
    await navigator.clipboard.write([new ClipboardItem({ "text/plain": blob })]);
  } catch {
    done = await text.then((found) => navigator.clipboard.writeText(found)).then(() => true, () => false);
  }
  part(sheet, "copied").textContent = done ? "Copied as text." : "Not copied: this browser does not allow it.";
}

async function send(sheet) {
  if (!hasLink(sheet)) return;
  try {
    await navigator.share({ title: document.title, url: part(sheet, "link").value });
  } catch {
    // closed without sending: nothing to say
  }
}

// A page that is printed whole says where it was found.
window.addEventListener("beforeprint", () => {
  const here = location.href.split("#")[0];
  for (const place of document.querySelectorAll("[data-here]")) place.textContent = `Printed from ${here}`;
});

// `code` asks Python for the square code of a link, and calls back with its SVG; `words` for the
// answer as plain text.
export function share(sheet, { code, words }) {
  part(sheet, "copy").addEventListener("click", () => copy(sheet));
  part(sheet, "words").addEventListener("click", () => copyWords(sheet, words));
  part(sheet, "send").addEventListener("click", () => send(sheet));
  part(sheet, "send").hidden = !navigator.share;
  let coded = "";
  // The browser's own print command cannot wait for a code, but an old one would open other figures.
  const signal = whileHere(sheet);
  const beforePrint = () => {
    const link = part(sheet, "link").value;
    if (coded !== link) part(sheet, "qr").replaceChildren();
    part(sheet, "address").textContent = link;
    part(sheet, "printed").textContent = new Date().toLocaleDateString("en-GB", { dateStyle: "long" });
  };
  window.addEventListener("beforeprint", beforePrint, { signal });
  // Some browsers come back from print() long before the page has been printed.
  window.addEventListener("afterprint", () => delete document.documentElement.dataset.printing, { signal });
  part(sheet, "explain").addEventListener("click", () => {
    import("./explain.js").then(({ explain }) => explain(sheet)).catch(notCome(sheet));
  });
  // On one page, or in full.
  for (const button of sheet.querySelectorAll("[data-print]")) {
    button.addEventListener("click", () => {
      const link = part(sheet, "link").value;
      code(link, (svg) => {
        part(sheet, "qr").innerHTML = svg;
        coded = link;
        document.documentElement.dataset.printing = button.dataset.print;
        setTimeout(() => window.print());
      });
    });
  }
}
