"""The one place at which a reader chooses units, and erases what the browser remembers."""

from calc.render.html import Markup, el
from calc.units.quantities import METRIC, US

_UNITS = (("", "as each sheet has them"), (METRIC, "metric"), (US, "US"))


def device_html() -> Markup:
    """Return the place; its script shows it, for without one nothing is remembered."""
    return el(
        "section",
        el(
            "div",
            el(
                "p", "Units of the default values and answers", id="device-units", class_="lw-label"
            ),
            el(
                "div",
                *(
                    el(
                        "label",
                        el("input", type="radio", name="device-units", value=one, checked=not one),
                        el("span", words),
                    )
                    for one, words in _UNITS
                ),
                role="radiogroup",
                aria_labelledby="device-units",
                class_="lw-entry lw-picks",
            ),
            class_="lw-field",
        ),
        el("p", "", data_remembered=True),
        el("button", "Erase all of this", type="button", data_erase=True, class_="lw-button"),
        el("p", "", role="status", data_erased=True),
        data_device=True,
        class_="lw-device",
        aria_label="What this device remembers",
        hidden=True,
    )
