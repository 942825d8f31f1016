// Package golden compares what a test made with a file of what is wanted.
//
// Run the tests with CENTREPOP_UPDATE=1 to write the wanted files anew, then
// read the difference before committing it.
package golden

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

// Update tells whether wanted files are being written anew.
func Update() bool { return os.Getenv("CENTREPOP_UPDATE") == "1" }

// Compare fails the test if got is not what the file at path holds, byte for
// byte, and names the first line that differs. A missing file is a failure.
// With CENTREPOP_UPDATE=1 it writes the file, and its folders, instead.
func Compare(t *testing.T, path string, got []byte) {
	t.Helper()
	if Update() {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Errorf("no wanted file (CENTREPOP_UPDATE=1 writes it): %v", err)
		return
	}
	if difference := Diff(want, got); difference != "" {
		t.Errorf("%s: %s", path, difference)
	}
}

// Diff returns the first line in which two texts differ, or "".
func Diff(want, got []byte) string {
	if bytes.Equal(want, got) {
		return ""
	}
	wanted, gotten := bytes.Split(want, []byte("\n")), bytes.Split(got, []byte("\n"))
	i := 0
	for i < len(wanted) && i < len(gotten) && bytes.Equal(wanted[i], gotten[i]) {
		i++
	}
	return fmt.Sprintf("line %d differs\nwant: %s\ngot:  %s\n(%d lines wanted, %d got)",
		i+1, line(wanted, i), line(gotten, i), len(wanted), len(gotten))
}

// line returns line i of a text, quoted so that blanks at its end show.
func line(lines [][]byte, i int) string {
	if i >= len(lines) {
		return "no more lines"
	}
	const most = 300
	if len(lines[i]) <= most {
		return fmt.Sprintf("%q", lines[i])
	}
	return fmt.Sprintf("%q…, %d bytes", lines[i][:most], len(lines[i]))
}
