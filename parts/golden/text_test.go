package golden

import (
	"math"
	"strings"
	"testing"
)

func TestText(t *testing.T) {
	t.Parallel()
	type point struct{ X, Y float64 }
	type part struct {
		Name   string
		Count  int
		Least  uint8
		Turned bool
		At     *point
		Any    any
		Points []point
		Kept   []string
		hidden int
	}
	long := strings.Repeat("x", 150)
	for _, c := range []struct {
		in   any
		want string
	}{
		{nil, "nil\n"},
		{1.0 / 3, "0.333333\n"},
		{-1e-10, "0\n"},
		{-0.012345678, "-0.012346\n"},
		{math.Inf(1), "+Inf\n"},
		{123456.7, "123457\n"},
		{[]int{1, -2}, "[1 -2]\n"},
		{point{1, 0}, "(1 0)\n"},
		{struct{ X, Y, Z float64 }{1, 2, 3}, "(1 2 3)\n"},
		{struct{ A, B, C, D float64 }{1, 2, 0, 4}, "{A 1, B 2, D 4}\n"},
		{struct{ A float64 }{1}, "{A 1}\n"},
		{make([]point, 30), strings.Repeat("(0 0) ", 24) + "(0 0)\n(0 0) (0 0) (0 0) (0 0) (0 0)\n"},
		{make([]int, 76), strings.Repeat("0 ", 74) + "0\n0\n"},
		{part{Name: "a", Least: 3, At: &point{0, 2}, Kept: []string{}, hidden: 1}, `{Name "a", Least 3, At (0 2)}` + "\n"},
		{part{Name: long, Turned: true, Any: 2, Kept: []string{long, "b"}, Points: []point{{1, 2}}},
			`Name "` + long + "\"\nTurned true, Any 2, Points [(1 2)]\nKept:\n  - \"" + long + "\"\n  - \"b\"\n"},
		{[]part{{Name: "a"}, {Name: long, Turned: true}}, "- {Name \"a\"}\n-\n  Name \"" + long + "\"\n  Turned true\n"},
		{[]string{long[:38], long[:38]}, "[\"" + long[:38] + `" "` + long[:38] + "\"]\n"},
		// Three of a kind or more have their names once, a dash where one lacks a field.
		{[]struct {
			Name, Never string
			At          point
			Refs        []int
		}{{Name: "a"}, {At: point{1, 2}}, {Name: long, Refs: []int{3}}}, "| Name At Refs\n- \"a\" - -\n- - (1 2) -\n- \"" + long + "\" - [3]\n"},
		{[]part{{Name: "a"}, {Name: "b"}, {Name: long}}, "- {Name \"a\"}\n- {Name \"b\"}\n-\n  Name \"" + long + "\"\n"},
		// A line may have 150 characters, its indent counted.
		{[]string{long[:75], long[:68]}, `["` + long[:75] + `" "` + long[:68] + "\"]\n"},
		{[]string{long[:75], long[:69]}, "- \"" + long[:75] + "\"\n- \"" + long[:69] + "\"\n"},
		{long, `"` + long + "\"\n"},
	} {
		if got := string(Text(c.in)); got != c.want {
			t.Errorf("got\n%swant\n%s", got, c.want)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("a map has a text")
		}
	}()
	Text(map[string]int{"a": 1})
}
