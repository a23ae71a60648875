"""An editor at a language server: how long it takes from an edit to what is said of the text."""

import json
import os
import subprocess
import time


class Session:
    """A server as a child, and the messages to and from it."""

    def __init__(self, benchcard):
        self.child = subprocess.Popen([benchcard, "language-server"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self.send("initialize", {"processId": None, "rootUri": None, "capabilities": {}}, request=1)
        while self.next().get("id") != 1:
            pass
        self.send("initialized", {})

    def send(self, method, params, request=None):
        message = {"jsonrpc": "2.0", "method": method, "params": params}
        if request is not None:
            message["id"] = request
        body = json.dumps(message).encode()
        self.child.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self.child.stdin.flush()

    def next(self):
        length = 0
        while (line := self.child.stdout.readline().strip()):
            if line.lower().startswith(b"content-length:"):
                length = int(line.split(b":")[1])
        return json.loads(self.child.stdout.read(length))

    def wait_for(self, version):
        while True:
            message = self.next()
            if (message.get("method") == "textDocument/publishDiagnostics" and message["params"].get("version") == version):
                return len(message["params"]["diagnostics"])

    def memory(self):
        """KB of the server's that are in memory now."""
        with open(f"/proc/{self.child.pid}/status") as status:
            return next(int(line.split()[1]) for line in status if line.startswith("VmRSS:"))

    def work(self):
        """Seconds of work of the server until now."""
        with open(f"/proc/{self.child.pid}/stat") as stat:
            fields = stat.read().rsplit(")", 1)[1].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def close(self):
        self.send("shutdown", None, request=2)
        self.send("exit", None)
        self.child.stdin.close()
        self.child.stdout.read()
        self.child.wait()


def edits(benchcard, text, count):
    """Types `count` times into the last step of a text, a letter in and out again. Gives the seconds
    from each edit to what is said of it, the server's memory along the way, and its work an edit."""
    session = Session(benchcard)
    uri = "file:///tmp/made-up.recipe"
    session.send("textDocument/didOpen", {"textDocument": {"uri": uri, "languageId": "recipe", "version": 0, "text": text}})
    session.wait_for(0)
    last = len(text.splitlines()) - 1
    seconds, memory, work = [], [], session.work()
    for version in range(1, count + 1):
        typed = version % 2 == 1
        place = {"start": {"line": last, "character": 2}, "end": {"line": last, "character": 2 if typed else 3}}
        begin = time.perf_counter()
        session.send("textDocument/didChange", {"textDocument": {"uri": uri, "version": version},
                                                "contentChanges": [{"range": place, "text": "x" if typed else ""}]})
        session.wait_for(version)
        seconds.append(time.perf_counter() - begin)
        if version % max(1, count // 20) == 0:
            memory.append(session.memory())
    work = (session.work() - work) / count
    session.close()
    return seconds, memory, work
