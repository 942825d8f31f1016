//go:build unix

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
	"unicode/utf8"
)

// What one bad input may cost. The time only catches a run that does not end;
// how fast it is is a matter of the benchmarks. The memory is what the oldest
// office computer has (common practice, no source).
const (
	longest   = 60 * time.Second
	mostBytes = 512 << 20 // allocated over the whole run
)

// TestHostileFilesMade does the same with what is too large to keep, or is no
// plain file.
func TestHostileFilesMade(t *testing.T) {
	plate := fileText(t, "testdata/hostile/good/plate.yaml")
	group := "  - {name: g%d, circle: {pcd: %g, count: 1000, first: %g}, size: 0.2}\n"
	path := func(data string) string {
		return strings.Replace(plate, "{circle: 165}", "\n  path: >-\n    "+data+"\n", 1)
	}
	many := func(n int, one string) string { return "[" + strings.Repeat(one+", ", n-1) + one + "]" }
	for _, c := range []struct{ name, part, want string }{
		{"one-byte-too-many", plate + strings.Repeat("# all work and no play\n", 1<<20/23+1), "larger than 1024 KiB"},
		{"all-comments", strings.Repeat("#\n", 1<<19), "more than 20000 lines"},
		{"million-keys", plate + strings.Repeat("k: 1\n", 1_000_000), "larger than 1024 KiB"},
		{"many-keys", plate + numbered(19_000, "k%d: 1\n"), "keys stand in one place"},
		{"many-words", plate + numbered(19_000, "k%d: [1, 1, 1, 1, 1]\n"), "words and marks"},
		{"as-many-keys-as-are-read", plate + numbered(4_900, "k%d: 1\n"), "is not known in the part"},
		{"one-key-many-times", plate + strings.Repeat("quantity: 1\n", 4_900), "given twice"},
		{"long-line", plate + "title: " + strings.Repeat("x", 1_000_000) + "\n", "more than 20000 characters"},
		{"long-line-of-wide-characters", plate + "title: " + strings.Repeat("鋼", 300_000) + "\n", "more than 20000 characters"},
		{"empty-lines", plate + strings.Repeat("\n", 1_000_000), "more than 20000 lines"},
		{"spaces", strings.Repeat(" ", 1_000_000), "more than 20000 characters"},
		{"nul-bytes", strings.Repeat("\x00", 1<<20), "NUL"},
		{"brackets-in-lines", plate + "notes:\n" + strings.Repeat(" [\n", 15_000), "deeper than 32 levels"},
		{"braces-in-a-line", plate + "stock: " + strings.Repeat("{a: ", 4900) + "\n", "deeper than 32 levels"},
		{"dashes-in-a-line", plate + "notes:\n  " + strings.Repeat("- ", 9000) + "\n", "deeper than 32 levels"},
		{"staircase-of-keys", plate + staircase(190), "deeper than 32 levels"},
		{"notes-101", plate + "notes: " + many(101, "note") + "\n", "101 entries"},
		{"points-1001", plate + "slots:\n  - {name: s, width: 1, length: 2, at: " + many(1001, "[0, 60]") + "}\n", "1001 entries"},
		{"angles-1001", plate + "slots:\n  - {name: s, width: 1, length: 2, angles: {pcd: 140, at: " + many(1001, "0") + "}}\n", "1001 entries"},
		{"hole-groups-201", plate + numbered(200, "  - {name: g%d, at: [[0, 60]], size: 1}\n"), "201 entries"},
		{"chamfers-201", plate + "chamfers: " + many(201, "{edge: bore-back, size: 1}") + "\n", "201 entries"},
		{"holes-200-times-1000", plate + func() string {
			var b strings.Builder
			for i := range 199 {
				fmt.Fprintf(&b, group, i, 95+float64(i)*0.3, float64(i)*0.1)
			}
			return b.String()
		}(), "at most"},
		{"path-of-2001-lines", path("M-90 -90 " + strings.Repeat("l0.01 0 ", 2001) + "L90 90 Z"), "more than 2000 segments"},
		{"path-without-spaces", path("M0-1" + strings.Repeat("-1-1", 4000) + "Z"), "more than 2000 segments"},
		{"path-zigzag-that-crosses", path("M-90 -90 " + numberedBoth(1900, "L%[1]d.5 %[2]d ") + "L0 200 L-200 0 Z"), "cross"},
		{"path-curves-that-cross", path("M-90 -90 " + strings.Repeat("c60 300 -30 -300 0.1 0 ", 700) + "L90 90 Z"), "cross"},
		{"path-arcs-that-cross", path("M-90 -90 " + strings.Repeat("a50 50 0 1 1 0.1 0.1 ", 700) + "L90 90 Z"), "cross"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			write(t, filepath.Join(dir, "part.yaml"), c.part)
			job := filepath.Join(dir, "job.yaml")
			write(t, job, "job: Hostile\nunits: mm\nparts: [part.yaml]\n")
			text := refused(t, job)
			checkReport(t, dir, text)
			if !strings.Contains(text, c.want) {
				t.Errorf("the report does not say %q:\n%.600s", c.want, text)
			}
		})
	}
}

// numbered repeats a line with a running number.
func numbered(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// numberedBoth repeats a text with a number that creeps and one that swings,
// in lines a file may have.
func numberedBoth(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i%90, 60*(i%2*2-1))
		if i%500 == 499 {
			b.WriteString("\n    ")
		}
	}
	return b.String()
}

func staircase(steps int) string {
	var b strings.Builder
	for i := range steps {
		b.WriteString(strings.Repeat(" ", i) + "k:\n")
	}
	return b.String()
}

// TestHostileJobs lists parts that are too many or that are no plain files.
func TestHostileJobs(t *testing.T) {
	plate := fileText(t, "testdata/hostile/good/plate.yaml")
	for _, c := range []struct {
		name  string
		lists string
		want  string
		make  func(dir string) error
	}{
		{"too-many-parts", strings.Repeat("a.yaml, ", 2000) + "a.yaml", "2001 entries", nil},
		{"link-out-of-the-folder", "link.yaml", "leads out of the job's folder by a link", func(dir string) error {
			write(t, filepath.Join(filepath.Dir(dir), "outside.yaml"), plate)
			return os.Symlink("../outside.yaml", filepath.Join(dir, "link.yaml"))
		}},
		{"link-to-the-root", "link/etc/hostname", "leads out of the job's folder by a link", func(dir string) error {
			return os.Symlink("/", filepath.Join(dir, "link"))
		}},
		{"link-to-itself", "link.yaml", "cannot be read", func(dir string) error {
			return os.Symlink("link.yaml", filepath.Join(dir, "link.yaml"))
		}},
		{"link-to-the-job", "link.yaml", "is not known in the part", func(dir string) error {
			return os.Symlink("job.yaml", filepath.Join(dir, "link.yaml"))
		}},
		{"link-to-nothing", "link.yaml", "there is no file", func(dir string) error {
			return os.Symlink("nothing", filepath.Join(dir, "link.yaml"))
		}},
		{"same-part-by-a-link", "a.yaml, link.yaml", "listed already", func(dir string) error {
			write(t, filepath.Join(dir, "a.yaml"), plate)
			return os.Symlink("a.yaml", filepath.Join(dir, "link.yaml"))
		}},
		{"pipe", "pipe.yaml", "is not a file", func(dir string) error {
			return syscall.Mkfifo(filepath.Join(dir, "pipe.yaml"), 0o666)
		}},
		{"folder", "part.yaml", "is not a file", func(dir string) error {
			return os.Mkdir(filepath.Join(dir, "part.yaml"), 0o777)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "job")
			if err := os.Mkdir(dir, 0o777); err != nil {
				t.Fatal(err)
			}
			job := filepath.Join(dir, "job.yaml")
			write(t, job, "job: Hostile\nunits: mm\nparts: ["+c.lists+"]\n")
			if c.make != nil {
				if err := c.make(dir); err != nil {
					t.Fatal(err)
				}
			}
			text := refused(t, job)
			checkReport(t, dir, text)
			if !strings.Contains(text, c.want) {
				t.Errorf("the report does not say %q:\n%.600s", c.want, text)
			}
		})
	}
}

// TestJobIsNoFile: what stands in the place of the job file is not opened, so
// a pipe that nobody writes to does not hang the program.
func TestJobIsNoFile(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe.yaml")
	if err := syscall.Mkfifo(pipe, 0o666); err != nil {
		t.Fatal(err)
	}
	for _, job := range []string{pipe, dir, "/dev/zero", "/dev/null", filepath.Join(dir, "none.yaml"), filepath.Join(dir, "none", "job.yaml"),
		"", "bad\x00name", strings.Repeat("a", 5000)} {
		text := refused(t, job)
		if lines := strings.Count(strings.TrimSpace(text), "\n"); lines > 1 || !strings.HasPrefix(text, "centrepop sheets: job") {
			t.Errorf("job %.40q: the report is %q", job, text)
		}
	}
}

// refused runs a job that must be refused, in the bounds above, with no output
// of any kind, and returns the report. The report as JSON must agree.
func refused(t *testing.T, job string) string {
	t.Helper()
	dir := t.TempDir()
	out := filepath.Join(dir, "out.pdf")
	var stdout, stderr, asJSON bytes.Buffer
	done := make(chan int, 1)
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	go func() {
		first := run([]string{"sheets", job, "-o", out}, &stdout, &stderr)
		done <- max(first, run([]string{"sheets", job, "-o", out, "--json"}, &stdout, &asJSON))
	}()
	select {
	case status := <-done:
		if status != statusBad {
			t.Fatalf("exit status %d, want %d: %s%s", status, statusBad, &stdout, &stderr)
		}
	case <-time.After(longest):
		t.Fatalf("no end after %v", longest)
	}
	runtime.ReadMemStats(&after)
	if used := (after.TotalAlloc - before.TotalAlloc) / 2; used > mostBytes {
		t.Errorf("it allocated %d MiB, want at most %d", used>>20, mostBytes>>20)
	}
	if stdout.Len() > 0 {
		t.Errorf("standard output: %q", &stdout)
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) > 0 {
		t.Errorf("the output folder holds %v (%v), want nothing", left, err)
	}
	var answer struct{ Errors []fault }
	if err := json.Unmarshal(asJSON.Bytes(), &answer); err != nil || len(answer.Errors) == 0 {
		t.Fatalf("the JSON report is %.300q: %v", &asJSON, err)
	}
	if e := answer.Errors[0]; !strings.Contains(stderr.String(), e.What) || e.Line > 0 && !strings.HasPrefix(stderr.String(), fmt.Sprintf("%s:%d:%d: ", e.File, e.Line, e.Column)) {
		t.Errorf("the JSON report starts with %+v, the text with %.300q", e, &stderr)
	}
	return stderr.String()
}

var reportHead = regexp.MustCompile(`^([^:]+):(\d+):(\d+): (\S.*)$`)

// checkReport checks that every fault of a report names a place inside a file
// of the folder, shows that line with a caret under the column, and says what
// would be right; and that nothing in it can disturb a terminal.
func checkReport(t *testing.T, dir, text string) {
	t.Helper()
	for _, r := range text {
		if r < ' ' && r != '\n' || r >= 0x7F && r < 0xA0 || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 {
			t.Errorf("the report holds the character %U", r)
		}
	}
	faults := strings.Split(strings.TrimSuffix(text, "\n"), "\n\n")
	for i, one := range faults {
		lines := strings.Split(one, "\n")
		head := reportHead.FindStringSubmatch(lines[0])
		if head == nil {
			t.Errorf("no place in %q", lines[0])
			continue
		}
		if strings.Contains(one, "faults; the rest is not shown") && i == len(faults)-1 && i > 0 {
			continue // says only that there is more
		}
		var line, column int
		fmt.Sscan(head[2], &line)
		fmt.Sscan(head[3], &column)
		source := sourceLines(t, filepath.Join(dir, head[1]))
		if line < 1 || line > len(source) || column < 1 || column > utf8.RuneCountInString(source[line-1])+1 {
			t.Errorf("%s: the file has no such place", lines[0])
			continue
		}
		if right := lines[len(lines)-1]; !strings.HasPrefix(right, "right: ") || len(right) < len("right: x") {
			t.Errorf("%s: the report does not say what is right:\n%s", lines[0], one)
		}
		if len(lines) == 4 && strings.HasPrefix(lines[1], "    ") && strings.HasPrefix(lines[2], "    ") && strings.HasSuffix(lines[2], "^") {
			checkCaret(t, lines, source[line-1], column)
			continue
		}
		// No line to show where the file is no text at all.
		whole := line == 1 && column == 1
		if blank := strings.TrimSpace(source[line-1]) == ""; len(lines) != 2 || !blank && !whole {
			t.Errorf("the report has not the shape of place, line, caret, right:\n%s", one)
		}
	}
}

// checkCaret checks that the caret stands under the character it points at.
func checkCaret(t *testing.T, lines []string, source string, column int) {
	t.Helper()
	shown, caret := []rune(lines[1]), utf8.RuneCountInString(lines[2])-1
	line := []rune(source)
	if column > len(line) || caret >= len(shown) {
		return // points behind the end
	}
	if want := line[column-1]; want > ' ' && want < 0x7F && shown[caret] != want {
		t.Errorf("the caret stands under %q, not under %q:\n%s\n%s", shown[caret], want, lines[1], lines[2])
	}
}

// sourceLines cuts a file the way an editor counts its lines.
func sourceLines(t *testing.T, path string) []string {
	t.Helper()
	text := strings.TrimPrefix(fileText(t, path), "\ufeff")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	return strings.Split(text, "\n")
}
