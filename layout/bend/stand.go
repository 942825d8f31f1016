package bend

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts/geom"
)

// ramMm is how high flanges may stand at the ends of a fold before what holds the punch
// comes down on them: a punch of a small press brake with its holder. Common practice,
// no source.
const ramMm = 100.0

// Order is the order to fold in: what is further out first; then opposite flanges one
// after the other, last the pair that would stand up to the ram, else that which turns in over
// the ends of the others, else that with the longer fold lines, and of a pair first the lower flange, which is the less in the way.
// Common practice, no source.
func (b *PanelBlank) Order() []int {
	order := make([]int, len(b.Folds))
	for i := range order {
		order[i] = i
	}
	pair := func(i int) float64 {
		_, half := b.halves(b.Folds[i].Side)
		return half
	}
	var stands, in [2]float64
	for i := range b.Folds {
		f := &b.Folds[i]
		if f.Nth == 0 && f.HeightMm > ramMm {
			stands[f.Side%2] = math.Max(stands[f.Side%2], f.HeightMm)
		}
		if f.Nth == 0 && b.at(f.Side, 1) != nil {
			in[f.Side%2] = math.Max(in[f.Side%2], b.reachMm(f)-math.Max(b.ThicknessMm, f.inMm()))
		}
	}
	slices.SortStableFunc(order, func(i, j int) int {
		f, g := &b.Folds[i], &b.Folds[j]
		if d := g.Nth - f.Nth; d != 0 {
			return d
		}
		if d := cmp.Compare(stands[b.Folds[i].Side%2], stands[b.Folds[j].Side%2]); d != 0 {
			return d
		}
		if d := in[f.Side%2] - in[g.Side%2]; math.Abs(d) > geom.CloseMm {
			return int(math.Copysign(1, d))
		}
		if d := pair(i) - pair(j); d != 0 {
			return int(math.Copysign(1, d))
		}
		return cmp.Or(int(f.Side%2)-int(g.Side%2), int(math.Copysign(1, f.HeightMm-g.HeightMm)))
	})
	return order
}

// Way is what stands in the way of the tool at a fold.
type Way struct {
	// BesideMm is how near a flange that is folded already comes to the middle of the
	// punch when the fold is done; negative: it would have to stand in the punch.
	// Geometry. +Inf where none stands there. It is HighMm over the edge of the punch there.
	BesideMm, HighMm float64
	// UnderMm is how far from the fold line a flange begins that hangs down beside the
	// die before the fold. +Inf where none does.
	UnderMm float64
	// PunchMm is the room for the length of the punch between flanges that stand
	// already at the ends of the fold, and DieMm that for the die between those
	// that hang there; 0 where it is not limited.
	PunchMm, DieMm float64
	// PunchEnds and DieEnds are at how many ends of the fold those stand.
	PunchEnds, DieEnds int
	// RamMm is how high flanges that stand at the ends reach over the fold line, at
	// their highest during the fold: that must be clear under the ram beside the punch.
	// Geometry. 0 where none stands higher than an ordinary punch and holder reach.
	RamMm float64
}

// WayOf is what stands in the way of fold i when those before it in the order
// are done.
func (b *PanelBlank) WayOf(order []int, i int) Way {
	f, way := &b.Folds[i], Way{BesideMm: math.Inf(1), UnderMm: math.Inf(1)}
	_, half := b.halves(f.Side)
	done := map[int]bool{}
	for _, k := range order {
		if k == i {
			break
		}
		done[k] = true
		o := &b.Folds[k]
		if o.Side%2 == f.Side%2 || o.Nth > 0 || f.Nth > 0 {
			continue
		}
		room, ends := &way.PunchMm, &way.PunchEnds
		if o.Forward != f.Forward {
			room, ends = &way.DieMm, &way.DieEnds
		}
		if f.clears(o) {
			continue
		}
		*ends++
		*room = cmp.Or(*room, 2*half)
		if o.Forward == f.Forward && o.HeightMm > ramMm {
			way.RamMm = math.Max(way.RamMm, b.risenMm(f, o.HeightMm))
		}
		in := math.Max(b.ThicknessMm, o.inMm())
		if lip := b.at(o.Side, 1); lip != nil && done[b.Index(lip)] && !f.clears(&PanelFold{Flange: Flange{Forward: o.Forward, HeightMm: o.HeightMm}, LineFrom: lip.LineFrom, LineTo: lip.LineTo}) {
			in = b.reachMm(o)
		}
		*room -= in
	}
	for _, m := range b.metal(f, done) {
		if p := f.onPunch(m.at); p.YMm < -f.ThicknessMm-touchMm {
			way.UnderMm = math.Min(way.UnderMm, math.Abs(p.XMm-f.AllowanceMm/2))
		}
	}
	done[i] = true
	for _, m := range b.metal(f, done) {
		if beside, high := f.besideMm(m); beside < way.BesideMm {
			way.BesideMm, way.HighMm = beside, high+f.RadiusMm
		}
	}
	return way
}

// Half of what an ordinary punch with its holder and an ordinary die are thick. Common
// practice, no source.
const (
	PunchHalfMm = 15.0
	dieMm       = 50.0
)

// clears tells whether another fold's flange, which runs across, begins so far behind the
// fold line that the tool ends before it: the die before the bend, the punch when the
// base leans at the end of it.
func (f *PanelFold) clears(o *PanelFold) bool {
	up := f.Side.TurnedTo(geom.Point{YMm: 1})
	dot := func(p geom.Point) float64 { return p.XMm*up.XMm + p.YMm*up.YMm }
	behind := f.LineMm() - math.Max(dot(o.LineFrom), dot(o.LineTo))
	if o.Forward != f.Forward {
		return behind > dieMm
	}
	sin, cos := math.Sincos(f.AngleDeg * math.Pi / 360)
	return behind*cos-o.HeightMm*sin > PunchHalfMm
}

// risenMm is how high a flange of a height at the end of a fold reaches over its line: it
// leans with the base, by half the angle at last, and is as deep as the base.
func (b *PanelBlank) risenMm(f *PanelFold, highMm float64) float64 {
	up, _ := b.halves(f.Side)
	along := math.Min(highMm*math.Tan(f.AngleDeg*math.Pi/360), 2*up)
	return math.Hypot(highMm, along)
}

// touchMm is how far metal stands off the plane of the sheet before it counts as more
// than rounding.
const touchMm = 1e-6

// corner is a corner of a flange that is folded already: of one further out than the
// fold that is looked at, or of one further in or opposite.
type corner struct {
	at    geom.Point
	outer bool
}

// onPunch is a point of the section at the beginning of the bend, seen with the punch
// above the sheet.
func (f *PanelFold) onPunch(p geom.Point) geom.Point {
	if !f.Forward {
		p.YMm = -f.ThicknessMm - p.YMm
	}
	return p
}

// ramHalfMm is half the thickness of a ram with what clamps the punch in it, from ramMm over
// the sheet upward. Common practice, no source.
const ramHalfMm = 30.0

// ClearDeg is how far flange i may be folded at first, in whole degrees, to stand clear of the
// ram while those after it in the order are folded: it is closed by hand when they are done. Its
// own angle where it stands in no ram, and 0 where no angle helps.
func (b *PanelBlank) ClearDeg(order []int, i int) float64 {
	open := *b
	open.Folds = slices.Clone(b.Folds)
	for deg := b.Folds[i].AngleDeg; deg > 0; deg = math.Ceil(deg) - 1 {
		open.Folds[i].AngleDeg = deg
		if !open.inRam(order, i) {
			return deg
		}
	}
	return 0
}

// inRam tells whether flange i stands in the ram when a flange after it in the order is folded.
func (b *PanelBlank) inRam(order []int, i int) bool {
	for _, k := range order[slices.Index(order, i)+1:] {
		for _, m := range b.metal(&b.Folds[k], map[int]bool{i: true, k: true}) {
			if beside, high := b.Folds[k].besideMm(m); high > ramMm && beside < ramHalfMm {
				return true
			}
		}
	}
	return false
}

// besideMm is how near a corner comes to the middle of the punch when the fold is done, and how
// high over it: the two sides lean by half the angle about the middle of the bend. +Inf for one
// under the sheet.
func (f *PanelFold) besideMm(m corner) (beside, high float64) {
	p := f.onPunch(m.at).Minus(geom.Point{YMm: f.RadiusMm})
	half := f.AngleDeg * math.Pi / 360
	if m.outer { // as on the inner side, turned over the middle of the punch
		p = frame{turnRad: -2 * half}.point(p)
		p.XMm = -p.XMm
	}
	if p.YMm <= -f.RadiusMm+touchMm {
		return math.Inf(1), 0
	}
	sin, cos := math.Sincos(half)
	return -p.XMm*cos - p.YMm*sin, -p.XMm*sin + p.YMm*cos
}

// metal are the corners of all that is folded on the side of a flange and on the
// opposite one, in the frame where the bend of the flange begins.
func (b *PanelBlank) metal(f *PanelFold, done map[int]bool) []corner {
	var out []corner
	own := frame{}
	for _, hand := range []float64{1, -1} {
		side, from := f.Side, frame{}
		if hand < 0 {
			side += 2
		}
		for nth := 0; ; nth++ {
			o := b.at(side, nth)
			if o == nil {
				break
			}
			if nth == 0 {
				from = frame{at: geom.Point{XMm: o.BeginMm}}
			}
			if o == f {
				own = from
			}
			if !done[b.Index(o)] {
				from = from.of(frame{at: geom.Point{XMm: o.EdgeMm - o.BeginMm}})
				continue
			}
			if o != f {
				for _, v := range o.section(from) {
					out = append(out, corner{geom.Point{XMm: hand * v.XMm, YMm: v.YMm}, hand > 0 && nth > f.Nth})
				}
			}
			from = from.of(o.far())
		}
	}
	for i := range out {
		out[i].at = own.from(out[i].at)
	}
	return out
}
