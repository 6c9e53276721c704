"""Read a WebAssembly file's outline: its sections, and its functions with their names. For tools/where, tools/split_wasm,
tools/pack_site. And add data to one."""
import collections

CUSTOM, IMPORT, EXPORT, CODE, DATA, DATA_COUNT = 0, 2, 7, 10, 11, 12


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


def signed(reader):
    value = shift = 0
    while True:
        byte = reader.take(1)[0]
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return value - (1 << shift) if byte & 0x40 else value


def segments(wasm):
    """(address, bytes) of every piece of data that the module writes when it begins."""
    found = []
    for body in sections(wasm)[DATA]:
        reader = Reader(body)
        for _ in range(reader.number()):
            if reader.number() != 0 or reader.take(1) != b"\x41": # active, in memory 0, at a constant
                raise ValueError("a piece of data of another kind")
            address = signed(reader)
            reader.take(1)
            found.append((address, reader.take(reader.number())))
    return found


def with_zeros(wasm, pieces):
    """The module with zeros in its data at these (address, size)."""
    out, reader = bytearray(wasm), Reader(wasm, 8)
    while reader.number() != DATA:
        reader.take(reader.number())
    reader.number()
    for _ in range(reader.number()):
        reader.take(2) # as segments() has seen
        address = signed(reader)
        reader.take(1)
        size = reader.number()
        for at, length in pieces:
            begin, end = max(at, address), min(at + length, address + size)
            if begin < end:
                out[reader.at + begin - address:reader.at + end - address] = bytes(end - begin)
        reader.take(size)
    return bytes(out)


def leb(value):
    """A number that is not negative, as signed LEB128, which reads the same unsigned when its sixth bit is clear."""
    out = b""
    while True:
        byte, value = value & 0x7F, value >> 7
        if value == 0 and not byte & 0x40:
            return out + bytes([byte])
        out += bytes([byte | 0x80])


def with_data(wasm, pieces):
    """The module, which has no data of its own, with these (address, bytes) written to its memory when it is instantiated."""
    parts = sections(wasm)
    if parts[DATA] or parts[DATA_COUNT]:
        raise ValueError("the module has data already")
    body = leb(len(pieces)) + b"".join(b"\x00\x41" + leb(address) + b"\x0b" + leb(len(data)) + data for address, data in pieces)
    return wasm + bytes([DATA]) + leb(len(body)) + body


def functions(wasm):
    """(name, bytes of code) of every function that the module defines, in order; a name is "?" when the file has none."""
    parts = sections(wasm)
    names = {number: name for body in parts[CUSTOM] for number, name in names_of(body).items()}
    first = sum(map(imported_functions, parts[IMPORT]))
    code = Reader(parts[CODE][0])
    return [(names.get(first + i, "?"), len(code.take(code.number()))) for i in range(code.number())]
