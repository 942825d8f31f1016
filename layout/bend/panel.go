package bend

import (
	"math"
	"slices"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// Side is an edge of a panel's base, clockwise from the top one.
type Side int

// The sides.
const (
	Top Side = iota
	Right
	Bottom
	Left
)

// TurnedTo turns a point of a side's own view, in which the side lies at the
// top, into the view of the base: x right, y up, the origin in its middle.
func (s Side) TurnedTo(p geom.Point) geom.Point {
	switch s {
	case Right:
		return geom.Point{XMm: p.YMm, YMm: -p.XMm}
	case Bottom:
		return geom.Point{XMm: -p.XMm, YMm: -p.YMm}
	case Left:
		return geom.Point{XMm: -p.YMm, YMm: p.XMm}
	}
	return p
}

// Flange is a leg folded up from a side of the base.
type Flange struct {
	Side     Side
	HeightMm float64 // along the outside, from the corner (beyond a square bend, from the outside tangent) to the free edge
	AngleDeg float64
	RadiusMm float64 // inside
	// FromMm and ToMm are how far it stays off the left and the right end of
	// its side, looking at the base with the side at the top; 0 runs to the end.
	FromMm, ToMm float64
	Forward      bool // it comes towards who looks at the base; else it goes away
}

// Panel is a rectangular base with flanges, at most one on each side. Its width
// and height are taken over the outside of the flanges.
type Panel struct {
	WidthMm, HeightMm, ThicknessMm float64
	GapMm                          float64 // left open between two flanges at a corner
	K                              float64 // as of a Bend; 0 takes DIN 6935
	Flanges                        []Flange
}

// PanelFold is a flange on the blank. Lengths up and along are in the view of
// its own side: up from the middle of the base, along from its middle to the
// right.
type PanelFold struct {
	Flange
	Result
	OutsideMm        float64 // up: where the outside of the base ends once folded
	BeginMm          float64 // up: where the bend begins; it ends an AllowanceMm further
	EdgeMm           float64 // up: the free edge on the blank
	LeftMm, RightMm  float64 // along: the ends of the flange
	LineFrom, LineTo geom.Point
	ReliefMm         float64 // depth of its reliefs from OutsideMm
}

// LineMm is where the punch meets the sheet, up from the middle of the base.
func (f *PanelFold) LineMm() float64 { return f.BeginMm + f.AllowanceMm/2 }

// StopMm is the distance of the fold line from the free edge.
func (f *PanelFold) StopMm() float64 { return f.EdgeMm - f.LineMm() }

// FlatMm is how much of the flange stays flat, from the end of the bend.
func (f *PanelFold) FlatMm() float64 { return f.HeightMm - f.SetbackMm }

// OnBlank is where a point of the folded flange lies on the blank: along its
// side from the middle, and up its outside from the corner.
func (f *PanelFold) OnBlank(alongMm, upMm float64) geom.Point {
	return f.Side.TurnedTo(geom.Point{XMm: alongMm, YMm: f.OutsideMm + upMm - f.DeductionMm})
}

// tipMm is the inside of the free edge once folded: how far it lies within the
// outside of the base, and how high over the inside face of the base.
func (f *PanelFold) tipMm(thicknessMm float64) (inMm, overMm float64) {
	sin, cos := math.Sincos(f.AngleDeg * math.Pi / 180)
	r, flat := f.RadiusMm, f.FlatMm()
	start := f.SetbackMm // the bend begins so far within the outside
	return start - r*sin - flat*cos, r - r*cos + flat*sin
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
	for _, err := range []error{
		lookup.Length("base width", p.WidthMm, 0, MaxLengthMm), lookup.Length("base height", p.HeightMm, 0, MaxLengthMm),
		lookup.Length("gap", p.GapMm, math.Nextafter(0, -1), MaxLengthMm),
	} {
		if err != nil {
			return out, err
		}
	}
	for _, f := range p.Flanges {
		fold, err := p.fold(f)
		if err != nil {
			return out, err
		}
		out.Folds = append(out.Folds, fold)
	}
	for i := range out.Folds {
		out.ends(&out.Folds[i])
	}
	for i := range out.Folds {
		if err := out.room(&out.Folds[i]); err != nil {
			return out, err
		}
	}
	for s := Top; s <= Left; s++ {
		if f := out.on(s); f != nil {
			out.add(s, geom.Point{XMm: f.LeftMm, YMm: f.EdgeMm}, geom.Point{XMm: f.RightMm, YMm: f.EdgeMm})
		}
		out.corner(s)
	}
	return out, nil
}

// fold works out a flange by itself.
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
	up, _ := p.halves(f.Side)
	fold := PanelFold{Flange: f, Result: r, OutsideMm: up, BeginMm: up - r.SetbackMm, ReliefMm: relief}
	fold.EdgeMm = up + f.HeightMm - r.DeductionMm
	return fold, lookup.Length("flange height", f.HeightMm, r.SetbackMm, MaxLengthMm)
}

// halves are half the base up to a side, and half along it.
func (p Panel) halves(s Side) (up, along float64) {
	if s == Top || s == Bottom {
		return p.HeightMm / 2, p.WidthMm / 2
	}
	return p.WidthMm / 2, p.HeightMm / 2
}

// on is the flange of a side, nil if it has none.
func (b *PanelBlank) on(s Side) *PanelFold {
	i := slices.IndexFunc(b.Folds, func(f PanelFold) bool { return f.Side == s%4 })
	if i < 0 {
		return nil
	}
	return &b.Folds[i]
}

// keepOff is how far the neighbours of a flange stay off the outside of the base
// at its side.
func (b *PanelBlank) keepOff(f *PanelFold) float64 {
	in, _ := f.tipMm(b.ThicknessMm)
	return math.Max(b.ThicknessMm, in) + b.GapMm
}

// meet tells whether two flanges come together at a corner, f on the side before
// that of next; one that stays off far enough has a relief of its own.
func (b *PanelBlank) meet(f, next *PanelFold) bool {
	return f != nil && next != nil && f.ToMm <= next.ReliefMm+b.ThicknessMm && next.FromMm <= f.ReliefMm+b.ThicknessMm
}

// ends works out where a flange ends, and its fold line.
func (b *PanelBlank) ends(f *PanelFold) {
	_, half := b.halves(f.Side)
	left, right := f.FromMm, f.ToMm
	lineLeft, lineRight := left, right
	if n := b.on(f.Side + 3); b.meet(n, f) {
		left = math.Max(left, b.keepOff(n))
		lineLeft = math.Max(left, n.ReliefMm)
	}
	if n := b.on(f.Side + 1); b.meet(f, n) {
		right = math.Max(right, b.keepOff(n))
		lineRight = math.Max(right, n.ReliefMm)
	}
	f.LeftMm, f.RightMm = left-half, half-right
	f.LineFrom = f.Side.TurnedTo(geom.Point{XMm: lineLeft - half, YMm: f.LineMm()})
	f.LineTo = f.Side.TurnedTo(geom.Point{XMm: half - lineRight, YMm: f.LineMm()})
}

// room refuses what does not go on the base.
func (b *PanelBlank) room(f *PanelFold) error {
	for _, err := range []error{
		lookup.Length("distance from the left end", f.FromMm, math.Nextafter(0, -1), MaxLengthMm),
		lookup.Length("distance from the right end", f.ToMm, math.Nextafter(0, -1), MaxLengthMm),
		lookup.Length("length of the flange", f.RightMm-f.LeftMm, 0, MaxLengthMm),
	} {
		if err != nil {
			return err
		}
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

// Order is the order to fold in: opposite flanges one after the other, the pair
// with the shorter fold lines first, and of a pair the lower flange, which is the
// less in the way. Common practice, no source.
func (b *PanelBlank) Order() []int {
	order := make([]int, len(b.Folds))
	for i := range order {
		order[i] = i
	}
	pair := func(i int) float64 {
		_, half := b.halves(b.Folds[i].Side)
		return half
	}
	slices.SortStableFunc(order, func(i, j int) int {
		if d := pair(i) - pair(j); d != 0 {
			return int(math.Copysign(1, d))
		}
		if d := int(b.Folds[i].Side%2) - int(b.Folds[j].Side%2); d != 0 {
			return d
		}
		return int(math.Copysign(1, b.Folds[i].HeightMm-b.Folds[j].HeightMm))
	})
	return order
}

// Way is what stands in the way of the tool at a fold.
type Way struct {
	// BesideMm is how near the opposite flange comes to the middle of the punch
	// when the fold is done; negative: it would have to stand in the punch.
	// Geometry. +Inf where none stands there.
	BesideMm float64
	// PunchMm is the room for the length of the punch between flanges that stand
	// already at the ends of the fold, and DieMm that for the die between those
	// that hang there; 0 where it is not limited.
	PunchMm, DieMm float64
}

// WayOf is what stands in the way of fold i when those before it in the order
// are done.
func (b *PanelBlank) WayOf(order []int, i int) Way {
	f, way := &b.Folds[i], Way{BesideMm: math.Inf(1)}
	_, half := b.halves(f.Side)
	for _, k := range order {
		if k == i {
			break
		}
		o := &b.Folds[k]
		in, over := o.tipMm(b.ThicknessMm)
		room, opposite := &way.PunchMm, (o.Side+2)%4 == f.Side
		if o.Forward != f.Forward {
			room = &way.DieMm
		}
		switch {
		case !opposite:
			if *room == 0 {
				*room = 2 * half
			}
			*room -= math.Max(b.ThicknessMm, in)
		case o.Forward == f.Forward:
			// The base leans by half the angle about the middle of the bend.
			sin, cos := math.Sincos(f.AngleDeg * math.Pi / 360)
			along := f.OutsideMm + o.OutsideMm - f.SetbackMm - in
			way.BesideMm = along*cos - (over-f.RadiusMm)*sin
		}
	}
	return way
}

// Vertex is a corner of a section with the bulge of the side that follows: the
// tangent of a quarter of its angle, positive where it turns left.
type Vertex struct {
	geom.Point
	Bulge float64
}

// Section is the cut through a flange and its bend, folded, anticlockwise: x
// outward from the middle of the base in its side's view, y towards who looks at
// the base, 0 on its front.
func (f *PanelFold) Section(thicknessMm float64) []Vertex {
	sin, cos := math.Sincos(f.AngleDeg * math.Pi / 180)
	r, t, flat := f.RadiusMm, thicknessMm, f.FlatMm()
	// Folded away from the viewer: the front is the outside of the bend.
	c := geom.Point{XMm: f.BeginMm, YMm: -(r + t)}
	at := func(radius, run float64) geom.Point {
		return geom.Point{XMm: c.XMm + radius*sin + run*cos, YMm: c.YMm + radius*cos - run*sin}
	}
	bulge := math.Tan(f.AngleDeg * math.Pi / 720)
	v := []Vertex{
		{geom.Point{XMm: c.XMm, YMm: c.YMm + r}, -bulge}, {at(r, 0), 0}, {at(r, flat), 0},
		{at(r+t, flat), 0}, {at(r+t, 0), bulge}, {geom.Point{XMm: c.XMm, YMm: 0}, 0},
	}
	if !f.Forward {
		return v
	}
	// Mirrored about the middle of the sheet, and so taken the other way round;
	// the two leave an arc its sense.
	out := make([]Vertex, len(v))
	for i := range v {
		k := len(v) - 1 - i
		out[i] = Vertex{geom.Point{XMm: v[k].XMm, YMm: -t - v[k].YMm}, v[(k+len(v)-1)%len(v)].Bulge}
	}
	return out
}
