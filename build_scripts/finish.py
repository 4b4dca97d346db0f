"""Make a freshly built site ready to serve: strip it, police it, list it.

`finish(site)` runs after `mkdocs build` and after the runtime has been copied in. It deletes what
no reader fetches, puts the content security policy into every page, writes `_headers` for static
hosts, refuses a site that would fetch anything from outside, and writes `sw.js`.
"""

import base64
import hashlib
import json
import re
import shutil
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

from build_scripts.pages import Page, read_page
from build_scripts.site_list import FileList, type_of, write_worker

ALLOWED_LINKS: frozenset[str] = frozenset()
"""Outside addresses that a page may link to. None: a phone without signal could not follow them."""

FETCHING_POLICY = {
    "default-src": "'none'",
    "script-src": "'self' 'wasm-unsafe-eval'",
    "require-trusted-types-for": "'script'",
    "trusted-types": "default",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "img-src": "'self' data:",
    "style-src": "'self'",
    "manifest-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'none'",
    "object-src": "'none'",
}

OTHER_HEADERS = {
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}

BOOT = "__BOOT__"
"""Where a page has the hash of what Python starts from, by which it knows that of its edition."""

UNRENDERED = {
    "a fence that was not rendered": re.compile(
        r"```\s*(worksheet|example|practice)\b"
        r"|class=\"[^\"]*\blanguage-(worksheet|example|practice)\b"
        r"|<code class=\"(worksheet|example|practice)\b|<code>(worksheet|example|practice|page)\n"
    ),
    "a failed macro": re.compile(r"Macro Rendering Error"),
}

CSS_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
CSS_URL = re.compile(r"""url\(\s*(?:"([^"]*)"|'([^']*)'|([^)'"]*))\s*\)|@import\s+["']([^"']*)""")


class SiteError(Exception):
    """The built site breaks a promise; the message lists every place, one a line."""


def finish(site: Path) -> FileList:
    """Finish the site in place and return its file list.

    Raises SiteError with every problem found: a fetch or link to outside, a reference to a file
    that is not there, inline style or event handlers (the policy forbids them), raw fences.
    """
    strip(site)
    pages = {file: read_page(file.read_text("utf-8")) for file in sorted(site.rglob("*.html"))}
    problems = [
        f"{file.relative_to(site)}: {problem}"
        for file, page in pages.items()
        for problem in page_problems(site, file, page)
    ]
    for file in sorted(site.rglob("*.css")):
        problems += [f"{file.relative_to(site)}: {problem}" for problem in css_problems(site, file)]
    if problems:
        raise SiteError("The built site cannot be served:\n  " + "\n  ".join(problems))
    policy = policy_for(pages.values())
    boot = edition(site / "assets" / "runtime" / "boot.json")
    for file, page in pages.items():
        file.write_text(with_policy(page, policy).replace(BOOT, boot), "utf-8")
    headers = {"Content-Security-Policy": f"{policy}; frame-ancestors 'none'", **OTHER_HEADERS}
    files = write_worker(site, headers)
    write_headers(site, files, headers)
    return files


def edition(start: Path) -> str:
    """Return what a page is told of the Python that may answer it.

    The hash of boot.json, and of the memory and the program that are saved with it; nothing where
    there is no such file.
    """
    if not start.is_file():
        return ""
    content = start.read_bytes()
    memory = json.loads(content).get("memory", {})
    hashes = hashlib.sha256(content).hexdigest(), memory.get("hash"), memory.get("program")
    return " ".join(filter(None, hashes))


def strip(site: Path) -> None:
    """Delete what no reader fetches."""
    for file in [*site.rglob("*.map"), *site.rglob("*.gz")]:
        file.unlink()
    # The word stemmers of other languages: 0.9 MB that an English search never loads.
    shutil.rmtree(site / "assets" / "javascripts" / "lunr", ignore_errors=True)
    shutil.rmtree(site / "assets" / "images", ignore_errors=True)  # the theme's own icon


def policy_for(pages) -> str:
    """The content security policy for all pages: the union of their inline scripts' hashes.

    The union, because under instant navigation the scripts of the next page run under the policy
    of the first.
    """
    digests = sorted(
        {
            base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
            for page in pages
            for script in page.inline_scripts
        }
    )
    policy = dict(FETCHING_POLICY)
    policy["script-src"] += "".join(f" 'sha256-{digest}'" for digest in digests)
    return "; ".join(f"{name} {value}" for name, value in policy.items())


def with_policy(page: Page, policy: str) -> str:
    """The page's HTML with the policy right after the character set, before anything is fetched.

    `frame-ancestors` has no effect in a page and is only in the header.
    """
    meta = f'<meta http-equiv="Content-Security-Policy" content="{policy}">'
    # The theme needs an address to start from; a page that names it would send its readers nowhere.
    text = re.sub(r'<link rel="canonical" href="https?://[^"/]*\.invalid/[^"]*">', "", page.text)
    # Firefox would fetch a next page ahead, which the policy forbids, and says so on every page.
    text = re.sub(r'<link rel="(?:prev|next)" href="[^"]*">', "", text)
    text, count = re.subn(
        r"<meta\s+charset=[^>]*>", lambda found: found.group() + meta, text, count=1
    )
    if not count:
        raise SiteError(f"A page has no <meta charset>: {page.text[:80]!r}")
    return text


def page_problems(site: Path, file: Path, page: Page) -> list[str]:
    """What breaks a promise in one page, in words."""
    problems = [
        f"{what}: {found.group()!r}"
        for what, pattern in UNRENDERED.items()
        if (found := pattern.search(page.text))
    ]
    problems += [f"{what} (the policy forbids it)" for what in page.inline_style_or_handlers]
    # The not-found page is served at any depth, so its addresses start at the site's own root.
    rooted = file == site / "404.html"
    for reference in page.references:
        if reference.link and reference.url in ALLOWED_LINKS:
            continue
        if problem := reference_problem(site, file, reference.url, rooted=rooted):
            problems.append(f"<{reference.tag}> {problem}")
    return problems


def css_problems(site: Path, file: Path) -> list[str]:
    """What breaks a promise in one style sheet, in words."""
    text = CSS_COMMENT.sub("", file.read_text("utf-8"))
    urls = ["".join(groups).strip() for groups in CSS_URL.findall(text)]
    return [problem for url in urls if (problem := reference_problem(site, file, url))]


def reference_problem(site: Path, file: Path, url: str, *, rooted: bool = False) -> str | None:
    """Why a reference in `file` may not stand, or None.

    `rooted` pages may use absolute paths; in all others one would tie the site to one folder.
    """
    try:
        parts = urlsplit(url)
    except ValueError:
        return f"has an address that cannot be read: {url!r}"
    if parts.scheme == "data":
        return None
    if parts.scheme or parts.netloc or url.startswith("//"):
        return f"goes outside the site: {url}"
    if rooted:
        return None
    if parts.path.startswith("/"):
        return f"has an absolute path, which fails when the site lives in a folder: {url}"
    base = "/" + file.relative_to(site).as_posix()
    target = unquote(urlsplit(urljoin(base, parts.path)).path).lstrip("/")
    if parts.path and target.endswith("/"):
        target += "index.html"
    found = site / (target or "index.html")
    if not (found.is_file() or (found / "index.html").is_file()):
        return f"asks for a file that is not in the site: {url}"
    return None


def write_headers(site: Path, files: FileList, headers: dict[str, str]) -> None:
    """Write the headers for hosts: `_headers`, which our own server obeys too, and `.htaccess`.

    Between them most static hosts read one; where none is read, the pages carry the policy.
    """
    every = {**headers, "Cache-Control": "no-cache"}
    blocks = {"/*": every}
    # Hosts do not agree on these endings, and a wrong type stops the runtime.
    unsure = [path for path in files if path.endswith((".bin", ".webmanifest"))]
    for path in unsure:
        blocks[f"/{path}"] = {"Content-Type": type_of(path)}
    text = "".join(
        f"{path}\n" + "".join(f"  {name}: {value}\n" for name, value in block.items()) + "\n"
        for path, block in blocks.items()
    )
    (site / "_headers").write_text(text, "utf-8")
    lines = [
        *(
            f"AddType {type_of(f'a{end}')} {end}"
            for end in sorted({Path(path).suffix for path in unsure})
        ),
        "<IfModule mod_headers.c>",
        *(f'Header set {name} "{value}"' for name, value in every.items()),
        "</IfModule>",
    ]
    (site / ".htaccess").write_text("\n".join(lines) + "\n", "utf-8")
