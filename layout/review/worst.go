package review

import (
	"strconv"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// same says how many others have the same fault.
func same(count int) string {
	switch {
	case count == 2:
		return " (and one more)"
	case count > 2:
		return " (and " + strconv.Itoa(count-1) + " more)"
	}
	return ""
}

// fault is the worst of those of one name: the lower its amount the worse.
type fault struct {
	name   string
	amount float64
	count  int
	tell   func(count int)
}

// worst keeps, for each group of holes, the hole with the worst fault, so that
// a ring of equal holes gives one finding.
type worst []*fault

// add offers a fault. Of equal ones the first is kept.
func (w *worst) add(name string, amount float64, tell func(count int)) {
	f := seq.First(*w, func(f *fault) bool { return f.name == name })
	if f == nil {
		f = &fault{name: name, amount: endless}
		*w = append(*w, f)
	}
	if f.count++; f.count == 1 || geom.Over(f.amount, amount) {
		f.amount, f.tell = amount, tell
	}
}

// report tells the worst fault of each name, in the order they came in.
func (w worst) report() {
	for _, f := range w {
		f.tell(f.count)
	}
}
