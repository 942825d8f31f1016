package part

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/tapers"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Flats are flats worked out.
type Flats struct {
	In   *parts.Flats
	Row  plan.FlatsRow
	work tapers.Milled
	step *Step
}

// flats works out the flats in the order of the drawing.
func (z *sizer) flats() {
	for in := range seq.Refs(z.Part.Flats) {
		f := Flats{In: in, step: z.StepNamed(in.In.Value)}
		if f.step == nil {
			continue
		}
		var err error
		if f.work, err = (tapers.Flats{Sides: int(in.Sides.Value), RoundMm: f.step.Size.NominalMm, AcrossMm: in.Across.Mm}).Work(); err != nil {
			z.fault(in.Across.Pos, "no flats "+z.W.Size(in.Across.Mm)+" across can be milled on "+z.W.Dia(f.step.Size.NominalMm), "a size within the round")
			continue
		}
		from, to := in.StretchMm(f.step.FromMm, f.step.ToMm)
		f.Row = plan.FlatsRow{
			Name: in.Name.Value, In: in.In.Value, Sides: int(in.Sides.Value), AcrossMm: geom.Clean(in.Across.Mm),
			ClockDeg: geom.Clean(math.Mod(in.Clock.Deg+360, 360)), FromMm: geom.Clean(from), ToMm: geom.Clean(to),
			DiameterMm: geom.Clean(f.step.Size.NominalMm), DepthMm: geom.Clean(f.work.DepthMm), WidthMm: words.Round(f.work.WidthMm, 4), Full: f.work.Full,
		}
		z.Flats = append(z.Flats, f)
	}
}

// name is "hexagon", "square", "flat", "2 flats".
func (f *Flats) name() string {
	switch f.Row.Sides {
	case 1:
		return "flat"
	case 4:
		return "square"
	case 6:
		return "hexagon"
	}
	return strconv.Itoa(f.Row.Sides) + " flats"
}

func (f *Flats) acrossText(w words.Writer) string {
	return words.Either(f.Row.Sides == 1, w.Size(f.Row.AcrossMm)+" to the far side", w.Size(f.Row.AcrossMm)+" across flats")
}

func (f *Flats) placeText(w words.Writer) string {
	return w.Size(f.Row.FromMm) + " to " + w.Size(f.Row.ToMm) + " from the front face"
}

func (f *Flats) feature(n *Numbered) plan.Feature {
	note := "clock " + words.FineAngle(f.Row.ClockDeg) + n.clockFrom(f.Row.ClockDeg) + ", " + f.placeText(n.W)
	note += words.When(f.work.CornersMm != 0 && !f.work.Full, "; corners stay round, sharp ones need "+n.W.Dia(n.W.Rounded(f.work.LeastRound, 2)))
	return plan.Feature{
		Kind: plan.FlatsFeature, Name: words.Spaced(f.Row.Name), Size: f.name() + " " + f.acrossText(n.W) + " on " + n.W.Dia(f.Row.DiameterMm),
		Limits: n.limitsText(n.General(f.Row.AcrossMm)), Note: note,
		Balloon: plan.XY{XMm: geom.Clean((f.Row.FromMm + f.Row.ToMm) / 2), YMm: geom.Clean(f.Row.DiameterMm/2 - f.Row.DepthMm)},
	}
}

func (f *Flats) operations(b *bench) {
	w := b.W
	o := plan.Operation{
		Machine: plan.Mill, Title: words.Spaced(f.Row.Name) + ": " + f.name() + " " + f.acrossText(w), Holding: "dividing head, the free end supported; TOP line set with a square", Tool: "end mill",
		Gauge: "micrometer or calipers over the flats", Refs: []int{b.ref(f)},
		Do: []string{"Clock " + words.FineAngle(f.Row.ClockDeg) + b.clockFrom(f.Row.ClockDeg) + " up, " + f.placeText(w) + ". Touch the crown, feed down " + w.Read(f.Row.DepthMm) +
			"; each flat comes out " + w.Read(f.Row.WidthMm) + " wide."},
	}
	if f.Row.Sides > 1 {
		line := "Index " + words.FineAngle(f.work.IndexDeg) + " from flat to flat: on a 40:1 head " + strconv.Itoa(f.work.HeadTurns) + " turns"
		line += words.When(f.work.HeadRest != 0, " and "+strconv.Itoa(f.work.HeadRest)+" of "+strconv.Itoa(f.work.HeadOf))
		if line += "."; f.Row.Sides > 2 {
			line += " Measure the first two opposite flats before the rest."
		}
		o.Do = append(o.Do, line)
	}
	o.Limits = b.limits("across", b.General(f.Row.AcrossMm))
	b.op(warn(o, clampRound))
}

func (f *Flats) checks(r *record) {
	s := r.General(f.Row.AcrossMm)
	r.sized(plan.Check{Ref: r.ref(f), What: words.Spaced(f.Row.Name), Wanted: f.acrossText(r.W), Gauge: "micrometer or calipers"}, s)
}

// chords are the flats seen along the axis, from the front, one after the other clockwise: where each begins and ends.
func (f *Flats) chords() (out [][2]plan.XY) {
	radius, half := f.Row.DiameterMm/2, 180/float64(f.Row.Sides)
	if high := radius - f.Row.DepthMm; f.Row.Full {
		radius = high / math.Cos(half*math.Pi/180)
	} else {
		half = math.Acos(high/radius) * 180 / math.Pi
	}
	for i := range f.Row.Sides {
		at := f.Row.ClockDeg + 360*float64(i)/float64(f.Row.Sides)
		out = append(out, [2]plan.XY{geom.Clock(radius, at-half), geom.Clock(radius, at+half)})
	}
	return out
}

// whole tells whether flats run along all of their step.
func (f *Flats) whole() bool {
	return geom.Alike(f.Row.FromMm, f.step.FromMm) && geom.Alike(f.Row.ToMm, f.step.ToMm)
}

// flatsOn draws the flats of a turned part on a face: those along all of its widest step are its outline, others lines across theirs,
// dashed where something lies before them.
func (s *Sizes) flatsOn(out *plan.Face) {
	wide := s.widest()
	for f := range seq.Refs(s.Flats) {
		chords := f.chords()
		if out.Face == parts.Back {
			for i, c := range chords {
				chords[i] = [2]plan.XY{c[0].Mirrored(), c[1].Mirrored()}
			}
		}
		if f.step == wide && f.whole() {
			path, sweep := &canvas.Path{}, out.Face == parts.Back // clockwise from the front
			for i, c := range chords {
				if i == 0 {
					path.MoveTo(c[0].XMm, c[0].YMm)
				}
				path.LineTo(c[1].XMm, c[1].YMm)
				if next := chords[(i+1)%len(chords)][0]; !f.Row.Full {
					path.ArcTo(f.Row.DiameterMm/2, f.Row.DiameterMm/2, 0, len(chords) == 1, sweep, next.XMm, next.YMm)
				}
			}
			path.Close()
			out.Outline = plan.Contour(path.ToSVG())
			continue
		}
		lines := &out.Hidden
		if s.seenFrom(f.step, out.Face) && geom.Alike(parts.At(out.Face, f.Row.FromMm, f.Row.ToMm), parts.At(out.Face, f.step.FromMm, f.step.ToMm)) {
			lines = &out.Notches
		}
		for _, c := range chords {
			*lines = append(*lines, c[:])
		}
	}
}
