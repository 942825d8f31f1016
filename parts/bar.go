package parts

import (
	"math"
	"slices"

	"centrepop/parts/geom"
)

// BarSection names what a bar's cross section is.
type BarSection string

// The sections.
const (
	SquareBar    BarSection = "square"
	RectangleBar BarSection = "rectangle"
	RoundBar     BarSection = "round"
	AngleBar     BarSection = "angle"
	ChannelBar   BarSection = "channel"
	FlatBar      BarSection = "flat"
)

// The ends of a bar, and its sides besides front, back, top and bottom of the
// front view, in which the bar lies level.
const (
	LeftEnd   = LeftSide
	RightEnd  = RightSide
	FrontSide = Side(Front)
	BackSide  = Side(Back)
)

// Bar is a length of tube or rolled section. It lies level in its front view, its
// length from the left end to the right one.
type Bar struct {
	Pos     Pos
	Section BarSection
	Width   Length // across the front view: a side, a diameter, the leg in front, the web
	Depth   Length // behind its front: the other leg, the flanges, a flat's thickness
	Wall    Length // of a tube, an angle, a channel's web; unset of a solid bar
	Flange  Length // thickness of a channel's flanges
	Corner  Length // outside radius of a square or rectangular tube
	Open    Side   // of a channel: the side that its flanges point to
	Length  Length // over all: between the outermost points
	Left    BarEnd
	Right   BarEnd
}

// BarEnd is how an end of a bar is cut: square where neither Mitre nor Onto or
// Round is set.
type BarEnd struct {
	Pos   Pos
	Mitre Angle // from a square cut
	Long  Side  // top or bottom: the side of the long point
	// Onto is the round that the end is coped onto: an outside of another part,
	// or, if that is not set, a diameter.
	Onto  Ref
	Round Length
	// Place says where on the round; nil if not said.
	Place *EndPlace
}

// Mitred tells whether the end is cut at an angle.
func (e *BarEnd) Mitred() bool { return e.Mitre.Pos.Line > 0 && e.Mitre.Deg > 0 }

// Coped tells whether the end is hollowed to sit on a round.
func (e *BarEnd) Coped() bool { return e.Onto.Set() || e.Round.Set() }

// RiseDeg is the angle of the end from a square cut, positive where the top
// sticks out.
func (e *BarEnd) RiseDeg() float64 {
	if !e.Mitred() {
		return 0
	}
	if e.Long == BottomSide {
		return -e.Mitre.Deg
	}
	return e.Mitre.Deg
}

// Tube tells whether the section is closed round a hollow.
func (b *Bar) Tube() bool {
	return b.Wall.Set() && (b.Section == SquareBar || b.Section == RectangleBar || b.Section == RoundBar)
}

// BothWalls of a tube are what a hole goes through that is not in one only.
const BothWalls = "both"

// End is one of the two ends.
func (b *Bar) End(side Side) *BarEnd {
	if side == RightEnd {
		return &b.Right
	}
	return &b.Left
}

// Walls are the sides that have metal to drill from outside.
func (b *Bar) Walls() []Side {
	all := []Side{FrontSide, BackSide, TopSide, BottomSide}
	switch b.Section {
	case AngleBar:
		return []Side{FrontSide, BottomSide}
	case ChannelBar:
		return slices.DeleteFunc(all, func(s Side) bool { return s == b.Open })
	}
	return all
}

// SideMm is a side as seen by who looks at it: along the bar from the middle of its
// length, and across from the middle of the side. On top y
// goes to the back and on the bottom to the front.
func (b *Bar) SideMm(side Side) geom.Box {
	half := b.Width.Mm / 2
	if side == TopSide || side == BottomSide {
		half = b.Depth.Mm / 2
	}
	return geom.Box{Min: geom.Point{XMm: -b.Length.Mm / 2, YMm: -half}, Max: geom.Point{XMm: b.Length.Mm / 2, YMm: half}}
}

// EndMm is how far an end has run back from the outermost point where it is cut, at a
// height y over the middle of the front view.
func (b *Bar) EndMm(side Side, yMm float64) float64 {
	rise := math.Tan(b.End(side).RiseDeg() * math.Pi / 180)
	return b.Width.Mm/2*math.Abs(rise) - yMm*rise
}

// bar reads a bar.
func (f *fields) bar() *Bar {
	if f == nil {
		return nil
	}
	key, _ := f.oneOf()
	b := &Bar{Pos: f.n.pos, Section: BarSection(key), Wall: f.length("wall"), Flange: f.length("flange"), Corner: f.length("corner"), Length: f.length("length")}
	switch b.Section {
	case SquareBar, RoundBar:
		b.Width = f.length(key)
		b.Depth = b.Width
	case RectangleBar, AngleBar, ChannelBar, FlatBar:
		b.Width, b.Depth = f.pair(key)
	}
	if b.Section == ChannelBar {
		b.Open = Side(f.word("open"))
		if !f.given("flange") {
			b.Flange = b.Wall
		}
		if b.Open == TopSide || b.Open == BottomSide { // the web lies level
			b.Width, b.Depth = b.Depth, b.Width
		}
	}
	f.besideSection(b)
	b.Left, b.Right = f.sub("left").barEnd(b), f.sub("right").barEnd(b)
	return b
}

// besideSection checks the keys that go with some sections only, and that the
// section has room for its walls.
func (f *fields) besideSection(b *Bar) {
	if b.Section == "" {
		return
	}
	for _, only := range []struct {
		key, use string
		fits     bool
	}{
		{"wall", "tubes, angles and channels", b.Section != FlatBar},
		{"flange", "channels", b.Section == ChannelBar},
		{"open", "channels", b.Section == ChannelBar},
		{"corner", "square and rectangular tubes", b.Wall.Set() && (b.Section == SquareBar || b.Section == RectangleBar)},
	} {
		if f.given(only.key) && !only.fits {
			f.faultf(f.n.keyPos(only.key), only.key+" is for "+only.use, "this %s bar takes no %s", b.Section, only.key)
		}
	}
	if (b.Section == AngleBar || b.Section == ChannelBar) && !f.given("wall") {
		f.lack(f.n.pos, f.n.label+" lacks the key wall, the thickness of the "+string(b.Section), "wall: 6")
		return
	}
	least, walls := math.Min(b.Width.Mm, b.Depth.Mm), 2.0
	if b.Section == AngleBar {
		walls = 1
	}
	if b.Wall.Set() && least > 0 && walls*b.Wall.Mm >= least {
		f.faultf(b.Wall.Pos, "a thinner wall", "a wall of %s leaves no room in a %s of %s", b.Wall.Text, b.Section, f.units.said(least))
	}
	if b.Corner.Set() && 2*b.Corner.Mm > least {
		f.faultf(b.Corner.Pos, "at most half the smaller side", "the corner radius %s does not fit the section", b.Corner.Text)
	}
}

// barEnd reads an end of a bar.
func (f *fields) barEnd(b *Bar) BarEnd {
	if f == nil {
		return BarEnd{}
	}
	e := BarEnd{Pos: f.n.pos}
	key, v := f.oneOf()
	switch key {
	case "mitre":
		e.Mitre, e.Long = f.angle("mitre"), Side(f.word("long"))
		if e.Mitred() && !f.given("long") {
			f.lack(f.n.pos, f.n.label+" lacks the key long: the side that its long point is on", "long: top, or long: bottom")
		}
	case "onto":
		if v.kind != mapNode {
			e.Onto = f.ref(v)
		} else if o := f.sub("onto"); o != nil {
			e.Round = o.length("diameter")
		}
		if b.Section == RoundBar {
			f.fault(v.pos, "a round bar coped onto a round", "kind: tube with ends, which are saddles")
		}
	}
	for _, with := range [][2]string{{"long", "mitre"}, {"place", "onto"}} {
		if f.given(with[0]) && key != "" && key != with[1] {
			f.faultf(f.n.keyPos(with[0]), "delete "+with[0], "%s goes with %s", with[0], with[1])
		}
	}
	if p := f.sub("place"); p != nil {
		e.Place = &EndPlace{Pos: p.n.pos, Clock: p.angle("clock"), Axial: p.length("axial"), From: p.face("from")}
	}
	return e
}

// barRoom checks the lengths of a bar and where its holes lie.
func (r *reader) barRoom(p *Part, good func(key string, pos Pos) bool) {
	b := p.Bar
	for i, y := range []float64{b.Width.Mm / 2, -b.Width.Mm / 2} {
		if lost := b.EndMm(LeftEnd, y) + b.EndMm(RightEnd, y); lost >= b.Length.Mm-geom.CloseMm {
			r.faultf(b.Length.Pos, "a longer bar, or less steep mitres", "the mitres leave nothing of the %s of a bar of %s", []Side{TopSide, BottomSide}[i], b.Length.Text)
		}
	}
	for i := range p.Holes {
		if g := &p.Holes[i]; good("holes", g.Pos) {
			r.onBar(b, g)
		}
	}
}

// onBar checks that a group of holes lies on a wall of a bar.
func (r *reader) onBar(b *Bar, g *HoleGroup) {
	side := g.Side()
	walls := b.Walls()
	if !slices.Contains(walls, side) {
		r.faultf(g.Pos, "holes on "+all(plain(walls)), "the side %s of the %s has no metal to drill", side, b.Section)
		return
	}
	if g.Walls == BothWalls && !b.Tube() {
		r.faultf(g.Pos, "delete walls", "only a tube has another wall behind the one that is drilled")
	}
	box := b.SideMm(side)
	for i, at := range g.Pattern.Shape.Places(box) {
		x := at.XMm
		if side == BackSide {
			x = -x
		}
		y := 0.0 // of the front view
		switch side {
		case FrontSide, BackSide:
			y = at.YMm
		case TopSide:
			y = b.Width.Mm / 2
		case BottomSide:
			y = -b.Width.Mm / 2
		}
		off := at.YMm <= box.Min.YMm+geom.CloseMm || at.YMm >= box.Max.YMm-geom.CloseMm ||
			b.Section == RoundBar && math.Abs(at.YMm) > geom.CloseMm || x <= -b.Length.Mm/2+b.EndMm(LeftEnd, y)+geom.CloseMm || x >= b.Length.Mm/2-b.EndMm(RightEnd, y)-geom.CloseMm
		if off {
			r.faultf(g.Pattern.PosOf(i), "a place on that side, x from the middle of the bar and y from the middle of the side", "the hole at x %s, y %s is not on the side %s of the bar", r.units.number(at.XMm), r.units.said(at.YMm), side)
		}
	}
}

// Side is the side of a bar that a group of holes is on.
func (g *HoleGroup) Side() Side {
	if g.On != "" {
		return g.On
	}
	return Side(g.Face)
}
