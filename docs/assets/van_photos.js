// Photos of parts: taken or picked, made small, kept in this browser only.

import { button, part } from "./parts.js";
import * as store from "./van_store.js";

const MOST_PIXELS = 1280; // along the longer side
const QUALITY = 80; // of a hundred

async function madeSmall(file) {
  const image = await createImageBitmap(file);
  const scale = Math.min(1, MOST_PIXELS / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(image.width * scale);
  canvas.height = Math.round(image.height * scale);
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return canvas.toDataURL("image/jpeg", QUALITY / 100);
}

export function photographing({ root, van, say, keepNow, changed }) {
  async function add(file, of, body) {
    try {
      const picture = await madeSmall(file);
      changed();
      await keepNow();
      await store.keepPhoto({ van: van.id, part: of, picture });
      await fill(body);
      say("Photo kept on this device only.");
    } catch (error) {
      console.warn(error);
      say("There is no keeping this photo: it is no picture that this browser reads, or there is no room.");
    }
  }

  function figure(photo, words, body) {
    const node = document.createElement("figure");
    const image = Object.assign(new Image(), { src: photo.picture, alt: words });
    const caption = document.createElement("figcaption");
    const name = Object.assign(document.createElement("bdi"), { textContent: words });
    const away = button("Remove photo", () => store.removePhoto(photo.id).then(() => fill(body)));
    away.className = "lv-small";
    caption.append(name, " ", away);
    node.append(image, caption);
    return node;
  }

  // Shows the photos of every part that has a place for them below `body`.
  async function fill(body) {
    const places = [...body.querySelectorAll("[data-photos]")];
    if (!places.length) return;
    const photos = await store.photosOf(van.id).catch(() => []);
    for (const place of places) {
      const mine = photos.filter((one) => one.part === place.dataset.photos);
      place.replaceChildren(...mine.map((one) => figure(one, place.dataset.words ?? "", body)));
      place.closest("[data-photos-fold]")?.toggleAttribute("hidden", !mine.length);
    }
  }

  root.addEventListener("change", ({ target }) => {
    if (!("photo" in target.dataset) || !target.files?.length) return;
    add(target.files[0], target.dataset.photo, target.closest("[data-body]"));
    target.value = "";
  });

  return { fill };
}
