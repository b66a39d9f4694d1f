"""Drives Debian's chromium through its pipe of JSON messages; the standard library is enough."""
import base64
import json
import os
import select
import subprocess
import tempfile
import time


class Browser:
    """One headless browser without network, its pages used one after the other."""

    def __init__(self, program="chromium"):
        to_browser_read, self.to_browser = os.pipe()
        self.from_browser, from_browser_write = os.pipe()
        self.profile = tempfile.TemporaryDirectory(prefix="gentlest_browser_", ignore_cleanup_errors=True)
        # The browser reads commands from descriptor 3 and answers on 4; a shell puts ours there.
        shell = 'exec "$0" "$@" 3<&{} 4>&{}'.format(to_browser_read, from_browser_write)
        self.process = subprocess.Popen(
            ["bash", "-c", shell, program, "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
             "--hide-scrollbars", "--no-first-run", "--no-default-browser-check", "--disable-extensions", "--disable-background-networking",
             "--disable-component-update", "--disable-sync", "--host-resolver-rules=MAP * ~NOTFOUND",
             "--user-data-dir=" + self.profile.name, "--remote-debugging-pipe", "about:blank"],
            pass_fds=(to_browser_read, from_browser_write), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_browser_read)
        os.close(from_browser_write)
        self.buffer = b""
        self.number = 0
        self.requests = []
        target = self.ask("Target.createTarget", {"url": "about:blank"})["targetId"]
        self.session = self.ask("Target.attachToTarget", {"targetId": target, "flatten": True})["sessionId"]
        for domain in ("Page", "Runtime", "Network"):
            self.ask(domain + ".enable")

    def close(self):
        try:
            self.session = None
            self.ask("Browser.close", seconds=5)
        except (RuntimeError, OSError):
            self.process.kill()
        self.process.wait(timeout=10)
        self.profile.cleanup()

    def next_message(self, deadline):
        while b"\0" not in self.buffer:
            ready = select.select([self.from_browser], [], [], max(0, deadline - time.monotonic()))[0]
            piece = os.read(self.from_browser, 1 << 20) if ready else b""
            if not piece:
                raise RuntimeError("the browser does not answer")
            self.buffer += piece
        text, self.buffer = self.buffer.split(b"\0", 1)
        message = json.loads(text)
        if message.get("method") == "Network.requestWillBeSent":
            self.requests.append(message["params"]["request"]["url"])
        return message

    def ask(self, method, params=None, seconds=30):
        self.number += 1
        message = {"id": self.number, "method": method, "params": params or {}}
        if getattr(self, "session", None):
            message["sessionId"] = self.session
        os.write(self.to_browser, json.dumps(message).encode() + b"\0")
        deadline = time.monotonic() + seconds
        while True:
            answer = self.next_message(deadline)
            if answer.get("id") == self.number:
                if "error" in answer:
                    raise RuntimeError(method + ": " + answer["error"]["message"])
                return answer["result"]

    def open(self, path, width_px, height_px):
        """Loads a file as it looks on paper of that width; returns the addresses it asked for."""
        self.requests = []
        self.ask("Emulation.setDeviceMetricsOverride",
                 {"width": width_px, "height": height_px, "deviceScaleFactor": 1, "mobile": False})
        self.ask("Emulation.setEmulatedMedia", {"media": "print"})
        self.ask("Page.navigate", {"url": "file://" + os.path.abspath(path)})
        for _ in range(200):
            if self.evaluate("document.readyState") == "complete" and self.evaluate("location.protocol") == "file:":
                break
            time.sleep(0.02)
        return list(self.requests)

    def evaluate(self, expression):
        result = self.ask("Runtime.evaluate", {"expression": expression, "returnByValue": True, "awaitPromise": True})
        if "exceptionDetails" in result:
            raise RuntimeError(json.dumps(result["exceptionDetails"])[:500])
        return result["result"].get("value")

    def pdf(self, path):
        data = self.ask("Page.printToPDF", {"preferCSSPageSize": True, "printBackground": True}, seconds=60)["data"]
        with open(path, "wb") as file:
            file.write(base64.b64decode(data))
