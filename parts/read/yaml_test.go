package read

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"centrepop/parts"
)

const disc = "part: disc\nkind: plate\nstock: {plate: 8 mm}\noutline: {circle: 165 mm}\n"

// TestBytes covers what cannot stand in a text file under testdata.
func TestBytes(t *testing.T) {
	for _, c := range []struct {
		name, src    string
		line, column int
		what         string
	}{
		{"empty", "", 1, 1, "empty"},
		{"blank", "\n\n  \n", 1, 1, "empty"},
		{"only a document mark", "---\n", 1, 1, "empty"},
		{"NUL", disc + "title: a\x00b\n", 5, 9, "NUL"},
		{"not UTF-8", disc + "title: Ø\xff\n", 5, 9, "not UTF-8"},
		{"latin 1", "title: gr\xf6\xdfer\n", 1, 10, "not UTF-8"},
		{"UTF-16 little", "\xff\xfep\x00a\x00", 1, 1, "UTF-16"},
		{"UTF-16 big", "\xfe\xff\x00p\x00a", 1, 1, "UTF-16"},
		{"escape", disc + "title: \x1b[31m\n", 5, 8, "U+001B"},
		{"mark inside", disc + "title: a\uFEFFb\n", 5, 9, "U+FEFF"},
		{"right to left", disc + "title: a\u202Eb\n", 5, 9, "U+202E"},
		{"line separator", disc + "title: a\u2028b\n", 5, 9, "U+2028"},
		{"CRLF", strings.ReplaceAll(disc+"title: \"é\", x: 1\n", "\n", "\r\n"), 5, 11, "not valid YAML"},
		{"CRLF unknown key", strings.ReplaceAll(disc+"tittle: 1\n", "\n", "\r\n"), 5, 1, "tittle"},
		{"old Mac line ends", strings.ReplaceAll(disc+"tittle: 1\n", "\n", "\r"), 5, 1, "tittle"},
		{"byte order mark", "\uFEFFtittle: 1\n" + disc, 1, 1, "tittle"},
		{"too large", disc + "# " + strings.Repeat("x", maxFileBytes), 1, 1, fmt.Sprintf("larger than %d KiB", LargestFile/1024)},
		{"long line", disc + "# " + strings.Repeat("x", maxLineChars), 5, maxLineChars + 1, "characters"},
		{"many lines", disc + strings.Repeat("#\n", maxLines), maxLines + 1, 1, "lines"},
		{"many empty lines", disc + strings.Repeat("\n", maxBlankLines+2), 5 + maxBlankLines, 1, "empty lines"},
		{"many words", disc + strings.Repeat("notes: ["+strings.Repeat("a, ", 30)+"b]\n", maxTokens/60), 0, 0, "words and marks"},
		{"many keys", disc + strings.Repeat("a: 1\n", maxKeys), 0, 0, "keys stand in one place"},
		{"many keys below", disc + "x:\n" + strings.Repeat("  a: {b: 1}\n", maxKeys+1), 0, 0, "keys stand in one place"},
		{"many keys in brackets", disc + "x: {" + strings.Repeat("a: 1,\n", maxKeys+1) + "}\n", 0, 0, "keys stand in one place"},
		{"deep flow", disc + "notes: " + strings.Repeat("[", 15_000) + "\n", 0, 0, "nesting"},
		{"deep block", disc + "notes:\n  " + strings.Repeat("- ", 9000) + "x\n", 0, 0, "nesting"},
		{"deep questions", disc + "notes:\n  " + strings.Repeat("? ", 9000) + "x\n", 0, 0, "nesting"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := ParsePart("disc.yaml", []byte(c.src), parts.Millimetres)
			if p != nil || err == nil {
				t.Fatalf("ParsePart = %v, %v", p, err)
			}
			checkErrors(t, err, map[string][]byte{"disc.yaml": []byte(c.src)})
			var first *parts.Error
			errors.As(err, &first)
			if !strings.Contains(first.What, c.what) {
				t.Errorf("says %q, want %q in it", first.What, c.what)
			}
			if c.line > 0 && (first.Line != c.line || first.Column != c.column) {
				t.Errorf("at %d:%d, want %d:%d", first.Line, first.Column, c.line, c.column)
			}
		})
	}
}

// TestLineEnds: a byte order mark and the kind of line end change nothing.
func TestLineEnds(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/pugmill/*.yaml")
	compared := 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if filepath.Base(file) == "job.yaml" {
			continue
		}
		plain, err := ParsePart("p", src, parts.Millimetres)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		dos := []byte("\uFEFF" + strings.ReplaceAll(string(src), "\n", "\r\n"))
		again, err := ParsePart("p", dos, parts.Millimetres)
		if err != nil || !reflect.DeepEqual(plain, again) {
			t.Errorf("%s reads differently with byte order mark and CRLF: %v", file, err)
		}
		compared++
	}
	if compared == 0 {
		t.Fatal("nothing compared")
	}
}

func TestManyFaults(t *testing.T) {
	src := disc + strings.Repeat("x", 1)
	var b strings.Builder
	b.WriteString(disc)
	for i := range 300 {
		b.WriteString(strings.Repeat("x", i+1) + ": 1\n")
	}
	_, err := ParsePart("disc.yaml", []byte(b.String()), parts.Millimetres)
	var all parts.Errors
	if !errors.As(err, &all) || len(all) != maxErrors+1 {
		t.Fatalf("%d errors from %d faults in %q…, want %d and one that says so", len(all), 300, src, maxErrors)
	}
	if last := all[len(all)-1]; !strings.Contains(last.What, "not shown") {
		t.Errorf("the last says %q", last.What)
	}
}

func TestErrorText(t *testing.T) {
	for _, c := range []struct {
		err  parts.Error
		want string
	}{
		{
			parts.Error{Pos: parts.Pos{File: "a.yaml", Line: 3, Column: 5}, Excerpt: "key: ß value", What: "is wrong", Right: "that"},
			"a.yaml:3:5: is wrong\n    key: ß value\n        ^\nright: that",
		},
		{parts.Error{Pos: parts.Pos{File: "a.yaml", Line: 1, Column: 1}, What: "is empty"}, "a.yaml:1:1: is empty"},
		{
			parts.Error{Pos: parts.Pos{File: "a", Line: 1, Column: 201}, Excerpt: strings.Repeat("x", 200) + "y" + strings.Repeat("z", 200), What: "w"},
			"a:1:201: w\n    …" + strings.Repeat("x", 60) + "y" + strings.Repeat("z", 39) + "…\n    " + strings.Repeat(" ", 61) + "^",
		},
	} {
		if got := c.err.Error(); got != c.want {
			t.Errorf("got\n%s\nwant\n%s", got, c.want)
		}
	}
}
