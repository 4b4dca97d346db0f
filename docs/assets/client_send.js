// For the person who makes a link for a client: name and note go into the address, and it is sent.

import { part } from "./parts.js";

const [LONG, LONGEST] = [600, 8_000]; // characters: from where the size is told, and the most
const OWN = /^\.(?:by|note|on|mine)(?:=|$)/;

// `link` is what the page has opened, `signed` the name and the note in it, as when the page is loaded
// anew; `told` is called when they have changed.
export function attach(root, link, signed, told) {
  const form = part(root, "mine");
  form.hidden = false;
  const [by, note, box, copied] = ["by", "note", "link", "copied"].map((name) => part(form, name));
  [by, note].forEach((box, which) => (box.value = signed[which] || box.value));
  const day = new Date().toISOString().slice(0, 10);

  function address() {
    const texts = [
      [".by", by.value.trim()],
      [".note", note.value.trim()],
      [".on", day],
    ];
    const added = texts.filter(([, text]) => text).map(([key, text]) => `${key}=${escaped(text)}`);
    const before = link.pieces.filter((piece) => !OWN.test(piece));
    return `${location.href.split("#")[0]}#${[link.name].concat(before, added).join("&")}`;
  }

  function changed() {
    box.value = address();
    const length = box.value.length;
    part(form, "size").textContent = length > LONG ? `The link has ${length} characters; up to ${LONGEST} arrive whole.` : "";
    history.replaceState(history.state, "", `${box.value}&.mine=1`);
    told();
  }

  if (form.dataset.attached === undefined) {
    form.dataset.attached = "";
    form.addEventListener("submit", (event) => event.preventDefault());
    part(form, "copy").addEventListener("click", async () => {
      let done = true;
      try {
        await navigator.clipboard.writeText(box.value);
      } catch {
        box.select();
        done = document.execCommand("copy");
      }
      copied.textContent = done ? "Copied." : "Not copied: mark the link below and copy it.";
    });
    part(form, "send").hidden = !navigator.share;
    part(form, "send").addEventListener("click", () => {
      navigator.share({ title: document.title, url: box.value }).catch(() => {});
    });
  }
  form.oninput = changed;
  changed();
}

// As a link for a client has it: see client.js.
function escaped(text) {
  const whole = text.replace(/\p{Cs}/gu, ""); // half a character cannot be written
  return encodeURIComponent(whole).replace(/[!*_~']/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`).replaceAll("%20", "+");
}
