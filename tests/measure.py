#!/usr/bin/env python3
"""Prints how large the rooms, files and functions are: measure.py ROOT [--long]

Lines by room, files by folder, lengths of functions, and how many lines of tests stand against the
lines of core and of ui. --long lists the functions over 40 lines and the files over 400, and the
sources that hold functions and have no test file of their name. Exits non-zero where there is a longer
function or file. A function counts from the line of its name to its closing brace, lambdas within it.

A table that the compiler checks is counted by itself, not among the long functions: a function that is
nothing but one switch without a default, a `return` a case (ui/text/error_*.cpp: a sentence a reason).
Split in parts it would name every enumerator twice and lose the warning about a forgotten one.
"""
import pathlib
import re
import sys

TREES = ("core", "ui", "app", "tests")
LONGEST_FUNCTION = 40
LONGEST_FILE = 400
TABLE = re.compile(  # what stands between the braces of such a function
    r"\s*(?:const \w+ \w+\(\w+\);\s*)?switch \([\w.]+\) \{"
    r"(?:\s*(?:case [\w:]+:\s*)+return\b[^;{}]*;)+\s*\}\s*return \{\};\s*")
NOT_CODE = re.compile(
    r'//[^\n]*|/\*.*?\*/|R"(\w*)\(.*?\)\1"|"(?:[^"\\\n]|\\.)*"|\'(?:[^\'\\\n]|\\.)+\'|^[ \t]*#[^\n]*',
    re.S | re.M)
DIGIT_MARK = re.compile(r"(?<=[0-9])'(?=[0-9])")
HOLDER = re.compile(r"\b(namespace|class|struct|union|enum)\b(?![^;{}]*\)\s*$)|\bextern\s*$")


def bare(text):
    """The code without comments, literals and preprocessor lines; lines stay where they are."""
    text = DIGIT_MARK.sub("", text)
    return NOT_CODE.sub(lambda match: "\n" * match[0].count("\n") or " ", text)


def functions_of(text):
    """(line, name, lines, whether it is a table) of every function that has a body."""
    code = bare(text)
    holders = []  # of each open brace: the function that it begins, or whether functions may stand in it
    begin = 0
    inside = 0
    for at, char in enumerate(code):
        if char == "{":
            head = code[begin:at]
            is_holder = inside == 0 and HOLDER.search(re.sub(r"<[^<>]*>", "", head)) is not None
            name = re.search(r"([\w:~]+|operator\s*\S+)\s*\([^;]*", head, re.S)
            if inside == 0 and not is_holder and name:
                line = code.count("\n", 0, begin + name.start()) + 1
                holders.append((line, name[1], at + 1))
                inside = 1
            else:
                holders.append(None if is_holder or inside == 0 else "block")
                inside += 1 if inside else 0
        elif char == "}" and holders:
            opened = holders.pop()
            inside = max(0, inside - 1)
            if isinstance(opened, tuple):
                line, name, body = opened
                yield (line, name, code.count("\n", 0, at) + 2 - line,
                       TABLE.fullmatch(code, body, at) is not None)
        if char in "{};" and inside == 0:
            begin = at + 1


def share(values, part):
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, int(part * len(ordered)))] if ordered else 0


def sources(root, tree):
    return sorted(path for path in pathlib.Path(root, tree).rglob("*") if path.suffix in (".h", ".cpp"))


def lines_of(paths):
    return sum(path.read_text().count("\n") for path in paths)


def print_functions(name, lengths, tables):
    over = sum(1 for length in lengths if length > LONGEST_FUNCTION)
    print(f"  {name:<8} {len(lengths):>5} functions: median {share(lengths, 0.5)}, p90 "
          f"{share(lengths, 0.9)}, max {max(lengths, default=0)}, {over} over {LONGEST_FUNCTION}; "
          f"and {len(tables)} tables of a longer switch, max {max(tables, default=0)}")


def rooms_of(root, tree):
    rooms = {}
    for path in sources(root, tree):
        rooms.setdefault(path.parent.relative_to(root), []).append(path)
    return rooms


def untested(root):
    """Sources of core and ui that define functions and have no test file of their name or their owner's."""
    tests = {path.stem for path in sources(root, "tests")}
    for tree in ("core", "ui"):
        for path in sources(root, tree):
            if path.suffix != ".cpp" or not any(True for _ in functions_of(path.read_text())):
                continue
            words = path.stem.split("_")
            owners = ["_".join(words[:count]) + "_test" for count in range(1, len(words) + 1)]
            if f"{path.stem}_test" not in tests and not any(
                    owner in tests for owner in owners[1:]):
                yield path.relative_to(root)


def main(root, with_names):
    print("Lines by room (files):")
    for tree in TREES[:3]:
        for room, paths in rooms_of(root, tree).items():
            print(f"  {str(room):<28} {lines_of(paths):>6} ({len(paths)})")
    print("Functions:")
    long_functions = []
    for tree in TREES:
        lengths = []
        tables = []
        for path in sources(root, tree):
            for line, name, length, is_table in functions_of(path.read_text()):
                if is_table and length > LONGEST_FUNCTION:
                    tables.append(length)
                    continue
                lengths.append(length)
                if length > LONGEST_FUNCTION:
                    long_functions.append((length, f"{path.relative_to(root)}:{line} {name}"))
        print_functions(tree, lengths, tables)
    print("Lines of tests against lines of what they test:")
    for tree in ("core", "ui"):
        tested = lines_of(sources(root, tree))
        tests = lines_of(sources(root, f"tests/{tree}"))
        print(f"  {tree:<8} {tests} / {tested} = {tests / tested:.2f}")
    long_files = [(path.read_text().count("\n"), path) for tree in TREES[:3] for path in sources(root, tree)
                  if path.read_text().count("\n") > LONGEST_FILE]
    print(f"{len(long_functions)} functions over {LONGEST_FUNCTION} lines, "
          f"{len(long_files)} files over {LONGEST_FILE}")
    if with_names:
        for length, name in sorted(long_functions, reverse=True):
            print(f"  {length} {name}")
        for length, path in sorted(long_files, reverse=True):
            print(f"  {length} {path.relative_to(root)}")
        print("Without a test of their name:")
        for path in untested(root):
            print(f"  {path}")
    return 1 if long_functions or long_files else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1] if len(sys.argv) > 1 else ".", "--long" in sys.argv))
