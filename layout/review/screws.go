package review

import (
	"strings"

	"centrepop/layout/threads"
	"centrepop/parts"
)

// screwOrder is a screw as ordered: its words, thread and length.
type screwOrder struct {
	words  string
	thread threads.Thread
	longMm float64
}

// orderOf is the screw that words order; false where they name none.
func orderOf(words string) (o screwOrder, ok bool) {
	m := screwWords().FindStringSubmatch(words)
	if m == nil {
		return screwOrder{words: words}, false
	}
	t, err := threads.Parse(m[1])
	unit := m[3]
	if unit == "" && t.TPI > 0 {
		unit = "in"
	}
	return screwOrder{words, t, noteMm(m[2], unit)}, err == nil
}

// nut tells whether a nut comes with it, sunk whether its head is sunk in a cone.
func (o *screwOrder) nut() bool { return strings.Contains(o.words, "nut") }

func (o *screwOrder) sunk() bool { return sunkHead().MatchString(o.words) }

// nutted is the least that a bolt comes through for its nut, in diameters.
const nutted = 0.8

// How thick a flange is at the least that bolts go through, in their diameters: of any, and of a motor to a standard.
// Common practice, no source.
const (
	flangeLeast = 0.8
	motorFlange = 1.0
)

// takes is what of a bolt lies beyond the hole that is drawn, in diameters: its nut, its
// washers, and the flange of a thing that is bought.
func (o *screwOrder) takes(e *parts.Loose) float64 {
	out := nutted + o.washers()
	if e.Item.Value != "" && e.Buy.Value != "" && !o.sunk() { // sunk heads hold what is thin
		out += flangeLeast
	}
	return out
}

// washers is how thick the washers are that the words order with a screw, in its diameters. Common practice,
// no source.
func (o *screwOrder) washers() float64 {
	const washer = 0.2
	switch {
	case strings.Contains(o.words, "washers"):
		return 2 * washer
	case strings.Contains(o.words, "washer"):
		return washer
	}
	return 0
}

func sameThread(a, b string) bool {
	t, err := threads.Parse(a)
	u, err2 := threads.Parse(b)
	return err == nil && err2 == nil && t.Designation == u.Designation
}

// widest is how much larger than its screw a hole is at the most, that is for it. Common
// practice, no source: ISO 273 and ASME B18.2.8 have up to a quarter in the coarse series.
const widest = 1.35
