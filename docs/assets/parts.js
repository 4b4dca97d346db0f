// Small helpers for the parts of a page, which the markup names by data attributes.

export const part = (place, name) => place.querySelector(`[data-${name}]`);

export function show(element, words) {
  element.textContent = words;
  element.hidden = !words;
}

// What stands escaped in an address; a broken escape is nothing.
export function unescaped(written) {
  try {
    return decodeURIComponent(written);
  } catch {
    return "";
  }
}

export function button(label, act) {
  const node = document.createElement("button");
  node.type = "button";
  node.textContent = label;
  node.addEventListener("click", act);
  return node;
}
