// In the head of pages with a live sheet: Python starts while the page is still being read.

import { start } from "./python.js";

start();
