package standard

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
)

// Hash is "sha256:" over all that a standard declares, so that a report can say
// which standard judged: it is the same whether the standard runs in the process or
// apart, and changes with any word of the declaration.
func (d Description) Hash() string {
	h := lengths{sha256.New()}
	h.write(fmt.Sprint(d.Contract), d.ID, d.Prefix, d.Title, d.Edition, d.Publisher, string(d.Basis))
	h.count(len(d.Tables))
	for _, t := range d.Tables {
		h.table(t)
	}
	h.count(len(d.Clauses))
	for _, c := range d.Clauses {
		h.write(c.Clause, fmt.Sprint(c.Covered), c.Why)
	}
	h.count(len(d.Pack))
	for _, f := range d.Pack {
		h.write(f.Path, string(f.Bytes))
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}

// lengths hashes texts with their lengths before them, so that no two lists of
// texts read alike.
type lengths struct{ hash.Hash }

func (h lengths) write(texts ...string) {
	for _, t := range texts {
		fmt.Fprintf(h, "%d:%s", len(t), t)
	}
}

func (h lengths) count(n int) { h.write(fmt.Sprint(n)) }

func (h lengths) table(t Table) {
	h.write(t.Kind)
	h.count(len(t.Reads))
	for _, r := range t.Reads {
		h.write(r.Name, string(r.Type), r.Unit)
	}
	h.count(len(t.Derives))
	for _, d := range t.Derives {
		h.write(d.Name, d.Unit, d.Clause, d.Meaning, fmt.Sprint(d.Bears))
		h.count(len(d.From))
		h.write(d.From...)
	}
}
