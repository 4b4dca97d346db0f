// A worker beside Python's own: it unpacks the saved memory while the other reads Python's program.
// It is told the memory's hash, gives the memory, or null where there is none, and ends.

import { find } from "./memory.js";

self.onmessage = async ({ data }) => {
  try {
    const found = await find(data, new URL("../", import.meta.url));
    self.postMessage({ found }, found ? [found.pages.buffer] : []);
  } catch (error) {
    self.postMessage({ error: error.message });
  }
  self.close();
};
