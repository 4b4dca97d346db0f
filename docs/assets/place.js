// Archives of code: which ones an ask cannot do without, and how their files get to where Python reads its
// modules. An archive is a zip that our build has written (`zipped` in build_scripts/runtime_files.py):
// nothing in it is packed, and each file's head tells its length.

const hex = (bytes) => [...new Uint8Array(bytes)].map((b) => b.toString(16).padStart(2, "0")).join("");

// Empty where a page is not trusted with it: one that came by plain http from another machine.
export const digest = async (bytes) => (crypto.subtle ? hex(await crypto.subtle.digest("SHA-256", bytes)) : "");

const HEAD = 0x04034b50; // what each file begins with

export function place(python, bytes, folder) {
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
  // What Python remembers of folders as they were.
  python.runPython("import sys; sys.path_importer_cache.clear()");
}

// The worksheets of each chapter lie apart: by the id of each, `chapters` names the archive that has it.
export const all = (chapters) => ["app", ...new Set(Object.values(chapters))];

// What an ask cannot do without: the core and its own chapter, or all of them where it names an archive
// of further code. A restored Python remembers them.
export function archivesFor({ request, needs }, chapters, isRestored) {
  if (needs) return [...all(chapters), needs];
  if (isRestored) return [];
  return ["app", chapters[JSON.parse(request).sheet]].filter(Boolean);
}
