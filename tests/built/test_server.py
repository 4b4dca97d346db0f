"""Our server sends what a static host would."""

import gzip
import http.client
import threading

import pytest

from build_scripts.server import SiteHandler, SiteServer

POLICY = "default-src 'none'"


@pytest.fixture
def get(tmp_path):
    """Ask a running server for a path; gives the reply and its body."""
    (tmp_path / "deep").mkdir()
    for path, text in {
        "index.html": "home",
        "deep/index.html": "deep",
        "404.html": "not here",
        "a.mjs": "export {}",
        "a.wasm": "wasm",
        "a.bin.gz": "not inflated on the way",
        "a.webmanifest": "{}",
        "sw.js": "worker",
        "_headers": f"/*\n  Content-Security-Policy: {POLICY}\n  Cache-Control: no-cache\n",
    }.items():
        (tmp_path / path).write_text(text)
    (tmp_path.parent / "secret").write_text("outside the site")
    server = SiteServer(("127.0.0.1", 0), SiteHandler, tmp_path)
    thread = threading.Thread(target=server.serve_forever, args=[0.01])
    thread.start()

    def ask(path, method="GET", **headers):
        connection = http.client.HTTPConnection("127.0.0.1", server.server_port, timeout=10)
        names = {name.replace("_", "-"): value for name, value in headers.items()}
        connection.request(method, path, headers=names)
        reply = connection.getresponse()
        body = reply.read()
        connection.close()
        return reply, body

    yield ask
    server.shutdown()
    thread.join()
    server.server_close()


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/a.mjs", "text/javascript; charset=utf-8"),
        ("/a.wasm", "application/wasm"),
        ("/a.bin.gz", "application/octet-stream"),
        ("/a.webmanifest", "application/manifest+json"),
    ],
)
def test_each_kind_of_file_has_its_type_and_the_policy(get, path, kind):
    reply, _ = get(path)
    assert reply.status == 200
    assert reply.headers["Content-Type"] == kind
    assert reply.headers["Content-Security-Policy"] == POLICY


def test_text_is_compressed_for_those_who_take_it_and_a_gz_file_never(get):
    reply, body = get("/", Accept_Encoding="gzip, br")
    assert reply.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(body) == b"home"
    assert get("/")[1] == b"home"
    reply, body = get("/a.bin.gz", Accept_Encoding="gzip")
    assert reply.headers["Content-Encoding"] is None
    assert body == b"not inflated on the way"


@pytest.mark.parametrize("path", ["/", "/sw.js", "/404.html"])
def test_pages_and_the_service_worker_have_no_validators(get, path):
    reply, _ = get(path)
    assert reply.headers["Cache-Control"] == "no-cache"
    assert reply.headers["ETag"] is None
    assert reply.headers["Last-Modified"] is None


def test_other_files_are_sent_once(get):
    reply, _ = get("/a.wasm")
    again, body = get("/a.wasm", If_None_Match=reply.headers["ETag"])
    assert (again.status, body) == (304, b"")


@pytest.mark.parametrize(
    "path", ["/no", "/no/", "/_headers", "/../secret", "/%2e%2e/secret", "/%00"]
)
def test_what_is_not_in_the_site_gets_the_not_found_page(get, path):
    reply, body = get(path)
    assert (reply.status, body) == (404, b"not here")


def test_a_folder_without_its_slash_is_sent_to_the_one_with(get):
    reply, _ = get("/deep?x=1")
    assert (reply.status, reply.headers["Location"]) == (301, "/deep/?x=1")
    assert get("/deep/?x=1")[1] == b"deep"
    # Two slashes at the front would name another host.
    assert get("//deep")[0].headers["Location"] == "/deep/"


def test_head_sends_no_body(get):
    reply, body = get("/", "HEAD")
    assert (reply.status, body, reply.headers["Content-Length"]) == (200, b"", "4")
