"""The site's own server, made to fail on demand and to write down what it was asked for.

In the folder named by LUGWISE_TEST_CONTROL, a file holds the path at which the server fails as the
file's name says. `cut`: its body breaks off half way; `stall`: it stops half way and goes on when
the file is gone; `flip`: one bit changes on the way; `login`: a login page comes in its place;
`away`: one is led to a login page of another origin; `error`: the server reports one. `/*` stands
for every path. `requests` gets one line for each path asked for.
"""

import os
import sys
import time
from pathlib import Path

from build_scripts.server import SiteHandler, serve

CONTROL = Path(os.environ["LUGWISE_TEST_CONTROL"])
LOGIN = b"<!doctype html><title>Log in</title><form>Room number <input></form>"


class BreakableHandler(SiteHandler):
    def do_GET(self):
        with (CONTROL / "requests").open("a") as log:
            log.write(self.path + "\n")
        if self.is_to("login"):
            self.send_bare(200, LOGIN)
        elif self.is_to("away"):
            # The same machine by another name is another origin.
            self.send_bare(302, Location=f"http://localhost:{self.server.server_port}/login")
        elif self.is_to("error"):
            self.send_bare(503)
        else:
            super().do_GET()

    do_HEAD = do_GET

    def send_bare(self, status, body=b"", **headers):
        self.send_response(status)
        lengths = {"Content-Type": "text/html", "Content-Length": str(len(body))}
        for name, value in (lengths | headers).items():
            self.send_header(name, value)
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def send_body(self, body):
        half = len(body) // 2
        if body and self.is_to("flip"):
            body = body[:half] + bytes([body[half] ^ 1]) + body[half + 1 :]
        super().send_body(body[:half])
        if self.is_to("cut"):
            self.close_connection = True
            return
        while self.is_to("stall"):
            time.sleep(0.05)
        super().send_body(body[half:])

    def is_to(self, fail: str) -> bool:
        try:
            return (CONTROL / fail).read_text() in (self.path, "/*")
        except FileNotFoundError:
            return False


if __name__ == "__main__":
    sys.exit(serve(handler=BreakableHandler))
