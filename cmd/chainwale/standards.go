package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/near"
	"chainwale/engine/plan"
	"chainwale/engine/standard"
	"chainwale/plugins/airlug"
	"chainwale/plugins/aisc360"
	"chainwale/plugins/bth1"
	"chainwale/plugins/en1993"
	"chainwale/plugins/host"
	"chainwale/plugins/iso12215"
)

// builtInStandard is a standard that comes with the program.
type builtInStandard struct {
	id string
	// values is the name of the file of the user's own that the standard reads its
	// values from, "" if it needs none.
	values string
	make   func(values string) (standard.Standard, error)
}

// plain makes a standard that needs no file.
func plain(f func() (standard.Standard, error)) func(string) (standard.Standard, error) {
	return func(string) (standard.Standard, error) { return f() }
}

// builtInStandards are the standards that come with the program, in the order that
// they are listed in.
var builtInStandards = []builtInStandard{
	{"en-1993-1-8", "", plain(en1993.Standard)},
	{"aisc-360", "", plain(aisc360.Standard)},
	{"asme-bth-1", "", plain(bth1.Standard)},
	{"air-force-lug", "", plain(airlug.Standard)},
	{"iso-12215-10", "iso-12215-10.yaml", iso12215.Standard},
}

func builtInCalled(id string) (builtInStandard, bool) {
	i := slices.IndexFunc(builtInStandards, func(b builtInStandard) bool { return b.id == id })
	if i < 0 {
		return builtInStandard{}, false
	}
	return builtInStandards[i], true
}

// standardArgs is what every verb takes that asks standards.
type standardArgs struct {
	Standard []string `help:"A design standard that is asked as well, by its id; may stand several times. chainwale standard list shows them." placeholder:"ID"`
	Apart    bool     `help:"Run the standards that come with the program as processes of their own, too."`
	Trusted  string   `help:"The file that says which standards of others may run; trusted.yaml beside the plan, or in a folder above it up to the root, if left out." placeholder:"FILE"`
}

// hall is where standards are got from: made in this process, or started as programs
// of their own, each once.
type hall struct {
	standardArgs
	// folder is the plan's, root the highest folder in which files beside it count.
	planFile, folder, root string
	trusted                func() (*host.Trusted, []finding.Problem)

	mu   sync.Mutex
	got  map[string]*seat
	open []func() error
}

// seat is one standard, there or still on its way.
type seat struct {
	ready    chan struct{}
	standard standard.Standard
	err      error
}

// newHall makes ready to get standards for a plan.
func (a standardArgs) newHall(planFile, root string) *hall {
	folder := filepath.Dir(planFile)
	if root == "" {
		root = folder
	}
	h := &hall{standardArgs: a, planFile: planFile, folder: folder, root: root, got: map[string]*seat{}}
	h.trusted = sync.OnceValues(h.readTrusted)
	return h
}

// readTrusted reads the list of trusted programs; an empty one where there is none.
func (h *hall) readTrusted() (*host.Trusted, []finding.Problem) {
	file := h.Trusted
	if file == "" {
		file = host.FindTrusted(h.planFile, h.root)
	}
	if file == "" {
		return &host.Trusted{}, nil
	}
	t, problems, err := host.ReadTrusted(file)
	if err != nil {
		problems = append(problems, finding.Problem{At: finding.Place{File: file, Line: 1, Column: 1}, Message: err.Error()})
	}
	if t == nil {
		t = &host.Trusted{Name: file}
	}
	return t, problems
}

// files names the files beside the plan that say which standards there are and by
// which values they judge.
func (h *hall) files() string {
	names := []string{h.Trusted}
	if h.Trusted == "" {
		names[0] = host.FindTrusted(h.planFile, h.root)
	}
	for _, b := range builtInStandards {
		names = append(names, h.valuesOf(b))
	}
	return strings.Join(names, "\x00")
}

// upwards finds a file in a folder or in those above it, up to the root; "" if it is
// in none, or if the folder does not lie under the root.
func upwards(folder, root, name string) string {
	below, err := filepath.Rel(root, folder)
	if err != nil || !filepath.IsLocal(below) {
		return ""
	}
	for ; ; below = filepath.Dir(below) {
		file := filepath.Join(root, below, name)
		if _, err := os.Lstat(file); err == nil {
			return file
		}
		if below == "." {
			return ""
		}
	}
}

// warm starts, beside the reading of the plan, this program's own standards that the
// command line names or whose ids stand in the plan's file, and those of others that
// the command line names. A program of somebody else's is never started because its
// id happens to stand somewhere.
func (h *hall) warm(ctx context.Context, planFile string) {
	if h.Apart {
		named := h.glance(planFile)
		for _, b := range builtInStandards {
			if named(b.id) {
				h.seat(ctx, b.id)
			}
		}
	}
	for _, id := range h.Standard {
		if h.unknown(id, finding.Place{}) == nil {
			h.seat(ctx, id)
		}
	}
}

// glance tells of an id whether the command line names it or it stands in the plan's
// file. What is wrong with the file is said by whoever loads it.
func (h *hall) glance(planFile string) func(id string) bool {
	var src []byte
	if info, err := os.Stat(planFile); err == nil && info.Mode().IsRegular() && info.Size() <= mostPlan {
		src, _ = os.ReadFile(planFile)
	}
	return func(id string) bool { return slices.Contains(h.Standard, id) || bytes.Contains(src, []byte(id)) }
}

// mostPlan is more than a plan may have.
const mostPlan = 2 << 20

// get gives a standard by its id; several may ask for one at once.
func (h *hall) get(ctx context.Context, id string) (standard.Standard, error) {
	s := h.seat(ctx, id)
	<-s.ready
	return s.standard, s.err
}

// seat is the seat of a standard, which is on its way from the first asking. It is
// taken before the program is started, so that close waits for all of them.
func (h *hall) seat(ctx context.Context, id string) *seat {
	h.mu.Lock()
	defer h.mu.Unlock()
	s, there := h.got[id]
	if !there {
		s = &seat{ready: make(chan struct{})}
		h.got[id] = s
		go func() {
			defer close(s.ready)
			s.standard, s.err = h.fetch(ctx, id)
		}()
	}
	return s
}

// fetch makes a standard or starts it.
func (h *hall) fetch(ctx context.Context, id string) (standard.Standard, error) {
	if b, ok := builtInCalled(id); ok {
		if h.Apart {
			return h.selfApart(ctx, b)
		}
		return b.make(h.valuesOf(b))
	}
	t, problems := h.trusted()
	if len(problems) > 0 {
		return nil, errors.New(place(problems[0].At) + ": " + problems[0].Message)
	}
	program, ok := t.Program(id)
	if !ok {
		return nil, errors.New("no program is trusted to be it")
	}
	return h.start(ctx, program)
}

// valuesOf is the file of the user's own that a standard reads, "" where there is none.
func (h *hall) valuesOf(b builtInStandard) string {
	if b.values == "" {
		return ""
	}
	return upwards(h.folder, h.root, b.values)
}

// selfApart runs a standard that comes with the program as a process of its own:
// this program once more.
func (h *hall) selfApart(ctx context.Context, b builtInStandard) (standard.Standard, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	args := []string{"standard", "serve", b.id}
	if values := h.valuesOf(b); values != "" {
		if values, err = filepath.Abs(values); err != nil {
			return nil, err
		}
		args = append(args, values)
	}
	return h.start(ctx, host.Program{ID: b.id, Path: self, Args: args, Unpinned: true})
}

func (h *hall) start(ctx context.Context, p host.Program) (standard.Standard, error) {
	running, err := host.Start(ctx, p, host.Limits{})
	if err != nil {
		return nil, err
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	h.open = append(h.open, running.Close)
	return running, nil
}

// close ends all programs that were started, side by side.
func (h *hall) close() {
	h.mu.Lock()
	seats := make([]*seat, 0, len(h.got))
	for _, s := range h.got {
		seats = append(seats, s)
	}
	h.mu.Unlock()
	for _, s := range seats {
		<-s.ready
	}
	var all sync.WaitGroup
	for _, end := range h.open {
		all.Go(func() { _ = end() }) // what it was asked, it has answered
	}
	all.Wait()
}

// named gives the standards that a plan and the command line name, each once and
// those of the plan first. One that there is not is a problem with its place.
func (h *hall) named(ctx context.Context, p *plan.Plan) (list []engine.Named, problems []finding.Problem) {
	seen := map[string]int{}
	name := func(id string, at finding.Place, must bool) {
		if i, again := seen[id]; again {
			list[i].Must = list[i].Must || must
			return
		}
		if problem := h.unknown(id, at); problem != nil {
			problems = append(problems, *problem)
			return
		}
		seen[id] = len(list)
		list = append(list, engine.Named{ID: id, At: at, Must: must})
	}
	for _, t := range p.Standards {
		name(t.Value, t.At, false)
	}
	for _, t := range p.MustMeet {
		name(t.Value, t.At, true)
	}
	for _, id := range h.Standard {
		name(id, finding.Place{File: p.File, Line: 1, Column: 1}, false)
	}
	if len(problems) > 0 {
		return nil, problems
	}
	var all sync.WaitGroup
	for i := range list {
		all.Go(func() { list[i].Standard, list[i].Fault = h.get(ctx, list[i].ID) })
	}
	all.Wait()
	return list, nil
}

// unknown is the problem of an id that no standard here has; nil if one does.
func (h *hall) unknown(id string, at finding.Place) *finding.Problem {
	if _, ok := builtInCalled(id); ok {
		return nil
	}
	var ids []string
	for _, b := range builtInStandards {
		ids = append(ids, b.id)
	}
	t, problems := h.trusted()
	if len(problems) > 0 {
		return &problems[0]
	}
	if _, ok := t.Program(id); ok {
		return nil
	}
	for _, e := range t.Entries {
		ids = append(ids, e.ID)
	}
	expected := "one of " + strings.Join(ids, ", ") + "; a program of somebody else's is pinned by chainwale standard trust"
	if words := near.Words(id, ids, 3); len(words) > 0 {
		expected = "did you mean " + strings.Join(words, " or ") + "?"
	}
	return &finding.Problem{At: at, Message: fmt.Sprintf("no standard is called %q", id), Expected: expected}
}
