"""Inputs of 1 MB that are made to be slow or large, of every shape: python3 hostile.py PROGRAM [WORD...]

Each goes through every command that reads such a thing. A line says how many seconds of work and how
many MB that took; only shapes in whose name all WORDs stand are tried.
"""

import concurrent.futures
import json
import os
import pathlib
import resource
import subprocess
import sys
import tempfile

MOST_SECONDS, MOST_MEGABYTES = 2, 256
SIZE = 1_000_000
GIVE_UP = 30  # seconds


def filled(head, line):
    """A head, and lines made of their numbers till it is 1 MB."""
    parts, size, i = [head], len(head.encode()), 0
    while size < SIZE:
        part = line(i)
        parts.append(part)
        size += len(part.encode())
        i += 1
    return "".join(parts)


def half_and_half(head, one, other):
    """So many lines of each of two kinds, the one kind first, as make 1 MB."""
    count, size = 0, len(head)
    while size < SIZE:
        size += len(one(count)) + len(other(count))
        count += 1
    return head + "".join(map(one, range(count))) + "".join(map(other, range(count)))


HEAD = "recipe: A\n"
LINES = HEAD + "100 g plain flour\n50 g fine salt\n"


def folded(word):
    """One step that goes on in lines as long as may be."""
    text = (word * (9900 // len(word.encode()))).rstrip() + "\n"
    return filled(LINES + "- Mix\n", lambda i: "  " + text)


def pairwise(count):
    """Components of which each uses all before it."""
    return HEAD + "".join(
        f"component: Part {i}\n1 g salt\n" + "".join(f"1 g Part {k}\n" for k in range(i)) for i in range(count))


def primes_from(first, count):
    found, n = [], first | 1
    while len(found) < count:
        if all(n % d for d in range(3, int(n**0.5) + 1, 2)):
            found.append(n)
        n += 2
    return found


def letters(i):
    """A word for a number, that is no word of the language."""
    word = ""
    while True:
        i, rest = divmod(i, 26)
        word = chr(97 + rest) + word
        if i == 0:
            return "z" + word


def recipes():
    """Texts by what they are."""
    primes = primes_from(1_000_003, 4000)
    return {
        "one line of words": LINES + "- " + "word " * 200_000 + "\n",
        "one word": LINES + "- " + "w" * SIZE + "\n",
        "lines of one word": filled(LINES, lambda i: "- " + "w" * 9990 + "\n"),
        "lines of words": filled(LINES, lambda i: "- " + "word " * 1990 + "\n"),
        "one name of 1 MB": HEAD + "1 g " + "w" * SIZE + "\n",
        "one title of 1 MB": "recipe: " + "w" * SIZE + "\n1 g salt\n",
        "one title of 9 KB, 100 titles": filled(HEAD, lambda i: "component: " + "w" * 9980 + "\n1 g salt\n"),
        "one step of folded words": folded("word "),
        "one step of folded references": folded("[flour] "),
        "one step of folded unknown references": folded("[flower] "),
        "one step of folded times": folded("[1 h] "),
        "one step of folded heats": folded("[180 C = 350 F] "),
        "one step of folded escapes": folded("\\[ "),
        "one note of folded words": filled(HEAD + "note: a\n", lambda i: "  " + "word " * 1970 + "\n") + "1 g salt\n",
        "a million opening brackets": LINES + "- " + "[" * SIZE + "\n",
        "lines of opening brackets": filled(LINES, lambda i: "- " + "[" * 9990 + "\n"),
        "lines of closing brackets": filled(LINES, lambda i: "- " + "]" * 9990 + "\n"),
        "lines of empty brackets": filled(LINES, lambda i: "- " + "[]" * 4990 + "\n"),
        "lines of blanks in brackets": filled(LINES, lambda i: "- [" + " " * 9980 + "]\n"),
        "lines of blanks": filled(LINES, lambda i: " " * 9990 + "\n"),
        "lines of one long time": filled(LINES, lambda i: "- [" + "1 h " * 2480 + "1 h]\n"),
        "lines of added weights": filled(HEAD, lambda i: "1 g" + " + 1 g" * 1600 + " salt\n"),
        "lines of added fractions": filled(HEAD, lambda i: "1/7 g" + "".join(f" + 1/{p} g" for p in primes[:700]) + " salt\n"),
        "lines of alternatives": filled(HEAD, lambda i: "1 g salt" + " or salt" * 1200 + "\n"),
        "lines of preparations": filled(HEAD, lambda i: "1 g salt" + ", a" * 3300 + "\n"),
        "ingredients": filled(HEAD, lambda i: "1 g salt\n"),
        "different ingredients": filled(HEAD, lambda i: f"1 g {letters(i)} salt\n"),
        "unknown ingredients": filled(HEAD, lambda i: f"1 g {letters(i)}\n"),
        "unknown cups": filled(HEAD + "measures: us\n", lambda i: f"1 cup {letters(i)}\n"),
        "ambiguous cups": filled(HEAD, lambda i: "1 cup flour\n"),
        "names of 120 characters": filled(HEAD, lambda i: "1 g " + "a " * 58 + letters(i) + "\n"),
        "names of 120 combining characters": filled(HEAD, lambda i: "1 g e" + "\u0301" * 119 + "\n"),
        "names of 120 long ligatures": filled(HEAD, lambda i: "1 g " + "\ufdfa" * 120 + "\n"),
        "ingredients, and a step for each": half_and_half(
            HEAD, lambda i: f"1 g {letters(i)} salt\n", lambda i: f"- [{letters(i)}]\n"),
        "ingredients of one name, and a step for each": half_and_half(HEAD, lambda i: "1 g salt\n", lambda i: "- [salt]\n"),
        "ingredients, and a step of unknowns": half_and_half(
            HEAD, lambda i: f"1 g {letters(i)} salt\n", lambda i: f"- [zq{letters(i)}]\n"),
        "ingredients, and their parts": half_and_half(
            HEAD, lambda i: f"1 g {letters(i)} salt\n", lambda i: f"- [{letters(i)}: 1/3] [{letters(i)}: rest]\n"),
        "ingredients, and plain mentions": half_and_half(
            HEAD, lambda i: f"1 g {letters(i)} salt\n", lambda i: f"- {letters(i)} salt {letters(i + 1)}\n"),
        "one ingredient in parts": filled(HEAD + "100 kg salt\n", lambda i: f"- [salt: 1/{i + 3}]\n"),
        "one ingredient in prime parts": filled(HEAD + "100 kg salt\n", lambda i: f"- [salt: 1/{primes[i % 4000]}]\n"),
        "steps": filled(LINES, lambda i: "- x\n"),
        "steps of references": filled(LINES, lambda i: "- [flour] [salt]\n"),
        "steps of rests": filled(LINES, lambda i: "- [rest]\n"),
        "steps at stations": filled(LINES, lambda i: f"station: {letters(i)}\n- x [1 h]\n"),
        "steps of heat": filled(LINES, lambda i: f"- Bake at [{100 + i % 200} C] for [{1 + i % 50} min].\n"),
        "empty components": filled(HEAD, lambda i: f"component: {letters(i)}\n"),
        "components": filled(HEAD, lambda i: f"component: {letters(i)}\n1 g salt\n"),
        "components of one name": filled(HEAD, lambda i: "component: Dough\n1 g salt\n"),
        "components of nothing known": filled(HEAD, lambda i: f"component: {letters(i)}\n1 g zz{letters(i)}\n"),
        "components, each of the one before": filled(
            HEAD + "component: Part zz\n1 g salt\n",
            lambda i: f"component: Part {letters(i)}\nall Part {letters(i - 1) if i else 'zz'}\n"),
        "components, each half of the one before": filled(
            HEAD + "component: Part zz\n1 g salt\n",
            lambda i: f"component: Part {letters(i)}\nhalf Part {letters(i - 1) if i else 'zz'}\n1/7 g salt\n"),
        "components, each sevenths of the one before": filled(
            HEAD + "component: Part zz\nmakes: 7 buns\n1 g salt\n",
            lambda i: f"component: Part {letters(i)}\nmakes: 7 buns\n3 buns Part {letters(i - 1) if i else 'zz'}\n"),
        "components, each of the one behind": filled(
            HEAD, lambda i: f"component: Part {letters(i)}\n1 g Part {letters(i + 1)}\n"),
        "components, each of all before": pairwise(380),
        "components with allergens, each of the one before": filled(
            HEAD + "component: Part zz\n100 g plain flour\n2 eggs\n",
            lambda i: f"component: Part {letters(i)}\nall Part {letters(i - 1) if i else 'zz'}\n"
                      "1 g hazelnuts\n- Mix [1 h].\n"),
        "assemblies": filled(HEAD, lambda i: f"assembly: {letters(i)}\n1 g salt\n"),
        "recipes": filled("", lambda i: "recipe: A\n"),
        "small fractions": filled(HEAD, lambda i: f"1/{primes[i % 4000]} g salt\n"),
        "large fractions": filled(HEAD, lambda i: f"999999/{primes[i % 4000]} g salt\n"),
        "long decimals": filled(HEAD, lambda i: f"{i % 9999999}.{i % 999999999:09} g salt\n"),
        "cups of fractions": filled(HEAD + "measures: us\n", lambda i: f"1/{primes[i % 4000]} cup plain flour\n"),
        "large numbers": filled(HEAD, lambda i: "9999999 kg salt\n"),
        "too large numbers": filled(HEAD, lambda i: "9" * 9900 + " g salt\n"),
        "one number of 1 MB": HEAD + "9" * SIZE + " g salt\n",
        "large numbers of eggs": filled(HEAD, lambda i: "9999999 eggs\n"),
        "combining characters": filled(LINES, lambda i: "- e" + "\u0301" * 4990 + "\n"),
        "one line of combining characters": LINES + "- e" + "\u0301" * (SIZE // 2) + "\n",
        "long ligatures": filled(LINES, lambda i: "- " + "\ufdfa" * 3300 + "\n"),
        "characters that no font has": filled(LINES, lambda i: "- " + "".join(chr(0x20000 + 1000 * (i % 9) + k) for k in range(2400)) + "\n"),
        "different characters": filled(LINES, lambda i: "- " + " ".join(chr(0x100 + (700 * i + k) % 0x2000) for k in range(2000)) + "\n"),
        "right-to-left marks": filled(LINES, lambda i: "- a" + "\u202e\u200b" * 1600 + "\n"),
        "empty lines": "\n" * SIZE,
        "carriage returns": HEAD + "\r" * SIZE,
        "lines of one letter": "a\n" * (SIZE // 2),
        "hashes": filled(HEAD, lambda i: "#\n"),
        "lines of hashes": filled(HEAD, lambda i: "1 g salt" + " #" * 4900 + "\n"),
        "byte order marks": "\ufeff" * (SIZE // 3),
        "zeros": "\0" * SIZE,
        "unknown settings": filled(HEAD, lambda i: f"{letters(i)}: 1\n"),
        "misspelt settings": filled(HEAD, lambda i: "componemt: a\n"),
        "misspelt measures": filled(HEAD, lambda i: "1 cupps flour\n"),
        "colons": filled(HEAD, lambda i: ":\n"),
        "notes": filled(HEAD, lambda i: f"note: {letters(i)}\n") + "1 g salt\n",
        "cautions": filled(HEAD, lambda i: f"caution: {letters(i)}\n") + "1 g salt\n",
        "makes": filled(HEAD + "1 g salt\n", lambda i: "makes: 9999999 buns\n"),
        "lines of losses": filled(HEAD, lambda i: "loss: 1% a" + ", 1% a" * 1600 + "\n") + "1 g salt\n",
        "losses of fractions": filled(HEAD, lambda i: f"loss: 1/{primes[i % 4000]}% a, 1/{primes[i % 3999]}% in the oven\n") + "1 g salt\n",
        "lines of keepings": filled(HEAD + "1 g salt\n", lambda i: "keeps: 1 day a" + ", 1 day b" * 1100 + "\n"),
        "accepted": filled(HEAD, lambda i: f"accept: salt-high, {letters(i)}\n") + "1 g salt\n",
        "accepted unknown": filled(HEAD, lambda i: f"accept: {letters(i)}, a\n") + "1 g salt\n",
        "own ingredients": filled(HEAD, lambda i: f"ingredient: {letters(i)}\nweighs: 1 g per ml\n") + "component: A\n1 g salt\n",
        "own ingredients of one name": filled(HEAD, lambda i: "ingredient: salt\nweighs: 100 g per cup\n") + "component: A\n1 g salt\n",
        "own ingredients, and a cup of each": half_and_half(
            HEAD + "measures: us\ncomponent: A\n", lambda i: f"1 cup zz{letters(i)}\n",
            lambda i: f"ingredient: zz{letters(i)}\nweighs: 120 g per cup\n"),
        "own ingredients of many names": filled(
            HEAD, lambda i: f"ingredient: a{letters(i)}\nalso: " + ", ".join(f"{letters(i * 1000 + k)}" for k in range(1000)) + "\n"
        ) + "component: A\n1 g salt\n",
        "own ingredients of many figures": filled(
            HEAD, lambda i: f"ingredient: a{letters(i)}\nweighs: 1 g per ml" + ", 1 g per ml a" * 600 + "\n"
        ) + "component: A\n1 g salt\n",
        "uses of nothing": filled(HEAD, lambda i: f"use: {letters(i)}.recipe\n") + "1 g salt\n",
        "uses of itself": filled(HEAD, lambda i: "use: a.recipe\n") + "1 g salt\n",
        "uses of one long path": filled(HEAD, lambda i: "use: " + "a/" * 4900 + "\n") + "1 g salt\n",
        "tins": filled(HEAD + "1 kg plain flour\n", lambda i: "tin: 20 x 30 cm\n"),
        "dashes": filled(HEAD, lambda i: "- 1 g salt\n"),
        "numbered steps": filled(HEAD + "1 g salt\n", lambda i: f"{i}. Mix [salt].\n"),
        "yields of pieces": filled(
            HEAD, lambda i: f"component: {letters(i)}\nmakes: {i + 1} pieces of {i + 1} g\n{(i + 1) * (i + 1)} g salt\n"),
    }


def full():
    """What is as large as it may be, and has nothing that is not read."""
    words = "stir and fold it over gently "

    def bench(number, count, size):
        names = [f"{letters(number * count + i)} salt" for i in range(count)]
        steps = [f"- [{name}] {(words * 40)[:size]}\n" for name in names]
        return f"component: Part {number}\n" + "".join(f"1 g {name}\n" for name in names) + "".join(steps)

    def doubled(i):
        return (f"component: Part {i}\n" + (f"half Part {i - 1}\n" * 2 if i else "7 g plain flour\n2 eggs\n")
                + "- Mix.\n")

    def braided(group, depth):
        return "".join(f"component: Braid {group} {i}\n1/997 kg plain flour\n"
                       + "".join(f"1 g Braid {group} {k}\n" for k in range(i)) for i in range(depth))

    small = [997, 991, 983, 977, 971, 967, 953, 947, 941, 937, 929, 919, 911, 907, 887, 883, 881, 877, 863, 859]
    fractions = "".join(
        f"component: Part {i}\nmakes: {9_999_000 + i} buns\n"
        + "".join(f"{1 + k}/{small[(i + k) % 20]} kg plain flour\n" for k in range(100))
        + (f"1/{small[i % 20]} buns Part {i - 1}\n" if i else "") for i in range(50))
    losses = "".join(
        f"component: Part {i}\nloss: " + ", ".join(f"1/{small[(i + k) % 20]}% a" for k in range(10)) + "\n100 g salt\n"
        + (f"all Part {i - 1}\n" if i else "") for i in range(50))
    tangled = ("  - Bake at [180 C] # hot\n    for [3 min].\n  component:  Cream # c\n  component:  Cream # c\r\n"
               "note: Well\n   kept. # c\n # d\nmakes: 4 buns\r\n 0 g x\n")
    return {
        "full: 990 parts after two that cannot be put in order": "recipe: A\n" + tangled + "".join(
            f"component: Part {i}\n" + "".join(f"{k + 1} g sugar {words * 2}\n" for k in range(14)) for i in range(990)),
        "full: 50 parts in a chain, of 10 losses each": HEAD + losses,
        "full: 19 parts of 250 ingredients and steps": HEAD + "".join(bench(i, 250, 180) for i in range(19)),
        "full: 1,000 ingredients and steps": HEAD + bench(0, 1000, 900),
        "full: 100 steps of 100 brackets": LINES + ("- " + "[flour] word word word word word word word word word " * 180 + "\n") * 55,
        "full: 100 long steps": LINES + ("- [flour] [salt] " + words * 340 + "\n") * 100,
        "full: 100 long notes": HEAD + ("note: " + words * 340 + "\n") * 100 + "1 g salt\n",
        "full: 2,000 long ingredients": HEAD + ("1 g salt, " + words * 16 + "\n") * 2000,
        "full: 1,000 parts in an assembly of two": HEAD + "".join(
            f"component: Part {i}\n100 g plain flour\n1 tsp salt\n1 egg\n- Mix [flour], [egg] and [salt]; bake at [180 C] for [1 h].\n"
            for i in range(998)) + "".join(f"{kind}\n" + "".join(f"all Part {i}\n" for i in range(first, first + 499))
                                           for kind, first in (("component: Half", 0), ("assembly: Rest", 499))),
        "full: 50 parts, each of the one before twice": HEAD + "".join(map(doubled, range(50))),
        "full: braids of 50 parts": HEAD + "".join(braided(group, 50) for group in range(7)),
        "full: fractions of all kinds": HEAD + fractions,
        "full: 2,000 own ingredients": HEAD + "measures: us\n" + "".join(
            f"component: Part {i}\n" + "".join(f"1 cup zz{letters(i * 500 + k)}\n" for k in range(500)) for i in range(4))
            + "".join(f"ingredient: zz{letters(i)}\nweighs: 120 g per cup\n" for i in range(2000)),
    }


def folders(text_of):
    """Files by name, of a recipe a.recipe that uses others; 1 MB together."""
    many = {f"{i}.recipe": f"recipe: {i}\nuse: {i + 1}.recipe\ncomponent: Part {letters(i)}\n" + "1 g salt\n" * 100 for i in range(1001)}
    wide = "".join(f"use: {i}.recipe\n" for i in range(1000))
    flat = {f"{i}.recipe": f"recipe: {i}\ncomponent: Part {letters(i)}\n" + "1 g salt\n" * 100 for i in range(1000)}
    wrong = {f"{i}.recipe": f"recipe: {i}\n" + "".join(f"1 g {letters(i * 100 + k)}\n" for k in range(100)) for i in range(999)}
    return {
        "1,000 files of unknown names": {"a.recipe": HEAD + "".join(f"use: {i}.recipe\n" for i in range(999)) + "1 g salt\n", **wrong},
        "a chain of 1,000 files": {"a.recipe": HEAD + "use: 0.recipe\n1 g salt\n", **many},
        "1,000 files": {"a.recipe": HEAD + wide.replace("use: 999.recipe\n", "") + "component: A\n1 g salt\n", **flat},
        "a file of 1 MB, used": {"a.recipe": HEAD + "use: b.recipe\n1 g salt\n", "b.recipe": text_of["components"]},
        "a file of 1 MB that uses itself": {"a.recipe": HEAD + "use: b.recipe\n1 g salt\n",
                                            "b.recipe": text_of["uses of itself"].replace("a.recipe", "b.recipe")},
    }


def styles():
    return {
        "style: comments": "# a\n" * (SIZE // 4),
        "style: one line": "style: A\n" + "w" * SIZE,
        "style: one line of blanks": "style: A\nfont:" + " " * SIZE,
        "style: unknown words": filled("style: A\n", lambda i: f"{letters(i)}: 1\n"),
        "style: repeated": filled("style: A\n", lambda i: "margin: 10 mm\n"),
        "style: long numbers": filled("style: A\n", lambda i: "margin: " + "9" * 9900 + " mm\n"),
        "style: long lists": filled("style: A\n", lambda i: "head: " + "title " * 1600 + "\n"),
        "style: combining characters": filled("style: A\n", lambda i: "head: e" + "\u0301" * 4900 + "\n"),
        "style: zeros": "\0" * SIZE,
    }


def pasted():
    return {
        "pasted: lines": filled("", lambda i: "1 cup plain flour\n"),
        "pasted: unknown lines": filled("", lambda i: f"1 cup {letters(i)}\n"),
        "pasted: one line": "1 cup " + "w" * SIZE,
        "pasted: one line of words": "1 cup " + "word " * (SIZE // 5),
        "pasted: one line of weights": "1 g" + " + 1 g" * (SIZE // 6) + " salt",
        "pasted: one line of fractions": "1" + " 1/2" * (SIZE // 4) + " cup flour",
        "pasted: lines of weights": filled("", lambda i: "1 g" + " + 1 g" * 1600 + " salt\n"),
        "pasted: lines of alternatives": filled("", lambda i: "1 g salt" + " or salt" * 1200 + "\n"),
        "pasted: brackets": filled("", lambda i: "1 g " + "(" * 9900 + "\n"),
        "pasted: one line of brackets": "1 g " + "(" * SIZE,
        "pasted: one digit a line": "1\n" * (SIZE // 2),
        "pasted: empty lines": "\n" * SIZE,
        "pasted: bytes": "\xff" * (SIZE // 2),
    }


def framed(message):
    body = message if isinstance(message, str) else json.dumps(message)
    return f"Content-Length: {len(body.encode())}\r\n\r\n{body}"


HELLO = framed({"jsonrpc": "2.0", "id": 1, "method": "initialize", "params": {"processId": None, "rootUri": None, "capabilities": {}}})
BYE = framed({"jsonrpc": "2.0", "id": 2, "method": "shutdown"}) + framed({"jsonrpc": "2.0", "method": "exit"})


def opened(text):
    """A document in an editor, and what an editor asks of it at once."""
    place = {"textDocument": {"uri": "file:///tmp/benchcard-none/a.recipe"}}
    asked = ["documentSymbol", "semanticTokens/full", "foldingRange", "documentLink", "codeLens"]
    whole = {**place, "range": {"start": {"line": 0, "character": 0}, "end": {"line": 10_000_000, "character": 0}}}
    requests = [framed({"jsonrpc": "2.0", "id": 10 + i, "method": f"textDocument/{name}", "params": place})
                for i, name in enumerate(asked)]
    requests += [framed({"jsonrpc": "2.0", "id": 30, "method": "textDocument/inlayHint", "params": whole}),
                 framed({"jsonrpc": "2.0", "id": 31, "method": "textDocument/codeAction", "params": {**whole, "context": {"diagnostics": []}}}),
                 framed({"jsonrpc": "2.0", "id": 32, "method": "textDocument/completion", "params": {**place, "position": {"line": 3, "character": 2}}}),
                 framed({"jsonrpc": "2.0", "id": 33, "method": "textDocument/hover", "params": {**place, "position": {"line": 2, "character": 8}}}),
                 framed({"jsonrpc": "2.0", "id": 34, "method": "textDocument/formatting", "params": {**place, "options": {"tabSize": 2, "insertSpaces": True}}})]
    open_it = framed({"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {
        "uri": place["textDocument"]["uri"], "languageId": "recipe", "version": 1, "text": text}}})
    return HELLO + open_it + "".join(requests) + BYE


def messages():
    return {
        "messages: deep lists": HELLO + framed("[" * SIZE) + BYE,
        "messages: deep objects": HELLO + framed('{"a":' * (SIZE // 5)) + BYE,
        "messages: a long string": HELLO + framed('"' + "a" * SIZE + '"') + BYE,
        "messages: a long list": HELLO + framed("[" + "1," * (SIZE // 2) + "1]") + BYE,
        "messages: a long head": "A" * SIZE,
        "messages: many heads": "A: 1\r\n" * (SIZE // 6),
        "messages: small requests": HELLO + filled("", lambda i: framed({"jsonrpc": "2.0", "id": 100 + i, "method": "a"})) + BYE,
        "messages: a long number": HELLO + framed("9" * SIZE) + BYE,
    }


def bound():
    resource.setrlimit(resource.RLIMIT_CPU, (GIVE_UP, GIVE_UP))
    resource.setrlimit(resource.RLIMIT_AS, (8 << 30, 8 << 30))


def took(arguments, given):
    """Seconds of work, MB at most, the code of one run, and how much it said."""
    with open(given) as text, tempfile.TemporaryFile() as said:
        child = subprocess.Popen(arguments, stdin=text, stdout=said, stderr=said, preexec_fn=bound)
        _, status, usage = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
        size = os.fstat(said.fileno()).st_size
    return usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024, child.returncode, size / 1e6


def commands_for(recipe, out):
    return {
        "check": ["check", recipe],
        "check sarif": ["check", recipe, "--format", "sarif"],
        "weigh": ["weigh", recipe],
        "weigh --why": ["weigh", recipe, "--why"],
        "print": ["print", recipe, "-o", f"{out}/a.pdf"],
        "print hand": ["print", recipe, "--style", "hand", "-o", f"{out}/a.pdf"],
        "print html": ["print", recipe, "-o", f"{out}/a.html"],
        "label": ["label", recipe],
        "chart": ["print", "--chart", recipe, "-o", f"{out}/a.pdf", "--measures", "us"],
        "tidy": ["tidy", recipe],
    }


def runs(scratch):
    """Name of the shape, name of the command, its words and its input."""
    texts = {**recipes(), **full()}
    recipe = f"{scratch}/a.recipe"
    for shape, text in texts.items():
        pathlib.Path(recipe).write_text(text, newline="")
        for command, words in commands_for(recipe, scratch).items():
            yield shape, command, words, ""
        yield shape, "editor", ["language-server"], opened(text)
    pathlib.Path(recipe).write_text(filled(HEAD + "1 g salt\n", lambda i: f"{i}. Mix [salt].\n"))
    yield "numbered steps", "check --fix", ["check", "--fix", recipe], ""
    pathlib.Path(recipe).write_text(filled(HEAD, lambda i: "1 g salt, " + "a " * 450 + "\nmakess: as many as there are\n"))
    yield "misspelt settings that mending does not mend", "check --fix", ["check", "--fix", recipe], ""
    pathlib.Path(recipe).write_text(texts["ingredients, and plain mentions"])
    yield "ingredients, and plain mentions", "check --fix", ["check", "--fix", recipe], ""
    pathlib.Path(recipe).unlink()
    for shape, files in folders(texts).items():
        with tempfile.TemporaryDirectory(dir=scratch) as folder:
            for name, text in files.items():
                pathlib.Path(folder, name).write_text(text)
            for command, words in commands_for(f"{folder}/a.recipe", scratch).items():
                yield shape, command, words, ""
    plain = f"{scratch}/plain.recipe"
    pathlib.Path(plain).write_text(LINES + "- Mix [flour] and [salt].\n")
    for shape, text in styles().items():
        pathlib.Path(f"{scratch}/a.style").write_text(text)
        yield shape, "print", ["print", plain, "-o", f"{scratch}/a.pdf", "--style", f"{scratch}/a.style"], ""
    for shape, text in pasted().items():
        yield shape, "convert", ["convert", "-", "--measures", "us"], text
    for shape, text in messages().items():
        yield shape, "editor", ["language-server"], text


def hostile(program, words=(), say=print):
    """Runs them all, and gives how many took too much."""
    missed = 0
    # A program begins with the memory of what starts it, so that is a process that holds no texts.
    with tempfile.TemporaryDirectory(prefix="benchcard-hostile-") as scratch, \
            concurrent.futures.ProcessPoolExecutor(1) as starter:
        starter.submit(int).result()
        given = pathlib.Path(scratch, "given")
        for shape, command, arguments, text in runs(scratch):
            if not all(word in f"{shape} / {command}" for word in words):
                continue
            given.write_bytes(text.encode("latin-1" if "\xff" in text else "utf-8"))
            seconds, megabytes, code, said = starter.submit(took, [program, *arguments], given).result()
            is_bad = seconds > MOST_SECONDS or megabytes > MOST_MEGABYTES or code not in (0, 1, 2)
            missed += is_bad
            say(f"  {shape:<52} {command:<12} {seconds:7.2f} s {megabytes:7.0f} MB  exit {code:>3}, said {said:8.3f} MB"
                f"{'  TOO MUCH' if is_bad else ''}", flush=True)
    return missed


if __name__ == "__main__":
    sys.exit(1 if hostile(sys.argv[1], sys.argv[2:]) else 0)
