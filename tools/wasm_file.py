"""Read a WebAssembly file's outline: its sections, and its functions with their names. For tools/where, tools/split_wasm, tools/pack_site."""
import collections

CUSTOM, IMPORT, EXPORT, CODE, DATA = 0, 2, 7, 10, 11


class Reader:
    def __init__(self, data, at=0):
        self.data, self.at = data, at

    def number(self):
        value = shift = 0
        while True:
            byte = self.data[self.at]
            self.at += 1
            value |= (byte & 0x7F) << shift
            shift += 7
            if byte < 0x80:
                return value

    def take(self, size):
        self.at += size
        return self.data[self.at - size:self.at]


def sections(wasm):
    """Kind -> the bodies of its sections."""
    found, reader = collections.defaultdict(list), Reader(wasm, 8)
    while reader.at < len(wasm):
        kind = reader.number()
        found[kind].append(reader.take(reader.number()))
    return found


def exported(wasm):
    """How many names the module exports."""
    return sum(Reader(body).number() for body in sections(wasm)[EXPORT])


def names_of(section):
    """Function number -> name, of the section "name"."""
    reader = Reader(section)
    if reader.take(reader.number()) != b"name":
        return {}
    while reader.at < len(section):
        kind, inner = reader.number(), Reader(reader.take(reader.number()))
        if kind == 1:
            return {inner.number(): inner.take(inner.number()).decode() for _ in range(inner.number())}
    return {}


def imported_functions(section):
    reader, count = Reader(section), 0
    for _ in range(reader.number()):
        for _ in range(2):
            reader.take(reader.number())
        kind = reader.take(1)[0]
        if kind == 1:
            reader.take(1)
        if kind == 0 or kind == 3:
            reader.take(1 if kind == 0 else 2)
            count += kind == 0
        else:
            for _ in range(1 + (reader.take(1)[0] & 1)):
                reader.number()
    return count


def functions(wasm):
    """(name, bytes of code) of every function that the module defines, in order; a name is "?" when the file has none."""
    parts = sections(wasm)
    names = {number: name for body in parts[CUSTOM] for number, name in names_of(body).items()}
    first = sum(map(imported_functions, parts[IMPORT]))
    code = Reader(parts[CODE][0])
    return [(names.get(first + i, "?"), len(code.take(code.number()))) for i in range(code.number())]
