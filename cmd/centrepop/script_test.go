package main

import (
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"centrepop/parts/golden"
	"centrepop/render/atomicfile"
)

// TestMain lets rubbish lie longer, which takes a sixth off the time.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	testscript.Main(m, map[string]func(){"centrepop": main, "slow-writer": slowWriter})
}

// slowWriter is a program that never finishes the file it writes.
func slowWriter() {
	tidyOnSignal()
	_ = atomicfile.Write(os.Args[1], func(w io.Writer) error {
		if _, err := io.WriteString(w, "half"); err != nil {
			return err
		}
		time.Sleep(time.Minute)
		return nil
	})
}

// TestScripts runs every script of testdata/script. Set CENTREPOP_UPDATE=1 to
// write the wanted outputs anew, then read the difference. $DATA has the demos, $PARTS the
// parts of the mill alone.
func TestScripts(t *testing.T) {
	scripts, err := filepath.Glob("testdata/script/*.txtar")
	if err != nil || len(scripts) == 0 {
		t.Fatalf("no scripts found: %v", err)
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	alone := filepath.Dir(partsAlone(t, pugMill))
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       golden.Update(),
		Setup: func(env *testscript.Env) error {
			env.Setenv("DATA", filepath.Join(root, "testdata"))
			env.Setenv("PARTS", alone)
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
