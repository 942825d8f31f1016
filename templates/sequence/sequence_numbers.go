package sequence

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/templates/draw"
)

// keyNumber is a number to read from across the bench.
type keyNumber struct{ label, value, rest string }

// keyNumbers are the few numbers of a joint that the hands need.
func keyNumbers(j *plan.JointPlan, units parts.Units) []keyNumber {
	var out []keyNumber
	add := func(label, value, rest string) { out = append(out, keyNumber{label, value, rest}) }
	switch {
	case j.Press != nil:
		p := j.Press
		force := func() {
			w := words.Writer{Units: units}
			rest := "at the end of travel"
			if p.ShopPressN > 0 {
				press, _, _ := strings.Cut(w.Force(p.ShopPressN, 0), " (")
				rest = "the shop's press: " + press
			}
			value, _, _ := strings.Cut(w.Forces(p.ForceN.Min, p.ForceN.Max, 1), " (") // the step has both units
			add("Press force", strings.ReplaceAll(value, " – ", "–"), rest)
		}
		heat := func() {
			add("Heat the hub to", words.Trim(p.HeatHubC, 0)+" °C", "clearance "+sized(p.ClearanceMm, units))
		}
		switch p.Method {
		case "heat":
			heat()
		case "cool":
			add("Cool the shaft to", words.Trim(p.CoolShaftC, 0)+" °C", "clearance "+sized(p.ClearanceMm, units))
		default:
			force()
			if p.HeatLimitC == 0 || p.HeatHubC <= p.HeatLimitC { // what the hub stands
				heat()
				out[1].label = "Or heat the hub to"
			}
		}
		value, other := smallRange(p.InterferenceMm, units)
		add("Interference", value, words.Join(" ", other, "on diameter"))
		add("Lead-in", sized(p.LeadInMm, units)+" × "+words.Angle(p.LeadInDeg), "on the edge that enters")
	case j.Weld != nil:
		w := j.Weld
		if w.Designation != "" {
			add("Fillet", w.Designation, "leg "+words.Short(w.LegMm, units)+", throat "+sized(w.ThroatMm, units))
		} else {
			rest := ""
			switch {
			case w.DepthMm > 0:
				rest = words.Angle(w.BevelDeg) + ", " + sized(w.DepthMm, units) + " along the round"
			case w.BevelDeg > 0:
				rest = words.Angle(w.BevelDeg) + ", root face " + sized(w.RootFaceMm, units)
			}
			add("Butt", w.Symbol, rest)
		}
		add("Gap", sized(w.GapMm, units), "when set up")
		if n := len(w.TacksDeg); n > 0 {
			add("Tacks", strconv.Itoa(n)+" × "+sized(w.TackLengthMm, units), "in the order shown")
		}
		add("Runs", strconv.Itoa(w.Runs), w.Process+", buy "+words.Trim(w.BuyKg, 2)+" kg")
	case j.Bolt != nil:
		b := j.Bolt
		add("Bolts", strconv.Itoa(b.Count)+" × "+b.Ordered, words.Join(", ", b.Class, b.Head+" head"))
		if b.Ordered == "" {
			out[0].value = strconv.Itoa(b.Count) + " × " + b.Size
		}
		if b.Class == "" {
			out[0].label, out[0].rest = "Studs", "made here, a nut at each end"
		}
		if b.TorqueNm > 0 {
			value, rest := words.Trim(b.TorqueNm, 0)+" N m", "threads "+b.Threads+"; "+b.OtherThreads+" "+words.Trim(b.OtherTorqueNm, 0)
			if units == parts.Inches {
				value, rest = words.Trim(b.TorqueNm/words.NmPerPoundFoot, 0)+" lb ft", "threads "+b.Threads+"; "+b.OtherThreads+" "+words.Trim(b.OtherTorqueNm/words.NmPerPoundFoot, 0)
			}
			add("Torque", value, rest)
		}
		add("Thread engaged", sized(b.EngagementMm, units), "needs "+sized(b.NeedMm, units))
		if len(b.Grip) > 0 {
			var grip []string
			for _, g := range b.Grip {
				grip = append(grip, words.Short(g.ThickMm, units))
			}
			add("Grip", sized(b.GripMm, units), "from the head "+strings.Join(grip, " + "))
		}
	case j.Slide != nil:
		p := j.Slide
		value, other := smallRange(p.PlayMm, units)
		add("Play of the bore", value, words.Join(", ", other, "on diameter"))
		if p.Key != "" {
			add("Key", p.Key, sized(p.KeyOnMm, units)+" of it in the hub")
		}
		label, along := "Free along the shaft", p.FreeMm
		if p.FreeMm < 0 {
			label, along = "Past its seat", -p.FreeMm
		}
		add(label, sized(along, units), p.Keeper)
	case j.Bearing != nil:
		b := j.Bearing
		if b.HasEndFloat {
			label, rest := "End float", "dial gauge on the shaft end"
			if b.EndFloatMm.Max <= 0 {
				label, rest = "Preload", "tighter than no play"
			}
			value, other := smallRange(b.EndFloatMm, units)
			add(label, value, words.Join(", ", other, rest))
		}
		if b.HeatConeC > 0 {
			add("Cone goes on at", words.Trim(b.HeatConeC, 0)+" °C", "")
		}
		add("Sleeve for the cone", "Ø"+words.Short(b.ConeSleeveInMm, units)+" / "+words.Short(b.ConeSleeveOutMm, units), "inside / outside at most, "+words.LengthWord(units))
		add("Ring for the cup", "Ø"+words.Short(b.CupRingInMm, units)+" / "+words.Short(b.CupRingOutMm, units), "inside / outside, "+words.LengthWord(units))
		add("Grease", words.Trim(b.GreaseG, 0)+" g", "when regreasing")
	}
	return out
}

// smallRange writes a range of hundredths: in micrometres, or in inches with
// the micrometres for the line below.
func smallRange(r plan.Range, units parts.Units) (value, other string) {
	um := span2(r.Min*1000, r.Max*1000, 0) + " µm"
	if units == parts.Inches {
		return span2(r.Min/geom.MmPerInch, r.Max/geom.MmPerInch, 4) + " in", um
	}
	return um, ""
}

// sized writes a length with its unit.
func sized(mm float64, units parts.Units) string {
	if units == parts.Inches {
		return words.Short(mm, units) + " in"
	}
	return words.Short(mm, units) + " mm"
}

// span2 writes a range without a unit.
func span2(lo, hi float64, decimals int) string {
	a, b := words.Trim(lo, decimals), words.Trim(hi, decimals)
	switch {
	case a == b:
		return a
	case strings.HasPrefix(a, "-") || strings.HasPrefix(b, "-"):
		return a + " to " + b
	}
	return a + "–" + b
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
	const high = 16.5
	w := width / float64(perRow)
	for i, k := range list {
		x, y := w*float64(i%perRow), -high*float64(i/perRow)
		p.Draw.Add(draw.Box(draw.R(x, y-high, x+w, y), 0.5))
		label, size := draw.Shrink(k.label, draw.TextMm, false, w-4)
		p.Draw.Add(draw.Text{XMm: x + 2, YMm: y - 4.4, SizeMm: size, Content: label})
		value, size := draw.Shrink(k.value, 6.6, true, w-4)
		p.Draw.Add(draw.Text{XMm: x + w/2, YMm: y - 10.4, SizeMm: size, Bold: true, Align: draw.Centre, Content: value})
		rest, size := draw.Shrink(k.rest, 3.2, false, w-4)
		if k.rest != "" {
			p.Draw.Add(draw.Text{XMm: x + w/2, YMm: y - 14.8, SizeMm: size, Align: draw.Centre, Content: rest})
		}
	}
	p.Height = high * float64(rows)
	return p
}
