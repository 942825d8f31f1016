package read

import (
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// groove reads a groove. That its step exists and has room is checked with the
// geometry, and where a standard sets the size by the layout.
func (f *fields) groove() parts.Groove {
	g := parts.Groove{
		Pos: f.n.pos, Name: f.name("name"), In: f.name("in"), Axial: f.length("axial"), From: f.face("from"),
		Against: f.length("against"), Moving: f.yes("moving"), PressureOutside: f.word("pressure") == "outside", Width: f.length("width"), Depth: f.length("depth"),
	}
	if g.Kind = parts.GrooveKind(f.word("for")); g.Kind == parts.ORingGroove {
		f.oring(&g)
	}
	f.besideGroove(&g)
	return g
}

// oring reads "50x3.53".
func (f *fields) oring(g *parts.Groove) {
	t := f.text("o-ring")
	if t.Value == "" {
		return
	}
	inside, section, two := f.pairBy(t)
	if !two || section.Mm >= inside.Mm {
		f.faultf(t.Pos, oringExample, "o-ring is %s, which is no O-ring", parts.Quote(t.Value))
		return
	}
	g.Inside, g.Section = inside, section
}

// grooveKeys are the keys that only some grooves have a use for.
var grooveKeys = []struct {
	key, use string
	takes    func(g *parts.Groove) bool
}{
	{"axial", "a groove in a round", func(g *parts.Groove) bool { return g.Face() == "" }},
	{"from", "a groove in a round", func(g *parts.Groove) bool { return g.Face() == "" }},
	{"against", "an O-ring in a round", func(g *parts.Groove) bool { return g.Kind == parts.ORingGroove && g.Face() == "" }},
	{"moving", "an O-ring in a round", func(g *parts.Groove) bool { return g.Kind == parts.ORingGroove && g.Face() == "" }},
	{"pressure", "an O-ring in a face", func(g *parts.Groove) bool { return g.Kind == parts.ORingGroove && g.Face() != "" }},
	{"o-ring", "for: o-ring", func(g *parts.Groove) bool { return g.Kind == parts.ORingGroove }},
	{"width", "a plain groove", func(g *parts.Groove) bool { return g.Kind.Plain() }},
	{"depth", "a plain groove", func(g *parts.Groove) bool { return g.Kind.Plain() }},
}

// besideGroove checks that a groove has the keys of its kind and no others.
func (f *fields) besideGroove(g *parts.Groove) {
	if g.Kind == "" {
		return
	}
	if g.Face() != "" && g.Kind != parts.ORingGroove {
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
func (r *reader) grooveRoom(p *parts.Part, g *parts.Groove) {
	names := p.FeatureNames(parts.OutlineFeature, parts.BoreFeature, parts.OutsideFeature, parts.InsideFeature)
	if p.Outline != nil && p.Outline.Shape != parts.CircleOutline {
		names = slices.DeleteFunc(names, func(n string) bool { return n == "outline" })
	}
	if g.Face() != "" {
		return
	}
	if !slices.Contains(names, g.In.Value) {
		r.faultf(g.In.Pos, list(append(names, "front", "back")), "the part has no round %s to cut the groove into", g.In.Value)
		return
	}
	in := roundNamed(p, g.In.Value)
	if in.threaded {
		r.faultf(g.In.Pos, "a plain step", "%s is threaded: a groove in it is an undercut", g.In.Value)
		return
	}
	diameter, from, to := in.diameter, in.fromMm, in.toMm
	a, b := g.StretchMm(g.Width.Mm, in.lengthMm)
	switch off := geom.Over(from, a) || geom.Over(b, to); {
	case off && !g.Width.Set():
		r.faultf(g.Axial.Pos, "a groove within its step", "%s starts %s from the front face, and %s runs from %s to %s", g.Name.Value, r.said(a), g.In.Value, r.bare(from), r.said(to))
	case off:
		r.faultf(g.Axial.Pos, "a groove within its step", "%s runs from %s to %s from the front face, and %s from %s to %s", g.Name.Value, r.bare(a), r.said(b), g.In.Value, r.bare(from), r.said(to))
	}
	r.not(g.Depth, ">=", times(0.5, diameter), "the depth of the groove on one side", "the groove is %s deep at a diameter of %s")
}
