"""The site in Firefox."""

from build_scripts.engine_firefox import Firefox
from tests.browser.engine_tests import EngineTests


class TestFirefox(EngineTests):
    engine = Firefox
