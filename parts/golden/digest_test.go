package golden

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FNV-1a of 32 bits: "" 811c9dc5, "a" e40c292c, "foobar" bf9cf968 (test vectors of
// draft-eastlake-fnv).
func TestDigest(t *testing.T) {
	t.Parallel()
	x := strings.Repeat("ö", 60)
	for _, c := range []struct{ name, in, want string }{
		{"short", "a\n  b\n", "a\n  b\n"},
		{"60 characters stay", x + "\n", x + "\n"},
		{"61 do not", x + "b\n", x + "… " + sum(x+"b") + "\n"},
		{"one row", "| N\n- a\nb\n", "| N\n- a\nb\n"},
		{"rows", "| N\n- b\n- a\n", "| N\n- b\n- 1 more, " + sum("- a") + "\n"},
		{"rows by indent", "- a\n  - b\n  - c\n- d\n", "- a\n  - b\n  - 1 more, " + sum("  - c") + "\n- d\n"},
		{"kinds", "page\nthin\ta\nbold\tx\nthin\tb\n", "page\n2 × thin: a " + sum("a\nb") + "\n1 × bold: x " + sum("x") + "\n3 in this order, " + sum("thin\ta\nbold\tx\nthin\tb") + "\n"},
		{"one kind", "thin\tfoobar\n", "1 × thin: foobar bf9cf968\n"},
		{"tabs before are none", "\ta\n\tb\n", "\ta\n\tb\n"},
	} {
		if got := Digest(c.in); got != c.want {
			t.Errorf("%s: got\n%swant\n%s", c.name, got, c.want)
		}
	}
}

// A digest changes with every byte of its text.
func TestDigestMissesNothing(t *testing.T) {
	t.Parallel()
	text := "page 1\nthin\t1 2\nbold\t3 4\nthin\t5 6\n| A B\n- 1 2\n- 3 4\n- 5 6\n" + strings.Repeat("long ", 20) + "\nend\n"
	for i := range len(text) - 1 {
		changed := []byte(text)
		changed[i]++
		if Digest(string(changed)) == Digest(text) {
			t.Errorf("byte %d, %q, may change", i, text[i])
		}
	}
	moved := strings.Replace(text, "thin\t1 2\nbold\t3 4\n", "bold\t3 4\nthin\t1 2\n", 1)
	if moved == text || Digest(moved) == Digest(text) {
		t.Error("the order of kinds may change")
	}
}

func TestWhole(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("CENTREPOP_FULL", dir)
	t.Setenv("CENTREPOP_UPDATE", "1")
	t.Chdir(t.TempDir())
	text := "- a\n- b\n- c\n"
	Whole(t, "testdata/w.txt", []byte(text))
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	full, err := os.ReadFile(filepath.Join(dir, filepath.Base(here), "testdata", "w.txt"))
	if err != nil || string(full) != text {
		t.Errorf("all of it: %q, %v", full, err)
	}
	if kept, err := os.ReadFile("testdata/w.txt"); err != nil || string(kept) != Digest(text) {
		t.Errorf("kept: %q, %v", kept, err)
	}
}
