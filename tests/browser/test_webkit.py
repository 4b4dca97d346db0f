"""The site in WebKit, the engine of every browser on an iPhone."""

from build_scripts.engine_webkit import WebKit
from tests.browser.engine_tests import EngineTests


class TestWebKit(EngineTests):
    engine = WebKit
