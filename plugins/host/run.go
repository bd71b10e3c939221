package host

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
	"strconv"
	"sync"

	"chainwale/engine/standard"
)

// run is the system's process of a program, as go-plugin wants to see it
// (runner.Runner). The stock one hands the program our standard input and knows
// nothing of process groups.
type run struct {
	cmd    *exec.Cmd
	folder string
	tls    bool
	out    *firstLine
	err    *untilEnd
	// exited is closed when the process is gone and its group with it.
	exited chan struct{}

	mu      sync.Mutex
	started bool
	gone    bool
	refused error
}

// newRun prepares a process that reads nothing, runs in an empty folder and, where
// the system has them, leads a process group of its own and ends when we do.
func newRun(p Program, folder, dir string) (*run, error) {
	r := &run{cmd: exec.Command(p.Path, p.Args...), folder: folder, tls: p.TLS, exited: make(chan struct{})}
	r.cmd.Dir = dir
	apart(r.cmd)
	outRead, outWrite, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	errRead, errWrite, err := os.Pipe()
	if err != nil {
		_, _ = outRead.Close(), outWrite.Close()
		return nil, err
	}
	// Files are handed down as they are; with nil for standard input the program
	// reads from where nothing comes.
	r.cmd.Stdout, r.cmd.Stderr = outWrite, errWrite
	r.out = &firstLine{from: outRead}
	r.err = &untilEnd{from: errRead, ended: make(chan struct{})}
	return r, nil
}

// Start starts the program on a thread that stays until it ends: where a child ends
// with its parent, it is the thread that counts as its parent.
func (r *run) Start(context.Context) error {
	started := make(chan error)
	go func() {
		runtime.LockOSThread()
		defer runtime.UnlockOSThread()
		err := r.begin()
		started <- err
		if err == nil {
			reap(r.cmd, r.end)
			close(r.exited)
		}
	}()
	return <-started
}

func (r *run) begin() error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.gone {
		return errors.New("it was ended before it was started")
	}
	err := r.cmd.Start()
	r.dropWriters()
	r.started, r.gone = err == nil, err != nil
	return err
}

// dropWriters lets go of the ends that are the program's.
func (r *run) dropWriters() {
	for _, w := range []io.Writer{r.cmd.Stdout, r.cmd.Stderr} {
		_ = w.(io.Closer).Close()
	}
}

// end ends what the program leaves of its group. It is called while the system still
// remembers the process, so that no other can have got its number.
func (r *run) end() {
	r.mu.Lock()
	defer r.mu.Unlock()
	killGroup(r.cmd)
	r.gone = true
}

// kill ends the program and its group, and all reading from it, whoever still holds
// the other end.
func (r *run) kill() {
	r.mu.Lock()
	if r.started && !r.gone {
		killGroup(r.cmd)
	}
	started := r.started
	if !started {
		r.gone = true
		r.dropWriters()
	}
	r.mu.Unlock()
	if started {
		<-r.exited
	}
	_ = r.out.Close()
	_ = r.err.Close()
}

// wait waits until the program is gone or ctx ends.
func (r *run) wait(ctx context.Context) {
	select {
	case <-r.exited:
	case <-ctx.Done():
	}
}

// Wait waits until the program is gone.
func (r *run) Wait(context.Context) error {
	<-r.exited
	return nil
}

// Kill ends the program.
func (r *run) Kill(context.Context) error {
	r.kill()
	return nil
}

// Stdout is where the program announces itself.
func (r *run) Stdout() io.ReadCloser { return r.out }

// Stderr is where the program says what troubles it.
func (r *run) Stderr() io.ReadCloser { return r.err }

// Name is the program's file.
func (r *run) Name() string { return r.cmd.Path }

// ID is the number of the process.
func (r *run) ID() string {
	r.mu.Lock()
	defer r.mu.Unlock()
	if !r.started {
		return "none"
	}
	return strconv.Itoa(r.cmd.Process.Pid)
}

// Diagnose has nothing to add: see explain.
func (r *run) Diagnose(context.Context) string { return "" }

// PluginToHost refuses an address that is not ours to talk to, and certificates
// where none, or none where some were agreed on. go-plugin asks before it connects.
func (r *run) PluginToHost(network, address string) (string, string, error) {
	err := checkAddress(network, address, r.folder)
	if certificate := r.out.field(5); err == nil && (certificate != "") != r.tls {
		err = &standard.Fault{
			Message: fmt.Sprintf("trusted.yaml says tls: %t of it, and its announcement is of the other sort", r.tls),
			Side:    "change tls in trusted.yaml, or the standard",
		}
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.refused = err
	return network, address, err
}

// HostToPlugin has nothing to change: both see the same files.
func (r *run) HostToPlugin(network, address string) (string, string, error) {
	return network, address, nil
}

// began tells whether the system started the program.
func (r *run) began() bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.started
}

// status is how the process ended, "" if it has not.
func (r *run) status() string {
	select {
	case <-r.exited:
		return r.cmd.ProcessState.String()
	default:
		return ""
	}
}
