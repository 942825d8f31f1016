package bend

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Flange is a leg folded up from a side of the base, or from the free edge of the
// flange there.
type Flange struct {
	Side     Side
	Nth      int     // on its side, counted outward: 0 is on the base
	HeightMm float64 // along the outside, from the corner (beyond a square bend, from the outside tangent) to the free edge or the next corner
	AngleDeg float64
	RadiusMm float64 // inside
	// FromMm and ToMm are how far it stays off the left and the right end of
	// its side, looking at the base with the side at the top; 0 runs to the end.
	FromMm, ToMm float64
	Forward      bool // the sheet's front comes to lie inside the bend; a flange on the base comes towards who looks at it
}

// Panel is a rectangular base with flanges, at most one on each side and on each free
// edge, those further out after the ones that they are on. Its width
// and height are taken over the outside of the flanges.
type Panel struct {
	WidthMm, HeightMm, ThicknessMm float64
	GapMm                          float64 // left open between two flanges at a corner
	Mitred                         bool    // two flanges turned in at a corner are both cut at 45 degrees
	K                              float64 // as of a Bend; 0 takes DIN 6935
	Flanges                        []Flange
}

// PanelBlank is the flat blank of a panel, seen from the front of the base.
type PanelBlank struct {
	Panel
	Outline []geom.Point // clockwise
	Folds   []PanelFold  // of the flanges, in their order
}

// Blank computes the blank. Where two flanges meet, each ends a gap short of the
// inside of the other, and a relief takes away the corner of the base where
// their bends would cross; where a flange stops short of its side's end, a
// relief stands beside it. It errs with a *lookup.RangeError for a number out of
// range, a flange too short to be flat anywhere, and a base that the bends use up.
func (p Panel) Blank() (PanelBlank, error) {
	out := PanelBlank{Panel: p}
	if err := cmp.Or(
		lookup.Length("base width", p.WidthMm, 0, MaxLengthMm), lookup.Length("base height", p.HeightMm, 0, MaxLengthMm),
		lookup.Length("gap", p.GapMm, lookup.Under(0), MaxLengthMm),
	); err != nil {
		return out, err
	}
	for _, f := range p.Flanges {
		fold, err := p.fold(f)
		if err != nil {
			return out, err
		}
		if f.Nth > 0 {
			on := out.at(f.Side, f.Nth-1)
			if on == nil {
				return out, fmt.Errorf("bend: flange %d of a side comes before the one that it is on", f.Nth+1)
			}
			on.NextMm = fold.SetbackMm
		}
		out.Folds = append(out.Folds, fold)
	}
	for i := range out.Folds {
		if err := out.along(&out.Folds[i]); err != nil {
			return out, err
		}
		out.ends(&out.Folds[i])
	}
	out.give()
	for i := range out.Folds {
		if err := out.room(&out.Folds[i]); err != nil {
			return out, err
		}
	}
	for s := Top; s <= Left; s++ {
		out.edge(s)
		out.corner(s)
	}
	return out, nil
}

func (p Panel) fold(f Flange) (PanelFold, error) {
	b := Bend{ThicknessMm: p.ThicknessMm, InsideRadiusMm: f.RadiusMm, AngleDeg: f.AngleDeg, K: p.K}
	r, err := b.Work()
	if err != nil {
		return PanelFold{}, err
	}
	_, relief, err := b.Relief()
	if err != nil {
		return PanelFold{}, err
	}
	return PanelFold{Flange: f, Result: r, ReliefMm: relief, ThicknessMm: p.ThicknessMm}, nil
}

// along finds where a flange lies up the blank, and where it stands folded.
func (b *PanelBlank) along(f *PanelFold) error {
	if f.Nth == 0 {
		up, _ := b.halves(f.Side)
		f.BeginMm = up - f.SetbackMm
		f.start = frame{at: geom.Point{XMm: f.BeginMm}}
	} else {
		on := b.at(f.Side, f.Nth-1)
		f.BeginMm, f.start = on.EdgeMm, on.start.of(on.far())
	}
	f.OutsideMm = f.BeginMm + f.SetbackMm
	f.EdgeMm = f.BeginMm + f.AllowanceMm + f.FlatMm()
	return lookup.Length("flange height", f.HeightMm, f.SetbackMm+f.NextMm, MaxLengthMm)
}

// halves are half the base up to a side, and half along it.
func (p Panel) halves(s Side) (up, along float64) {
	if s == Top || s == Bottom {
		return p.HeightMm / 2, p.WidthMm / 2
	}
	return p.WidthMm / 2, p.HeightMm / 2
}

// on is the flange on the base at a side, nil if it has none.
func (b *PanelBlank) on(s Side) *PanelFold { return b.at(s, 0) }

// at is the nth flange of a side, nil if it has none.
func (b *PanelBlank) at(s Side, nth int) *PanelFold {
	return seq.At(b.Folds, func(f *PanelFold) bool { return f.Side == s%4 && f.Nth == nth })
}

// Index is where a flange stands among the folds, −1 if it is not one of them.
func (b *PanelBlank) Index(f *PanelFold) int {
	return slices.IndexFunc(b.Folds, func(o PanelFold) bool { return o.Side == f.Side && o.Nth == f.Nth })
}

// keepOff is how far the neighbours of a flange stay off the outside of the base
// at its side.
func (b *PanelBlank) keepOff(f *PanelFold) float64 {
	return math.Max(b.ThicknessMm, f.inMm()) + b.GapMm
}

// reachMm is how far all that hangs on a side reaches inward from the outside of the
// base there.
func (b *PanelBlank) reachMm(f *PanelFold) float64 {
	in := b.ThicknessMm
	for i := range b.Folds {
		if o := &b.Folds[i]; o.Side == f.Side {
			in = seq.Max(in, o.Section(), func(v geom.Vertex) float64 { return f.OutsideMm - v.XMm })
		}
	}
	return in
}

// meet tells whether two flanges come together at a corner, f on the side before
// that of next; one that stays off far enough has a relief of its own.
func (b *PanelBlank) meet(f, next *PanelFold) bool {
	return f != nil && next != nil && !geom.Over(f.ToMm, next.ReliefMm+b.ThicknessMm) && !geom.Over(next.FromMm, f.ReliefMm+b.ThicknessMm)
}

// ends works out where a flange ends, and its fold line.
func (b *PanelBlank) ends(f *PanelFold) {
	_, half := b.halves(f.Side)
	left, right := f.FromMm, f.ToMm
	lineLeft, lineRight := left, right
	if f.Nth > 0 {
		on := b.at(f.Side, f.Nth-1)
		left, right = math.Max(left, half+on.LeftMm), math.Max(right, half-on.RightMm)
		lineLeft, lineRight = left, right
	} else {
		if n := b.on(f.Side + 3); b.meet(n, f) {
			left = math.Max(left, b.keepOff(n))
			lineLeft = math.Max(left, n.ReliefMm)
		}
		if n := b.on(f.Side + 1); b.meet(f, n) {
			right = math.Max(right, b.keepOff(n))
			lineRight = math.Max(right, n.ReliefMm)
		}
	}
	f.LeftMm, f.RightMm = left-half, half-right
	f.LineFrom = f.Side.TurnedTo(geom.Point{XMm: lineLeft - half, YMm: f.LineMm()})
	f.LineTo = f.Side.TurnedTo(geom.Point{XMm: half - lineRight, YMm: f.LineMm()})
}

// give cuts the flanges back that turn in over the base on the left and the right
// side, where those of the top and the bottom lie in their way: common practice, no
// source.
func (b *PanelBlank) give() {
	for f := range seq.Refs(b.Folds) {
		if f.Nth == 0 || f.Side == Top || f.Side == Bottom {
			continue
		}
		_, half := b.halves(f.Side)
		base := b.on(f.Side)
		if n := b.on(f.Side + 3); b.meet(n, base) && !b.mitre(b.at(f.Side+3, f.Nth), f) {
			f.LeftMm = math.Max(f.LeftMm, b.reachMm(n)+b.GapMm-half)
		}
		if n := b.on(f.Side + 1); b.meet(base, n) && !b.mitre(f, b.at(f.Side+1, f.Nth)) {
			f.RightMm = math.Min(f.RightMm, half-b.reachMm(n)-b.GapMm)
		}
		f.LineFrom = f.Side.TurnedTo(geom.Point{XMm: f.LeftMm, YMm: f.LineMm()})
		f.LineTo = f.Side.TurnedTo(geom.Point{XMm: f.RightMm, YMm: f.LineMm()})
	}
}

// mitre cuts two flanges at 45 degrees where they are turned in at one height beside a
// corner, f on the side before that of next, and tells whether it has. They run from the
// outside of the corner, past their bends, to the lower one's free edge.
func (b *PanelBlank) mitre(f, next *PanelFold) bool {
	if !b.Mitred || f == nil || next == nil || f.Nth != 1 || f.ToMm+b.on(f.Side).ToMm+next.FromMm+b.on(next.Side).FromMm > 0 {
		return false
	}
	for i := range b.Folds {
		if o := &b.Folds[i]; (o.Side == f.Side || o.Side == next.Side) && (o.AngleDeg != 90 || o.Nth > 1 || o.Forward != f.Forward) {
			return false
		}
	}
	if b.on(f.Side).HeightMm != b.on(next.Side).HeightMm || f.RadiusMm != next.RadiusMm {
		return false
	}
	in := f.SetbackMm + b.GapMm/math.Sqrt2 // where the cuts begin, from the outside of the corner
	run := math.Min(f.HeightMm, next.HeightMm) - f.SetbackMm
	_, half := b.halves(f.Side)
	f.RightMm, f.RightMitreMm = math.Min(f.RightMm, half-in), run
	_, half = b.halves(next.Side)
	next.LeftMm, next.LeftMitreMm = math.Max(next.LeftMm, in-half), run
	for _, o := range []*PanelFold{f, next} {
		o.LineFrom = o.Side.TurnedTo(geom.Point{XMm: o.LeftMm, YMm: o.LineMm()})
		o.LineTo = o.Side.TurnedTo(geom.Point{XMm: o.RightMm, YMm: o.LineMm()})
	}
	return true
}

// room refuses what does not go on the base.
func (b *PanelBlank) room(f *PanelFold) error {
	if err := cmp.Or(
		lookup.Length("distance from the left end", f.FromMm, lookup.Under(0), MaxLengthMm),
		lookup.Length("distance from the right end", f.ToMm, lookup.Under(0), MaxLengthMm),
		lookup.Length("length of the flange", f.RightMm-f.LeftMm-f.LeftMitreMm-f.RightMitreMm, 0, MaxLengthMm),
	); err != nil {
		return err
	}
	if f.Nth > 0 {
		return nil
	}
	need := f.ReliefMm
	if o := b.on(f.Side + 2); o != nil {
		need += o.ReliefMm
	}
	return lookup.Length("base", 2*f.OutsideMm, need, MaxLengthMm)
}

// add puts points of a side's own view on the outline.
func (b *PanelBlank) add(s Side, pts ...geom.Point) {
	for _, p := range pts {
		q := s.TurnedTo(p)
		q = geom.Point{XMm: geom.Clean(q.XMm), YMm: geom.Clean(q.YMm)}
		if n := len(b.Outline); n == 0 || b.Outline[n-1] != q {
			b.Outline = append(b.Outline, q)
		}
	}
}

// edge puts the ends of a side's flanges and their last edge on the outline: one that is
// narrower than the flange it is on steps in where its bend begins.
func (b *PanelBlank) edge(s Side) {
	var back []geom.Point
	for nth := 0; ; nth++ {
		f, next := b.at(s, nth), b.at(s, nth+1)
		if f == nil {
			return
		}
		if next == nil {
			b.add(s, f.end(f.LeftMm, f.LeftMitreMm, 1)...)
			right := f.end(f.RightMm, f.RightMitreMm, -1)
			slices.Reverse(right)
			slices.Reverse(back)
			b.add(s, right...)
			b.add(s, back...)
			return
		}
		if next.LeftMm > f.LeftMm {
			b.add(s, geom.Point{XMm: f.LeftMm, YMm: f.EdgeMm}, geom.Point{XMm: next.LeftMm, YMm: f.EdgeMm})
		}
		if next.RightMm < f.RightMm {
			back = append(back, geom.Point{XMm: f.RightMm, YMm: f.EdgeMm}, geom.Point{XMm: next.RightMm, YMm: f.EdgeMm})
		}
	}
}

// end is an end of a flange from its bend to its free edge, at x and mitred inward.
func (f *PanelFold) end(x, mitreMm, inward float64) (out []geom.Point) {
	if flat := f.BeginMm + f.AllowanceMm; mitreMm > 0 {
		out = append(out, geom.Point{XMm: x, YMm: flat})
		x += inward * mitreMm
		out = append(out, geom.Point{XMm: x, YMm: flat + mitreMm})
	}
	return append(out, geom.Point{XMm: x, YMm: f.EdgeMm})
}

// corner puts on the outline what lies between the flange of a side, or its
// edge, and that of the next.
func (b *PanelBlank) corner(s Side) {
	up, half := b.halves(s)
	this, next := b.on(s), b.on(s+1)
	turn := func(x, y float64) geom.Point { return geom.Point{XMm: y, YMm: -x} } // from the next side's view
	right := func(x, y float64) { b.add(s, geom.Point{XMm: x, YMm: y}) }
	left := func(x, y float64) { b.add(s, turn(-x, y)) }
	switch {
	case this == nil && next == nil:
		b.add(s, geom.Point{XMm: half, YMm: up})
	case b.meet(this, next):
		at := geom.Point{XMm: half - next.ReliefMm, YMm: up - this.ReliefMm}
		if this.RightMm > at.XMm {
			y := this.BeginMm + this.AllowanceMm
			b.add(s, geom.Point{XMm: this.RightMm, YMm: y}, geom.Point{XMm: at.XMm, YMm: y})
		} else {
			at.XMm = this.RightMm
		}
		top := -next.LeftMm // the next flange's end, seen from this side
		if top > at.YMm {
			x := next.BeginMm + next.AllowanceMm
			b.add(s, at, geom.Point{XMm: x, YMm: at.YMm}, geom.Point{XMm: x, YMm: top})
		} else {
			b.add(s, geom.Point{XMm: at.XMm, YMm: top})
		}
	default:
		if this != nil {
			b.slot(this, this.ToMm, right, false)
		}
		if next != nil {
			b.slot(next, next.FromMm, left, true)
		}
	}
}

// slot is the relief beside a flange that stays offMm from the end of its side,
// and the corner of the base. It is put from the flange outward, or toward it.
func (b *PanelBlank) slot(f *PanelFold, offMm float64, put func(x, y float64), toward bool) {
	if offMm == 0 {
		return
	}
	_, half := b.halves(f.Side)
	end, floor := half-offMm, f.OutsideMm-f.ReliefMm
	pts := [][2]float64{{end, floor}, {end + b.ThicknessMm, floor}, {end + b.ThicknessMm, f.OutsideMm}, {half, f.OutsideMm}}
	if offMm <= b.ThicknessMm {
		pts = [][2]float64{{end, floor}, {half, floor}}
	}
	if toward {
		slices.Reverse(pts)
	}
	for _, p := range pts {
		put(p[0], p[1])
	}
}
