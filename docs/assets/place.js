// Archives of code: which ones an ask cannot do without, and how their files get to where Python reads its
// modules. Its own library stays a zip, which Python reads by itself. Another archive is a zip that our build has written (`zipped` in build_scripts/runtime_files.py):
// nothing in it is packed, and each file's head tells its length.

export const hex = (bytes) => [...new Uint8Array(bytes)].map((b) => b.toString(16).padStart(2, "0")).join("");

// Empty where a page is not trusted with it: one that came by plain http from another machine.
export const digest = async (bytes) => (crypto.subtle ? hex(await crypto.subtle.digest("SHA-256", bytes)) : "");

const HEAD = 0x04034b50; // what each file begins with
const LIBRARY = "stdlib";

// A library without a file in it, which a restored Python begins with: it remembers what it has read.
export const NO_LIBRARY = Uint8Array.of(0x50, 0x4b, 5, 6, ...new Uint8Array(18)).buffer;

export function place(python, name, bytes, { sitePackages, library }) {
  if (name === LIBRARY) python.FS.writeFile(library, bytes);
  else unpack(python, bytes, sitePackages);
  // What Python remembers of folders and zips as they were.
  python.runPython("import sys, zipimport; sys.path_importer_cache.clear(); zipimport._zip_directory_cache.clear()");
}

function unpack(python, bytes, folder) {
  const at = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const made = new Set();
  let head = 0;
  while (at.getUint32(head, true) === HEAD) {
    const named = head + 30;
    const begins = named + at.getUint16(head + 26, true) + at.getUint16(head + 28, true);
    const ends = begins + at.getUint32(head + 18, true);
    const name = new TextDecoder().decode(bytes.subarray(named, named + at.getUint16(head + 26, true)));
    const path = `${folder}/${name}`;
    const parent = path.slice(0, path.lastIndexOf("/"));
    if (!made.has(parent)) python.FS.mkdirTree(parent);
    made.add(parent);
    python.FS.writeFile(path, bytes.subarray(begins, ends), { canOwn: true });
    head = ends;
  }
}

// The worksheets of each chapter lie apart: by the id of each, `chapters` names the archive that has it.
export const all = (chapters, isRestored) => ["app", ...new Set(Object.values(chapters)), ...(isRestored ? [LIBRARY] : [])];

// Of Python's program the loader is given what it uses. It goes through all there is, several times, and
// there are thousands of names for parts that others may link to it.
export const passing = ({ exports }, names) => ({ exports: Object.fromEntries(names.map((name) => [name, exports[name]])) });

// What an ask cannot do without: the core and its own chapter, or all of them where it names an archive
// of further code. A restored Python remembers them.
export function archivesFor({ request, needs }, chapters, isRestored) {
  if (needs) return [...all(chapters, isRestored), needs];
  if (isRestored) return [];
  return ["app", chapters[JSON.parse(request).sheet]].filter(Boolean);
}
