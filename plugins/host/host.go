// Package host runs design standards as programs of their own and trusts none of
// them: a program that crashes, hangs, floods, lies or says nothing is a fault with a
// name, in bounded time. Once it is closed, neither it nor a child that stayed in its
// process group is left, nor the folder of its socket.
//
// Two things are out of reach. A child that has called setsid lives on;
// it has no socket of ours and can't make us wait. And if we are ended ourselves in the
// middle, killed or by a signal that nobody catches, the program ends with us (on Linux
// at once; elsewhere one that is served by the package plugins does when it sees that we
// are gone), but the folder of its socket stays among the temporary files.
//
// A program runs in an empty folder, with a small environment, nothing on its
// standard input and what it prints cut off. Its socket must lie in a folder that
// nobody else can enter. Every call has its deadline; every answer is checked against
// what the standard declared. Which programs run at all is written in trusted.yaml,
// which pins every file of a program's folder.
package host

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"sync"
	"time"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// Program is a program that serves a standard.
type Program struct {
	// ID and Edition are what it must declare; "" for whatever it is.
	ID, Edition string
	// Path is the program's file.
	Path string
	Args []string
	// TLS has both sides show certificates. Its socket is out of reach of other users
	// without it.
	TLS bool
	// Files are all files of the program's folder with their sums, by their path with
	// slashes within it. The program is not started if one differs.
	Files map[string]string
	// Unpinned lets a program run whose files nobody has listed: chainwale itself.
	Unpinned bool
}

// Limits are how long things may take. What is left zero takes its ordinary value.
type Limits struct {
	// Start is from starting the program until it has said what it is.
	Start time.Duration
	// Derive is for one table, Working for one working.
	Derive, Working time.Duration
	// Stop is how long a program may take to end by itself before it is ended.
	Stop time.Duration
	// Memory is what a program written in Go tries to stay below, in bytes.
	Memory int64
}

func (l Limits) orOrdinary() Limits {
	return Limits{
		Start: cmp.Or(l.Start, 5*time.Second), Derive: cmp.Or(l.Derive, 20*time.Second), Working: cmp.Or(l.Working, 5*time.Second),
		Stop: cmp.Or(l.Stop, time.Second), Memory: cmp.Or(l.Memory, 512<<20),
	}
}

// Running is a standard that runs as a program of its own. It may be asked from
// several goroutines at once. A program that ends by itself is started a second
// time; after that, or once it did not answer in time, it is at fault for good.
type Running struct {
	program  Program
	limits   Limits
	declared standard.Description

	mu      sync.Mutex
	process *process
	again   bool
	fault   error
}

// Start starts a program, asks what it is and checks that. The error is a
// *standard.Fault unless ctx ended.
func Start(ctx context.Context, p Program, l Limits) (*Running, error) {
	r := &Running{program: p, limits: l.orOrdinary()}
	var err error
	if r.process, r.declared, err = r.begin(ctx); err != nil {
		return nil, err
	}
	return r, nil
}

// begin starts a process that is what the program is to be.
func (r *Running) begin(ctx context.Context) (*process, standard.Description, error) {
	ctx, cancel := context.WithTimeoutCause(ctx, r.limits.Start, errSlow)
	defer cancel()
	process, err := startProcess(ctx, r.program, r.limits)
	if err != nil {
		return nil, standard.Description{}, r.faultOf(err)
	}
	d, err := process.describe(ctx)
	if err == nil {
		err = r.suits(d)
	}
	if err != nil {
		process.close(0)
		return nil, d, r.faultOf(err)
	}
	return process, d, nil
}

// suits tells whether a declaration is sound and that of the standard which was
// trusted, or which it was before the program was started again.
func (r *Running) suits(d standard.Description) error {
	if err := standard.CheckDescription(d); err != nil {
		return err
	}
	switch {
	case r.program.ID != "" && d.ID != r.program.ID:
		return &standard.Fault{Message: "the program calls itself " + d.ID, Side: standard.TrustAnew}
	case r.program.Edition != "" && d.Edition != r.program.Edition:
		return &standard.Fault{Message: fmt.Sprintf("the program declares edition %s, and %s was trusted", d.Edition, r.program.Edition), Side: standard.TrustAnew}
	case r.declared.ID != "" && d.Hash() != r.declared.Hash():
		return &standard.Fault{Message: "it declared something else when it was started again", Side: standard.ChangeStandard}
	}
	return nil
}

// Describe says what the program declared when it was started.
func (r *Running) Describe(context.Context) (standard.Description, error) { return r.declared, nil }

// Derive asks for the facts of one table and checks the answer.
func (r *Running) Derive(ctx context.Context, q standard.Question) (standard.Answer, error) {
	t, ok := r.declared.Table(q.Kind)
	if !ok {
		return standard.Answer{}, r.faultOf(&standard.Fault{Message: "it has no table of the kind " + q.Kind})
	}
	return ask(ctx, r, r.limits.Derive, func(ctx context.Context, s standard.Standard) (standard.Answer, error) {
		a, err := s.Derive(ctx, q)
		if err == nil {
			err = standard.CheckAnswer(t, q, a)
		}
		return a, err
	})
}

// Working asks how one fact came about and checks the steps.
func (r *Running) Working(ctx context.Context, a standard.Asked) ([]working.Step, error) {
	return ask(ctx, r, r.limits.Working, func(ctx context.Context, s standard.Standard) ([]working.Step, error) {
		steps, err := s.Working(ctx, a)
		if err == nil {
			err = standard.CheckSteps(steps)
		}
		return steps, err
	})
}

// Close ends the program and whatever stayed in its process group. Whatever is being
// asked of it fails.
func (r *Running) Close() error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.process != nil {
		r.process.close(r.limits.Stop)
	}
	r.process = nil
	if r.fault == nil {
		r.fault = r.faultOf(&standard.Fault{Message: "it was ended, and is asked nevertheless"})
	}
	return nil
}

// name is what the standard is called in a fault.
func (r *Running) name() string {
	return cmp.Or(r.program.ID, r.declared.ID, filepath.Base(r.program.Path))
}
