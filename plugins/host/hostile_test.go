//go:build unix

package host

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"chainwale/engine/standard"
)

var counted atomic.Int64

// started is a program of these tests, with a word of its own among its arguments.
// When the test ends no process with that word may be left.
func started(t *testing.T, name string, args ...string) Program {
	t.Helper()
	word := fmt.Sprintf("test-%d-%d", os.Getpid(), counted.Add(1))
	t.Cleanup(func() { noneLeft(t, word) })
	return Program{Path: os.Args[0], Args: append([]string{"-be", name, word}, args...), Unpinned: true}
}

// noneLeft looks for processes with a word among their arguments. Where the system
// does not list processes so, there is nothing to look at.
func noneLeft(t *testing.T, word string) {
	t.Helper()
	var left []string
	for range 20 {
		if left = withWord(word); len(left) == 0 {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Errorf("processes were left: %s", strings.Join(left, ", "))
}

func withWord(word string) []string {
	var found []string
	lines, _ := filepath.Glob("/proc/[0-9]*/cmdline")
	for _, name := range lines {
		// What has ended and was not yet fetched has no arguments any more.
		if args, err := os.ReadFile(name); err == nil && bytes.Contains(args, []byte("\x00"+word+"\x00")) {
			found = append(found, name+" "+strings.ReplaceAll(string(args), "\x00", " "))
		}
	}
	return found
}

// faulty wants an error that is a fault, names the standard, says all of the words
// and which side to change.
func faulty(t *testing.T, err error, side standard.Side, words ...string) {
	t.Helper()
	var f *standard.Fault
	if !errors.As(err, &f) {
		t.Fatalf("want a fault, got %v", err)
	}
	for _, w := range words {
		if !strings.Contains(f.Message, w) {
			t.Errorf("the fault %q does not say %q", f, w)
		}
	}
	if f.Standard == "" || f.Side != side {
		t.Errorf("the fault is of %q and says to %q; want %q (%s)", f.Standard, f.Side, side, f)
	}
	if strings.ContainsAny(f.Error(), "\n\x1b\x00") {
		t.Errorf("the fault holds what can't be printed: %q", f)
	}
}

// TestBadStarts starts programs that never become a standard.
func TestBadStarts(t *testing.T) {
	slow := Limits{Start: 700 * time.Millisecond}
	for _, c := range []struct {
		name   string
		limits Limits
		side   standard.Side
		says   string
	}{
		{"crash at start", Limits{}, standard.ChangeStandard, "it ended (exit status 3), saying: library libwire is missing before it announced itself"},
		{"silent", slow, standard.ChangeStandard, "not ready within 700ms"},
		{"garbage", Limits{}, standard.ChangeStandard, `its first line is "Welcome to my standard!", and should be 1|1|unix|PATH|grpc`},
		{"junk", Limits{}, standard.ChangeStandard, "its first line is"},
		{"endless line", Limits{}, standard.ChangeStandard, "its first line is"},
		{"core protocol 7", Limits{}, standard.BuildAnew, "version 7 of go-plugin's protocol"},
		{"contract 2", Limits{}, standard.NewerProgram, "the standard speaks contract 2, this program 1"},
		{"contract 0", Limits{}, standard.BuildAnew, "the standard speaks contract 0, this program 1"},
		{"net/rpc", Limits{}, standard.ChangeStandard, "its first line is"},
		{"few parts", Limits{}, standard.ChangeStandard, `its first line is "1|1|unix"`},
		{"no socket", Limits{}, standard.ChangeStandard, "a socket that is not there"},
		{"dead socket", Limits{}, standard.ChangeStandard, "nobody answers at the socket"},
		{"mute socket", slow, standard.ChangeStandard, "not ready within 700ms"},
		{"no sign of life", slow, standard.ChangeStandard, "not ready within 700ms"},
		{"not serving", Limits{}, standard.ChangeStandard, "it says of itself that it is not serving (NOT_SERVING)"},
		{"socket elsewhere", Limits{}, standard.ChangeStandard, "outside the folder"},
		{"socket behind a link", Limits{}, standard.ChangeStandard, "a socket that is not there"},
		{"tcp", Limits{}, standard.ChangeStandard, "outside the folder"},
		{"certificate nobody asked for", Limits{}, "change tls in trusted.yaml, or the standard", "tls: false"},
		{"leaves children and crashes", Limits{}, standard.ChangeStandard, "it ended (exit status 5)"},
		{"hang when asked what it is", slow, standard.ChangeStandard, "not ready within 700ms"},
		{"wrong unit", Limits{}, standard.ChangeStandard, `its fact net is in "kN", which is no canonical unit`},
		{"newer contract", Limits{}, standard.NewerProgram, "the standard speaks contract 2, this program 1"},
		{"older contract", Limits{}, standard.BuildAnew, "the standard speaks contract 0, this program 1"},
		{"another standard", Limits{}, standard.TrustAnew, "the program calls itself other-rule"},
		{"another edition", Limits{}, standard.TrustAnew, "declares edition 2, and 1 was trusted"},
		{"escape sequences", Limits{}, standard.ChangeStandard, "can't be printed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			p := started(t, c.name)
			p.ID, p.Edition = "test-rule", "1"
			r, err := Start(t.Context(), p, patient(c.limits))
			if err == nil {
				_ = r.Close()
			}
			faulty(t, err, c.side, c.says)
		})
	}
}

// patient gives what is left open more time than a busy machine needs.
func patient(l Limits) Limits {
	l.Start, l.Derive = cmp.Or(l.Start, time.Minute), cmp.Or(l.Derive, time.Minute)
	l.Working = cmp.Or(l.Working, time.Minute)
	return l
}

// begun is a program that came up.
func begun(t *testing.T, p Program, l Limits) *Running {
	t.Helper()
	l = patient(l)
	r, err := Start(t.Context(), p, l)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = r.Close() })
	return r
}

// question asks of two landings, of which the second has no hole that is known.
func question() standard.Question {
	c := standard.NewNumbers("hole", 2)
	c.Give(0, 12)
	return standard.Question{Kind: "landing", Rows: 2, Columns: []standard.Column{c}}
}

// right wants the answer of a sound standard.
func right(t *testing.T, a standard.Answer, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	if n, known := a.Columns[0].Number(0); !known || n != 12000 {
		t.Errorf("it answered %v, %v", n, known)
	}
}

// TestBadAnswers asks programs that come up well and then lie or break down.
func TestBadAnswers(t *testing.T) {
	slow := Limits{Derive: 500 * time.Millisecond}
	for _, c := range []struct {
		name   string
		limits Limits
		says   string
	}{
		{"crash in a call", Limits{}, "it ended (exit status 2), saying: panic: a hole without an edge, and again after it was started anew"},
		{"exit in a call", Limits{}, "it ended (exit status 7), and again"},
		{"hang in a call", slow, "no answer within 500ms"},
		{"spin in a call", slow, "no answer within 500ms"},
		{"endless answer", Limits{Memory: 2 << 30}, "a message is larger than is taken"},
		{"short column", Limits{}, "its column net has 1 numbers for 2 rows"},
		{"column of NaN", Limits{}, "it gives net of row 0 as NaN"},
		{"infinite", Limits{}, "it gives net of row 0 as +Inf"},
		{"unexplained unknown", Limits{}, "it leaves net of row 0 unknown, and does not say why"},
		{"known of unknown", Limits{}, "it gives net of row 1 although hole is unknown there"},
		{"another column", Limits{}, `is called "gross" and should be net`},
		{"no column", Limits{}, "0 columns"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if testing.Short() && c.name == "endless answer" {
				t.Skip("it takes 400 MB")
			}
			t.Parallel()
			r := begun(t, started(t, c.name), c.limits)
			_, err := r.Derive(t.Context(), question())
			faulty(t, err, standard.ChangeStandard, c.says)
			if c.name == "endless answer" {
				return
			}
			if _, err := r.Derive(t.Context(), question()); err == nil {
				t.Error("asked again, it passed")
			}
		})
	}
}

// TestOwnWords: what a standard says of itself reads as in the same process.
func TestOwnWords(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "says no"), Limits{})
	if _, err := r.Derive(t.Context(), question()); err == nil || err.Error() != "the hole is a slot" {
		t.Errorf("it said %v", err)
	}
	r = begun(t, started(t, "says no in colour"), Limits{})
	if _, err := r.Derive(t.Context(), question()); err == nil || err.Error() != "the hole ?[31mis a slot" {
		t.Errorf("it said %q", err)
	}
}

func TestSound(t *testing.T) {
	t.Parallel()
	for _, tls := range []bool{false, true} {
		p := started(t, "sound")
		p.TLS = tls
		r := begun(t, p, Limits{})
		a, err := r.Derive(t.Context(), question())
		right(t, a, err)
		steps, err := r.Working(t.Context(), standard.Asked{Kind: "landing", Fact: "net", Columns: question().Columns})
		if err != nil || len(steps) != 1 || steps[0].Value != 12000 {
			t.Errorf("it showed %v, %v", steps, err)
		}
		if d, err := r.Describe(t.Context()); err != nil || d.ID != "test-rule" {
			t.Errorf("it is %v, %v", d, err)
		}
		if err := r.Close(); err != nil {
			t.Error(err)
		}
		_, err = r.Derive(t.Context(), question())
		faulty(t, err, "", "it was ended")
		if err := r.Close(); err != nil {
			t.Error(err)
		}
	}
}

func TestEmptyWorking(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "empty working"), Limits{})
	_, err := r.Working(t.Context(), standard.Asked{Kind: "landing", Fact: "net"})
	faulty(t, err, standard.ChangeStandard, "a working without a step")
}

func TestUnknownTable(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "sound"), Limits{})
	_, err := r.Derive(t.Context(), standard.Question{Kind: "stay"})
	faulty(t, err, "", "no table of the kind stay")
}

// TestCertificateIsMissed: with TLS agreed on, a program that ignores it is refused.
func TestCertificateIsMissed(t *testing.T) {
	t.Parallel()
	p := started(t, "no certificate")
	p.TLS = true
	_, err := Start(t.Context(), p, patient(Limits{}))
	faulty(t, err, "change tls in trusted.yaml, or the standard", "tls: true")
}

// TestFlood: what a program prints costs time and no memory, and hides nothing.
func TestFlood(t *testing.T) {
	if testing.Short() {
		t.Skip("it prints 100 MB")
	}
	t.Parallel()
	r := begun(t, started(t, "flood"), Limits{})
	a, err := r.Derive(t.Context(), question())
	right(t, a, err)
	if o := r.process.said; len(o.head)+len(o.tail) > 2*mostKept {
		t.Errorf("%d bytes of its output were kept", len(o.head)+len(o.tail))
	}
}

// TestHangInShutdown: a program that does not want to end is ended.
func TestHangInShutdown(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "hang in Shutdown"), Limits{Stop: 300 * time.Millisecond})
	soon(t, 30*time.Second, func() { _ = r.Close() })
}

// soon wants something to be done within a time that only a hang exceeds.
func soon(t *testing.T, limit time.Duration, do func()) {
	t.Helper()
	done := make(chan struct{})
	go func() { do(); close(done) }()
	select {
	case <-done:
	case <-time.After(limit):
		t.Fatalf("not done after %v", limit)
	}
}

// TestChildren: children that stay in the group end with the program; one that went
// away, with both outputs in hand, can't make us wait.
func TestChildren(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "leaves children"), Limits{})
	a, err := r.Derive(t.Context(), question())
	right(t, a, err)
	soon(t, 30*time.Second, func() { _ = r.Close() })

	p := started(t, "child with the pipes")
	r = begun(t, p, Limits{})
	soon(t, 30*time.Second, func() { _ = r.Close() })
	endAll(p.Args[2])
}

// endAll ends what went away, which only its word tells.
func endAll(word string) {
	for _, line := range withWord(word) {
		pid, err := strconv.Atoi(strings.Split(line, "/")[2])
		if p, found := os.FindProcess(pid); err == nil && found == nil {
			_ = p.Kill()
		}
	}
}

// TestCrashOnce: one crash is forgiven, for all who were asking.
func TestCrashOnce(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "crash once", filepath.Join(t.TempDir(), "crashed")), Limits{})
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			a, err := r.Derive(t.Context(), question())
			if err != nil || a.Columns[0].Numbers[0] != 12000 {
				t.Errorf("it answered %v, %v", a, err)
			}
		})
	}
	all.Wait()
}

// TestOtherAfterCrash: a program that is something else after its crash is at fault.
func TestOtherAfterCrash(t *testing.T) {
	t.Parallel()
	r := begun(t, started(t, "change after a crash", filepath.Join(t.TempDir(), "crashed")), Limits{})
	_, err := r.Derive(t.Context(), question())
	faulty(t, err, standard.ChangeStandard, "it declared something else when it was started again")
}

// TestCancel: whoever asks may give up, at the start and later, and hears of it as such.
func TestCancel(t *testing.T) {
	t.Parallel()
	ctx, cancel := context.WithTimeout(t.Context(), 200*time.Millisecond)
	defer cancel()
	if _, err := Start(ctx, started(t, "silent"), patient(Limits{})); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("giving up at the start gave %v", err)
	}
	r := begun(t, started(t, "hang in a call"), Limits{})
	ctx, cancel = context.WithTimeout(t.Context(), 200*time.Millisecond)
	defer cancel()
	if _, err := r.Derive(ctx, question()); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("giving up in a call gave %v", err)
	}
}

// title is what a program puts into its title.
func title(t *testing.T, name string) string {
	t.Helper()
	r := begun(t, started(t, name), Limits{})
	return r.declared.Title
}

// TestSeesNothing: a program sees an empty folder, a small environment and nothing
// on its standard input, which stays ours.
func TestSeesNothing(t *testing.T) {
	if got := title(t, "where it is"); !strings.HasPrefix(got, os.Getenv("TMPDIR")+"/cw") || !strings.HasSuffix(got, "/run holds 0") {
		t.Errorf("it runs in %s", got)
	}
	want := "CHAINWALE_STANDARD GOMEMLIMIT HOME LANG LC_ALL PATH PLUGIN_MAX_PORT PLUGIN_MIN_PORT PLUGIN_PROTOCOL_VERSIONS PLUGIN_UNIX_SOCKET_DIR PYTHONDONTWRITEBYTECODE PYTHONHASHSEED PYTHONNOUSERSITE TMPDIR TZ"
	if got := strings.Replace(title(t, "environment"), " PWD", "", 1); got != want {
		t.Errorf("it sees  %s\nand should %s", got, want)
	}
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	old := os.Stdin
	os.Stdin = read
	defer func() { os.Stdin = old }()
	_, _ = write.WriteString("the plan")
	_ = write.Close()
	if got := title(t, "reads its input"); got != "0 bytes were read" {
		t.Error(got)
	}
	left := make([]byte, 100)
	if n, _ := read.Read(left); string(left[:n]) != "the plan" {
		t.Errorf("of our own input %q is left", left[:n])
	}
}

// TestNotStarted: what is no program is a fault like any other.
func TestNotStarted(t *testing.T) {
	t.Parallel()
	_, err := Start(t.Context(), Program{ID: "test-rule", Path: filepath.Join(t.TempDir(), "nothing"), Unpinned: true}, Limits{})
	faulty(t, err, standard.ChangeStandard, "can't be started")
}
