// To a client's page by a link, so that the theme keeps the Python that has started.

export function toClient(href) {
  const link = Object.assign(document.createElement("a"), { href });
  document.body.append(link);
  link.click();
  link.remove();
}
