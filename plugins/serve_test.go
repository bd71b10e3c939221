package plugins

import (
	"context"
	"errors"
	"strings"
	"testing"

	"github.com/hashicorp/go-plugin"
	"google.golang.org/grpc"

	"chainwale/engine/standard"
)

// stub is a standard that only says what it is.
type stub struct {
	standard.Standard
	d   standard.Description
	err error
}

func (s stub) Describe(context.Context) (standard.Description, error) { return s.d, s.err }

func described() standard.Description {
	return standard.Description{
		Contract: standard.Contract, ID: "test-rule", Prefix: "test", Title: "A rule of thumb", Edition: "1", Publisher: "nobody", Basis: standard.Ultimate,
		Tables: []standard.Table{{
			Kind:    "landing",
			Reads:   []standard.Read{{Name: "hole", Type: standard.Number, Unit: "mm"}},
			Derives: []standard.Derive{{Name: "net", Unit: "N", Clause: "1", Meaning: "what it bears", From: []string{"hole"}}},
		}},
		Clauses: []standard.Clause{{Clause: "1", Covered: true, Why: "all of it"}},
		Pack:    []standard.File{{Path: "pack.yaml"}},
	}
}

// TestByHand: a standard that somebody starts by hand says what it is, and its
// author hears what is wrong with it.
func TestByHand(t *testing.T) {
	faulty := described()
	faulty.Tables[0].Derives[0].Unit = "kN"
	for _, c := range []struct {
		s    stub
		says string
	}{
		{stub{d: described()}, "this is A rule of thumb, edition 1, a design standard for chainwale"},
		{stub{d: faulty}, "no canonical unit"},
		{stub{err: errors.New("no pack")}, "it can't be used: no pack"},
	} {
		var out strings.Builder
		if status := byHand(&out, c.s); status != 1 || !strings.Contains(out.String(), c.says) {
			t.Errorf("status %d, %q; want %q", status, out.String(), c.says)
		}
	}
}

// TestEndWithParent: once its parent is another, the program ends.
func TestEndWithParent(t *testing.T) {
	parents := []int{7, 7, 1}
	ended := 0
	endWithParent(func() int {
		p := parents[0]
		if len(parents) > 1 {
			parents = parents[1:]
		}
		return p
	}, func(int) { ended++ })
	if ended != 1 || len(parents) != 1 {
		t.Errorf("it ended %d times, with the parents %v to come", ended, parents)
	}
}

// TestServes answers over a connection, by the same service that Serve offers.
func TestServes(t *testing.T) {
	client, server := plugin.TestPluginGRPCConn(t, false, map[string]plugin.Plugin{Name: &Plugin{Standard: stub{d: described()}}})
	defer server.Stop()
	defer func() { _ = client.Close() }()
	raw, err := client.Dispense(Name)
	if err != nil {
		t.Fatal(err)
	}
	d, err := raw.(standard.Standard).Describe(t.Context())
	if err != nil || d.Hash() != described().Hash() {
		t.Errorf("it is %+v, %v", d, err)
	}
}

// TestServesNothing: a program without a standard says so and does not wait for questions.
func TestServesNothing(t *testing.T) {
	if err := (&Plugin{}).GRPCServer(nil, grpc.NewServer()); err == nil {
		t.Error("it serves no standard")
	}
}
