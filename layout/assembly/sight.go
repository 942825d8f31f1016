package assembly

import (
	"cmp"
	"math"
	"slices"
)

// Crossing is a stretch of a line inside a body.
type Crossing struct {
	ID string
	Span
}

// Crossings are the bodies that a line from a point passes through ahead of it,
// nearest first. Bodies with the same start stay in their order.
func Crossings(bodies []Body, from, along Vec) []Crossing {
	var out []Crossing
	for i := range bodies {
		b := &bodies[i]
		if box := b.Box(); !box.meetsLine(from, along, 0, inf) {
			continue
		}
		inv := b.Pose.Inverse()
		for _, s := range b.Solid.spans(inv.Apply(from), inv.Turn(along), 0, inf) {
			out = append(out, Crossing{b.ID, s})
		}
	}
	slices.SortStableFunc(out, func(a, b Crossing) int { return cmp.Compare(a.FromMm, b.FromMm) })
	return out
}

// Opening is a hole, port or window looked through along its axis.
type Opening struct {
	At       Vec // middle of its mouth, in the machine's frame
	Along    Vec // the way to look
	RadiusMm float64
	// ReachMm is how far it has to be free.
	ReachMm float64
}

// Cover is a body in an opening.
type Cover struct {
	ID      string
	Share   float64 // of the opening that it closes, first in line
	FirstMm float64 // least distance from the mouth
}

// Look is the share of the opening that is free over its reach, 0 to 1, and
// what closes the rest, the most first. It is counted on lines that stand for
// equal areas.
func (o Opening) Look(bodies []Body) (free float64, covers []Cover) {
	const rings, spokes = 6, 24
	frame := Frame(o.At, o.Along, o.Along.Square())
	const each = 1.0 / (rings * spokes)
	for i := range rings {
		r := o.RadiusMm * math.Sqrt((float64(i)+0.5)/rings)
		for k := range spokes {
			p := Clock(r, 360*(float64(k)+0.5)/spokes)
			hit := Crossings(bodies, frame.Apply(p), frame.Z)
			if len(hit) == 0 || hit[0].FromMm >= o.ReachMm {
				free += each
				continue
			}
			covers = addCover(covers, Cover{hit[0].ID, each, hit[0].FromMm})
		}
	}
	slices.SortStableFunc(covers, func(a, b Cover) int { return cmp.Compare(b.Share, a.Share) })
	return math.Round(free*1e9) / 1e9, covers
}

func addCover(list []Cover, c Cover) []Cover {
	for i := range list {
		if list[i].ID == c.ID {
			list[i].Share += c.Share
			list[i].FirstMm = min(list[i].FirstMm, c.FirstMm)
			return list
		}
	}
	return append(list, c)
}
