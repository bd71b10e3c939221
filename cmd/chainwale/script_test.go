package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"chainwale": main,
	})
}

// TestScripts runs sessions as a user could type them; each file of
// testdata/script says what it shows.
func TestScripts(t *testing.T) {
	root, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: os.Getenv("UPDATE") != "",
		Setup: func(e *testscript.Env) error {
			e.Setenv("BOATS", root+"/../../testdata/boats")
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"status": status},
	})
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
