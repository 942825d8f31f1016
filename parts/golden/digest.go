package golden

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// Whole is Compare of a long text with its Digest at path. CENTREPOP_FULL=DIR also
// writes the text itself below DIR: do so before a change and after it, and compare.
func Whole(t *testing.T, path string, text []byte) {
	t.Helper()
	if dir := os.Getenv("CENTREPOP_FULL"); dir != "" {
		of, err := os.Getwd()
		if err != nil {
			t.Fatal(err)
		}
		full := filepath.Join(dir, filepath.Base(of), path)
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	Compare(t, path, []byte(Digest(string(text))))
}

// Digest is a text with less of what is long or stands in rows, and a sum of what is left
// out, so that no byte can change and the digest stay. A line is cut at 60 characters.
// Of rows (lines one below the other that begin with the same blanks and "- ") the
// first stands. Lines with a tab within, a kind before it, are gathered: a line for each kind,
// with the first of it, up to the next line without.
func Digest(text string) string {
	var b strings.Builder
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for i := 0; i < len(lines); {
		lead, n := rowLead(lines[i]), i+1
		for n < len(lines) && lead != "" && rowLead(lines[n]) == lead {
			n++
		}
		switch {
		case lead == "" || lead != kinded && n == i+1:
			b.WriteString(cut(lines[i], "") + "\n")
		case lead == kinded:
			gathered(&b, lines[i:n])
		default:
			rest := strings.Join(lines[i+1:n], "\n")
			fmt.Fprintf(&b, "%s\n%s%d more, %s\n", cut(lines[i], ""), lead, n-i-1, sum(rest))
		}
		i = n
	}
	return b.String()
}

const kinded = "\t"

// rowLead is how a row begins, kinded where a kind stands before it, "" of any other line.
func rowLead(line string) string {
	rest := strings.TrimLeft(line, " \t")
	if strings.HasPrefix(rest, "- ") {
		return line[:len(line)-len(rest)] + "- "
	}
	if strings.Contains(rest, "\t") {
		return kinded
	}
	return ""
}

// gathered writes lines with kinds; in what order they stood is in the sum of all.
func gathered(b *strings.Builder, lines []string) {
	all, kinds := map[string][]string{}, []string(nil)
	for _, line := range lines {
		kind, what, _ := strings.Cut(line, "\t")
		if all[kind] == nil {
			kinds = append(kinds, kind)
		}
		all[kind] = append(all[kind], what)
	}
	for _, kind := range kinds {
		b.WriteString(cut(fmt.Sprintf("%d × %s: %s", len(all[kind]), kind, all[kind][0]), strings.Join(all[kind], "\n")) + "\n")
	}
	if len(kinds) > 1 {
		fmt.Fprintf(b, "%d in this order, %s\n", len(lines), sum(strings.Join(lines, "\n")))
	}
}

// cut is a line of at most 60 characters or so much of it and the sum of all, or of what
// the line stands for.
func cut(line, of string) string {
	const most = 60
	if of == "" && utf8.RuneCountInString(line) <= most {
		return line
	}
	of = cmp.Or(of, line)
	if r := []rune(line); len(r) > most {
		line = string(r[:most]) + "…"
	}
	return line + " " + sum(of)
}

func sum(s string) string {
	h := fnv.New32a()
	h.Write([]byte(s))
	return fmt.Sprintf("%08x", h.Sum32())
}
