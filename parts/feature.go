package parts

import (
	"fmt"
	"slices"

	"centrepop/parts/seq"
)

// FeatureKind is what a named feature of a part is.
type FeatureKind string

// The kinds of feature.
const (
	OutlineFeature FeatureKind = "outline"
	BoreFeature    FeatureKind = "bore" // of a flat part
	OutsideFeature FeatureKind = "outside step"
	InsideFeature  FeatureKind = "inside step"
	TopFeature     FeatureKind = "TOP"
	EndFeature     FeatureKind = "end" // of a cone or transition; the inside of a flight; an end or a side of a bar
	HolesFeature   FeatureKind = "holes"
	SlotsFeature   FeatureKind = "slots"
	RadialFeature  FeatureKind = "radial"
	KeywayFeature  FeatureKind = "keyway"
	GrooveFeature  FeatureKind = "groove"
	FlatsFeature   FeatureKind = "flats"
)

// Feature is what a reference to a part can point at. Its name is its own
// within the part; what it is, its kind says, not its name.
type Feature struct {
	Name string
	Kind FeatureKind
	N    int // of one of several equal radial features: its number from TOP; else 0
	Pos  Pos // where it is named; that of the shape for names that stand for it
}

// Features lists the features of a part: its shape, its ends, holes, slots,
// radial features, keyways, grooves and flats. One of several equal radial features is listed by itself
// too, as NAME-2.
func (p *Part) Features() []Feature {
	var out []Feature
	add := func(kind FeatureKind, names ...Text) {
		out = append(out, seq.Map(names, func(name Text) Feature { return Feature{Name: name.Value, Kind: kind, Pos: name.Pos} })...)
	}
	fixed := func(kind FeatureKind, pos Pos, names ...string) {
		add(kind, seq.Map(names, func(name string) Text { return Text{name, pos} })...)
	}
	steps := func(s Step) Text { return s.Name }
	if p.Outline != nil {
		fixed(OutlineFeature, p.Outline.Pos, "outline")
	}
	if p.Bore != nil {
		fixed(BoreFeature, p.Bore.Pos, "bore")
	}
	if p.Profile != nil {
		add(OutsideFeature, seq.Map(p.Profile.Outside, steps)...)
		add(InsideFeature, seq.Map(p.Profile.Inside, steps)...)
	}
	fixed(TopFeature, p.Pos, "top")
	if f := p.Frustum; f != nil {
		fixed(EndFeature, f.Pos, "large-end", "small-end")
	}
	if t := p.Transition; t != nil {
		fixed(EndFeature, t.Pos, "mouth", "round-end")
	}
	if f := p.Flight; f != nil {
		fixed(EndFeature, f.Pos, "inside")
	}
	if b := p.Bar; b != nil { // top is there already
		fixed(EndFeature, b.Pos, string(LeftEnd), string(RightEnd), string(FrontSide), string(BackSide), string(BottomSide))
	}
	add(HolesFeature, seq.Map(p.Holes, func(g HoleGroup) Text { return g.Name })...)
	add(SlotsFeature, seq.Map(p.Slots, func(s FaceSlot) Text { return s.Name })...)
	add(RadialFeature, seq.Map(p.Radials, func(f Radial) Text { return f.Name })...)
	add(KeywayFeature, seq.Map(p.Keyways, func(k Keyway) Text { return k.Name })...)
	add(GrooveFeature, seq.Map(p.Grooves, func(g Groove) Text { return g.Name })...)
	add(FlatsFeature, seq.Map(p.Flats, func(f Flats) Text { return f.Name })...)
	for _, f := range p.Radials {
		for n := 1; len(f.Clock) > 1 && n <= len(f.Clock); n++ {
			out = append(out, Feature{Name: fmt.Sprintf("%s-%d", f.Name.Value, n), Kind: RadialFeature, N: n, Pos: f.Name.Pos})
		}
	}
	return out
}

// Feature finds a feature by its name.
func (p *Part) Feature(name string) (Feature, bool) {
	return seq.Find(p.Features(), func(f Feature) bool { return f.Name == name })
}

// BevelMm is how far the chamfer of an edge, such as "bore-front", runs along the axis; 0 where there is none.
func (p *Part) BevelMm(edge string) float64 {
	return seq.First(p.Chamfers, func(c Chamfer) bool { return c.Edge.Value == edge }).Size.Mm
}

// FeatureNames lists the features of some kinds; without kinds all that a JointRef to the
// part can name, but for the numbered ones.
func (p *Part) FeatureNames(kinds ...FeatureKind) (names []string) {
	for _, f := range p.Features() {
		if f.N == 0 && (len(kinds) == 0 || slices.Contains(kinds, f.Kind)) {
			names = append(names, f.Name)
		}
	}
	return names
}

// EndFaces are the faces at which the named ends of cones and transition pieces lie.
var EndFaces = map[string]Face{"large-end": Front, "small-end": Back, "mouth": Front, "round-end": Back}
