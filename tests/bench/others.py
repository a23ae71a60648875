"""The words of some cards, as files for programs that set text, and how each is called."""

import html
import pathlib
import shutil

GROFF_SPECIAL = str.maketrans({"\\": "\\e"})
TEX_SPECIAL = str.maketrans({c: "\\" + c for c in "&%$#_{}"} | {
    "~": "\\textasciitilde{}", "^": "\\textasciicircum{}", "\\": "\\textbackslash{}", "°": "\\textdegree{}",
    "½": "$\\frac12$", "¼": "$\\frac14$", "¾": "$\\frac34$", "⅓": "$\\frac13$", "⅔": "$\\frac23$",
    "⅛": "$\\frac18$", "⅜": "$\\frac38$", "⅝": "$\\frac58$", "⅞": "$\\frac78$",
    "×": "$\\times$", "·": "\\textperiodcentered{}", "–": "--", "\u00a0": "~", "•": "\\textbullet{}"})


def as_groff(cards):
    def line(text):
        return "\\&" + text.translate(GROFF_SPECIAL) + "\n"

    pages = []
    for card in cards:
        page = ".ps 24\n.vs 28\n" + line(card["title"]) + ".br\n.ps 11\n.vs 14\n" + line(card["recipe"]) + ".br\n"
        page += line(card["yield"]) + ".sp\n.ta 70pR 80p\n.ps 16\n.vs 22\n"
        for amount, name, preparation in card["rows"]:
            page += line(f"\t{amount}\t{name}, {preparation}") + ".br\n"
        page += ".sp\n.ps 11\n.vs 14\n"
        for number, step in enumerate(card["steps"], 1):
            page += line(f"{number}. {step}") + ".sp 4p\n"
        page += "".join(line(text) + ".br\n" for text in card["foot"] if text)
        pages.append(page)
    return ".nh\n.ad l\n.ll 6.3i\n" + ".bp\n".join(pages)


def as_tex(cards):
    def safe(text):
        return text.translate(TEX_SPECIAL)

    pages = []
    for card in cards:
        page = f"{{\\Huge {safe(card['title'])}}}\\par {safe(card['recipe'])}\\par {safe(card['yield'])}\\par\n"
        if card["rows"]:
            rows = "\\\\\n".join(f"{safe(amount)} & \\textbf{{{safe(name)}}} {safe(rest)}" for amount, name, rest in card["rows"])
            page += f"{{\\Large\\begin{{tabular}}{{rl}}\n{rows}\n\\end{{tabular}}}}\\par\n"
        page += "".join(f"{number}. {safe(step)}\\par\n" for number, step in enumerate(card["steps"], 1))
        pages.append(page + "".join(f"{safe(text)}\\par\n" for text in card["foot"] if text))
    return ("\\documentclass[a4paper]{article}\\usepackage[T1]{fontenc}\\usepackage[utf8]{inputenc}\\usepackage{textcomp}\n"
            "\\setlength{\\parindent}{0pt}\\pagestyle{empty}\n\\begin{document}\n" + "\\newpage\n".join(pages) + "\\end{document}\n")


def as_html(cards):
    safe = html.escape
    pages = []
    for card in cards:
        rows = "".join(f"<tr><td align=right>{safe(amount)}<td><b>{safe(name)}</b> {safe(rest)}" for amount, name, rest in card["rows"])
        steps = "".join(f"<li>{safe(step)}" for step in card["steps"])
        foot = "".join(f"<p>{safe(text)}" for text in card["foot"] if text)
        pages.append(f"<section style='page-break-after: always'><h1>{safe(card['title'])}</h1><p>{safe(card['recipe'])}"
                     f"<p>{safe(card['yield'])}<table>{rows}</table><ol>{steps}</ol>{foot}</section>")
    return "<!doctype html><meta charset=utf-8><title>cards</title><body style='font-family: Noto Sans'>" + "\n".join(pages)


def ways(cards, folder):
    """Each program by name, with its command, or nothing where it is not installed."""
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in (("cards.roff", as_groff(cards)), ("cards.tex", as_tex(cards)), ("cards.html", as_html(cards))):
        (folder / name).write_text(text, encoding="utf-8")
    commands = {
        "groff": ["groff", "-k", "-Tpdf", str(folder / "cards.roff")],
        "pdflatex": ["pdflatex", "-interaction=batchmode", f"-output-directory={folder}", str(folder / "cards.tex")],
        "soffice": ["soffice", "--headless", f"-env:UserInstallation=file://{folder}/office", "--convert-to", "pdf:writer_web_pdf_Export",
                    "--outdir", str(folder), str(folder / "cards.html")],
        "chromium": ["chromium", "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder}/chromium",
                     f"--print-to-pdf={folder}/chromium.pdf", "--no-pdf-header-footer", f"file://{folder}/cards.html"],
    }
    return {name: command if shutil.which(name) else None for name, command in commands.items()}
