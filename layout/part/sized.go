package part

import (
	"math"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// Sized is a diameter with its limits.
type Sized struct {
	NominalMm    float64
	MinMm, MaxMm float64 // equal to nominal where nothing limits it
	Limited      bool
	Class        string // "H7", "±0.1", "light press", "M40x1.5", "ISO 2768-m", or ""
	Source       lookup.Source
	AsCut        bool // the limits are those that its cutter holds
	AsBought     bool // nobody turns it: the maker of the tube or bar limits it, or the girth of what is rolled
	ByClass      bool // the limits are the job's general tolerance
	Thread       *threads.Thread
	Press        parts.Ref
	OffMm        plan.Range // what it is under the bore or over the spigot that it meets, as measured; zero unless Measured
}

// within is a size with limits of its own, where it has some.
func (z Sized) within(limits []parts.Length) Sized {
	if len(limits) == 2 {
		z.MinMm, z.MaxMm, z.Limited, z.Class, z.Source = limits[0].Mm, limits[1].Mm, true, limitsClass, lookup.Told("drawing")
	}
	return z
}

// Fitted tells whether a size has limits of its own, not only the job's general
// tolerance or what its cutter holds.
func (s Sized) Fitted() bool { return s.Limited && !s.AsCut && !s.ByClass }

// Measured tells whether a size is made to what it meets, as that measures, and so has no limits
// before.
func (s Sized) Measured() bool { return s.Class == measuredClass }

// ByLimits tells whether a size is drawn by its limits.
func (s Sized) ByLimits() bool { return s.Class == limitsClass }

// classText is the class as it stands behind a size; empty where the limits alone say it.
func (s Sized) classText() string {
	switch s.Class {
	case limitsClass, pressClass, measuredClass:
		return ""
	}
	return s.Class
}

// sided refuses a class of the other side.
func (z *sizer) sided(pos parts.Pos, t threads.Thread, inside bool) {
	right := words.Either(t.Lead != nil, "e or c for what is turned outside, H for a hole", "A for what is turned outside, B for a hole")
	if t.Misfits(inside) {
		z.fault(pos, "class "+t.Class+" of "+t.Designation+" is that of the other side", right)
	}
}

// sizeOf limits a size: by its own fit, else by the job's general tolerance.
func (z *sizer) sizeOf(s parts.Size, inside bool) Sized {
	out := Sized{NominalMm: s.Nominal.Mm, MinMm: s.Nominal.Mm, MaxMm: s.Nominal.Mm}
	if s.Thread.Value != "" {
		t, err := threads.Parse(s.Thread.Value)
		if err != nil {
			z.fault(s.Thread.Pos, "thread "+s.Thread.Value+" is not known", z.W.Refused(err))
			return out
		}
		z.sided(s.Thread.Pos, t, inside)
		out.Thread, out.Class, out.Source = &t, t.Designation, t.Source
		out.NominalMm, out.MinMm, out.MaxMm = t.MajorMm, t.MajorMm, t.MajorMm
		return out
	}
	f := s.Fit
	switch {
	case f.Class.Value != "":
		l, err := fits.Limit(s.Nominal.Mm, f.Class.Value)
		if err != nil {
			z.fault(f.Class.Pos, "fit "+f.Class.Value+" cannot be used for "+z.W.Dia(s.Nominal.Mm), z.W.Refused(err))
			return out
		}
		out.MinMm, out.MaxMm, out.Limited = l.MinMm, l.MaxMm, true
		out.Class, out.Source = l.Class, lookup.Standard("ISO 286-1 "+l.Class)
	case f.LightPress.Set():
		out.Class, out.Press = pressClass, f.LightPress
		out.Source = lookup.NoSource
	case len(f.Measured) == 2:
		out.Class, out.Source = measuredClass, lookup.Told("drawing")
		if out.OffMm = (plan.Range{Min: f.Measured[0].Mm, Max: f.Measured[1].Mm}); !inside {
			out.OffMm = plan.Range{Min: -f.Measured[1].Mm, Max: -f.Measured[0].Mm}
		}
	case len(f.Limits) == 2:
		out.MinMm, out.MaxMm, out.Limited = f.Limits[0].Mm, f.Limits[1].Mm, true
		out.Class, out.Source = limitsClass, lookup.Told("drawing")
	case f.PlusMinus.Set():
		out.MinMm, out.MaxMm, out.Limited = s.Nominal.Mm-f.PlusMinus.Mm, s.Nominal.Mm+f.PlusMinus.Mm, true
		out.Class, out.Source = "±"+z.W.Size(f.PlusMinus.Mm), lookup.Told("drawing")
	default:
		return z.General(s.Nominal.Mm)
	}
	return out
}

// left makes a step that is the surface of its tube or bar, with no limits of its
// own, as it is bought: it is not turned.
func (z *sizer) left(st *Step) {
	stock, d := z.Part.Stock, st.Size.NominalMm
	asIs := func(what string) {
		st.Size = Sized{NominalMm: d, MinMm: d, MaxMm: d, Source: lookup.Told(what + " as bought"), AsBought: true}
	}
	switch {
	case stock.Bought():
		if !z.madeHere(st) {
			asIs("article")
		}
		return
	case z.Part.Rolled != nil: // its girth holds what limits it
		st.Size.AsBought = true
		return
	case st.Size.Class != "" || st.Size.Thread != nil:
		return
	case z.Part.Kind == parts.Tube:
		asIs("tube")
		return
	case stock.Form != "tube" && stock.Form != "round":
		return
	}
	size := stock.Size.Mm
	if st.Inside {
		size -= 2 * stock.Second.Mm
	}
	if math.Abs(d-size) < geom.CloseMm {
		asIs(words.Either(stock.Form == "tube", "tube", "bar"))
	}
}

// madeHere tells whether a step of what is bought half finished is turned here: what has limits, a finish or a thread of its own, and
// every bore over a pilot.
func (z *sizer) madeHere(st *Step) bool {
	pilot := z.Part.Stock.Pilot
	if st.Inside && pilot.Set() && pilot.Mm >= st.leastMm()-geom.CloseMm {
		z.fault(pilot.Pos, "the pilot bore of "+z.W.Size(pilot.Mm)+" leaves nothing to bore in "+words.Spaced(st.Name)+" of "+z.W.Size(st.leastMm()), "a pilot bore under "+z.W.Size(st.leastMm()))
	}
	return st.Inside && pilot.Set() || st.Size.Class != "" || st.Size.Fitted() || st.Size.Thread != nil || st.Finish != ""
}

// General limits a plain length, mm, by the general tolerance of the job (ISO 2768-1), where it has one that
// covers the size.
func (s *Sizes) General(mm float64) Sized {
	class := s.Job.Tolerance.Value
	pm, err := fits.General(mm, class)
	if err != nil {
		return Sized{NominalMm: mm, MinMm: mm, MaxMm: mm}
	}
	return Sized{NominalMm: mm, MinMm: mm - pm, MaxMm: mm + pm, Limited: true, ByClass: true, Source: generalBy(class, "")}
}

// generalBy is a class of the general tolerance as a source, with what of it.
func generalBy(class, of string) lookup.Source {
	return lookup.Source{Name: "ISO 2768-" + class, Of: of, State: lookup.Checked}
}

// tapeOffMm is how far off a tape reads round or along a tube. Common practice, no source.
const tapeOffMm = 1.0

// taped limits a length that is set out and read by tape: no closer than that reads, where the job
// has a general tolerance.
func (s *Sizes) taped(mm float64) Sized {
	out := s.General(mm)
	if out.Limited && out.MaxMm-mm < tapeOffMm {
		out.MinMm, out.MaxMm, out.Source = mm-tapeOffMm, mm+tapeOffMm, lookup.NoSource
	}
	return out
}

// limitsText is "90.000 – 90.035", or empty where nothing limits the size.
func (s *Sizes) limitsText(z Sized) string {
	switch {
	case z.Press.Set():
		return "measured counterpart − " + s.W.Size(0.03) + " … − " + s.W.Size(0.01)
	case z.Measured() && z.OffMm.Max > 0:
		return "largest spigot measured + " + s.W.Size(z.OffMm.Min) + " … + " + s.W.Size(z.OffMm.Max)
	case z.Measured():
		return "least bore measured − " + s.W.Size(-z.OffMm.Min) + " … − " + s.W.Size(-z.OffMm.Max)
	case z.Limited:
		return s.W.Limits(z.MinMm, z.MaxMm)
	}
	return ""
}

// aim is a size that no class names, inside its limits as they are printed.
func (z Sized) aim(w words.Writer) string {
	return words.Either(z.Limited && z.Class == "", w.Aim(z.NominalMm, z.MinMm, z.MaxMm), w.Size(z.NominalMm))
}

// leftOut tells whether the limits leave the size itself out: it is written with them.
func (z Sized) leftOut() bool {
	return z.Limited && (z.NominalMm <= z.MinMm-geom.CloseMm || z.NominalMm >= z.MaxMm+geom.CloseMm)
}

// classed is a size with its class, "50 m6"; "" for one that only its limits say.
func (z Sized) classed(w words.Writer) string {
	if z.leftOut() && z.ByLimits() {
		return ""
	}
	return words.Join(" ", w.Size(z.NominalMm), z.classText())
}

// worked is a size as it is worked to: with its class, and by its limits where they leave
// the size itself out ("50 m6 (50.009 – 50.025)", "34.912 – 34.925").
func (z Sized) worked(w words.Writer) string {
	size := z.classed(w)
	switch limits := w.Limits(z.MinMm, z.MaxMm); {
	case !z.leftOut():
		return size
	case size == "":
		return limits
	default:
		return size + " (" + limits + ")"
	}
}

// sizeText is a diameter with its class: "Ø90 H7", "M40x1.5".
func (s *Sizes) sizeText(st *Step) string {
	if t := st.Size.Thread; t != nil {
		switch {
		case t.Lead != nil && st.Inside:
			return s.leadName(st) + " thread, bore " + s.W.Limits(t.MinorLimitsMm()) + " first"
		case t.Lead != nil:
			return s.leadName(st) + " thread"
		case st.Inside && t.TapDrillMm != 0:
			return t.Designation + " thread, bore " + s.W.Dia(t.TapDrillMm) + " first"
		}
		return t.Designation + " thread"
	}
	text := "Ø" + st.Size.worked(s.W)
	switch {
	case st.Size.Press.Set():
		return text + " light press on " + st.Size.Press.Part + " " + words.Spaced(st.Size.Press.Feature)
	case st.Size.Measured():
		return text + " " + measuredClass
	}
	return text
}

// leadName is a lead screw's thread with the class of its side: "Tr24x5 LH-7e".
func (s *Sizes) leadName(st *Step) string {
	t := st.Size.Thread
	return t.Designation + "-" + t.Lead.Of(st.Inside).Class
}

// wanted is a diameter next to its limits, which it need not say then.
func (s *Sizes) wanted(st *Step) string {
	switch size := st.Size.classed(s.W); {
	case !st.Size.leftOut():
		return s.sizeText(st)
	case size == "":
		return ""
	default:
		return "Ø" + size
	}
}

// The classes of what has none of a standard: of a size drawn by its limits, of a light press, and of one
// that is made to its counterpart as that measures.
const (
	limitsClass   = "limits"
	pressClass    = "light press"
	measuredClass = "to its counterpart as measured"
)

// spread is a size with limits that no class names.
func spread(nominalMm, lessMm, moreMm float64, source lookup.Source) Sized {
	return Sized{NominalMm: nominalMm, MinMm: geom.Clean(nominalMm - lessMm), MaxMm: geom.Clean(nominalMm + moreMm), Limited: true, Source: source}
}

// spread is how far an outside may measure from its nominal: as bought what its tube
// standard allows, else 0.6 mm, with more than any turned size has (common practice,
// no source).
func (s *Sizes) spread(st *Step) float64 {
	if s.Part.BoughtTube() && st.Size.AsBought && s.Material != nil {
		if tol, err := fits.TubeOutside(fits.TubeStandard(s.Material.Name), st.Size.NominalMm); err == nil {
			return tol.PlusMinusMm
		}
	}
	return 0.6
}
