#!/usr/bin/python3
"""Links, read by a program of their own. usage: tests/oracle/links.py [TORCHSIDE] [--pin]

Decodes base64url, CBOR (RFC 8949) and CRC-32 without the core, by the numbers, words and defaults of tests/data/link_keys.txt, and
compares with what the command says. Holds the schema to that file, since links that were sent rest on it; --pin adds what is new.
Then runs torchside_links. Last line: N passed, N failed.
"""
import base64
import json
import pathlib
import re
import struct
import subprocess
import sys
import zlib

ROOT = pathlib.Path(__file__).resolve().parents[2]
PINS = ROOT / "tests/data/link_keys.txt"
TOTALS = {True: 0, False: 0}
# Keys that stay on the device and in its backup.
OWN = ("seal_key", "old_keys", "issued", "ending", "seal", "example", "others")
# All that a customer may see; anything else in a quote link is a leak.
QUOTE_KEYS = {"shop_name", "contact", "number", "revision", "issued_day", "valid_days", "part_name", "note", "units", "material", "thickness_mm",
              "length_mm", "width_mm", "quantity", "currency", "price_each", "price_total", "tax", "tax_amount", "to_pay",
              "tolerance_mm"}


def check(title, good, more=""):
    TOTALS[bool(good)] += 1
    if not good:
        print(f"FAILED {title} {more}")


def run(command, *arguments, stdin=""):
    done = subprocess.run([command, *arguments], input=stdin, capture_output=True, text=True, timeout=1800)
    if done.returncode:
        sys.exit(f"{arguments}: exit {done.returncode}: {done.stderr}")
    return done.stdout


class Cbor:
    def __init__(self, data):
        self.data, self.at = data, 0

    def take(self, size):
        part = self.data[self.at:self.at + size]
        assert len(part) == size, "cut short"
        self.at += size
        return part

    def item(self):
        head = self.take(1)[0]
        major, info = head >> 5, head & 31
        assert info < 28, "length not known"
        value = info if info < 24 else int.from_bytes(self.take(1 << (info - 24)), "big")
        if major == 0:
            return value
        if major == 1:
            return -1 - value
        if major == 2:
            return self.take(value)
        if major == 3:
            return self.take(value).decode("utf-8")
        if major == 4:
            return [self.item() for _ in range(value)]
        if major == 5:
            pairs = [(self.item(), self.item()) for _ in range(value)]
            assert len(dict(pairs)) == value, "a key twice"
            return dict(pairs)
        if major == 6:
            assert value == 4, "tag"
            exponent, mantissa = self.item()
            return float(f"{mantissa}e{exponent}")
        if info in (20, 21, 22):
            return {20: False, 21: True, 22: None}[info]
        return struct.unpack({25: ">e", 26: ">f", 27: ">d"}[info], value.to_bytes(1 << (info - 24), "big"))[0]


def content(link, kind):
    letter, text = link.strip().split("=", 1)
    data = base64.b64decode(text + "=" * (-len(text) % 4), altchars=b"-_", validate=True)
    assert letter == "jq"[kind - 1] and data[:2] == bytes([1, kind]), "head"
    assert zlib.crc32(data[:-4]) == int.from_bytes(data[-4:], "big"), "checksum"
    reader = Cbor(data[2:-4])
    item = reader.item()
    assert reader.at == len(reader.data), "something follows"
    return item


def is_object(spec):
    """An object, or one that may be null in a file."""
    return spec.get("type") in ("object", ["object", "null"])


def leaves(spec, path=()):
    """(path, spec) of every single value in the schema; a list's entries stand under '[]'."""
    if is_object(spec):
        for key, child in spec["properties"].items():
            if key != "torchside":
                yield from leaves(child, path + (key,))
    elif spec.get("type") == "array":
        yield path, spec
        yield from leaves(spec["items"], path + ("[]",))
    else:
        yield path, spec


def pinned():
    numbers, words, defaults = {}, {}, {}
    for line in PINS.read_text().splitlines() if PINS.exists() else []:
        kind, name, rest = (line.split(" ", 2) + [""])[:3]
        if kind == "key":
            numbers[name] = int(rest)
        elif kind == "words":
            words[name] = rest.split()
        elif kind == "default":
            defaults[name] = json.loads(rest)
    return numbers, words, defaults



def pin(schema):
    numbers, words, defaults = pinned()
    source = (ROOT / "core/link/link_numbers.cpp").read_text()
    table = re.sub(r"//[^\n]*", "", source[source.index("keys[] = {"):source.index("};")])
    for number, name in enumerate(re.findall(r'"(\w*)"', table)):
        if name:
            numbers.setdefault(name, number)
    for path, spec in leaves(schema):
        name = ".".join(path)
        if "enum" in spec and isinstance(spec["enum"][0], str):
            new = [word for word in spec["enum"] if word]
            words[name] = words.get(name, []) + new[len(words.get(name, [])):]
        defaults.setdefault(name, spec.get("default", "required"))
    with PINS.open("w") as out:
        out.write("# What links of version 1 rest on: lines are added (tests/oracle/links.py --pin), never changed.\n")
        for name, number in sorted(numbers.items(), key=lambda pair: pair[1]):
            out.write(f"key {name} {number}\n")
        for name, list_ in words.items():
            out.write(f"words {name} {' '.join(list_)}\n")
        for name, value in defaults.items():
            out.write(f"default {name} {json.dumps(value)}\n")


def hold(schema, numbers, words, defaults):
    seen = set()
    for path, spec in leaves(schema):
        name = ".".join(path)
        seen.add(name)
        for key in path:
            check(f"{key} has a number", key == "[]" or (key in numbers) != (key in OWN))
        if "enum" in spec and isinstance(spec["enum"][0], str):
            new = [word for word in spec["enum"] if word]
            check(f"the words of {name} keep their places", new[:len(words.get(name, ["?"]))] == words.get(name), f"{new} {words.get(name)}")
        check(f"the default of {name} is as pinned: links leave defaults out", spec.get("default", "required") == defaults.get(name, "not pinned"),
              f"{spec.get('default', 'required')} {defaults.get(name, 'not pinned')}: with --pin when new, else raise link_version")
    check("no number is used twice", len(set(numbers.values())) == len(numbers))
    check("what stays on the device has none", not set(OWN) & set(numbers))


def drawing(contours):
    """A drawing of a link as it stands in a file: a contour is its role and then x, y and bulge of each point."""
    out = []
    for role, *numbers in contours:
        points = [numbers[i:i + 3] for i in range(0, len(numbers), 3)]
        out.append({"role": ("outer", "inner", "open")[role], "points": [p if p[2] else p[:2] for p in points]})
    return out


def decoded(item, spec, path, pins):
    """The object's JSON by the pinned numbers, words and defaults."""
    numbers, words, defaults = pins
    names = {numbers[key]: key for key in spec["properties"] if key in numbers}
    assert set(item) <= set(names), f"{path}: numbers {sorted(set(item) - set(names))}"
    out = {}
    for key, child in spec["properties"].items():
        at = path + (key,)
        given = item.get(numbers.get(key))
        if is_object(child):
            out[key] = decoded(given or {}, child, at, pins)
        elif child.get("type") == "array":
            name = ".".join(at)
            out[key] = defaults[name] if numbers.get(key) not in item else [decoded(entry, child["items"], at + ("[]",), pins) for entry in given]
        elif key == "torchside":
            out[key] = 1
        elif key == "drawing" and given is not None:
            out[key] = drawing(given)
        elif numbers.get(key) not in item:
            out[key] = defaults[".".join(at)]
        else:
            out[key] = words[".".join(at)][given] if ".".join(at) in words and given is not None else given
    return out


def same(a, b):
    """Equal, where 'required' stands for the default of a key that a file must give."""
    if isinstance(a, dict):
        return a.keys() == b.keys() and all(same(a[key], b[key]) for key in a)
    if isinstance(a, list):
        return len(a) == len(b) and all(map(same, a, b))
    return a == b or a == "required"


def full_workbook(spec, turn, path=()):
    """A workbook that gives every key, at one end of its range or the other."""
    if is_object(spec):
        return {key: full_workbook(child, turn, path + (key,)) for key, child in spec["properties"].items()}
    if spec.get("type") == "array":
        return [full_workbook(spec["items"], (turn + i) % 2, path) for i in range(2)]
    if "const" in spec:
        return spec["const"]
    if path[-1] == "seal_key":
        return "5ea1" * 16
    if path[-1] == "public_url":
        return ("https://shop.example/", "https://shop.example/torchside/index.html?a=1")[turn]
    if path[-1] == "drawing":
        return [{"role": "outer", "points": [[0, 0], [100.1, 0, 0.41421356237309503], [1 / 3, 80.25]]},
                {"role": "open", "points": [[5, 5], [9.75, 6 + turn]]}]
    if path[-1] == "currency":
        return ("CHF", "JPY")[turn]
    if "enum" in spec:
        return [word for word in spec["enum"] if word is not None][-1 if turn else 0]
    kind = spec["type"] if isinstance(spec["type"], str) else spec["type"][0]
    if kind == "string":
        if "controller" in path:
            return "M64 P0"[:spec["maxLength"]] if turn else "M3"
        return ("Ä<b>&\"" * 40)[:max(spec["minLength"], spec["maxLength"])] if turn else "x" * max(1, spec["minLength"])
    if kind == "boolean":
        return bool(turn)
    if path[-1] in ("cut_in_bar", "cut_out_bar"):
        return 1.25 if path[-1] == "cut_in_bar" else 15.75
    share = 0.123 if turn else 0.877
    value = spec["minimum"] + share * (spec["maximum"] - spec["minimum"])
    return round(value) if kind == "integer" else value


def jobs(command, schema, pins):
    demo = str(ROOT / "assets/demo.json")
    link = run(command, "link", "job", demo)
    check("the demo's job link has at most 2000 letters", len(link.strip()) <= 2000, len(link))
    print(f"job link of the demo: {len(link.strip())} letters")
    for title, text in (("demo", pathlib.Path(demo).read_text()), ("one end", json.dumps(full_workbook(schema, 0))),
                        ("other end", json.dumps(full_workbook(schema, 1))), ("nothing", '{"torchside": 1}')):
        link = run(command, "link", "job", "-", stdin=text)
        told = json.loads(run(command, "open", link.strip()))
        given = json.loads(text)
        if title.endswith("end"):
            own = ("seal_key", "old_keys", "issued", "example", "others")
            check(f"{title}: what stays on the device is left behind", not any(told["shop"][key] for key in own) and "5ea1" not in link)
            told_full = {**told, "shop": {**told["shop"], **{key: given["shop"][key] for key in own}}}
            check(f"{title}: all that was given is back", told_full == given)
        check(f"{title}: this program reads the same", same(decoded(content(link, 1), schema, (), pins), told))


def figures(item):
    if isinstance(item, dict):
        return set().union(*(figures(value) for value in item.values()), set())
    if isinstance(item, list):
        return set().union(*(figures(value) for value in item), set())
    return {float(item)} if isinstance(item, (int, float)) and not isinstance(item, bool) else set()


def quotes(command, numbers):
    demo = ROOT / "assets/demo.json"
    link = run(command, "link", "quote", str(demo), "--date", "2026-11-25").strip()
    print(f"quote link of the demo: {len(link)} letters")
    check("the demo's quote link has at most 2000 letters", len(link) <= 2000)
    fields, outline = content(link, 2)
    names = {number: key for key, number in numbers.items()}
    keys = {names[number] for number in fields}
    check("a quote holds nothing but what the customer may see", keys <= QUOTE_KEYS, keys - QUOTE_KEYS)
    told = json.loads(run(command, "open", link))
    values = {names[number]: value for number, value in fields.items()}
    for key in ("price_each", "price_total", "to_pay", "quantity", "shop_name", "note"):
        check(f"{key} is what `open` says", values.get(key) == told[key], f"{values.get(key)} {told[key]}")
    check("the outline is a few hundred bytes", 0 < len(outline) < 1000, len(outline))
    workbook, sheet = json.loads(demo.read_text()), json.loads(run(command, "worksheet", str(demo)))
    seen = figures(values)
    secret = figures(sheet["price"]) | figures(sheet["wear"]) | figures(sheet["settings"]) | figures(workbook["shop"]["rates"]) | figures(
        workbook["shop"]["wear"]) | figures(workbook["job"]["price"]) | figures(workbook["shop"]["tests"])
    open_ = {told[key] for key in ("price_each", "price_total", "to_pay", "tax_amount", "thickness_mm", "quantity", "valid_days", "tax")} | {0.0, 1.0}
    shared = {figure for figure in secret & seen if figure not in open_}
    check("no figure of costs, margin, rates, wear, settings or log is in the quote", not shared, shared)
    # What the customer may not see may change without a trace, as long as the price stays.
    for path, value in ((("shop", "name"), "Other"),):
        other = json.loads(demo.read_text())
        other[path[0]][path[1]] = value
        changed = run(command, "link", "quote", "-", "--date", "2026-11-25", stdin=json.dumps(other)).strip()
        check("another shop's name makes another link", changed != link)
    other = json.loads(demo.read_text())
    other["shop"]["tests"], other["shop"]["wear"]["now"] = [], {}
    other["shop"]["display"] = {"theme": "night"}
    other["shop"]["rates"] = {"labour_per_h": 0, "machine_per_h": 0, "energy_per_kwh": 0, "minimum_charge": 500}
    other["job"]["price"] = {"setup_min": 1, "margin": 0.1}
    first = run(command, "link", "quote", "-", "--date", "2026-11-25", stdin=json.dumps(other))
    other["shop"]["rates"].update(labour_per_h=7, machine_per_h=11, energy_per_kwh=0.3)
    other["job"]["price"] = {"setup_min": 5, "margin": 0.2, "material_per_kg": 1.7, "outside_quote_each": 9}
    other["shop"]["tests"] = workbook["shop"]["tests"]
    second = run(command, "link", "quote", "-", "--date", "2026-11-25", stdin=json.dumps(other))
    check("two shops whose minimum charge makes the price give the same link", first == second)


def main():
    words = [word for word in sys.argv[1:] if word != "--pin"]
    command = words[0] if words else str(ROOT / "build/native/torchside")
    schema = json.loads(run(command, "schema"))
    if "--pin" in sys.argv:
        pin(schema)
    pins = pinned()
    hold(schema, *pins)
    for path, spec in leaves(schema): # words that came behind those that are pinned
        name = ".".join(path)
        if name in pins[1]:
            pins[1][name] += [word for word in spec["enum"] if word][len(pins[1][name]):]
    jobs(command, schema, pins)
    quotes(command, pins[0])
    many = subprocess.run([str(pathlib.Path(command).parent / "tests/torchside_links"), "100000", "1000000"], capture_output=True, text=True)
    print(many.stdout, end="")
    check("100 000 workbooks and 1 000 000 damaged links", many.returncode == 0)
    print(f"{TOTALS[True]} passed, {TOTALS[False]} failed")
    return TOTALS[False] != 0


sys.exit(main())
