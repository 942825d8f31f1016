package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// hostile is a bad input: one fault, and the first line of the report on it.
// DEVELOPERS.md tells how the tables of testdata/hostile are written.
type hostile struct {
	name string // begins with job- for a job, else it is a part
	text string
	want string
	line int // of the table, from 0, where want stands
}

// isJob tells whether the input is a job file, not a part.
func (h hostile) isJob() bool { return strings.HasPrefix(h.name, "job-") }

// hostileTables reads all tables: the cases by file.
func hostileTables(t testing.TB) map[string][]hostile {
	t.Helper()
	files, err := filepath.Glob("testdata/hostile/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no tables in testdata/hostile: %v", err)
	}
	tables := map[string][]hostile{}
	for _, file := range files {
		cases, err := readHostile(fileText(t, file))
		if err != nil {
			t.Fatalf("%s:%v", file, err)
		}
		tables[file] = cases
	}
	return tables
}

// readHostile reads a table. A case is a name at the left, edits of the base
// indented by a tab, and last the wanted line.
func readHostile(table string) ([]hostile, error) {
	var cases []hostile
	var base, name, text string
	for i, line := range strings.Split(table, "\n") {
		edit, indented := strings.CutPrefix(line, "\t")
		want, last := strings.CutPrefix(edit, "! ")
		var err error
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "base "):
			base, err = hostileFile("good", strings.TrimPrefix(line, "base "))
		case !indented && name == "":
			name, text = line, base
		case !indented || name == "":
			err = fmt.Errorf("a case without its wanted line, or a line without a case")
		case last:
			cases = append(cases, hostile{name, text, want, i})
			name = ""
		case edit == "file":
			text, err = hostileFile("files", name)
		default:
			text, err = edited(text, edit)
		}
		if err != nil {
			return nil, fmt.Errorf("%d: %w", i+1, err)
		}
	}
	if name != "" {
		return nil, fmt.Errorf("the case %s has no wanted line", name)
	}
	return cases, nil
}

func hostileFile(folder, name string) (string, error) {
	data, err := os.ReadFile(filepath.Join("testdata/hostile", folder, name+".yaml"))
	return string(data), err
}

// edited applies one edit: "+ LINE" adds a line at the end, "= TEXT" is
// another text, "OLD => NEW" replaces what must stand there once.
func edited(text, edit string) (string, error) {
	rest, isOther := strings.CutPrefix(edit, "= ")
	added, isAdded := strings.CutPrefix(edit, "+ ")
	if isOther || isAdded {
		more, err := unquoted(rest)
		if isAdded {
			more, err = unquoted(added)
			more = text + more + "\n"
		}
		return more, err
	}
	left, right, ok := strings.Cut(edit, " => ")
	if !ok {
		return "", fmt.Errorf("%q is no edit", edit)
	}
	older, err := unquoted(left)
	if err != nil {
		return "", err
	}
	newer, err := unquoted(right)
	if n := strings.Count(text, older); n != 1 && err == nil {
		err = fmt.Errorf("%q stands %d times in the base, not once", older, n)
	}
	return strings.Replace(text, older, newer, 1), err
}

// unquoted is a text as it stands or, where it begins with a quote, a sum of
// texts quoted as in Go, each perhaps with a number of times: "a" + "b"*3.
func unquoted(s string) (string, error) {
	if !strings.HasPrefix(s, `"`) {
		return s, nil
	}
	var b strings.Builder
	for s != "" {
		quoted, err := strconv.QuotedPrefix(s)
		if err != nil {
			return "", fmt.Errorf("%s: %w", s, err)
		}
		one, _ := strconv.Unquote(quoted)
		times, more, _ := strings.Cut(s[len(quoted):], " + ")
		n := 1
		if times != "" {
			if n, err = strconv.Atoi(strings.TrimPrefix(times, "*")); err != nil {
				return "", fmt.Errorf("%s: %w", s, err)
			}
		}
		b.WriteString(strings.Repeat(one, n))
		s = more
	}
	return b.String(), nil
}

// TestHostileFiles runs every case of the tables through the program. Each
// must give a report that points into the input, and no output. Its first
// line must be the wanted one, which leaves out the name of the file it is
// about where that is the input itself.
func TestHostileFiles(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("testdata/hostile")); err != nil {
		t.Fatal(err)
	}
	seen := map[string]string{}
	for file, cases := range hostileTables(t) {
		lines := strings.Split(fileText(t, file), "\n")
		for _, c := range cases {
			if seen[c.name] != "" {
				t.Errorf("%s is in %s and %s", c.name, seen[c.name], file)
			}
			seen[c.name] = file
			t.Run(c.name, func(t *testing.T) {
				first := c.report(t, dir)
				if first != c.want && !golden.Update() {
					t.Errorf("%s:%d\nwant %s\ngot  %s", file, c.line+1, c.want, first)
				}
				lines[c.line] = "\t! " + first
			})
		}
		if golden.Update() {
			golden.Compare(t, file, []byte(strings.Join(lines, "\n")))
		}
	}
	kept, _ := filepath.Glob("testdata/hostile/files/*.yaml")
	for _, file := range kept {
		if name := strings.TrimSuffix(filepath.Base(file), ".yaml"); seen[name] == "" {
			t.Errorf("%s is in no table", file)
		}
	}
}

// report runs the case in a copy of testdata/hostile, checks the
// report and returns its first line.
func (h hostile) report(t *testing.T, dir string) string {
	t.Helper()
	file := h.name + ".yaml"
	path := filepath.Join(dir, file)
	write(t, path, h.text)
	defer os.Remove(path)
	job := path
	if !h.isJob() {
		job = filepath.Join(dir, "job.yaml")
		write(t, job, "job: Hostile\nunits: mm\nparts: ["+file+"]\n")
	}
	text := refused(t, job)
	checkReport(t, dir, text)
	first, _, _ := strings.Cut(text, "\n")
	return strings.TrimPrefix(first, file+":")
}

// TestHostileTableFaults: a table that says nothing must not pass for one.
func TestHostileTableFaults(t *testing.T) {
	for table, want := range map[string]string{
		"base nothing\n":                            "1: open",
		"base plate\n\na\n\tkind => x":              "the case a has no wanted line",
		"base plate\n\na\n\tplate => x\n\t! 1:1: x": `"plate" stands 2 times`,
		"base plate\n\na\n\tgear => x\n\t! 1:1: x":  `"gear" stands 0 times`,
		"a\n\tkind\n\t! 1:1: x":                     "is no edit",
		"a\n\t= \"x\n\t! 1:1: x":                    "2: ",
		"a\n\t= \"x\"*y\n\t! 1:1: x":                "2: ",
		"a\n\tfile\n\t! 1:1: x":                     "2: open",
		"\t= x\n":                                   "1: a case",
		"a\nb\n":                                    "2: a case",
	} {
		if cases, err := readHostile(table); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, %v, want an error with %q", table, cases, err, want)
		}
	}
	text, err := unquoted(`"a\n" + "b"*3 + "\xff"`)
	if err != nil || text != "a\nbbb\xff" {
		t.Errorf("%q, %v", text, err)
	}
}
