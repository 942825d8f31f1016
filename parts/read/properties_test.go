package read

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"centrepop/parts"
)

// write puts files into a folder; names may have folders in them.
func write(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// checkErrors checks what must hold of every error of ParsePart: it is Errors,
// sorted, without two at one place saying the same, and each place and excerpt
// is in its file.
func checkErrors(t *testing.T, err error, files map[string][]byte) {
	t.Helper()
	var all parts.Errors
	if !errors.As(err, &all) || len(all) == 0 {
		t.Fatalf("the error is %T, want Errors that are not empty", err)
	}
	var one *parts.Error
	if !errors.As(err, &one) {
		t.Fatal("errors.As finds no *Error in Errors")
	}
	for i, e := range all {
		src, ok := files[e.File]
		if !ok {
			t.Fatalf("error in the file %q, which was not read", e.File)
		}
		text := strings.ReplaceAll(strings.ReplaceAll(strings.TrimPrefix(string(src), "\uFEFF"), "\r\n", "\n"), "\r", "\n")
		lines := strings.Split(text, "\n")
		if e.Line < 1 || e.Line > len(lines) {
			t.Fatalf("line %d of a file of %d lines: %v", e.Line, len(lines), e)
		}
		if width := len([]rune(lines[e.Line-1])); e.Column < 1 || e.Column > width+1 {
			t.Fatalf("column %d of a line of %d characters: %v", e.Column, width, e)
		}
		if e.What == "" {
			t.Fatalf("error %d says nothing", i)
		}
		if strings.ContainsFunc(e.Error(), func(r rune) bool { return r < ' ' && r != '\n' }) {
			t.Fatalf("control character in %q", e.Error())
		}
		if i > 0 && all[i-1].File == e.File {
			before := all[i-1]
			if before.Line > e.Line || before.Line == e.Line && before.Column > e.Column {
				t.Fatalf("%v comes before %v", before, e)
			}
			if before.Pos == e.Pos && before.What == e.What {
				t.Fatalf("twice: %v", e)
			}
		}
	}
}

// checkFinite fails for a NaN or an infinity anywhere in a value, and for a
// length beyond the limit.
func checkFinite(t *testing.T, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) || math.Abs(f) > 1e9 {
			t.Fatalf("the model holds %g", f)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			checkFinite(t, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			checkFinite(t, v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			checkFinite(t, v.Index(i))
		}
	}
}

// checkPart checks what must hold of every part that is accepted.
func checkPart(t *testing.T, p *parts.Part) {
	t.Helper()
	checkFinite(t, reflect.ValueOf(p))
	forms := 0
	for _, set := range []bool{p.Outline != nil, p.Profile != nil, p.Frustum != nil, p.Transition != nil, p.Flight != nil, p.Bar != nil} {
		if set {
			forms++
		}
	}
	switch {
	case forms != 1:
		t.Fatalf("%d of outline, profile, frustum, transition, flight and bar are set", forms)
	case p.Name.Value == "" || p.Title.Value == "" || p.Kind == "" || p.Quantity < 1:
		t.Fatalf("no name, title, kind or quantity: %+v", p)
	case p.Outline != nil && p.Thickness.Mm <= 0:
		t.Fatal("a flat part without thickness")
	case p.Profile != nil && (len(p.Profile.Outside) == 0 || p.Profile.LengthMm() <= 0):
		t.Fatal("a profile without length")
	}
	for _, g := range p.Holes {
		if g.Through == g.Depth.Set() || g.Pattern.Count < 1 || g.Pattern.Count > maxCount || g.Size.Make == "" || g.Name.Value == "" {
			t.Fatalf("incomplete holes: %+v", g)
		}
		if (g.Size.Make == parts.PlainHole) != g.Size.Size.Nominal.Set() || (g.Size.Make == parts.PlainHole) != (g.Size.Thread == "") {
			t.Fatalf("incomplete hole size: %+v", g.Size)
		}
	}
}
