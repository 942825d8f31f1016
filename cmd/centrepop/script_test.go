package main

import (
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"centrepop/parts/golden"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"centrepop": main})
}

// TestScripts runs every script of testdata/script. Set CENTREPOP_UPDATE=1 to
// write the wanted outputs anew, then read the difference.
func TestScripts(t *testing.T) {
	scripts, err := filepath.Glob("testdata/script/*.txtar")
	if err != nil || len(scripts) == 0 {
		t.Fatalf("no scripts found: %v", err)
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       golden.Update(),
		Setup: func(env *testscript.Env) error {
			env.Setenv("DATA", filepath.Join(root, "testdata"))
			return nil
		},
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){"status": status},
	})
}

// status N COMMAND... runs a command and requires exactly that exit status:
// a plain ! cannot tell 1 from 2.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("use: status N COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	if err != nil {
		ts.Fatalf("status %s: not a number", args[0])
	}
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		exit, ok := err.(interface{ ExitCode() int })
		if !ok {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}
