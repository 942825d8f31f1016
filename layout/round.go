package layout

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// roundFeatures lays out the holes, slots and windows cut from outside into a
// round, numbered on in the order of the drawing.
func (r *resolver) roundFeatures() {
	n := 0
	for i := range r.part.Radials {
		f := &r.part.Radials[i]
		m := madeRadial{radial: f}
		axial := clean(f.Axial.Mm)
		if f.From == parts.Back {
			axial = clean(r.lengthMm() - axial)
		}
		row := plan.RadialRow{Name: f.Name.Value, Shape: string(f.Shape), AxialMm: axial}
		if st := r.outsideAt(axial); st != nil {
			row.OutsideMm = clean(st.size.nominalMm)
		}
		switch f.Shape {
		case parts.RadialHole:
			m.size = r.holeSize(f.Size)
			row.SizeText, row.DiameterMm = m.size.text, clean(m.size.drillMm)
			row.DepthText = r.depthText(m.size, f.Through, f.Depth)
		default:
			row.AroundMm, row.AlongMm, row.CornerMm = clean(f.Around.Mm), clean(f.Along.Mm), clean(f.Corner.Mm)
			row.SizeText = r.w.Size(f.Around.Mm) + " around × " + r.w.Size(f.Along.Mm) + " along"
			if f.Corner.Mm > 0 {
				row.SizeText += ", corners R" + r.w.Size(f.Corner.Mm)
			}
			row.DepthText = r.depthText(made{}, f.Through, f.Depth)
		}
		if f.Through {
			row.DepthText = "into the bore"
			if _, inside := r.sides(); len(inside) == 0 {
				row.DepthText = "through"
			}
		}
		if f.Note.Value != "" {
			row.DepthText += "; " + f.Note.Value
		}
		angles := make([]float64, 0, len(f.Clock))
		for _, a := range f.Clock {
			angles = append(angles, a.Deg)
		}
		geom.FromTop(angles)
		for _, a := range angles {
			n++
			row.N, row.ClockDeg = n, a
			row.ArcMm = clean(math.Pi * row.OutsideMm * a / 360)
			m.rows = append(m.rows, row)
		}
		r.out.Radials = append(r.out.Radials, m.rows...)
		r.radials = append(r.radials, m)
	}
}

// outsideAt is the outside step at an axial place.
func (r *resolver) outsideAt(z float64) *step {
	outside, _ := r.sides()
	for _, s := range outside {
		if z >= s.fromMm-1e-9 && z <= s.toMm+1e-9 {
			return s
		}
	}
	return nil
}

// ladders prints the bore for each size the mate may measure: 0.6 mm either
// way of its nominal in steps of 0.05 mm, which spans the outside tolerance of
// drawn and most welded tube.
func (r *resolver) ladders() {
	for i := range r.steps {
		s := &r.steps[i]
		if !s.size.press.Set() {
			continue
		}
		mate := r.mate(s.size.press)
		if mate == 0 {
			continue
		}
		r.out.Ladders = append(r.out.Ladders, r.ladder(s, mate))
	}
}

// mate is the nominal outside diameter that a reference points at.
func (r *resolver) mate(ref parts.Ref) float64 {
	i := slices.IndexFunc(r.job.Parts, func(p *parts.Part) bool { return p.Name.Value == ref.Part })
	if i < 0 {
		return 0
	}
	other := &resolver{job: r.job, part: r.job.Parts[i], w: r.w}
	other.cylinders()
	if s := other.stepNamed(ref.Feature); s != nil {
		if s.inside {
			r.fault(ref.Pos, "light press on "+ref.Part+"."+ref.Feature+", which is a bore", "the outside step that goes into this bore")
			return 0
		}
		return s.size.nominalMm
	}
	r.fault(ref.Pos, ref.Part+"."+ref.Feature+" is not round", "a round outside of that part")
	return 0
}

// stockText is the stock in words: "plate 12, laser cut".
func (r *resolver) stockText() string {
	s := r.part.Stock
	var t []string
	switch {
	case s.Form == "":
		return "not stated"
	case s.Form == "tube" && s.Second.Set():
		t = append(t, "tube Ø"+r.w.Size(s.Size.Mm)+" × "+r.w.Size(s.Second.Mm)+" wall")
	case s.Form == "flat" && s.Second.Set():
		t = append(t, "flat "+r.w.Size(s.Size.Mm)+" × "+r.w.Size(s.Second.Mm))
	case s.Form == "round":
		t = append(t, "round Ø"+r.w.Size(s.Size.Mm))
	case s.Size.Set():
		t = append(t, s.Form+" "+r.w.Size(s.Size.Mm))
	default:
		t = append(t, s.Form)
	}
	if s.Length.Set() {
		t = append(t, r.w.Size(s.Length.Mm)+" long")
	}
	if s.Cut != "" && s.Cut != "none" {
		t = append(t, s.Cut+" cut")
	}
	return strings.Join(t, ", ")
}

// overall is the outside size in words.
func (r *resolver) overall() string {
	if f := r.part.Frustum; f != nil {
		return r.w.Dia(f.Large.Mm) + " to " + r.w.Dia(f.Small.Mm) + " × " + r.w.Size(f.Height.Mm) + " high"
	}
	if t := r.part.Transition; t != nil {
		return r.w.Size(t.Width.Mm) + " × " + r.w.Size(t.Depth.Mm) + " to " + r.w.Dia(t.Diameter.Mm) + " × " + r.w.Size(t.Height.Mm) + " high"
	}
	if r.part.Profile != nil {
		return r.w.Dia(r.widest().size.nominalMm) + " × " + r.w.Size(r.lengthMm()) + " long" + r.countSaddles()
	}
	b := r.outlinePath().Bounds()
	if r.part.Outline.Shape == parts.CircleOutline {
		return r.w.Dia(b.W()) + " × " + r.w.Size(r.lengthMm()) + " thick"
	}
	return r.w.Size(clean(b.W())) + " × " + r.w.Size(clean(b.H())) + " × " + r.w.Size(r.lengthMm()) + " thick"
}
