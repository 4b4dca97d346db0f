// A worker beside Python's own: it unpacks the saved memory while the other reads Python's program.
// It is told the memory's hash, says whether that is saved, then gives the memory, and ends.

import "./place.js"; // it is fetched beside the one that needs it
import { find } from "./memory.js";

self.onmessage = async ({ data }) => {
  try {
    const found = await find(data, new URL("../", import.meta.url));
    self.postMessage({ found: Boolean(found) });
    const memory = await found?.coming;
    if (memory) self.postMessage({ memory }, [memory.pages.buffer]);
  } catch (error) {
    self.postMessage({ error: error.message });
  }
  self.close();
};
