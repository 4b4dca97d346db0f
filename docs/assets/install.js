// Offers, where a page has a place for it, to put the site on the home screen and to keep its files
// when the device runs short of room. Neither is ever asked without a press.

import { button } from "./parts.js";

let offer = null; // the browser's own offer, which it makes when it is ready to

function render() {
  const place = document.querySelector("[data-install]");
  if (place && Boolean(offer) !== Boolean(place.firstElementChild)) {
    place.replaceChildren(...(offer ? [button("Install on this device", putOnScreen)] : []));
  }
}

async function putOnScreen() {
  await offer.prompt();
  offer = null; // it can be used once
  render();
}

async function keepFiles(event) {
  const wish = event.target.closest?.("[data-persist]");
  if (!wish) return;
  const granted = await navigator.storage?.persist?.();
  const answer = wish.parentElement.querySelector("output") ?? document.createElement("output");
  answer.textContent = granted
    ? "The browser will keep the saved files."
    : "The browser may still drop the saved files when it runs short of room.";
  wish.after(" ", answer);
}

document.addEventListener("click", keepFiles);
window.addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  offer = event;
  render();
});
window.document$?.subscribe(render); // the theme replaces parts of the page as one moves about
