"""The tables of words, one for each language: assets/words/CODE.json, and those that a list of spellings makes of another.

assets/words/en-GB.txt is such a list: what the language is called, then lines of how a word of en.json is written there. It needs no table of
its own, so nothing is translated twice. Used by embed_words, page_words and check_plain.
"""
import json
import pathlib
import re

TABLES = pathlib.Path(__file__).resolve().parent.parent / "assets" / "words"
BASE = "en"
KEPT = re.compile(r"\{[a-z_0-9]+[:}]|\b\w+\.txt\b") # a slot's name, and a file's
WORD = re.compile(r"[A-Za-z]+")


class Wrong(Exception):
    """A list of spellings that cannot be read."""


def spellings(path):
    """What the language calls itself, and {word of en.json: how it is written there}."""
    lines = path.read_text(encoding="utf-8").splitlines()
    name, pairs = lines[0], {}
    for line in lines[1:]:
        if not line or line.startswith("#"):
            continue
        words = line.split()
        if len(words) != 2 or words[0] in pairs or line != line.lower():
            raise Wrong(f"{path.name}: {line}: two words of small letters, each once on the left")
        pairs[words[0]] = words[1]
    for word, other in pairs.items():
        if other in pairs:
            raise Wrong(f"{path.name}: {other} stands on both sides")
    return name, pairs


def respelled(phrase, pairs):
    """The phrase with the other spelling; the names of slots and of files stay."""
    def other(match):
        word = match[0]
        found = pairs.get(word.lower())
        if found is None:
            return word
        return found.upper() if word.isupper() else found.capitalize() if word[0].isupper() else found

    out, at = [], 0
    for kept in KEPT.finditer(phrase):
        out += [WORD.sub(other, phrase[at:kept.start()]), kept[0]]
        at = kept.end()
    return "".join(out) + WORD.sub(other, phrase[at:])


def derived(base, path):
    """The table that a list of spellings makes of the English one."""
    name, pairs = spellings(path)
    table = {group: {key: respelled(phrase, pairs) for key, phrase in phrases.items()} for group, phrases in base.items()}
    if "name" in table.get("language", {}):
        table["language"]["name"] = name
    return table


def lists(folder=TABLES):
    """The lists of spellings in a folder: a language's code with a country's in capitals, so no other list is one."""
    return sorted(path for path in folder.glob("*.txt") if re.fullmatch(r"[a-z]{2}-[A-Z]{2}", path.stem))


def phrases(code=BASE):
    table = json.loads((TABLES / f"{BASE if '-' in code else code}.json").read_text(encoding="utf-8"))
    return derived(table, TABLES / f"{code}.txt") if "-" in code else table


def other_codes():
    """All but English as it is written."""
    return sorted([path.stem for path in TABLES.glob("*.json") if path.stem != BASE] + [path.stem for path in lists()])
