package meant_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/parts/meant"
)

func TestSlips(t *testing.T) {
	t.Parallel()
	// Kitten and sitting are the usual example of Levenshtein's distance.
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3}, {"", "abc", 3}, {"abc", "", 3}, {"bore", "bore", 0},
		{"holse", "holes", 1}, {"ca", "abc", 3}, {"Ø12", "Ø13", 1}, {"größe", "grösse", 2},
		{strings.Repeat("a", 60), strings.Repeat("a", 50), 0}, {strings.Repeat("a", 60), "", 40},
	} {
		if got := meant.Slips(c.a, c.b); got != c.want {
			t.Errorf("Slips(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestWord(t *testing.T) {
	t.Parallel()
	words := []string{"holes", "slots", "outline", "bore", "pcd"}
	for s, want := range map[string]string{
		"hole": "holes", "holse": "holes", "Outline": "outline", "outlien": "outline", "bor": "bore",
		"pdc": "pcd", "xyz": "", "": "", strings.Repeat("holes", 20): "",
		"pce": "pcd", "pee": "", "borxx": "bore", "boxxx": "", "hoxxs": "holes", "hoxxe": "",
	} {
		if got := meant.Word(s, words); got != want {
			t.Errorf("Word(%q) = %q, want %q", s, got, want)
		}
	}
	long := strings.Repeat("x", 40)
	if meant.Word(long, []string{long}) != long || meant.Word(long+"x", []string{long + "x"}) != "" || meant.Word("a", nil) != "" {
		t.Error("a word of 40 letters is looked for, a longer one is not")
	}
}

func ExampleSorted() {
	same := func(s string) string { return s }
	fmt.Println(meant.Word("otline", []string{"holes", "outline"}), meant.Sorted("S236", []string{"P235", "S235", "S355"}, same))
	// Output: outline [S235 P235 S355]
}
