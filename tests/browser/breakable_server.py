"""The site's own server, made to fail on demand and to write down what it was asked for.

In the folder named by LUGWISE_TEST_CONTROL: a file `cut` holds the path whose body breaks off half
way; a file `stall` the path whose body stops half way and goes on when the file is gone; `requests`
gets one line for each path asked for.
"""

import os
import sys
import time
from pathlib import Path

from build_scripts.server import SiteHandler, serve

CONTROL = Path(os.environ["LUGWISE_TEST_CONTROL"])


class BreakableHandler(SiteHandler):
    def do_GET(self):
        with (CONTROL / "requests").open("a") as log:
            log.write(self.path + "\n")
        super().do_GET()

    do_HEAD = do_GET

    def send_body(self, body):
        half = len(body) // 2
        super().send_body(body[:half])
        if self.is_to("cut"):
            self.close_connection = True
            return
        while self.is_to("stall"):
            time.sleep(0.05)
        super().send_body(body[half:])

    def is_to(self, fail: str) -> bool:
        try:
            return (CONTROL / fail).read_text() == self.path
        except FileNotFoundError:
            return False


if __name__ == "__main__":
    sys.exit(serve(handler=BreakableHandler))
