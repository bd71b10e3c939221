package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"chainwale": main,
	})
}

// TestScripts runs commands as a user could type them; each file of
// testdata/script says what it shows.
func TestScripts(t *testing.T) {
	if testing.Short() {
		t.Skip("whole programs; what they call is tested in one piece besides")
	}
	root, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	hostile := t.TempDir()
	for name, content := range hostileFiles() {
		file := filepath.Join(hostile, name)
		if err := errors.Join(os.MkdirAll(filepath.Dir(file), 0o755), os.WriteFile(file, content, 0o644)); err != nil {
			t.Fatal(err)
		}
	}
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: os.Getenv("UPDATE") != "",
		Setup: func(e *testscript.Env) error {
			e.Setenv("BOATS", filepath.Join(root, "../../testdata/boats"))
			e.Setenv("HOSTILE", hostile)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"status": status},
	})
}

// hostileFiles are too large or too strange to stand in a script.
func hostileFiles() map[string][]byte {
	var bytes []byte
	for i := range 5000 {
		bytes = append(bytes, byte(i))
	}
	return map[string][]byte{
		"binary.yaml":    bytes,
		"brackets.yaml":  []byte(strings.Repeat("[", 1_000_000)),
		"large.yaml":     []byte(strings.Repeat("#", 2_000_000)),
		"deep/deep.yaml": []byte("have: " + strings.Repeat("(", 2_000_000)),
		"deep/pack.yaml": []byte("id: deep\nedition: \"1\"\ntitle: Deep\nauthor: nobody\nscope: A fault.\nnot_covered: [all else]\n"),
	}
}

// status N CMD ARGS... runs a command and holds it to its exit status.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N command args...")
	}
	err := ts.Exec(args[1], args[2:]...)
	got := "0"
	if err != nil {
		got = exitStatus(err)
	}
	if got != args[0] {
		ts.Fatalf("%s ends with status %s, wanted %s", args[1], got, args[0])
	}
}

func exitStatus(err error) string {
	type exiter interface{ ExitCode() int }
	if e, ok := err.(exiter); ok {
		return string(rune('0' + e.ExitCode()))
	}
	return err.Error()
}
