package engine

import (
	"strings"
	"sync"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/rule"
)

// Kept is what the checks of one run share whatever their plans say: catalogues with the
// facts of standards, and the packs of standards and folders, each made once, for
// several goroutines too. A catalogue depends on nothing but what the standards declare,
// and a pack on its catalogue and its files. These are taken not to change while the
// run lasts: a pack that somebody writes meanwhile judges as it was first read. A nil
// Kept keeps nothing.
type Kept struct {
	mu         sync.Mutex
	catalogues map[string]func() widened
	packs      map[packKey]func() loaded
	// rules counts those of the packs that are kept.
	rules int
}

// What a run may keep at most. Beyond it things are made anew for each plan, as they
// are without a Kept: a fleet has a few standards and packs, not hundreds.
const (
	mostCatalogues = 32
	mostPacks      = 256
	mostRules      = 20_000
)

// NewKept keeps nothing yet.
func NewKept() *Kept {
	return &Kept{catalogues: map[string]func() widened{}, packs: map[packKey]func() loaded{}}
}

// widened is a catalogue with the facts of standards, and what came of each of these.
type widened struct {
	catalogue *fact.Catalogue
	list      []*asked
}

// widen is widen for one catalogue and the standards of a run.
func (k *Kept) widen(c *fact.Catalogue, list []*asked) *fact.Catalogue {
	if k == nil || len(list) == 0 {
		return widen(c, list)
	}
	made := k.catalogue(keyOf(list), func() widened {
		own := make([]*asked, len(list))
		for i, a := range list {
			own[i] = &asked{Named: a.Named, description: a.description, fault: a.fault}
		}
		return widened{widen(c, own), own}
	})
	for i, a := range list {
		if a.fault == nil {
			a.fits, a.fault = made.list[i].fits, made.list[i].fault
		}
	}
	return made.catalogue
}

// keyOf is what the standards of a plan declare, in their order.
func keyOf(list []*asked) string {
	var key strings.Builder
	for _, a := range list {
		if a.fault == nil {
			key.WriteString(a.description.Hash())
		}
		key.WriteByte(0)
	}
	return key.String()
}

func (k *Kept) catalogue(key string, widen func() widened) widened {
	k.mu.Lock()
	made := k.catalogues[key]
	if made == nil {
		made = sync.OnceValue(widen)
		if len(k.catalogues) < mostCatalogues {
			k.catalogues[key] = made
		}
	}
	k.mu.Unlock()
	return made()
}

// packKey is what makes a pack the same: the catalogue that it is compiled for, and its
// folder, or the hash of the standard that declares it.
type packKey struct {
	catalogue *fact.Catalogue
	from      string
}

// loaded is a pack, or what is wrong with it.
type loaded struct {
	pack     *rule.Pack
	problems []finding.Problem
}

// pack loads a pack, or gives what another plan has loaded.
func (k *Kept) pack(key packKey, load func() loaded) loaded {
	if k == nil {
		return load()
	}
	k.mu.Lock()
	made := k.packs[key]
	if made == nil {
		made = sync.OnceValue(func() loaded {
			l := load()
			k.count(key, l)
			return l
		})
		if len(k.packs) < mostPacks {
			k.packs[key] = made
		}
	}
	k.mu.Unlock()
	return made()
}

// count counts the rules of a pack that was loaded, and forgets it if they are too many
// to be kept beside the others.
func (k *Kept) count(key packKey, l loaded) {
	if l.pack == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.rules+len(l.pack.Rules) > mostRules {
		delete(k.packs, key)
		return
	}
	k.rules += len(l.pack.Rules)
}
