// Package meant finds the known word that somebody meant by a wrong one.
package meant

import (
	"cmp"
	"slices"
	"strings"
)

// longest is the number of letters that are compared: longer than any word known
// here, so that a long mistake costs no time.
const longest = 40

// Slips counts the single-letter slips between two words: one missing, one too
// many, one wrong, or two neighbours swapped. Only the first 40 letters of each
// count.
func Slips(a, b string) int {
	x, y := letters(a), letters(b)
	before := make([]int, len(y)+1)
	last := make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := range x {
		now := make([]int, len(y)+1)
		now[0] = i + 1
		for j := range y {
			wrong := last[j]
			if x[i] != y[j] {
				wrong++
			}
			now[j+1] = min(last[j+1]+1, now[j]+1, wrong)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				now[j+1] = min(now[j+1], before[j-1]+1)
			}
		}
		before, last = last, now
	}
	return last[len(y)]
}

func letters(s string) []rune {
	r := []rune(s)
	return r[:min(len(r), longest)]
}

// Word returns the word most like s whatever its capitals, or "" if none is
// close: at most one slip in three letters. Of equals the first.
func Word(s string, words []string) string {
	if len([]rune(s)) > longest || len(words) == 0 {
		return ""
	}
	given := strings.ToLower(s)
	slips := func(w string) int { return Slips(given, strings.ToLower(w)) }
	best := slices.MinFunc(words, func(a, b string) int { return cmp.Compare(slips(a), slips(b)) })
	if slips(best)*3 > max(len(letters(s)), len(letters(best)))+1 {
		return ""
	}
	return best
}

// Perhaps suggests the word that is meant, to stand behind what is said to be
// wrong; "" if none is close.
func Perhaps(s string, words []string) string {
	if like := Word(s, words); like != "" {
		return "; perhaps " + like + " is meant"
	}
	return ""
}

// Sorted returns the things in the order of the slips between given and their
// names; equals keep their order.
func Sorted[T any](given string, things []T, name func(T) string) []T {
	slips := make(map[string]int, len(things))
	for _, t := range things {
		slips[name(t)] = Slips(given, name(t))
	}
	return slices.SortedStableFunc(slices.Values(things), func(a, b T) int {
		return cmp.Compare(slips[name(a)], slips[name(b)])
	})
}
