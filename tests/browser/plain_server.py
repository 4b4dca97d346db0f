"""The plainest of servers: Python's own, with the site in a folder of it, and no word of ours.

With LUGWISE_TEST_HOST=careless it knows the types of the commonest files alone, sends the rest as
mere bytes, and takes what ends in `.gz` for something that it has packed on the way.
"""

import argparse
import os
import sys
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer

COMMONEST = {
    ".html": "text/html",
    ".css": "text/css",
    ".js": "text/javascript",
    ".json": "application/json",
    ".png": "image/png",
    ".svg": "image/svg+xml",
}


class PlainHandler(SimpleHTTPRequestHandler):
    def log_message(self, format, *args):
        pass


class CarelessHandler(PlainHandler):
    def guess_type(self, path):
        return COMMONEST.get(os.path.splitext(path)[1], "application/octet-stream")

    def end_headers(self):
        if self.path.endswith(".gz"):
            self.send_header("Content-Encoding", "gzip")
        super().end_headers()


def main() -> int:
    parser = argparse.ArgumentParser()
    parser.add_argument("--root")
    parser.add_argument("--port", type=int)
    options = parser.parse_args()
    careless = os.environ.get("LUGWISE_TEST_HOST") == "careless"
    handler = partial(CarelessHandler if careless else PlainHandler, directory=options.root)
    server = ThreadingHTTPServer(("127.0.0.1", options.port), handler)
    print(f"http://127.0.0.1:{server.server_port}/", flush=True)
    server.serve_forever()
    return 0


if __name__ == "__main__":
    sys.exit(main())
