package read

import (
	"fmt"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// bends reads the flanges of a folded part, whose base is its outline.
func (f *fields) bends() *parts.Bends {
	b := &parts.Bends{Pos: f.n.pos, Radius: f.length("radius"), K: f.number("k"), Gap: f.length("gap"), Die: f.length("die"), Punch: f.length("punch")}
	if f.word("corners") == "mitred" {
		b.Mitred = f.n.get("corners").pos
	}
	for _, one := range f.each("flanges") {
		b.Flanges = append(b.Flanges, one.flap(b))
	}
	return b
}

// flap reads a flange.
func (f *fields) flap(b *parts.Bends) parts.Flap {
	a := parts.Flap{
		Pos: f.n.pos, Side: parts.Side(f.word("side")), Height: f.length("height"), Angle: f.angle("angle"), Radius: f.length("radius"),
		Left: f.length("left"), Right: f.length("right"), Toward: parts.Back,
	}
	if !f.given("radius") {
		a.Radius = b.Radius
	}
	if f.word("toward") == string(parts.Front) {
		a.Toward = parts.Front
	}
	if a.Side != "" && b.On(a.Side) != nil {
		f.faultf(f.n.get("side").pos, "one flange on each side", "the side %s has a flange already, in line %d", a.Side, b.On(a.Side).Pos.Line)
	}
	f.onEdge(b, &a)
	return a
}

// onEdge gives a flange on the free edge of another the ends of that one, and refuses it
// where there is none.
func (f *fields) onEdge(b *parts.Bends, a *parts.Flap) {
	base, nth := a.Side.Base()
	if nth == 0 {
		return
	}
	under := base
	if nth > 1 {
		under = parts.Side(fmt.Sprintf("%s-%d", base, nth))
	}
	on := b.On(under)
	if on == nil {
		f.faultf(f.n.get("side").pos, "the flange "+string(under)+" in a line before it", "the flange %s has nothing to be on", a.Side)
		return
	}
	if !f.given("left") {
		a.Left = on.Left
	}
	if !f.given("right") {
		a.Right = on.Right
	}
	if geom.Over(on.Left.Mm, a.Left.Mm) || geom.Over(on.Right.Mm, a.Right.Mm) {
		f.faultf(a.Pos, "left and right no less than those of "+string(under), "the flange %s is longer than the one it is on", a.Side)
	}
}

// base checks the outline that flanges stand on.
func (f *fields) base(p *parts.Part) {
	o := p.Outline
	if p.Kind != parts.Folded || o == nil || o.Shape == "" {
		return
	}
	switch {
	case o.Shape != parts.SquareOutline && o.Shape != parts.RectangleOutline:
		f.faultf(o.Pos, "square: 120, or rectangle: [200, 120]", "the base of a folded part is a rectangle, not a %s", o.Shape)
	case o.Corner.Set():
		f.faultf(o.Corner.Pos, "delete corner", "the base of a folded part has no corner radius")
	case o.LeaveOnPart.Set():
		f.faultf(o.LeaveOnPart.Pos, "delete leave", "nothing is turned on a folded part")
	}
	if !f.n.hasAny([]string{"bends"}) {
		f.faultf(f.n.get("kind").pos, bendsGroup.Example, "a %s part needs its bends", p.Kind)
	}
}

// onFlap checks that the centres of a pattern lie on the flange of a side.
func (r *reader) onFlap(p *parts.Part, on parts.Side, pattern parts.Pattern, face parts.Face, what string) {
	switch {
	case p.Bends == nil:
		r.faultf(pattern.Pos, "delete on", "the part has no flanges for the %s to be on", what)
		return
	case p.Bends.On(on) == nil:
		r.faultf(pattern.Pos, "a side with a flange", "the %s is on the flange of the side %s, which has none", what, on)
		return
	case face == parts.Back:
		r.faultf(pattern.Pos, "delete face", "a %s on a flange is placed as seen from the front", what)
		return
	}
	box := p.Bends.On(on).BoxMm(p.Outline)
	for i, at := range pattern.Shape.Places(box) {
		if !geom.Over(at.XMm, box.Min.XMm) || !geom.Over(box.Max.XMm, at.XMm) || !geom.Over(at.YMm, 0) || !geom.Over(box.Max.YMm, at.YMm) {
			r.faultf(pattern.PosOf(i), "a place on the flange, y up from the corner", "the %s at x %s, y %s is not on the flange of the side %s", what, r.bare(at.XMm), r.said(at.YMm), on)
		}
	}
}
