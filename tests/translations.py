#!/usr/bin/env python3
"""Fails when a text that is shown can't be found by Qt's lupdate: translations.py ROOT

lupdate sees tr("..."), QCoreApplication::translate("Context", "...") and QT_TRANSLATE_NOOP; a text
that is put through a function of our own is lost to it. So every literal in ui that reads like words
is looked for among the texts that lupdate found.
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

COMMENTS = re.compile(r'("(?:[^"\\\n]|\\.)*")|//[^\n]*|#include[^\n]*')
LITERALS = re.compile(r'(\w*)\s*\(?\s*("(?:[^"\\\n]|\\.)*"(?:\s*"(?:[^"\\\n]|\\.)*")*)')
WORDS = re.compile(r"[A-Za-z'][a-z,;:.]* [a-z(%“]")
NOT_SHOWN = {"setDisplayFormat", "toString", "QStringLiteral", "QLatin1String", "setStyleSheet"}
NO_WORDS = re.compile(r"^[dMy ]+$|^<|^width=|^default-src ")  # forms of a date, marks of a page
FEWEST = 1000  # that the search looks at the right place


def lupdate():
    found = shutil.which("lupdate", path="/usr/lib/qt6/bin") or shutil.which("lupdate")
    if not found:
        sys.exit("lupdate is missing: install the package qt6-l10n-tools")
    return found


def found_by_lupdate(root):
    with tempfile.TemporaryDirectory() as folder:
        texts = pathlib.Path(folder) / "texts.ts"
        run = subprocess.run(
            [lupdate(), "-no-obsolete", "-I", root, f"{root}/ui", f"{root}/app", "-ts", texts],
            capture_output=True, text=True, check=True)
        complaints = [line for line in (run.stdout + run.stderr).splitlines()
                      if re.search(r":\d+: ", line)]
        sources = [one.text for one in ElementTree.parse(texts).iter("source")]
        return sources, complaints


def unquoted(literals):
    text = "".join(re.findall(r'"((?:[^"\\\n]|\\.)*)"', literals))
    return text.replace('\\"', '"').replace("\\n", "\n").replace("\\\\", "\\")


def shown_in(root):
    """(file, text) of every literal that reads like words."""
    for path in sorted(pathlib.Path(root, "ui").rglob("*.[ch]*")):
        code = COMMENTS.sub(lambda match: match[1] or "", path.read_text())
        for match in LITERALS.finditer(code):
            text = unquoted(match[2])
            if match[1] not in NOT_SHOWN and WORDS.search(text) and not NO_WORDS.match(text):
                yield path.relative_to(root), text


def main(root):
    sources, complaints = found_by_lupdate(root)
    known = set(sources)
    shown = list(shown_in(root))
    lost = [f"{path}: lupdate does not see {text!r}" for path, text in shown if text not in known]
    print(f"{len(sources)} texts found by lupdate, {len(shown)} literals of words in ui, "
          f"{len(lost)} of them lost, {len(complaints)} complaints")
    faults = complaints + lost
    if len(sources) < FEWEST or len(shown) < FEWEST:
        faults.append("so few texts are found that the search must look at the wrong place")
    for line in faults:
        print(line)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
