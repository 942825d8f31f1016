package part

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
func (r *Model) roundFeatures() {
	n := 0
	for i := range r.Part.Radials {
		f := &r.Part.Radials[i]
		m := Radial{In: f}
		axial := geom.Clean(f.Axial.Mm)
		if f.From == parts.Back {
			axial = geom.Clean(r.LengthMm() - axial)
		}
		row := plan.RadialRow{Name: f.Name.Value, Shape: string(f.Shape), AxialMm: axial}
		if st := r.outsideAt(axial); st != nil {
			row.OutsideMm = geom.Clean(st.Size.NominalMm)
		}
		switch f.Shape {
		case parts.RadialHole:
			m.Size = r.holeSize(f.Size)
			row.SizeText, row.DiameterMm = m.Size.Text, geom.Clean(m.Size.DrillMm)
			row.DepthText = r.depthText(m.Size, f.Through, f.Depth)
		default:
			row.AroundMm, row.AlongMm, row.CornerMm = geom.Clean(f.Around.Mm), geom.Clean(f.Along.Mm), geom.Clean(f.Corner.Mm)
			row.SizeText = r.W.Size(f.Around.Mm) + " around × " + r.W.Size(f.Along.Mm) + " along"
			if f.Corner.Mm > 0 {
				row.SizeText += ", corners R" + r.W.Size(f.Corner.Mm)
			}
			row.DepthText = r.depthText(Made{}, f.Through, f.Depth)
		}
		if f.Through {
			row.DepthText = "into the bore"
			if _, inside := r.Sides(); len(inside) == 0 {
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
			row.ArcMm = geom.Clean(math.Pi * row.OutsideMm * a / 360)
			m.Rows = append(m.Rows, row)
		}
		r.Out.Radials = append(r.Out.Radials, m.Rows...)
		r.Radials = append(r.Radials, m)
	}
}

// outsideAt is the outside step at an axial place.
func (r *Model) outsideAt(z float64) *Step {
	outside, _ := r.Sides()
	for _, s := range outside {
		if z >= s.FromMm-1e-9 && z <= s.ToMm+1e-9 {
			return s
		}
	}
	return nil
}

// ladders prints the bore for each size the mate may measure: 0.6 mm either
// way of its nominal in steps of 0.05 mm, which spans the outside tolerance of
// drawn and most welded tube.
func (r *Model) ladders() {
	for i := range r.Steps {
		s := &r.Steps[i]
		if !s.Size.Press.Set() {
			continue
		}
		mate := r.mate(s.Size.Press)
		if mate == 0 {
			continue
		}
		r.Out.Ladders = append(r.Out.Ladders, r.ladder(s, mate))
	}
}

// mate is the nominal outside diameter that a reference points at.
func (r *Model) mate(ref parts.Ref) float64 {
	i := slices.IndexFunc(r.Job.Parts, func(p *parts.Part) bool { return p.Name.Value == ref.Part })
	if i < 0 {
		return 0
	}
	other := &Model{Job: r.Job, Part: r.Job.Parts[i], W: r.W}
	other.cylinders()
	if s := other.StepNamed(ref.Feature); s != nil {
		if s.Inside {
			r.fault(ref.Pos, "light press on "+ref.Part+"."+ref.Feature+", which is a bore", "the outside step that goes into this bore")
			return 0
		}
		return s.Size.NominalMm
	}
	r.fault(ref.Pos, ref.Part+"."+ref.Feature+" is not round", "a round outside of that part")
	return 0
}

// stockText is the stock in words: "plate 12, laser cut".
func (r *Model) StockText() string {
	s := r.Part.Stock
	var t []string
	switch {
	case s.Form == "":
		return "not stated"
	case s.Form == "tube" && s.Second.Set():
		t = append(t, "tube Ø"+r.W.Size(s.Size.Mm)+" × "+r.W.Size(s.Second.Mm)+" wall")
	case s.Form == "flat" && s.Second.Set():
		t = append(t, "flat "+r.W.Size(s.Size.Mm)+" × "+r.W.Size(s.Second.Mm))
	case s.Form == "round":
		t = append(t, "round Ø"+r.W.Size(s.Size.Mm))
	case s.Size.Set():
		t = append(t, s.Form+" "+r.W.Size(s.Size.Mm))
	default:
		t = append(t, s.Form)
	}
	if s.Length.Set() {
		t = append(t, r.W.Size(s.Length.Mm)+" long")
	}
	if s.Cut != "" && s.Cut != "none" {
		t = append(t, s.Cut+" cut")
	}
	return strings.Join(t, ", ")
}

// overall is the outside size in words.
func (r *Model) overall() string {
	if f := r.Part.Frustum; f != nil {
		return r.W.Dia(f.Large.Mm) + " to " + r.W.Dia(f.Small.Mm) + " × " + r.W.Size(f.Height.Mm) + " high"
	}
	if t := r.Part.Transition; t != nil {
		return r.W.Size(t.Width.Mm) + " × " + r.W.Size(t.Depth.Mm) + " to " + r.W.Dia(t.Diameter.Mm) + " × " + r.W.Size(t.Height.Mm) + " high"
	}
	if r.Part.Profile != nil {
		return r.W.Dia(r.widest().Size.NominalMm) + " × " + r.W.Size(r.LengthMm()) + " long" + r.countSaddles()
	}
	b := r.OutlinePath().Bounds()
	if r.Part.Outline.Shape == parts.CircleOutline {
		return r.W.Dia(b.W()) + " × " + r.W.Size(r.LengthMm()) + " thick"
	}
	return r.W.Size(geom.Clean(b.W())) + " × " + r.W.Size(geom.Clean(b.H())) + " × " + r.W.Size(r.LengthMm()) + " thick"
}
