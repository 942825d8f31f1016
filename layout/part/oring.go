package part

import (
	"errors"

	"centrepop/layout/fits"
	"centrepop/layout/grooves"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// oringGroove is that of an O-ring, in a round or in an end face.
type oringGroove struct {
	ring  grooves.ORing
	gland grooves.Gland
}

func (k *oringGroove) size(z *sizer, g *Groove) bool {
	in := g.In
	k.ring = grooves.ORing{InsideMm: in.Inside.Mm, SectionMm: in.Section.Mm}
	seat, against := grooves.Piston, g.Row.DiameterMm
	switch {
	case g.Row.Face != "" && in.PressureOutside:
		seat = grooves.FaceOutside
	case g.Row.Face != "":
		seat = grooves.FaceInside
	case g.Row.Inside:
		seat = grooves.Rod
	}
	if in.Against.Set() {
		against = in.Against.Mm
	}
	var err error
	if k.gland, err = k.ring.In(seat, against, in.Moving); err != nil {
		z.glandFault(g, err)
		return false
	}
	d := &k.gland
	g.width = spread(d.WidthMm, 0, d.WiderMm, d.Source)
	g.Row.OuterMm, g.Row.InnerMm, g.Row.AgainstMm = geom.Clean(d.OuterMm), geom.Clean(d.InnerMm), geom.Clean(against)
	g.Row.LeadInMm = geom.Clean(d.LeadInMm)
	switch {
	case g.Row.Face != "":
		g.floor, g.Row.AgainstMm = spread(d.DepthMm, 0, d.DeeperMm, d.Source), 0
		wallMm := g.Row.OuterMm
		if in.PressureOutside {
			wallMm = g.Row.InnerMm
		}
		wall, err := fits.Limit(wallMm, d.WallClass)
		if err != nil {
			z.glandFault(g, err)
			return false
		}
		g.wall = limited(wall, d.Source)
	case g.Row.Inside:
		g.floor = spread(d.FloorMm, 0, 2*d.DeeperMm, d.Source)
	default:
		g.floor = spread(d.FloorMm, 2*d.DeeperMm, 0, d.Source)
	}
	g.Row.ORing = &plan.ORingFit{
		InsideMm: geom.Clean(k.ring.InsideMm), SectionMm: geom.Clean(k.ring.SectionMm), Moving: in.Moving,
		SqueezeMin: words.Round(d.Squeeze.Min, 4), SqueezeMax: words.Round(d.Squeeze.Max, 4), Fill: words.Round(d.Fill, 4), Stretch: words.Round(d.Stretch, 4),
		Problems: seq.Map(d.Problems, func(p grooves.Problem) grooves.Problem { p.Value = words.Round(p.Value, 4); return p }),
	}
	if wrong := g.wrongSide(); wrong != "" {
		z.fault(in.Pos, wrong, "an O-ring of this size, or another diameter to seal against")
		return false
	}
	return true
}

// wrongSide says what is wrong with a floor that does not lie in its step.
func (g *Groove) wrongSide() string {
	if g.Row.Face != "" || g.Row.Inside && g.floor.NominalMm > g.Row.DiameterMm || !g.Row.Inside && g.floor.NominalMm < g.Row.DiameterMm {
		return ""
	}
	return "the floor of " + g.Row.Name + " would lie outside its step: no groove is left"
}

// glandFault words what the tables refuse.
func (z *sizer) glandFault(g *Groove, err error) {
	if section, ok := errors.AsType[*grooves.SectionError](err); ok {
		known := ""
		for _, mm := range section.KnownMm {
			known = words.Join(", ", known, z.W.Size(mm))
		}
		z.fault(g.In.Section.Pos, "no groove is known for a section of "+z.W.Size(section.SectionMm), known)
		return
	}
	z.fault(g.In.Section.Pos, "no groove is known for this O-ring on "+z.W.Dia(g.Row.DiameterMm), "sections from "+z.W.Size(1.5)+" to "+z.W.Said(7)+", and a diameter with room for the groove")
}

func (k *oringGroove) purpose(w words.Writer) string { return "for " + k.bought(w) }

func (k *oringGroove) bought(w words.Writer) string {
	return "O-ring " + w.Size(k.ring.InsideMm) + " × " + w.Size(k.ring.SectionMm)
}

func (k *oringGroove) gauge() string { return "gauge blocks" }

func (k *oringGroove) lines(w words.Writer, g *Groove) []string {
	d := &k.gland
	percent := func(v float64) string { return words.Trim(100*v, 0) + " %" }
	out := []string{"Corners R" + w.Size(d.RadiusMm) + " at most, floor and walls smooth, edges broken so that they do not cut the ring."}
	fit := "The ring is squeezed " + percent(d.Squeeze.Min) + " to " + percent(d.Squeeze.Max) + " and fills " + percent(d.Fill) + " of the groove"
	if g.Row.Face == "" {
		word := ", stretched "
		stretch := d.Stretch
		if stretch < 0 {
			word, stretch = ", pressed together ", -stretch
		}
		fit += word + words.Trim(100*stretch, 1) + " %; what it is pushed over needs a lead-in " + w.Size(d.LeadInMm) + " long at " + words.Trim(d.LeadInDeg, 0) + "°"
	}
	return append(out, fit+".")
}
