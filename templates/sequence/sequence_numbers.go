package sequence

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// keyNumber is a number to read from across the bench.
type keyNumber struct{ label, value, rest string }

// keyNumbers are the few numbers of a joint, or of several that are the same work, that the
// hands need.
func keyNumbers(run []*plan.JointPlan, w words.Writer) []keyNumber {
	switch j := run[len(run)-1]; {
	case j.Press != nil:
		return pressNumbers(j, w)
	case j.Weld != nil:
		return weldNumbers(j.Weld, len(run), w)
	case j.Bolt != nil:
		return boltNumbers(j.Bolt, w)
	case j.Slide != nil:
		return slideNumbers(j.Slide, w)
	case j.Screw != nil:
		return screwNumbers(j.Screw, w)
	case j.Bearing != nil:
		return bearingNumbers(j.Bearing, w)
	}
	return nil
}

func pressNumbers(j *plan.JointPlan, w words.Writer) []keyNumber {
	p := j.Press
	heat := keyNumber{"Heat " + j.B.Title + " to", w.HeatsRead(p.HeatHubC, p.HeatHubC), "clearance " + w.Size(p.ClearanceMm)}
	var out []keyNumber
	switch {
	case p.Method == "heat" && p.TooHot(), p.Method == "cool" && p.TooCold(): // no number to work by
	case p.Method == "heat":
		out = append(out, heat)
	case p.Method == "cool":
		out = append(out, keyNumber{"Cool " + j.A.Title + " to", w.HeatsRead(p.CoolShaftC, p.CoolShaftC), heat.rest})
	default:
		out = append(out, pressForce(p, w))
		if !p.TooHot() && p.DrawNm == 0 { // what stands in a frame is not heated evenly
			heat.label = "Or heat " + j.B.Title + " to"
			out = append(out, heat)
		}
	}
	out = append(out, keyNumber{"Interference", words.NarrowFine(p.InterferenceMm, w.Units), "on diameter"})
	if p.LeadInOn != "" {
		out = append(out, keyNumber{"Lead-in", words.Sized(p.LeadInMm, w.Units) + " × " + words.Angle(p.LeadInDeg), "on " + p.LeadInOn})
	}
	return out
}

// pressForce is the force in the unit that the press shows; the step has both.
func pressForce(p *plan.PressPlan, w words.Writer) keyNumber {
	rest := words.Either(p.ShopPressN > 0, "the shop's press: "+w.ForcesRead(p.ShopPressN, p.ShopPressN, 0), "at the end of travel")
	if p.DrawNm > 0 {
		return keyNumber{"Draw force", w.NarrowForces(p.ForceN.Min, p.ForceN.Max, 1), "nut up to " + w.Torque(p.DrawNm) + ", oiled"}
	}
	return keyNumber{"Press force", w.NarrowForces(p.ForceN.Min, p.ForceN.Max, 1), rest}
}

func weldNumbers(p *plan.WeldPlan, pieces int, w words.Writer) []keyNumber {
	first := keyNumber{label: "Butt", value: p.Symbol}
	switch {
	case p.Designation != "":
		first = keyNumber{"Fillet", p.Designation, "leg " + words.Short(p.LegMm, w.Units) + ", throat " + words.Sized(p.ThroatMm, w.Units)}
	case p.DepthMm > 0:
		first.rest = words.Angle(p.BevelDeg) + ", " + words.Sized(p.DepthMm, w.Units) + " along the round"
	case p.BevelDeg > 0:
		first.rest = words.Angle(p.BevelDeg) + ", root face " + words.Sized(p.RootFaceMm, w.Units)
	}
	gap := keyNumber{"Gap", words.Sized(p.GapMm, w.Units), "when set up"}
	if p.GapLeastMm < p.GapMm {
		gap.rest = "at most, when set up"
	}
	out := []keyNumber{first, gap}
	if n := len(p.TacksDeg); n > 0 {
		out = append(out, keyNumber{"Tacks", strconv.Itoa(n) + " × " + words.Sized(p.TackLengthMm, w.Units), "in the order shown"})
	}
	runs := keyNumber{"Runs", strconv.Itoa(p.Runs), p.Process + ", buy " + w.RoundMass(p.BuyKg*float64(pieces), 2)}
	runs.rest += words.When(pieces > 1, " for "+strconv.Itoa(pieces))
	return append(out, runs)
}

func boltNumbers(b *plan.BoltPlan, w words.Writer) []keyNumber {
	first := keyNumber{"Bolts", strconv.Itoa(b.Count) + " × " + b.Ordered, words.Join(", ", b.Class, b.Head+" head")}
	if b.Ordered == "" {
		first.value = strconv.Itoa(b.Count) + " × " + b.Size
	}
	head := "head"
	if b.Class == "" {
		head = "nut"
		first.label, first.rest = "Studs", "made here, a nut at each end"
		if b.StudStandsMm > 0 {
			first.rest = "made here, " + words.Sized(b.StudStandsMm, w.Units) + " stand out"
		}
	}
	out := []keyNumber{first}
	if b.TorqueNm > 0 {
		unit, per := w.TorqueUnit(b.TorqueNm)
		out = append(out, keyNumber{"Torque", words.Trim(b.TorqueNm/per, 0) + " " + unit,
			"threads " + b.Threads + "; " + b.OtherThreads + " " + words.Trim(b.OtherTorqueNm/per, 0)})
	}
	if b.Soft != nil {
		out = append(out, keyNumber{b.Soft.What, words.Sized(b.Soft.ThickMm, w.Units), "free; no torque is known"})
	}
	out = append(out, keyNumber{"Thread engaged", words.Sized(b.EngagementMm, w.Units), "needs " + words.Sized(b.NeedMm, w.Units)})
	if len(b.Grip) > 0 {
		grip := seq.Map(b.Layers(), func(g plan.GripRow) string { return words.Short(g.ThickMm, w.Units) })
		from := strings.Join(grip, " + ")
		if len(grip) < 4 { // more need the room
			from = "from the " + head + " " + from
		}
		if b.Spacer {
			from = "each end its own: " + strings.Join(grip, ", ")
		}
		out = append(out, keyNumber{"Grip", words.Sized(b.ClampedMm(), w.Units), from})
	}
	return out
}

func slideNumbers(p *plan.SlidePlan, w words.Writer) []keyNumber {
	var out []keyNumber
	if p.Cone > 0 {
		out = append(out, keyNumber{"Cone", "1:" + words.Trim(p.Cone, 3), "it bears all round"})
	} else {
		out = append(out, keyNumber{"Play of the bore", words.NarrowFine(p.PlayMm, w.Units), "on diameter"})
	}
	if p.Key != "" {
		out = append(out, keyNumber{"Key", p.Key, words.Sized(p.KeyOnMm, w.Units) + " of it in the hub"})
	}
	if p.Keeper == "" {
		return out
	}
	label, along := "Free along the shaft", p.FreeMm
	if at := p.FreeAtMm; at != nil {
		return append(out, keyNumber{label, words.Narrow(*at, w.Units), p.Keeper})
	}
	if p.FreeMm < 0 {
		label, along = "Past its seat", -p.FreeMm
	}
	return append(out, keyNumber{label, words.Sized(along, w.Units), p.Keeper})
}

func screwNumbers(p *plan.ScrewPlan, w words.Writer) []keyNumber {
	out := []keyNumber{{"Thread", p.Thread, words.Either(p.Home, "screwed home", "it runs")}, {"Engaged", words.Sized(p.EngagedMm, w.Units), "as drawn"}}
	if p.Turns > 0 {
		out = append(out, keyNumber{"Turns", words.Trim(p.Turns, 1), "its " + p.Leads + " leading"})
	}
	return out
}

func bearingNumbers(b *plan.BearingPlan, w words.Writer) []keyNumber {
	var out []keyNumber
	inner, outer := b.Names()
	if b.HasEndFloat && b.SetBy == "" {
		label, rest := "End float", "dial gauge on the shaft end"
		if b.EndFloatMm.Max <= 0 {
			label, rest = "Preload", "tighter than no play"
		}
		out = append(out, keyNumber{label, words.NarrowFine(b.EndFloatMm, w.Units), rest})
	}
	if b.HeatConeC > 0 {
		out = append(out, keyNumber{words.Capital(inner) + " goes on at", w.HeatsRead(b.HeatConeC, b.HeatConeC), ""})
	}
	if b.Sleeve {
		out = append(out, keyNumber{"Sleeve for the " + inner, "Ø" + words.Short(b.ConeSleeveInMm, w.Units) + " / " + words.Short(b.ConeSleeveOutMm, w.Units),
			"inside / outside at most, " + words.LengthWord(w.Units)})
	}
	for _, r := range b.Rings {
		out = append(out, keyNumber{ringFor(b, r, outer), "Ø" + words.Short(r.InMm, w.Units) + " / " + words.Short(r.OutMm, w.Units), "inside / outside, " + words.LengthWord(w.Units)})
	}
	if b.Sealed {
		return out
	}
	return append(out,
		keyNumber{"Grease", w.Grams(b.GreaseG), "when regreasing"})
}

// ringFor names what a press ring is for: of a ball bearing that is pressed by the inner ring or by both, these.
func ringFor(b *plan.BearingPlan, r plan.PushRing, outer string) string {
	switch {
	case b.Ball && r.OutMm < b.CupRingInMm:
		outer = "inner ring"
	case b.Ball && r.InMm < b.CupRingInMm:
		return "Ring for both rings"
	}
	return "Ring for the " + outer
}

// bigNumbers sets numbers in a row of boxes.
func bigNumbers(list []keyNumber, width float64) draw.Piece {
	var p draw.Piece
	if len(list) == 0 {
		return p
	}
	perRow := min(len(list), max(1, int(width/38)))
	rows := (len(list) + perRow - 1) / perRow
	perRow = (len(list) + rows - 1) / rows
	w := width / float64(perRow)
	for i, k := range list {
		x, y := w*float64(i%perRow), -bigBox.highMm*float64(i/perRow)
		bigBox.draw(&p.Draw, k, draw.R(x, y-bigBox.highMm, x+w, y))
	}
	p.Height = bigBox.highMm * float64(rows)
	return p
}

// numberBox is how a number stands in a box: its height, the room beside its texts, and
// their em and how far they stand below its upper edge: label, value and rest.
type numberBox struct {
	highMm, padMm float64
	emMm, downMm  [3]float64
}

var (
	bigBox   = numberBox{16.5, 2, [3]float64{draw.TextMm, 6.6, 3.2}, [3]float64{4.4, 10.4, 14.8}}
	smallBox = numberBox{11, 1.5, [3]float64{draw.SmallMm, 4.4, draw.SmallMm}, [3]float64{2.7, 6.8, 10.2}}
)

func (b numberBox) draw(d *draw.Drawing, k keyNumber, r draw.Rect) {
	d.Add(draw.Box(r, 0.5))
	mid := (r.X0 + r.X1) / 2
	for i, t := range []draw.Text{{XMm: r.X0 + b.padMm, Content: k.label}, {XMm: mid, Bold: true, Align: draw.Centre, Content: k.value}, {XMm: mid, Align: draw.Centre, Content: k.rest}} {
		if t.YMm, t.SizeMm = r.Y1-b.downMm[i], b.emMm[i]; t.Content != "" {
			d.Add(t.Within(r.Width() - 2*b.padMm))
		}
	}
}
