"""Questions to the page's Python by its own bridge, and that this machine's replies the same."""

import json

import calc
from build_scripts.runtime_sheets import CODE
from calc.render.bridge import ask

ASK = """async (requests) => {
  const python = await import("../../assets/python.js");
  const replies = [];
  for (const request of requests) {
    replies.push(await new Promise((take, stop) => {
      const refuse = (...why) => stop(new Error(why.join(" ")));
      python.ask("test", request, { take, refuse, needs: request.van && "van" });
    }));
  }
  return replies;
}"""
"""Returns the replies to requests, asked of the Python that the page has started."""

ASK_APART = """async (requests) => {
  const address = new URL("../../assets/worker.js", location.href);
  const edition = document.querySelector("meta[name=lugwise-boot]").content;
  const worker = new Worker(address, { type: "module", name: `memory ${edition}` });
  const reply = (request, id) => new Promise((take, stop) => {
    worker.onerror = () => stop(new Error("no start"));
    worker.onmessage = ({ data }) => {
      if (data.type === "answer" && data.id === id) take(JSON.parse(data.response));
      if (data.type === "failed") stop(new Error(data.message));
    };
    const needs = request.van && "van";
    worker.postMessage({ type: "ask", id, request: JSON.stringify(request), needs });
  });
  const replies = [];
  for (const [place, request] of requests.entries()) replies.push(await reply(request, place + 1));
  worker.terminate();
  return replies;
}"""
"""The same of a Python beside the page's: what is run in Firefox from outside has modules of its
own, which would take the page's worker from it."""


def of_each_sheet() -> list[dict]:
    """Return requests for each sheet as it opens and with each choice changed, and for a van."""
    asked: list[dict] = [CODE]
    for sheet in map(calc.find, calc.worksheets()):
        asked.append({"sheet": sheet.id, "fragment": ""})
        asked += [
            {"sheet": sheet.id, "values": {field.id: option.id}}
            for field in sheet.fields
            for option in getattr(field, "options", ())[-1:]
        ]
    asked.append({"van": {"do": "demo", "name": "marram"}})
    return asked


def expect_replies(asked: list[dict], replies: list[dict]) -> None:
    """Fail on the first reply that is not, to the letter, this machine's."""
    for request, reply in zip(asked, replies, strict=True):
        assert reply == json.loads(ask(json.dumps(request))), request
