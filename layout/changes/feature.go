package changes

import (
	"math"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// effect is how a size acts on metal when it grows.
type effect int

const (
	removes effect = iota // an opening, a depth: larger takes metal away
	keeps                 // an outside, a thickness: larger needs metal
	shapes                // decided by the whole section
	decides               // any change is decided by hand
)

type size struct {
	what  string
	unit  plan.Unit
	value limits
	text  string // what is printed instead of the number: through
	grow  effect
}

// number is what a size is, 0 where only its text says it.
func (s size) number() float64 {
	if s.text != "" {
		return 0
	}
	return s.value.at
}

// needs is one of two uses: of a size that takes metal away, or of one that is metal.
func (s size) needs(away, metal Use) Use {
	if s.grow == keeps {
		return metal
	}
	return away
}

// feature is one thing of a part, as it is compared.
type feature struct {
	name    string // in words
	opening bool   // holes and slots: it can come and go without the rest
	shape   bool   // a stretch of the section: coming and going is decided by it
	sizes   []size
	made    *part.Made // of holes
	step    *part.Step
	chamfer *parts.Chamfer
	kind    string      // what cannot turn into another thing by cutting: the face, the shape
	places  []plan.XY   // of openings on a face; clock angle and axial place of what is cut from outside
	pcdMm   float64     // 0 for none
	roundMm float64     // diameter that the places lie on, 0 on a face
	empty   bool        // a groove, which may stay where nothing is to lie in it
	words   [][2]string // what touches no metal, and its words
}

// throughMm is the depth of what goes through.
const throughMm = math.MaxFloat32

// features lists what a part has. shiftMm is how far the old part's front face
// lies before the new one's when a part is laid into another.
func (m model) features(shiftMm float64) []feature {
	out := m.steps()
	for c := range seq.Refs(m.Part.Chamfers) {
		out = append(out, feature{name: c.Word() + " " + words.Spaced(c.Edge.Value), chamfer: c, words: [][2]string{{"for", c.For}}})
	}
	for g := range seq.Refs(m.Groups) {
		out = append(out, m.group(g))
	}
	for r := range seq.Refs(m.Radials) {
		out = append(out, m.radial(r, shiftMm))
	}
	for _, of := range m.Grooves {
		g := of.Row
		out = append(out, feature{name: words.Spaced(g.Name), empty: true, words: [][2]string{{"for", g.Kind}}, sizes: []size{
			{what: "start", unit: plan.Mm, value: exactly(g.FromMm - shiftMm)}, {what: "depth", unit: plan.Mm, value: exactly(g.DepthMm)}, {what: "width", unit: plan.Mm, value: exactly(g.WidthMm)},
		}})
	}
	return out
}

// steps lists the cylinders, or bore, outline and thickness of a flat part.
func (m model) steps() []feature {
	var out []feature
	flat := m.Flat()
	switch {
	case flat:
		out = append(out, feature{name: "thickness", sizes: []size{{what: "thickness", unit: plan.Mm, value: exactly(m.LengthMm()), grow: keeps}}})
	case len(m.Steps) > 0:
		out = append(out, feature{name: "length", sizes: []size{{what: "length", unit: plan.Mm, value: exactly(m.LengthMm()), grow: shapes}}})
	}
	for st := range seq.Refs(m.Steps) {
		grow := keeps
		if st.Inside {
			grow = removes
		}
		f := feature{
			name: words.Spaced(st.Name), shape: !flat,
			step: st, sizes: []size{{what: "diameter", unit: plan.Diameter, value: sized(st.Size), grow: grow}},
			words: [][2]string{{"seat", st.Seat}, {"finish", st.Finish}, {"fit", st.Size.Class}},
		}
		if !flat {
			f.sizes = append(f.sizes, size{what: "length", unit: plan.Mm, value: exactly(st.LengthMm()), grow: shapes})
		}
		if u := st.Undercut; u != nil {
			f.sizes = append(f.sizes, size{what: "undercut width", unit: plan.Mm, value: exactly(u.WidthMm)}, size{what: "undercut depth", unit: plan.Mm, value: exactly(u.DepthMm)})
		}
		out = append(out, f)
	}
	return out
}

func depth(through bool, mm float64) size {
	if through {
		return size{what: "depth", unit: plan.Mm, value: exactly(throughMm), text: "through"}
	}
	return size{what: "depth", unit: plan.Mm, value: exactly(mm)}
}

// group is the holes or slots of a face.
func (m model) group(g *part.Group) feature {
	f := feature{name: words.Spaced(g.Group.Name), opening: true, kind: string(g.Face), places: g.Points, pcdMm: g.Pattern.PCD.Mm}
	if m.Part.Bar != nil { // measured from its end, wherever the middle comes to lie
		f.places, f.kind = m.FromEnd(g)
	}
	if h := g.Hole; h != nil {
		f.made = &g.Size
		f.sizes = append(f.sizes, depth(h.Through, h.Depth.Mm))
		if c := h.Counterbore; c != nil {
			f.sizes = append(f.sizes, size{what: "counterbore", unit: plan.Diameter, value: exactly(c.Diameter.Mm)}, size{what: "counterbore depth", unit: plan.Mm, value: exactly(c.Depth.Mm)})
		}
		if c := h.Countersink; c != nil {
			f.sizes = append(f.sizes, size{what: "countersink", unit: plan.Diameter, value: exactly(c.Diameter.Mm)},
				size{what: "countersink angle", unit: plan.Degree, value: exactly(c.Angle.Deg), grow: decides})
		}
		f.words = [][2]string{{"note", h.Note.Value}}
		if m.Part.Bar != nil {
			f.words = append(f.words, [2]string{"walls", g.Group.DepthText})
		}
		return f
	}
	for _, s := range m.Part.Slots {
		if s.Name.Value == g.Group.Name && s.Face == g.Face {
			f.kind += ", turned " + words.Trim(math.Mod(s.Turn.Deg+360, 180), 4) + "°"
			f.sizes = append(f.sizes, size{what: "width", unit: plan.Mm, value: exactly(s.Width.Mm)}, size{what: "length", unit: plan.Mm, value: exactly(s.Length.Mm)}, depth(s.Through, s.Depth.Mm))
		}
	}
	return f
}

// radial is what is cut from outside.
func (m model) radial(r *part.Radial, shiftMm float64) feature {
	in := r.In
	f := feature{name: words.Spaced(in.Name.Value), opening: true, kind: string(in.Shape), words: [][2]string{{"note", in.Note.Value}}}
	for _, row := range r.Rows {
		f.places, f.roundMm = append(f.places, plan.XY{XMm: row.ClockDeg, YMm: row.AxialMm - shiftMm}), row.OutsideMm
	}
	if in.Shape == parts.RadialHole {
		f.made = &r.Size
	} else {
		f.sizes = append(f.sizes, size{what: "length around", unit: plan.Mm, value: exactly(in.Around.Mm)}, size{what: "length along", unit: plan.Mm, value: exactly(in.Along.Mm)})
	}
	if in.Corner.Set() {
		// A larger radius leaves more metal in the corners.
		f.sizes = append(f.sizes, size{what: "corner radius", unit: plan.Mm, value: exactly(in.Corner.Mm), grow: keeps})
	}
	f.sizes = append(f.sizes, depth(in.Through, in.Depth.Mm))
	return f
}

// formed tells whether a feature of the plan is of what is formed from sheet or
// cut to a curve: such features are compared by their words.
func formed(k plan.FeatureKind) bool {
	switch k {
	case plan.EndFeature, plan.OffsetFeature, plan.SeamFeature, plan.SaddleFeature, plan.HeightFeature:
		return true
	}
	return false
}
