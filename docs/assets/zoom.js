/* The size of a van's diagram: by its buttons, and by plus, minus and nought on the keyboard.
   Moving it about is the box's own scrolling, by finger, wheel or arrow keys. */

const SIZES = ["fit", "50", "75", "100", "150", "200"];
const KEYS = { "+": "closer", "=": "closer", "-": "further", "0": "fit" };

/** Show a box's diagram a size larger or smaller, or the whole of it; what was in the middle stays. */
function resize(box, step) {
  const now = SIZES.indexOf(box.dataset.zoom);
  const next = step === "fit" ? 0 : now + (step === "closer" ? 1 : -1);
  if (!(next in SIZES)) return;
  const across = (box.scrollLeft + box.clientWidth / 2) / box.scrollWidth;
  const down = (box.scrollTop + box.clientHeight / 2) / box.scrollHeight;
  box.dataset.zoom = SIZES[next];
  box.scrollLeft = across * box.scrollWidth - box.clientWidth / 2;
  box.scrollTop = down * box.scrollHeight - box.clientHeight / 2;
}

document.addEventListener("click", ({ target }) => {
  const button = target.closest?.("[data-plan]");
  const box = button?.closest("figure").querySelector("[data-zoom]");
  if (box) resize(box, button.dataset.plan);
});

document.addEventListener("keydown", (event) => {
  const step = KEYS[event.key];
  if (!step || event.ctrlKey || event.metaKey || event.altKey) return;
  if (!event.target.matches?.("[data-zoom]")) return;
  event.preventDefault();
  resize(event.target, step);
});
