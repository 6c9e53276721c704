"""Which texts in the data of a program that tools/split_wasm takes apart only its later part reads: texts_of_later().

The linker lays all short texts side by side, each once, and lists every other piece of data by name with its place (--print-map). A text is
read by code that holds its address, or by a table that does. So a text goes to the later part when no number in the first part's code is an
address in it, and no table that this code may read points into it. Where that cannot be known the text stays: a table counts as read when a
number comes near it, for a compiler may begin before it and count from one.
"""
import re
import struct
import subprocess

PIECE = re.compile(r"^ *([0-9a-f]+) +[0-9a-f]+ +([0-9a-f]+) {9}(\S.*):\((\.\w+)\.?(.*)\)$", re.M)
# Pieces whose reader web/later.txt names; the code of the first part may hold a number that looks like a place in them, but never their address.
LATER_PIECES = ("ipio2",        # 1584 bits of 2/pi: __rem_pio2_large
                "example_json") # the example shop: see_example
FONT = re.compile(r"_otfE$") # bytes of which four may look like an address, and are none
NEAR = 96       # how far before a table a number may lie that is meant for it: more than a row of any of them
NEAR_TEXT = 4   # and before a text
SHORTEST = 12   # a run of texts that is worth a piece of data of its own


def pieces_of(link_map):
    """(address, size, name) of every piece of data; the linker's own texts have no name."""
    data = link_map[link_map.index(" DATA\n"):]
    return [(int(at, 16), int(size, 16), "" if path == "<internal>" else name or path)
            for at, size, path, kind, name in PIECE.findall(data) if kind in (".rodata", ".data")]


def numbers_in(module):
    """Every number that the code of a module adds to an address or takes for one; where its own data lies is none of these."""
    text = subprocess.run(["wasm-dis", str(module)], capture_output=True, text=True, check=True).stdout
    text = "".join(line for line in text.splitlines(True) if not line.lstrip().startswith("(data "))
    return {int(a or b) for a, b in re.findall(r"i32\.const (-?\d+)|offset=(\d+)", text)}


def pointers_in(memory, at, size):
    start = (at + 3) // 4 * 4
    return struct.unpack_from(f"<{max(0, (at + size - start) // 4)}I", memory, start)


def texts_in(memory, at, size):
    """(address, size with its zero) of each text in a piece of texts."""
    found, start = [], at
    while start < at + size:
        end = memory.index(b"\0", start) + 1
        found.append((start, end - start))
        start = end
    return found


def hit(numbers, start, end):
    return not numbers.isdisjoint(range(start, end))


def texts_of_later(first, memory, link_map):
    """(address, size) of tables and of runs of texts, whole ones, that nothing in the first part reads. memory: all data, at its address."""
    numbers, pieces = numbers_in(first), pieces_of(link_map)
    moved = []
    for piece in LATER_PIECES:
        places = [(at, size) for at, size, name in pieces if re.search(rf"(^|\d){piece}(E|$)", name)]
        if len(places) != 1 or places[0][0] in numbers:
            raise ValueError(f"the first part reads {piece}, or it is not there")
        moved += places
    no_pointers = {(at, size) for at, size, name in pieces if FONT.search(name)}
    tables = [(at, size) for at, size, name in pieces if name and (at, size) not in moved]
    read = [table for table in tables if hit(numbers, table[0] - NEAR, table[0] + table[1])]
    left = [table for table in tables if table not in set(read)]
    pointers, fresh = set(numbers), read
    while fresh: # what is read may point to more
        found = {pointer for table in fresh if table not in no_pointers for pointer in pointers_in(memory, *table)}
        pointers |= found
        fresh = [table for table in left if hit(found, table[0] - NEAR, table[0] + table[1])]
        left = [table for table in left if table not in set(fresh)]
    moved += [table for table in left if table[1] >= SHORTEST]
    runs = []
    for at, size, name in pieces:
        for start, length in () if name else texts_in(memory, at, size):
            if hit(pointers, start - NEAR_TEXT, start + length):
                continue
            if runs and sum(runs[-1]) == start:
                runs[-1] = (runs[-1][0], runs[-1][1] + length)
            else:
                runs.append((start, length))
    return moved + [run for run in runs if run[1] >= SHORTEST]
