package golden

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Case is a bad input: one fault, and the first line of the report on it.
// DEVELOPERS.md tells how the tables of them are written.
type Case struct {
	Name  string // begins with job- for a job, else it is a part
	Text  string
	Want  string
	Later bool // whether it can be read, and is refused when it is worked out
	Line  int  // of the table, from 0, where Want stands
}

// IsJob tells whether the input is a job file, not a part.
func (c Case) IsJob() bool { return strings.HasPrefix(c.Name, "job-") }

// Cases reads all tables of a folder: the cases by file.
func Cases(t testing.TB, folder string) map[string][]Case {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no tables in %s: %v", folder, err)
	}
	tables := map[string][]Case{}
	for _, file := range files {
		table, err := os.ReadFile(file)
		if err == nil {
			tables[file], err = readCases(folder, string(table))
		}
		if err != nil {
			t.Fatalf("%s:%v", file, err)
		}
	}
	return tables
}

// readCases reads a table. A case is a name at the left, edits of the base
// indented by a tab, and last the wanted line.
func readCases(folder, table string) ([]Case, error) {
	var cases []Case
	var base, name, text string
	for i, line := range strings.Split(table, "\n") {
		edit, indented := strings.CutPrefix(line, "\t")
		want, last := strings.CutPrefix(edit, "! ")
		if !last {
			want, last = strings.CutPrefix(edit, "!! ")
		}
		var err error
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "base "):
			base, err = caseFile(folder, "good", strings.TrimPrefix(line, "base "))
		case !indented && name == "":
			name, text = line, base
		case !indented || name == "":
			err = fmt.Errorf("a case without its wanted line, or a line without a case")
		case last:
			cases = append(cases, Case{name, text, want, edit[1] == '!', i})
			name = ""
		case edit == "file":
			text, err = caseFile(folder, "files", name)
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

func caseFile(path ...string) (string, error) {
	data, err := os.ReadFile(filepath.Join(path...) + ".yaml")
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
