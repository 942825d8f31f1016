package part

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Seam is the weld that closes what is made from sheet, or joins its pieces.
type Seam struct {
	Process  string  // that the job welds the part on by; empty where it names none, or several
	AreaMm2  float64 // of its section, at the widest gap
	LengthMm float64 // of all together
	how      string
}

// Seam is that of what is rolled or folded to a cone, a tube or a square-to-round, or pulled to the
// turns of a flight; nil of other parts, and where nothing of the kind is welded.
func (g *Shape) Seam() *Seam {
	lapMm, seams := 0.0, seq.Sum(g.blanks(), func(d plan.Development) int { return d.Copies })
	if f := g.Part.Formed(); f != nil {
		lapMm = f.Overlap.Mm
	} else {
		seams-- // between the pieces of what does not close
	}
	s := &Seam{LengthMm: float64(seams) * g.form.seamMm()}
	thick := g.form.wallMm(g.Sizes, 0)
	prep, err := weld.ButtPrep(thick, weld.BothEdges, weld.TwoSides)
	if s.LengthMm <= 0 || err != nil {
		return nil
	}
	var by []string
	for _, j := range g.Job.Joints {
		if j.Weld != nil && j.Some(func(r parts.JointRef) bool { return r.Part == g.Part.Name.Value }) {
			by = append(by, j.Weld.Process)
		}
	}
	slices.Sort(by)
	if by = slices.Compact(by); len(by) == 1 {
		s.Process = by[0]
	}
	if s.how = "butt"; lapMm != 0 {
		s.AreaMm2, s.how = weld.FilletArea(thick, true), "fillet "+g.W.Size(thick)+" along the edge of the lap"
		return s
	}
	one, _ := weld.ButtPrep(thick, weld.BothEdges, weld.OneSide)
	s.how += words.When(prep.AngleDeg.Use != 0, ", a V of "+words.Trim(prep.AngleDeg.Use, 0)+"°, root face "+g.W.Read(prep.RootFaceMm.Use))
	if s.how += ", gap " + g.W.Read(prep.GapMm.Min) + " to " + g.W.Read(prep.GapMm.Max); one.Shape == weld.Square {
		s.how += ", right through"
	} else {
		s.how = words.Join(", ", s.how+", both sides", prep.Note)
	}
	s.AreaMm2, _ = prep.GrooveArea(thick, weld.CapMm(thick))
	return s
}

// sideMm is the length of a side up what is formed, at its seam, whose lower end lies that far outside
// the upper and whose upper end stands that far to the right and to TOP.
func sideMm(f *parts.Formed, in, right, up float64) float64 {
	sin, cos := math.Sincos(f.Seam.Deg * math.Pi / 180)
	return math.Hypot(f.Height.Mm, math.Hypot(in*sin-right, in*cos-up))
}

// seamText says how the seam is welded, as far as the job does.
func (b *bench) seamText() string {
	s := b.Seam()
	if s == nil {
		return ""
	}
	filler := words.Either(s.Process == "", "process and filler", "filler")
	if b.Material != nil {
		filler += " for " + b.Part.Material.Value
	}
	return words.Join(", ", s.Process, s.how) + "; " + filler + " by the welding procedure."
}
