"""Puts the words of a language (assets/words/en.json) into the page's scripts and texts, when the page is packed: what arrives holds the words alone.

  words.page.again                     in a script: the phrase as a text
  words.page.not_started({ why: e })    with its slots filled; each value is an expression, or left out when it is a name that is the slot's
  {{page.about}}                       in a text
"""
import re

IN_SCRIPT = re.compile(r"(?<![\w.])words\.([a-z]\w*)\.([a-z]\w*)")
IN_TEXT = re.compile(r"\{\{(\w+)\.(\w+)\}\}")
SLOT = re.compile(r"\{([a-z_0-9]+)\}")


class Wrong(Exception):
    """A script asks for a phrase that is not there, or does not fill its slots."""


def found(table, group, key):
    try:
        return table[group][key]
    except KeyError:
        raise Wrong(f"there is no phrase {group}.{key}") from None


def arguments(text, at):
    """The names and expressions of `({ ... })` that begins there, and where it ends."""
    depth, begin, parts, i = 0, at + 2, [], at
    while True:
        sign = text[i]
        if sign in "'\"`":
            i = text.index(sign, i + 1)
        elif sign in "([{":
            depth += 1
        elif sign in ")]}":
            depth -= 1
        if (sign == "," and depth == 2) or (sign == "}" and depth == 1):
            parts.append(text[begin:i])
            begin = i + 1
        i += 1
        if depth == 0:
            break
    values = {}
    for part in parts:
        name, colon, value = part.strip().partition(":")
        values[name.strip()] = value.strip() if colon else name.strip()
    return values, i


def in_script(text, table):
    out, at = [], 0
    for match in IN_SCRIPT.finditer(text):
        if match.start() < at:
            raise Wrong(f"a phrase within the slots of another: {match[0]}")
        phrase = found(table, match[1], match[2])
        out.append(text[at:match.start()])
        at = match.end()
        slots = set(SLOT.findall(phrase))
        if not slots:
            out.append("'" + phrase.replace("\\", "\\\\").replace("'", "\\'") + "'")
            continue
        values, at = arguments(text, at) if text.startswith("({", at) else ({}, at)
        if set(values) != slots:
            raise Wrong(f"{match[0]} has the slots {sorted(slots)}, and is given {sorted(values)}")
        plain = phrase.replace("\\", "\\\\").replace("`", "\\`")
        out.append("`" + SLOT.sub(lambda slot: "${" + values[slot[1]] + "}", plain) + "`")
    return "".join(out) + text[at:]


def in_text(text, table, escape):
    return IN_TEXT.sub(lambda match: escape(found(table, match[1], match[2])), text)
