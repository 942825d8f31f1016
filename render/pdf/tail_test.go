package pdf

import (
	"bytes"
	"testing"
	"time"

	"centrepop/templates"
)

func plain(t testing.TB) ([]byte, *templates.Document) {
	t.Helper()
	doc := &templates.Document{Title: "x", Pages: []templates.Page{
		{WidthMm: 210, HeightMm: 297, Bookmarks: []templates.Bookmark{{Title: "a"}, {Title: "b", Level: 1}}},
		{WidthMm: 100, HeightMm: 50, Bookmarks: []templates.Bookmark{{Title: "c", Level: 1}, {Title: "d"}}},
	}}
	file, err := pages(doc, time.Date(2024, 1, 2, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	return file, doc
}

func TestOutlineTree(t *testing.T) {
	_, doc := plain(t)
	want := []entry{
		{title: "a", page: 0, parent: -1, prev: -1, next: 3, first: 1, end: 2, open: 2},
		{title: "b", page: 0, parent: 0, prev: -1, next: 2, first: -1, end: -1},
		{title: "c", page: 1, parent: 0, prev: 1, next: -1, first: -1, end: -1},
		{title: "d", page: 1, parent: -1, prev: 0, next: -1, first: -1, end: -1},
	}
	got := outlineTree(doc)
	if len(got) != len(want) {
		t.Fatalf("%d entries, want %d", len(got), len(want))
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("entry %d is %+v, want %+v", i, got[i], want[i])
		}
	}
}

// A file whose end was cut or altered gives an error, not a broken update.
func TestReadTailRefuses(t *testing.T) {
	file, doc := plain(t)
	if _, err := complete(file, doc, undated); err != nil {
		t.Fatal(err)
	}
	replace := func(old, by string) []byte {
		if !bytes.Contains(file, []byte(old)) {
			t.Fatalf("the file holds no %q", old)
		}
		return bytes.ReplaceAll(file, []byte(old), []byte(by))
	}
	for name, bad := range map[string][]byte{
		"empty":        nil,
		"no startxref": replace("startxref", "startxxxx"),
		"no table":     replace("xref\n0 ", "xxxx\n0 "),
		"no trailer":   replace("trailer", "tra1ler"),
		"no root":      replace("/Root", "/Rxxt"),
		"no info":      replace("/Info", "/Inxo"),
		"no catalog":   replace("/Type /Catalog", "/Type /Cxtalog"),
		"no kids":      replace("/Kids", "/Kxds"),
		"no page":      replace("/Type /Page\n", "/Type /Pxge\n"),
		"no pdf":       replace("%PDF", "%PXF"),
		"cut":          file[:len(file)/2],
		"moved":        append([]byte("%PDF-1.3 "), file...),
	} {
		if out, err := complete(bad, doc, undated); err == nil {
			t.Errorf("%s: no error, %d bytes", name, len(out))
		}
	}
}

func TestDict(t *testing.T) {
	s := scanner{b: []byte(`<</A /B/C 1 0 R % note
		/D [1 (x\)y) <</E /F>>] /G <41>/H/I>>`)}
	got, err := s.dict()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"A": "/B", "C": "1 0 R", "D": `[ 1 (x\)y) << /E /F >> ]`, "G": "<41>", "H": "/I"}
	if len(got) != len(want) {
		t.Fatalf("read %q, want %q", got, want)
	}
	for k, v := range want {
		if got[k] != v {
			t.Errorf("%s is %q, want %q", k, got[k], v)
		}
	}
}

// Whatever bytes stand there, reading ends with a tail or an error, and a
// tail it accepts points inside the file.
func FuzzReadTail(f *testing.F) {
	file, _ := plain(f)
	f.Add(file)
	f.Add(file[len(file)-400:])
	f.Add([]byte("xref\n0 1\n0 0 f trailer<</Root 1 0 R/Info 1 0 R>>startxref 0"))
	f.Fuzz(func(t *testing.T, b []byte) {
		tail, err := readTail(b)
		if err != nil {
			return
		}
		for n, offset := range tail.table {
			if offset < 0 || offset >= len(b) {
				t.Fatalf("object %d stands at %d of %d", n, offset, len(b))
			}
		}
		if tail.root <= 0 || tail.root >= tail.size || tail.pages == "" {
			t.Fatalf("accepted %+v", tail)
		}
	})
}

func TestTrimmed(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{0, "0"}, {-0.00001, "0"}, {1, "1"}, {10, "10"}, {-0.5, "-0.5"}, {1.23456, "1.2346"}, {100.10004, "100.1"}} {
		if got := number(c.v); got != c.want {
			t.Errorf("number(%v) = %q, want %q", c.v, got, c.want)
		}
	}
}
