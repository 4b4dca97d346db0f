// The texts of a link in the boxes of a form, as they stand there. Python reads them later, and then
// writes in each box what it has read.

import { unescaped } from "./parts.js";

const LONGEST = 200; // characters of a box

const text = (written) => unescaped(written.replaceAll("+", " ")); // Python says what is broken

const bare = (words) => words.replaceAll(" ", ""); // as a link has them

// Puts what `fragment` holds into the boxes of `form`. A list's cells cannot be told apart here.
export function fill(form, fragment) {
  const boxes = new Map([...form.elements].filter((box) => box.name).map((box) => [box.name, box]));
  for (const part of fragment.replace(/^#/, "").split("&").slice(0, boxes.size * 2)) {
    const [key, ...rest] = part.split("=");
    const box = boxes.get(text(key));
    const words = text(rest.join("=")).slice(0, LONGEST);
    if (!box || !words) continue;
    if (box.type === "radio") {
      const meant = [...form.elements].find((one) => one.name === box.name && bare(one.value) === bare(words));
      if (meant) meant.checked = true;
      continue;
    }
    const option = [...(box.options ?? [])].find(({ value }) => bare(value) === bare(words));
    if (option || !box.options) box.value = option?.value ?? words;
  }
}
