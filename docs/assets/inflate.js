// A worker beside Python's own: it compiles Python's program and unpacks the saved memory, while the other
// reads the loader. Its name is the hashes of both. It says whether they are saved, then gives each, and ends.

import "./place.js"; // it is fetched beside the one that needs it
import { find } from "./memory.js";

try {
  const found = await find(...self.name.split(" "), new URL("../", import.meta.url));
  self.postMessage({ found: Boolean(found) });
  if (found) {
    found.coming.catch(() => {}); // told below
    self.postMessage({ program: await found.program });
    const memory = await found.coming;
    self.postMessage({ memory }, [memory.pages.buffer]);
  }
} catch (error) {
  self.postMessage({ error: error.message });
}
self.close();
