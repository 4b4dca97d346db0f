// Vans and photos as this browser keeps them. A van is a text that Python wrote; what is in it is
// not known here. Each carries a count of its changes: what was changed elsewhere in the meantime
// is never written over. Where the browser refuses to keep anything, that is told, not hidden.

const NAME = "lugwise-van";
const [VANS, PHOTOS, NOTES] = ["vans", "photos", "notes"];

const settled = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const done = (transaction) =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = transaction.onerror = () => reject(transaction.error ?? new Error("refused"));
  });

let opening = null;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(VANS, { keyPath: "id" });
      request.result.createObjectStore(PHOTOS, { keyPath: "id", autoIncrement: true }).createIndex("van", "van");
      request.result.createObjectStore(NOTES);
    };
    request.onblocked = () => reject(new Error("blocked"));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      request.result.onversionchange = () => {
        request.result.close();
        opening = null;
      };
      request.result.onclose = () => (opening = null); // erased by the browser, under an open page
      resolve(request.result);
    };
  });
  opening.catch(() => (opening = null));
  return opening;
}

async function within(name, mode, act) {
  const transaction = (await open()).transaction(name, mode);
  const [result] = await Promise.all([act(transaction.objectStore(name)), done(transaction)]);
  return result;
}

// What can be asked whether the browser keeps anything at all: rejects where it does not.
export async function list() {
  const vans = await within(VANS, "readonly", (store) => settled(store.getAll()));
  return vans.sort((one, other) => (one.changed < other.changed ? 1 : -1));
}

export const get = (id) => within(VANS, "readonly", (store) => settled(store.get(id)));

export const newId = () => [...crypto.getRandomValues(new Uint8Array(9))].map((one) => one.toString(36)).join("");

// Keeps `van` if what is kept is what it was made from, or is gone, and returns its new count; else returns
// nothing and leaves what is there.
export async function keep(van) {
  const made = { ...van, count: van.count + 1, changed: new Date().toISOString() };
  const kept = await within(VANS, "readwrite", async (store) => {
    const there = await settled(store.get(van.id));
    if (there && there.count !== van.count) return false;
    await settled(store.put(made));
    return true;
  });
  if (!kept) return null;
  tell({ id: made.id, count: made.count });
  return made.count;
}

export async function remove(id) {
  await within(VANS, "readwrite", (store) => settled(store.delete(id)));
  for (const photo of await photosOf(id)) await removePhoto(photo.id);
  tell({ id, count: 0 });
}

export const photosOf = (van) =>
  within(PHOTOS, "readonly", (store) => settled(store.index("van").getAll(van)));
export const keepPhoto = (photo) => within(PHOTOS, "readwrite", (store) => settled(store.add(photo)));
export const removePhoto = (id) => within(PHOTOS, "readwrite", (store) => settled(store.delete(id)));

// A photo of the van `from` is one of the van `to` as well.
export async function copyPhotos(from, to) {
  for (const { part, picture } of await photosOf(from)) await keepPhoto({ van: to, part, picture });
}

// Which van was looked at last.
const last = () => within(NOTES, "readonly", (store) => settled(store.get("last")));
export const setLast = (id) => within(NOTES, "readwrite", (store) => settled(store.put(id, "last")));

// The van of that id; where there is none, the one looked at last, or else the newest.
export async function lookedAt(id) {
  for (const wanted of [id, await last()]) {
    const kept = wanted && (await get(wanted));
    if (kept) return kept;
  }
  return (await list())[0];
}

const channel = "BroadcastChannel" in self ? new BroadcastChannel(NAME) : null;
const tell = (said) => channel?.postMessage(said);

// `act` hears of every van that another tab has kept ({id, count}) or removed (count 0).
export function hear(act) {
  if (channel) channel.onmessage = ({ data }) => act(data);
}
