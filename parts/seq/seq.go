// Package seq maps and sifts slices, for what package slices has no word, and works on all
// processors at once. It takes and gives slices of anything and knows neither units nor errors.
package seq

import (
	"iter"
	"math"
	"slices"
)

// Map is what f gives for each of xs, in their order; nil for none.
func Map[T, U any](xs []T, f func(T) U) []U {
	if len(xs) == 0 {
		return nil
	}
	out := make([]U, len(xs))
	for i, x := range xs {
		out[i] = f(x)
	}
	return out
}

// Flat is what f gives for each of xs, one behind the other; nil for nothing.
func Flat[T, U any](xs []T, f func(T) []U) (out []U) {
	for _, x := range xs {
		out = append(out, f(x)...)
	}
	return out
}

// Keep is those of xs that ok holds for, in their order, apart from xs; nil for none.
func Keep[T any](xs []T, ok func(T) bool) (out []T) {
	for _, x := range xs {
		if ok(x) {
			out = append(out, x)
		}
	}
	return out
}

// Find is the first of xs that ok holds for, and whether there is one.
func Find[T any](xs []T, ok func(T) bool) (found T, is bool) {
	for _, x := range xs {
		if ok(x) {
			return x, true
		}
	}
	return found, false
}

// First is the first of xs that ok holds for, the zero value if there is none.
func First[T any](xs []T, ok func(T) bool) T {
	found, _ := Find(xs, ok)
	return found
}

// At is where the first of xs stands that ok holds for, nil if there is none.
func At[T any](xs []T, ok func(*T) bool) *T {
	for i := range xs {
		if ok(&xs[i]) {
			return &xs[i]
		}
	}
	return nil
}

// Refs goes over pointers to xs, in their order, for what is too large to copy or is to be changed.
func Refs[T any](xs []T) iter.Seq[*T] {
	return func(yield func(*T) bool) {
		for i := range xs {
			if !yield(&xs[i]) {
				return
			}
		}
	}
}

// Add is xs with those of more behind them that stand in neither yet, in their order.
func Add[T comparable](xs []T, more ...T) []T {
	for _, x := range more {
		if !slices.Contains(xs, x) {
			xs = append(xs, x)
		}
	}
	return xs
}

// Sum is what f gives for each of xs, added up in their order; 0 for none.
func Sum[T any, N int | float64](xs []T, f func(T) N) (sum N) {
	for _, x := range xs {
		sum += f(x)
	}
	return sum
}

// Max is the largest of least and of what f gives for each of xs.
func Max[T any, N int | float64](least N, xs []T, f func(T) N) N {
	for _, x := range xs {
		least = max(least, f(x))
	}
	return least
}

// Least is the smallest of what f gives for each of xs, infinite where there are none.
func Least[T any](xs []T, f func(T) float64) float64 { return Min(math.Inf(1), xs, f) }

// Min is the smallest of most and of what f gives for each of xs.
func Min[T any, N int | float64](most N, xs []T, f func(T) N) N {
	for _, x := range xs {
		most = min(most, f(x))
	}
	return most
}
