//go:build unix

package host

import (
	"context"
	"fmt"
	"io"
	"math"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/hashicorp/go-plugin"
	"google.golang.org/grpc"
	"google.golang.org/grpc/health/grpc_health_v1"

	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins"
)

// The programs of these tests are this test's own binary, started with the argument
// -be and a name: each is a real process that does one thing wrong.

// TestMain is one of the programs if it is started as one, and else runs the tests
// in a folder for temporary files that must be empty afterwards.
func TestMain(m *testing.M) {
	if len(os.Args) > 2 && os.Args[1] == "-be" {
		be(os.Args[2], os.Args[3:])
		os.Exit(0)
	}
	syscall.Umask(0o022) // what the tests write is not for a group to change
	dir, err := os.MkdirTemp("/tmp", "host")
	if err != nil {
		panic(err)
	}
	_ = os.Setenv("TMPDIR", dir)
	_ = os.Setenv("A_SECRET", "of the user")
	status := m.Run()
	left, _ := os.ReadDir(dir)
	for _, f := range left {
		if !strings.HasPrefix(f.Name(), "Test") && !strings.HasPrefix(f.Name(), "go-build") {
			fmt.Fprintln(os.Stderr, "left behind:", filepath.Join(dir, f.Name()))
			status = 1
		}
	}
	_ = os.RemoveAll(dir)
	os.Exit(status)
}

// sound is a standard that does all as it should; each field lets it do one thing
// otherwise.
type sound struct {
	describe func(*standard.Description)
	derive   func(*standard.Answer) error
	working  func() ([]working.Step, error)
}

func (s sound) Describe(context.Context) (standard.Description, error) {
	d := standard.Description{
		Contract: standard.Contract, ID: "test-rule", Prefix: "test", Title: "A rule of thumb", Edition: "1", Publisher: "nobody", Basis: standard.Ultimate,
		Tables: []standard.Table{{
			Kind:    "landing",
			Reads:   []standard.Read{{Name: "hole", Type: standard.Number, Unit: "mm"}},
			Derives: []standard.Derive{{Name: "net", Unit: "N", Clause: "1", Meaning: "what it bears", From: []string{"hole"}}},
		}},
		Clauses: []standard.Clause{{Clause: "1", Covered: true, Why: "all of it"}},
		Pack:    []standard.File{{Path: "pack.yaml"}},
	}
	if s.describe != nil {
		s.describe(&d)
	}
	return d, nil
}

func (s sound) Derive(_ context.Context, q standard.Question) (standard.Answer, error) {
	c := standard.NewNumbers("net", q.Rows)
	for row := range q.Rows {
		if hole, known := q.Columns[0].Number(row); known {
			c.Give(row, 1000*hole)
		}
	}
	a := standard.Answer{Columns: []standard.Column{c}}
	if s.derive != nil {
		return a, s.derive(&a)
	}
	return a, nil
}

func (s sound) Working(context.Context, standard.Asked) ([]working.Step, error) {
	if s.working != nil {
		return s.working()
	}
	return []working.Step{{Symbol: "N", Formula: "1000·d", Value: 12000, Unit: "N", Source: working.Source{Title: "nobody", As: working.Judgement}}}, nil
}

// be is a program by its name.
func be(name string, args []string) {
	switch program := programs[name]; {
	case program != nil:
		program(args)
	case standards[name] != nil:
		plugins.Serve(*standards[name])
	default:
		fmt.Fprintln(os.Stderr, "no such program:", name)
		os.Exit(4)
	}
}

// does is a standard whose answers are made wrong by a function.
func does(f func(*standard.Answer)) *sound {
	return &sound{derive: func(a *standard.Answer) error { f(a); return nil }}
}

// declares is a standard whose declaration is made wrong by a function.
func declares(f func(*standard.Description)) *sound { return &sound{describe: f} }

// standards are programs that serve in due form and lie or break down in what they say.
var standards = map[string]*sound{
	"sound":           {},
	"crash in a call": does(func(*standard.Answer) { panic("a hole without an edge") }),
	"exit in a call":  does(func(*standard.Answer) { os.Exit(7) }),
	"hang in a call":  does(func(*standard.Answer) { select {} }),
	"spin in a call": does(func(*standard.Answer) {
		for i := 0; ; i++ {
			_ = i
		}
	}),
	"hang when asked what it is": declares(func(*standard.Description) { select {} }),
	"flood":                      does(func(*standard.Answer) { flood() }),
	"endless answer":             does(func(a *standard.Answer) { a.Columns[0].Numbers = make([]float64, 25_000_000) }),
	"says no":                    {derive: func(*standard.Answer) error { return fmt.Errorf("the hole is a slot") }},
	"says no in colour":          {derive: func(*standard.Answer) error { return fmt.Errorf("the hole\n\x1b[31mis a slot") }},
	"empty working":              {working: func() ([]working.Step, error) { return nil, nil }},

	"short column":        does(func(a *standard.Answer) { a.Columns[0].Numbers = a.Columns[0].Numbers[:1] }),
	"column of NaN":       does(func(a *standard.Answer) { a.Columns[0].Give(0, math.NaN()) }),
	"infinite":            does(func(a *standard.Answer) { a.Columns[0].Give(0, math.Inf(1)) }),
	"unexplained unknown": does(func(a *standard.Answer) { a.Columns[0].Known[0] &^= 1 }),
	"known of unknown":    does(func(a *standard.Answer) { a.Columns[0].Give(1, 1) }),
	"another column":      does(func(a *standard.Answer) { a.Columns[0].Name = "gross" }),
	"no column":           does(func(a *standard.Answer) { a.Columns = nil }),

	"wrong unit":       declares(func(d *standard.Description) { d.Tables[0].Derives[0].Unit = "kN" }),
	"newer contract":   declares(func(d *standard.Description) { d.Contract = 2 }),
	"older contract":   declares(func(d *standard.Description) { d.Contract = 0 }),
	"another standard": declares(func(d *standard.Description) { d.ID = "other-rule" }),
	"another edition":  declares(func(d *standard.Description) { d.Edition = "2" }),
	"escape sequences": declares(func(d *standard.Description) { d.Title = "\x1b[2J all holds" }),
	"environment":      declares(func(d *standard.Description) { d.Title = names(os.Environ()) }),
	"reads its input": declares(func(d *standard.Description) {
		read, _ := io.ReadAll(os.Stdin)
		d.Title = fmt.Sprintf("%d bytes were read", len(read))
	}),
	"where it is": declares(func(d *standard.Description) {
		dir, _ := os.Getwd()
		inside, _ := os.ReadDir(".")
		d.Title = fmt.Sprintf("%s holds %d", dir, len(inside))
	}),
}

func names(env []string) string {
	for i, e := range env {
		env[i], _, _ = strings.Cut(e, "=")
	}
	slices.Sort(env)
	return strings.Join(env, " ")
}

// flood prints a hundred megabytes, half of them on each output.
func flood() {
	line := strings.Repeat("chain plate ", 100) + "\n"
	for range 50_000_000 / len(line) {
		_, _ = os.Stdout.WriteString(line)
		_, _ = os.Stderr.WriteString(line)
	}
}

// programs are those that do not serve in due form. Their first argument is a word
// by which their processes are found.
var programs = map[string]func(args []string){
	"crash at start": func([]string) { fmt.Fprintln(os.Stderr, "library libwire is missing"); os.Exit(3) },
	"silent":         func([]string) { select {} },
	"garbage":        func([]string) { fmt.Println("Welcome to my standard!"); select {} },
	"junk":           func([]string) { _, _ = os.Stdout.Write([]byte{0, 1, 0x1b, '[', '2', 'J', 0xff, '\n'}); select {} },
	"endless line": func([]string) {
		for {
			_, _ = os.Stdout.WriteString(strings.Repeat("x", 4096))
		}
	},
	"core protocol 7": func([]string) { announce("7|1|unix|%s|grpc", inFolder("s")) },
	"contract 2":      func([]string) { announce("1|2|unix|%s|grpc", inFolder("s")) },
	"contract 0":      func([]string) { announce("1|0|unix|%s|grpc", inFolder("s")) },
	"net/rpc":         func([]string) { listen("s"); announce("1|1|unix|%s|netrpc", inFolder("s")) },
	"few parts":       func([]string) { announce("1|1|%s", "unix") },
	"no socket":       func([]string) { announce("1|1|unix|%s|grpc", inFolder("s")) },
	"dead socket": func([]string) {
		l := listen("s")
		l.SetUnlinkOnClose(false)
		_ = l.Close()
		announce("1|1|unix|%s|grpc", inFolder("s"))
	},
	"mute socket": func([]string) {
		listen("s")
		announce("1|1|unix|%s|grpc", inFolder("s"))
	},
	"socket elsewhere": func([]string) {
		announce("1|1|unix|%s|grpc", filepath.Join(os.Getenv("PLUGIN_UNIX_SOCKET_DIR"), "..", "s"))
	},
	"socket behind a link": func([]string) {
		listen("run/s")
		_ = os.Symlink(inFolder("run/s"), inFolder("s"))
		announce("1|1|unix|%s|grpc", inFolder("s"))
	},
	"tcp": func([]string) {
		l, _ := net.Listen("tcp", "127.0.0.1:0")
		announce("1|1|tcp|%s|grpc", l.Addr().String())
	},
	"certificate nobody asked for": func([]string) {
		listen("s")
		announce("1|1|unix|%s|grpc|"+strings.Repeat("QUJD", 30), inFolder("s"))
	},
	"no certificate": func([]string) {
		listen("s")
		announce("1|1|unix|%s|grpc", inFolder("s"))
	},
	"hang in Shutdown": func([]string) {
		serveWith(func(ctx context.Context, req any, info *grpc.UnaryServerInfo, h grpc.UnaryHandler) (any, error) {
			if strings.HasSuffix(info.FullMethod, "/Shutdown") {
				select {}
			}
			return h(ctx, req)
		})
	},
	"no sign of life": func([]string) {
		serveWith(func(ctx context.Context, req any, info *grpc.UnaryServerInfo, h grpc.UnaryHandler) (any, error) {
			if strings.HasSuffix(info.FullMethod, "/Check") {
				select {}
			}
			return h(ctx, req)
		})
	},
	"not serving": func([]string) {
		serveWith(func(ctx context.Context, req any, info *grpc.UnaryServerInfo, h grpc.UnaryHandler) (any, error) {
			if strings.HasSuffix(info.FullMethod, "/Check") {
				return &grpc_health_v1.HealthCheckResponse{Status: grpc_health_v1.HealthCheckResponse_NOT_SERVING}, nil
			}
			return h(ctx, req)
		})
	},
	"leaves children": func(args []string) {
		child(nil, args)
		plugins.Serve(sound{})
	},
	"leaves children and crashes": func(args []string) {
		child(nil, args)
		os.Exit(5)
	},
	"child with the pipes": func(args []string) {
		// A child that has called setsid is out of reach.
		child(&syscall.SysProcAttr{Setsid: true}, args)
		plugins.Serve(sound{})
	},
	"sleep": func(args []string) {
		long, err := time.ParseDuration(args[1])
		if err != nil {
			long = time.Minute
		}
		time.Sleep(long)
	},
	"crash once": func(args []string) {
		s := does(func(*standard.Answer) {
			if _, err := os.Stat(args[1]); err != nil {
				_ = os.WriteFile(args[1], nil, 0o644)
				panic("only this once")
			}
		})
		plugins.Serve(*s)
	},
	"change after a crash": func(args []string) {
		s := does(func(*standard.Answer) { _ = os.WriteFile(args[1], nil, 0o644); os.Exit(1) })
		s.describe = func(d *standard.Description) {
			if _, err := os.Stat(args[1]); err == nil {
				d.Title = "A softer rule"
			}
		}
		plugins.Serve(*s)
	},
	"writes beside itself": func(args []string) {
		_ = os.WriteFile(filepath.Join(args[1], "cache"), nil, 0o644)
		plugins.Serve(sound{})
	},
	// host starts a sound program, says where it is and waits to be killed.
	"host": func(args []string) {
		r, err := Start(context.Background(), Program{Path: os.Args[0], Args: []string{"-be", "sound", args[0]}, Unpinned: true}, Limits{})
		if err != nil {
			panic(err)
		}
		fmt.Println(r.process.run.ID(), r.process.folder)
		select {}
	},
}

func inFolder(name string) string { return filepath.Join(os.Getenv("PLUGIN_UNIX_SOCKET_DIR"), name) }

// announce prints a first line and goes on living.
func announce(form, where string) {
	fmt.Printf(form+"\n", where)
	select {}
}

func listen(name string) *net.UnixListener {
	l, err := net.Listen("unix", inFolder(name))
	if err != nil {
		panic(err)
	}
	return l.(*net.UnixListener)
}

// serveWith serves a sound standard with something in the way of its calls.
func serveWith(between grpc.UnaryServerInterceptor) {
	plugin.Serve(&plugin.ServeConfig{
		HandshakeConfig: plugins.Handshake,
		Plugins:         plugin.PluginSet{plugins.Name: &plugins.Plugin{Standard: sound{}}},
		GRPCServer: func(opts []grpc.ServerOption) *grpc.Server {
			return grpc.NewServer(append(opts, grpc.UnaryInterceptor(between))...)
		},
	})
}

// child starts a process that outlives its parent, with the parent's outputs.
func child(attr *syscall.SysProcAttr, args []string) {
	cmd := exec.Command(os.Args[0], append([]string{"-be", "sleep"}, append(args, "")...)...)
	cmd.Stdout, cmd.Stderr, cmd.SysProcAttr = os.Stdout, os.Stderr, attr
	if err := cmd.Start(); err != nil {
		panic(err)
	}
}
