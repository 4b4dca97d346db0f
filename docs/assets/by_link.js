// In the head of pages with a live sheet, before anything is drawn: a link brings values of its own,
// so the answer that the page was built with is not shown, not even for a moment.

if (location.hash.includes("=")) document.documentElement.dataset.byLink = "";
