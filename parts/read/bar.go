package read

import (
	"fmt"
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
)

func (f *fields) bar() *parts.Bar {
	key, _ := f.oneOf()
	b := &parts.Bar{Pos: f.n.pos, Section: parts.BarSection(key), Wall: f.length("wall"), Flange: f.length("flange"), Corner: f.length("corner"), Length: f.length("length")}
	switch b.Section {
	case parts.SquareBar, parts.RoundBar:
		b.Width = f.length(key)
		b.Depth = b.Width
	case parts.RectangleBar, parts.AngleBar, parts.ChannelBar, parts.FlatBar:
		b.Width, b.Depth = f.pair(key)
	}
	if b.Section == parts.ChannelBar {
		b.Open = parts.Side(f.word("open"))
		if !f.given("flange") {
			b.Flange = b.Wall
		}
		if b.Open == parts.TopSide || b.Open == parts.BottomSide { // the web lies level
			b.Width, b.Depth = b.Depth, b.Width
		}
	}
	f.besideSection(b)
	b.Left, b.Right = f.sub("left").barEnd(b), f.sub("right").barEnd(b)
	return b
}

// besideSection checks the keys that go with some sections only, and that the
// section has room for its walls.
func (f *fields) besideSection(b *parts.Bar) {
	if b.Section == "" {
		return
	}
	for _, only := range []struct {
		key, use string
		fits     bool
	}{
		{"wall", "tubes, angles and channels", b.Section != parts.FlatBar},
		{"flange", "channels", b.Section == parts.ChannelBar},
		{"open", "channels", b.Section == parts.ChannelBar},
		{"corner", "square and rectangular tubes", b.Wall.Set() && (b.Section == parts.SquareBar || b.Section == parts.RectangleBar)},
	} {
		f.spare(only.key, !only.fits, fmt.Sprintf("this %s bar takes no %s", b.Section, only.key), only.key+" is for "+only.use)
	}
	if (b.Section == parts.AngleBar || b.Section == parts.ChannelBar) && !f.given("wall") {
		f.lack(f.n.pos, f.n.label+" lacks the key wall, the thickness of the "+string(b.Section), "wall: 6")
		return
	}
	least, walls := math.Min(b.Width.Mm, b.Depth.Mm), 2.0
	if b.Section == parts.AngleBar {
		walls = 1
	}
	if least > 0 && walls*b.Wall.Mm >= least {
		f.faultf(b.Wall.Pos, "a thinner wall", "a wall of %s leaves no room in a %s of %s", b.Wall.Text, b.Section, f.said(least))
	}
	if 2*b.Corner.Mm > least {
		f.faultf(b.Corner.Pos, "at most half the smaller side", "the corner radius %s does not fit the section", b.Corner.Text)
	}
}

func (f *fields) barEnd(b *parts.Bar) parts.BarEnd {
	if f == nil {
		return parts.BarEnd{}
	}
	e := parts.BarEnd{Pos: f.n.pos}
	key, v := f.oneOf()
	switch key {
	case "mitre":
		e.Mitre, e.Long = f.angle("mitre"), parts.Side(f.word("long"))
		if e.Mitred() && !f.given("long") {
			f.lack(f.n.pos, f.n.label+" lacks the key long: the side that its long point is on", "long: top, or long: bottom")
		}
	case "onto":
		if v.kind != mapNode {
			e.Onto = f.ref(v)
		} else if o := f.sub("onto"); o != nil {
			e.Round = o.length("diameter")
		}
		if b.Section == parts.RoundBar {
			f.fault(v.pos, "a round bar coped onto a round", "kind: tube with ends, which are saddles")
		}
	}
	for _, with := range [][2]string{{"long", "mitre"}, {"place", "onto"}} {
		f.spare(with[0], key != "" && key != with[1], with[0]+" goes with "+with[1], "delete "+with[0])
	}
	if p := f.sub("place"); p != nil {
		e.Place = &parts.EndPlace{Pos: p.n.pos, Clock: p.angle("clock"), Axial: p.length("axial"), From: p.face("from")}
	}
	return e
}

// barLength checks that the ends of a bar leave something of it.
func (r *reader) barLength(b *parts.Bar) {
	for i, y := range []float64{b.Width.Mm / 2, -b.Width.Mm / 2} {
		if lost := b.EndMm(parts.LeftEnd, y) + b.EndMm(parts.RightEnd, y); !geom.Over(b.Length.Mm, lost) {
			r.faultf(b.Length.Pos, "a longer bar, or less steep mitres", "the mitres leave nothing of the %s of a bar of %s", []parts.Side{parts.TopSide, parts.BottomSide}[i], b.Length.Text)
		}
	}
}

// onBar checks that a group of holes or slots lies on a wall of a bar.
func (r *reader) onBar(b *parts.Bar, g parts.HoleGroup, what string) {
	side, walls := g.Side(), b.Walls()
	if !slices.Contains(walls, side) {
		r.faultf(g.Pos, what+"s on "+all(plain(walls)), "the side %s of the %s has no metal to drill", side, b.Section)
		return
	}
	if g.Walls == parts.BothWalls && !b.Tube() {
		r.faultf(g.Pos, "delete walls", "only a tube has another wall behind the one that is drilled")
	}
	box := b.SideMm(side)
	for i, at := range g.Pattern.Shape.Places(box) {
		x := at.XMm
		if side == parts.BackSide {
			x = -x
		}
		y := 0.0 // of the front view
		switch side {
		case parts.FrontSide, parts.BackSide:
			y = at.YMm
		case parts.TopSide:
			y = b.Width.Mm / 2
		case parts.BottomSide:
			y = -b.Width.Mm / 2
		}
		off := !geom.Over(at.YMm, box.Min.YMm) || !geom.Over(box.Max.YMm, at.YMm) || b.Section == parts.RoundBar && geom.Over(math.Abs(at.YMm), 0) ||
			!geom.Over(x, b.EndMm(parts.LeftEnd, y)-b.Length.Mm/2) || !geom.Over(b.Length.Mm/2-b.EndMm(parts.RightEnd, y), x)
		if off {
			r.faultf(g.Pattern.PosOf(i), "a place on that side, x from the middle of the bar and y from the middle of the side",
				"the %s at x %s, y %s is not on the side %s of the bar", what, r.bare(at.XMm), r.said(at.YMm), side)
		}
	}
}
