package parts

import (
	"slices"
	"strings"

	"centrepop/parts/geom"
)

// GrooveKind is what a groove is for.
type GrooveKind string

// The kinds of groove.
const (
	RingGroove   GrooveKind = "retaining-ring"
	ORingGroove  GrooveKind = "o-ring" // for an O-ring, in a round or a face
	GreaseGroove GrooveKind = "grease"
	ReliefGroove GrooveKind = "relief" // for a tool that runs out
)

// Groove is a groove turned into a step, a bore or an end face.
type Groove struct {
	Pos             Pos
	Name            Text
	In              Text   // a step; bore or outline of a flat part; front or back
	Axial           Length // from the face From to its nearer side; unset in a face
	From            Face
	Kind            GrooveKind
	Inside, Section Length // of an O-ring
	Against         Length // diameter an O-ring seals against; unset for that of the step
	Moving          bool
	PressureOutside bool   // of an O-ring in a face
	Width, Depth    Length // of a plain groove; depth on one side
}

// Face is the end face that the groove lies in, "" for one in a round.
func (g *Groove) Face() Face {
	if f := Face(g.In.Value); f == Front || f == Back {
		return f
	}
	return ""
}

// groove reads a groove. That its step exists and has room is checked with the
// geometry, and where a standard sets the size by the layout.
func (f *fields) groove() Groove {
	g := Groove{
		Pos: f.n.pos, Name: f.name("name"), In: f.name("in"), Axial: f.length("axial"), From: f.face("from"),
		Against: f.length("against"), Moving: f.yes("moving"), PressureOutside: f.word("pressure") == "outside", Width: f.length("width"), Depth: f.length("depth"),
	}
	if g.Kind = GrooveKind(f.word("for")); g.Kind == ORingGroove {
		f.oring(&g)
	}
	f.besideGroove(&g)
	return g
}

// oring reads "50x3.53".
func (f *fields) oring(g *Groove) {
	t := f.text("o-ring")
	if t.Value == "" {
		return
	}
	inside, section, two := f.pairBy(t)
	if !two || section.Mm >= inside.Mm {
		f.faultf(t.Pos, oringExample, "o-ring is %s, which is no O-ring", quote(t.Value))
		return
	}
	g.Inside, g.Section = inside, section
}

// pairBy reads two sizes with x between them; two is false where they are not.
func (f *fields) pairBy(t Text) (a, b Length, two bool) {
	first, second, two := strings.Cut(strings.ReplaceAll(t.Value, "×", "x"), "x")
	side := func(text string) Length {
		text = strings.TrimSpace(text)
		mm, wrong := parseLength(text, f.units)
		if wrong != "" || mm < smallestMm {
			two = false
		}
		return Length{Mm: mm, Text: text, Pos: t.Pos}
	}
	a, b = side(first), side(second)
	return a, b, two
}

// grooveKeys are the keys that only some grooves have a use for.
var grooveKeys = []struct {
	key, use string
	takes    func(g *Groove) bool
}{
	{"axial", "a groove in a round", func(g *Groove) bool { return g.Face() == "" }},
	{"from", "a groove in a round", func(g *Groove) bool { return g.Face() == "" }},
	{"against", "an O-ring in a round", func(g *Groove) bool { return g.Kind == ORingGroove && g.Face() == "" }},
	{"moving", "an O-ring in a round", func(g *Groove) bool { return g.Kind == ORingGroove && g.Face() == "" }},
	{"pressure", "an O-ring in a face", func(g *Groove) bool { return g.Kind == ORingGroove && g.Face() != "" }},
	{"o-ring", "for: o-ring", func(g *Groove) bool { return g.Kind == ORingGroove }},
	{"width", "a plain groove", func(g *Groove) bool { return g.Kind == GreaseGroove || g.Kind == ReliefGroove }},
	{"depth", "a plain groove", func(g *Groove) bool { return g.Kind == GreaseGroove || g.Kind == ReliefGroove }},
}

// besideGroove checks that a groove has the keys of its kind and no others.
func (f *fields) besideGroove(g *Groove) {
	if g.Kind == "" {
		return
	}
	if g.Face() != "" && g.Kind != ORingGroove {
		f.fault(g.In.Pos, "only O-rings lie in a face", "in: the name of a step")
		return
	}
	for _, k := range grooveKeys {
		switch takes := k.takes(g); {
		case !takes && f.given(k.key):
			f.faultf(f.n.keyPos(k.key), "delete "+k.key, "%s is for %s", k.key, k.use)
		case takes && slices.Contains([]string{"axial", "o-ring", "width", "depth"}, k.key) && !f.given(k.key):
			f.lack(f.n.pos, f.n.label+" lacks the key "+k.key, f.g.example(f.g.key(k.key)))
		}
	}
}

// grooveRoom checks that a groove begins in a step of the part. Where it ends
// the layout knows.
func (r *reader) grooveRoom(p *Part, g *Groove) {
	names := p.namesOf(OutlineFeature, BoreFeature, OutsideFeature, InsideFeature)
	if p.Outline != nil && p.Outline.Shape != CircleOutline {
		names = slices.DeleteFunc(names, func(n string) bool { return n == "outline" })
	}
	if g.Face() != "" {
		return
	}
	if !slices.Contains(names, g.In.Value) {
		r.faultf(g.In.Pos, list(append(names, "front", "back")), "the part has no round %s to cut the groove into", g.In.Value)
		return
	}
	in := p.roundNamed(g.In.Value)
	if in.threaded {
		r.faultf(g.In.Pos, "a plain step", "%s is threaded: a groove in it is an undercut", g.In.Value)
		return
	}
	diameter, from, to := in.diameter, in.fromMm, in.toMm
	a, b := g.StretchMm(g.Width.Mm, in.lengthMm)
	if !g.Width.Set() && (a < from-geom.CloseMm || b > to+geom.CloseMm) {
		r.faultf(g.Axial.Pos, "a groove within its step", "%s starts %s from the front face, and %s runs from %s to %s", g.Name.Value, r.units.said(a), g.In.Value, r.units.number(from), r.units.said(to))
	} else if a < from-geom.CloseMm || b > to+geom.CloseMm {
		r.faultf(g.Axial.Pos, "a groove within its step", "%s runs from %s to %s from the front face, and %s from %s to %s", g.Name.Value, r.units.number(a), r.units.said(b), g.In.Value, r.units.number(from), r.units.said(to))
	}
	if g.Depth.Set() && diameter.Set() && g.Depth.Mm >= diameter.Mm/2 {
		r.faultf(g.Depth.Pos, "the depth of the groove on one side", "the groove is %s deep at a diameter of %s", g.Depth.Text, diameter.Text)
	}
}

// StretchMm is where a groove of a width lies along the axis in mm from the
// front face of a part of lengthMm.
func (g *Groove) StretchMm(widthMm, lengthMm float64) (from, to float64) {
	if g.From == Back {
		to = lengthMm - g.Axial.Mm
		return geom.Clean(to - widthMm), geom.Clean(to)
	}
	return geom.Clean(g.Axial.Mm), geom.Clean(g.Axial.Mm + widthMm)
}
