package part

import (
	"math"
	"slices"
	"strconv"

	"centrepop/parts"
)

// tube is a turned part as bought, whose ends may be cut to sit on another
// round.
type tube struct {
	turned
	ends []parts.TubeEnd
}

func (t *tube) overall(s *Sizes) string {
	text := t.turned.overall(s)
	switch n := len(t.ends); n {
	case 0:
		return text
	case 1:
		return text + ", " + string(t.ends[0].Face) + " end saddled"
	default:
		return text + ", " + strconv.Itoa(n) + " ends saddled"
	}
}

func (t *tube) developments(d *shaper) {
	for i := range t.ends {
		d.saddle(&t.ends[i])
	}
}

// volumeMm3 is that of the straight tube less what the saddled ends take off.
func (t *tube) volumeMm3(g *Shape) float64 {
	volume := t.turned.volumeMm3(g)
	for _, s := range g.saddles {
		od, id := g.widest().Size.NominalMm, t.in.Inside[0].Size.Nominal.Mm
		volume -= math.Pi / 4 * (od*od - id*id) * s.meanMm
	}
	return volume
}

// saddledEnd tells whether a face is cut to a saddle curve.
func (g *Shape) saddledEnd(f parts.Face) bool {
	for _, s := range g.saddles {
		if s.end.Face == f {
			return true
		}
	}
	return false
}

// onlySawn tells whether an end needs no lathe: it gets a saddle and the tube
// is not turned there.
func (b *bench) onlySawn(set setting) bool {
	return b.saddledEnd(set.face) && !b.anyTurned(set.steps) &&
		!slices.ContainsFunc(b.bevels, func(c *chamfer) bool { return b.reached(c, set) }) &&
		!slices.ContainsFunc(b.Grooves, func(g Groove) bool { return g.at(set) })
}

// faceFront and faceBack say how the ends are faced; one that gets a saddle is
// only sawn.
func (b *bench) faceFront() string {
	if b.saddledEnd(parts.Front) {
		return "Leave the front end as sawn: it is cut to the saddle curve."
	}
	return "Face the front clean."
}

func (b *bench) faceBack() string {
	if b.saddledEnd(parts.Back) {
		return "Leave the back end as sawn, at least " + b.W.Size(b.LengthMm()) + " from the front: it is cut to the saddle curve."
	}
	if b.saddledEnd(parts.Front) {
		return "Face the back clean."
	}
	return "Face the back to length " + b.W.Size(b.LengthMm()) + "."
}
