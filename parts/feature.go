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
	add := func(kind FeatureKind, name string, pos Pos) {
		out = append(out, Feature{Name: name, Kind: kind, Pos: pos})
	}
	if p.Outline != nil {
		add(OutlineFeature, "outline", p.Outline.Pos)
	}
	if p.Bore != nil {
		add(BoreFeature, "bore", p.Bore.Pos)
	}
	if p.Profile != nil {
		for _, s := range p.Profile.Outside {
			add(OutsideFeature, s.Name.Value, s.Name.Pos)
		}
		for _, s := range p.Profile.Inside {
			add(InsideFeature, s.Name.Value, s.Name.Pos)
		}
	}
	add(TopFeature, "top", p.Pos)
	if f := p.Frustum; f != nil {
		add(EndFeature, "large-end", f.Pos)
		add(EndFeature, "small-end", f.Pos)
	}
	if t := p.Transition; t != nil {
		add(EndFeature, "mouth", t.Pos)
		add(EndFeature, "round-end", t.Pos)
	}
	if f := p.Flight; f != nil {
		add(EndFeature, "inside", f.Pos)
	}
	if b := p.Bar; b != nil {
		for _, side := range []Side{LeftEnd, RightEnd, FrontSide, BackSide, BottomSide} { // top is there already
			add(EndFeature, string(side), b.Pos)
		}
	}
	for _, g := range p.Holes {
		add(HolesFeature, g.Name.Value, g.Name.Pos)
	}
	for _, s := range p.Slots {
		add(SlotsFeature, s.Name.Value, s.Name.Pos)
	}
	for _, f := range p.Radials {
		add(RadialFeature, f.Name.Value, f.Name.Pos)
	}
	for _, k := range p.Keyways {
		add(KeywayFeature, k.Name.Value, k.Name.Pos)
	}
	for _, g := range p.Grooves {
		add(GrooveFeature, g.Name.Value, g.Name.Pos)
	}
	for _, f := range p.Flats {
		add(FlatsFeature, f.Name.Value, f.Name.Pos)
	}
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
