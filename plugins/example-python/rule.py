"""What the standard says: its one clause, in the shape of contract.proto."""
import os

import contract_pb2 as wire

CONTRACT = 1
TITLE = "Plates of the Stonechat class, a rule of thumb"
EDITION = "2026"
CLAUSE = "1"

# What the rule reads of a landing, and in which unit: chainwale's own facts.
READS = [
    ("fitting.kind", "word", ""),
    ("fitting.width", "number", "mm"),
    ("fitting.thickness", "number", "mm"),
    ("fitting.metal.ultimate", "number", "MPa"),
    ("hole", "number", "mm"),
    ("across", "number", "mm"),
]
# Parts that have no plate at their pin, so that no clause of ours covers them.
NO_PLATE = ("u-bolt", "tie rod")


class NotCovered(Exception):
    """Why the clause says nothing of a part."""


def describe():
    """What the standard is, reads and derives."""
    return wire.Description(
        contract=CONTRACT, id="stonechat-plates", prefix="stonechat", title=TITLE, edition=EDITION,
        publisher="Stonechat Owners' Circle (invented, for this example)", basis="ultimate",
        tables=[wire.Table(
            kind="landing",
            reads=[wire.Read(name=name, type=type_, unit=unit) for name, type_, unit in READS],
            derives=[wire.Derive(
                name="plate_net", unit="N", clause=CLAUSE, bears=True,
                meaning="load of the wire at which the plate tears across its pin hole",
                **{"from": [name for name, _, _ in READS]},
            )],
        )],
        clauses=[
            wire.Clause(clause="1", covered=True, why="the plate across its pin hole, on what metal the hole leaves"),
            wire.Clause(clause="2", covered=False, why="the bolts: the circle asks a rigger"),
            wire.Clause(clause="3", covered=False, why="the pin and its fork: bought with the wire and as strong"),
        ],
        pack=pack(),
    )


def pack():
    """The pack of rules that judges the fact, file by file."""
    folder = os.path.join(os.path.dirname(os.path.abspath(__file__)), "pack")
    files = []
    for name in sorted(os.listdir(folder)):
        with open(os.path.join(folder, name), "rb") as f:
            files.append(wire.File(path=name, bytes=f.read()))
    return files


class Row:
    """One subject out of the columns; None stands for unknown."""

    def __init__(self, columns, row):
        self.columns = {c.name: c for c in columns}
        self.row = row

    def __getitem__(self, name):
        c = self.columns[name]
        if c.index:
            i = c.index[self.row]
            return c.words[i - 1] if i else None
        known = self.row // 8 < len(c.known) and c.known[self.row // 8] >> self.row % 8 & 1
        return c.numbers[self.row] if known else None


def net_section(row):
    """The load at which the plate tears across the hole.

    N = (w - 2*|a| - d) * t * fu, with the width w, the hole d off the middle by a (mm),
    the thickness t (mm) and the least ultimate strength fu (MPa = N/mm2). The narrower
    side counts twice: it tears first.
    """
    if row["fitting.kind"] in NO_PLATE:
        raise NotCovered(f"a {row['fitting.kind']} has no plate at its pin")
    left = row["fitting.width"] - 2 * abs(row["across"]) - row["hole"]
    if left <= 0:
        raise NotCovered("the hole leaves no metal beside it")
    return left, left * row["fitting.thickness"] * row["fitting.metal.ultimate"]


def derive(question):
    """The fact of each landing: a number, unknown, or not covered for a reason."""
    fact = wire.Column(name="plate_net", numbers=[0.0] * question.rows)
    known = bytearray((question.rows + 7) // 8)
    answer = wire.Answer()
    for i in range(question.rows):
        row = Row(question.columns, i)
        if any(row[name] is None for name, _, _ in READS):
            continue
        try:
            _, fact.numbers[i] = net_section(row)
        except NotCovered as why:
            answer.not_covered.add(row=i, clause=CLAUSE, why=str(why))
            continue
        known[i // 8] |= 1 << i % 8
    fact.known = bytes(known)
    answer.columns.append(fact)
    return answer


def working(asked):
    """How the fact of one landing came about."""
    row = Row(asked.columns, 0)
    left, load = net_section(row)
    source = wire.Source(title=TITLE, edition=EDITION, clause=CLAUSE)
    setattr(source, "as", "judgement")

    def put(symbol, name, unit):
        return wire.Input(symbol=symbol, value=row[name], unit=unit)

    return wire.Steps(steps=[
        wire.Step(symbol="b", meaning="metal left beside the hole", formula="w − 2·|a| − d", value=left, unit="mm", source=source,
                  inputs=[put("w", "fitting.width", "mm"), put("a", "across", "mm"), put("d", "hole", "mm")]),
        wire.Step(symbol="N", meaning="load at which the plate tears across its pin hole", formula="b·t·fu", value=load, unit="N", source=source,
                  inputs=[wire.Input(symbol="b", value=left, unit="mm"), put("t", "fitting.thickness", "mm"), put("fu", "fitting.metal.ultimate", "MPa")]),
    ])
