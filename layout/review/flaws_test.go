package review

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/measured"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// TestFlaws: rules of one part, or of one thing bought, at their bounds and a tenth beyond, by hand: how many screws
// all copies take, where pins stand, what stock leaves, what a groove runs into. The bounds are the rules' own, common
// practice, no source; the tolerances ISO 2768-1 m: ±0.2 to 30, ±0.3 to 120.
func TestFlaws(t *testing.T) {
	t.Parallel()
	text := func(s string) parts.Text { return parts.Text{Value: s} }
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	fitted := parts.Fit{Class: parts.Text{Value: "h6"}, Pos: parts.Pos{Line: 1}}
	type rule = func(v *view)
	step := func(name string, from, to, d float64) *cylinder {
		return cyl(name, from, to, d, parts.Step{})
	}
	say := func(words ...string) rule {
		return func(v *view) { v.found = append(v.found, Finding{What: strings.Join(words, ", ")}) }
	}
	flats := func(z, clock float64) rule { // two, from 20 to 40, and a hole of 8
		return func(v *view) {
			v.p.Radials = []parts.Radial{{Name: text("h"), Shape: parts.RadialHole, Axial: mm(z), Clock: []parts.Angle{{Deg: clock}}, Size: parts.HoleSize{Size: parts.Size{Nominal: mm(8)}}}}
			v.flatsFree(plan.FlatsRow{Name: "f", FromMm: 20, ToMm: 40, Sides: 2, DiameterMm: 30})
		}
	}
	studs := func(quantity, steps int, asks ...parts.Requirement) rule {
		return func(v *view) {
			v.p.Quantity, v.p.Require = quantity, asks
			v.outside = sideBy(false, []*cylinder{step("a", 0, 20, 10), step("b", 20, 50, 20), step("c", 50, 70, 10)}[:steps]...)
			v.unequal(&plan.JointPlan{A: plan.JointEnd{Title: "cover"}, B: plan.JointEnd{Title: "base"}})
		}
	}
	screws := func(buy string, count int, clamp string, others ...parts.HoleGroup) rule { // two parts with three M8 each
		return func(v *view) {
			v.p.Quantity = 2
			v.p.Holes = append(others, parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("rim"), Pattern: parts.Pattern{Count: 3}}, Size: parts.HoleSize{Make: parts.TappedHole, Thread: "M8"}})
			if clamp != "" {
				v.q.Clamp = &plan.ClampRow{Thread: clamp}
			}
			made{v, &parts.Loose{Part: v.p.Name, Buy: text(buy), Count: count}}.boughtFor()
		}
	}
	pins := func(said string, d, deep, apart, off float64, fit string) rule { // in the back
		return func(v *view) {
			g := &parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("pin"), Face: parts.Back}, Size: parts.HoleSize{Size: parts.Size{Fit: parts.Fit{Class: text(fit)}}}}
			for _, x := range []float64{-apart / 2, apart / 2} {
				v.holes = append(v.holes, hole{name: "pin", group: g, a: plan.XY{XMm: x, YMm: off}, radiusMm: d / 2, fromMm: 50, toMm: 50 + deep})
			}
			v.pinned(g, text(said))
		}
	}
	four := func(d, deep, apart, off float64) rule {
		return pins("pins 10, 30 long, 60 apart, 5 off the axis", d, deep, apart, off, "")
	}
	tube := func(seat, wall float64) rule { // of 60 and 5 drawn
		return func(v *view) {
			v.outside, v.inside = sideBy(false, step("body", 0, 80, 60), step("seat", 80, 100, seat)), sideBy(true, step("bore", 0, 100, 50))
			v.outside[1].Drawn.Size.Fit = fitted
			v.p.Stock = parts.Stock{Form: "tube", Size: mm(60), Second: mm(wall)}
			v.tubeAllowance()
		}
	}
	flat := func(wide, thick float64) rule { // 60 by 40, and 10 thick
		return func(v *view) {
			v.lengthMm, v.outline = 10, []plan.XY{{}, {XMm: 60}, {XMm: 60, YMm: 40}, {YMm: 40}, {}}
			v.p.Stock = parts.Stock{Form: "flat", Size: mm(wide), Second: mm(thick)}
			v.flatAllowance()
		}
	}
	crosses := func(from, to float64, inside bool) rule { // a keyway from 20 to 60
		return func(v *view) {
			v.q.Keyways = []plan.KeywayRow{{Name: "k", In: "s", FromMm: 20, ToMm: 60}}
			v.grooveOnKeyway(plan.GrooveRow{Name: "g", In: "s", FromMm: from, ToMm: to, Inside: inside})
		}
	}
	inFace := func(at, from float64) rule { // from 25 to 35 off the axis, 3 deep; a hole of 10
		return func(v *view) {
			v.holes = []hole{{name: "h", group: &parts.HoleGroup{}, face: parts.Front, n: 1, a: plan.XY{XMm: at}, b: plan.XY{XMm: at}, radiusMm: 5, fromMm: from, toMm: 10}}
			v.faceGrooveHoles(plan.GrooveRow{Name: "g", Face: parts.Front, ToMm: 3, InnerMm: 50, OuterMm: 70})
		}
	}
	shoulder := func(inner, outer float64) rule { // beside a nose of 60, in a body of 100
		return func(v *view) {
			v.outside = sideBy(false, step("nose", 0, 20, 60), step("body", 20, 50, 100))
			v.faceGrooveEdge(plan.GrooveRow{Name: "g", Face: parts.Front, FromMm: 20, ToMm: 23, InnerMm: inner, OuterMm: outer, DepthMm: 3})
		}
	}
	relief := func(wide, deep float64) rule { // on 30 of 40
		return func(v *view) {
			c := step("s", 0, 30, 40)
			c.Undercut = &part.Undercut{WidthMm: wide, DepthMm: deep}
			v.relief(c)
		}
	}
	reliefCure := func(name string) rule { // of an undercut too wide
		return func(v *view) {
			c := cyl("s", 0, 12, 90, parts.Step{})
			c.Undercut = &part.Undercut{Name: name, WidthMm: 4, DepthMm: 0.3}
			v.relief(c)
			v.found = []Finding{{What: v.found[0].Fix}}
		}
	}
	spigot := func(on string) rule { // a post of 50 h6, which another part slides on or not
		return func(v *view) {
			v.outside = sideBy(false, cyl("body", 0, 500, 50, parts.Step{Size: parts.Size{Fit: fitted}}))
			v.job.Joints = []*parts.Joint{{Kind: parts.SlideKind, Slide: &parts.SlideJoint{Hub: parts.JointRef{Part: "clamp", Feature: "bore"}, On: parts.JointRef{Part: "p", Feature: on}}}}
			say(fmt.Sprint(len(v.spigotsAt(parts.Front, &view{})) > 0))(v)
		}
	}
	slips := func(said, set string, loose ...parts.Loose) rule {
		return func(v *view) {
			v.job.Motor, v.job.Loose = &parts.Motor{Notes: []parts.Text{text(set)}}, loose
			v.job.Upkeep = &parts.Upkeep{Wear: []parts.Wear{{Look: text(said)}}}
			of(everyMotor, together(motored.slipsAt, each(motored.notes, motored.limited), each(motored.orders, motored.clutch)))(v.reviewer)
		}
	}
	wheel := func(force, buy string) parts.Loose {
		return parts.Loose{Item: text("hand wheel 400 mm"), How: text(force + " at the rim"), Buy: text(buy)}
	}
	lands := func(deg, z float64, anywhere bool, spare float64) bool { // at a window of 20 by 30 in a tube of 100, 50 from its front
		at := assembly.Clock(1, deg)
		at.Z = -z
		row := plan.RadialRow{AxialMm: 50, AlongMm: 30, AroundMm: 20, OutsideMm: 100}
		return landing{&view{lengthMm: 100, q: &plan.PartPlan{Radials: []plan.RadialRow{row}}}, at, anywhere}.over(&row, spare)
	}
	shut := func(deg, z float64) bool { // for a screw of 8
		at := assembly.Clock(1, deg)
		at.Z = -z
		return landing{&view{lengthMm: 100, q: &plan.PartPlan{Radials: []plan.RadialRow{{AxialMm: 50, AlongMm: 30, AroundMm: 20, OutsideMm: 100}}}}, at, false}.shut(8)
	}
	screw := func(mm float64, make parts.HoleMake, thread string, tapped bool) bool { // in a motor's flange for M8
		return mounted{nil, &parts.HoleGroup{Size: parts.HoleSize{Make: make, Thread: thread}}, &measured.Standard{Thread: "M8", Tapped: tapped}}.otherScrew(mm)
	}
	const (
		pin   = "check p.pin: what is bought for pin of P has another size or place; pins 10, 30 long, 60 apart, 5 off the axis; drawn "
		trial = "check .: what slips is tried at another torque than it is set to; "
	)
	for _, c := range []struct {
		name string
		rule rule
		want string // severity, place, what, numbers and the number to accept; "" where the rule is content
	}{
		{"a hole before the flats", flats(16, 90), ""}, {"on their end", flats(16.1, 90), "check p.h: h lies beside the flats f; 16.1 mm from the front; they run from 20 mm to 40 mm (0.1)"}, {"behind them", flats(44, 90), ""}, {"on that end", flats(43.9, 90), "check p.h: h lies beside the flats f; 43.9 mm from the front; they run from 20 mm to 40 mm (0.1)"},
		{"5° off a flat", flats(30, 5), ""}, {"more", flats(30, 5.1), "check p.h: h lies beside the flats f; 30 mm from the front; they run from 20 mm to 40 mm (8)"}, {"on the other flat", flats(30, 180), ""}, {"beside the other flat", flats(30, 175.1), ""}, {"across the flats", flats(30, 270), "check p.h: h lies beside the flats f; 30 mm from the front; they run from 20 mm to 40 mm (8)"},
		{"three studs", studs(3, 3), "check p.b: nothing asks that the 3 of P are alike in length, and they hold cover parallel to base; 30 mm by general tolerances"}, {"two", studs(2, 3), ""}, {"without a collar", studs(3, 2), ""}, {"to one length", studs(3, 3, parts.Requirement{Kind: parts.EqualLength}), ""},
		{"six M8 for two times three", screws("M8 x 20", 6, ""), ""}, {"five", screws("M8 x 20", 5, ""), "check p.: fewer screws are bought for P than it has holes; 5 for 6"}, {"eight with their clamps", screws("M8 x 20", 8, "M8"), ""}, {"seven", screws("M8 x 20", 7, "M8"), "check p.: fewer screws are bought for P than it has holes; 7 for 8"}, {"clamps of others", screws("M8 x 20", 6, "M6"), ""},
		{"M10", screws("M10 x 20", 6, ""), "check p.: the screws bought for P have the thread of none of its holes; M10 x 20"}, {"through holes of their own", screws("M10 x 20", 6, "", parts.HoleGroup{Size: parts.HoleSize{Make: parts.ClearanceHole, Thread: "M10"}}), ""}, {"jack screws", screws("M8 x 20", 6, "", parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("jack"), For: parts.Jacking, Pattern: parts.Pattern{Count: 2}}, Size: parts.HoleSize{Make: parts.TappedHole, Thread: "M8"}}), ""},
		{"pins in their holes", four(10.5, 30.3, 60, 5), ""}, {"in less", four(9.9, 30.3, 60, 5), pin + "9.9 mm; check p.pin: pin of P need not meet the pins though both are right; centres may differ by 0.3 mm, the play is -0.3 mm (-0.3)"}, {"in 1.2 of them", four(12, 30.3, 60, 5), ""}, {"in more", four(12.1, 30.3, 60, 5), pin + "12.1 mm"},
		{"not as deep", four(10.5, 30.2, 60, 5), pin + "30.2 mm"}, {"0.25 farther apart", four(10.6, 30.3, 60.25, 5), ""}, {"more", four(10.6, 30.3, 60.3, 5), pin + "60.3 mm"}, {"0.25 farther off", four(10.5, 30.3, 60, 5.25), ""}, {"more", four(10.5, 30.3, 60, 5.3), pin + "5.3 mm"}, {"nearer", four(10.5, 30.3, 60, 4.7), pin + "4.7 mm"},
		{"0.3 of play at ±0.3", pins("pins 10", 10.5, 5, 60, 0, ""), ""}, {"less", pins("pins 10", 10.49, 5, 60, 0, ""), "check p.pin: pin of P need not meet the pins though both are right; centres may differ by 0.3 mm, the play is 0.29 mm (0.29)"}, {"the same of reamed holes", pins("pins 10", 10.3, 5, 60, 0, "H7"), ""}, {"0.2 at ±0.2", pins("pins 10", 10.4, 5, 30, 0, ""), ""},
		{"pins of the back", pins("pins in its back", 10, 5, 60, 0, ""), ""}, {"of the front", pins("pins in its front", 10, 5, 60, 0, ""), "check p.pin: what is bought for pin of P has another size or place; pins in its front; drawn in the back"},
		{"1 to turn", tube(59, 5), ""}, {"less", tube(59.1, 5), "check p.seat: the tube leaves nothing to turn seat; 0.9 mm on diameter, wanted 1 mm (0.9)"}, {"none", tube(60.1, 5), "check p.seat: the tube leaves nothing to turn seat; -0.1 mm on diameter, wanted 1 mm (0)"}, {"another wall", tube(59, 5.1), "stop p.: the wall that is bought is not the one that is drawn; 5.1 mm for 5 mm"},
		{"a flat of its size", flat(40, 10), ""}, {"narrower", flat(39.9, 10), "stop p.: the flat is narrower than the part; 39.9 mm for 40 mm"}, {"thinner", flat(40, 9.9), "stop p.: the flat is thinner than the part; 9.9 mm for 10 mm"}, {"thicker", flat(40, 10.1), "check p.: the flat is thicker than the part, and no step faces it; 10.1 mm for 10 mm (0.1)"}, {"wider", flat(60.1, 10), ""},
		{"a groove before the keyway", crosses(10, 20, false), ""}, {"in it", crosses(10, 20.1, false), "check p.g: g crosses k; it runs from 10 mm to 20.1 mm from the front face, the keyway from 20 mm to 60 mm (0.1)"}, {"behind it", crosses(60, 70, false), ""}, {"in that end", crosses(59.9, 70, false), "check p.g: g crosses k; it runs from 59.9 mm to 70 mm from the front face, the keyway from 20 mm to 60 mm (0.1)"}, {"inside", crosses(30, 40, true), ""},
		{"a hole outside a groove", inFace(40, 0), ""}, {"in it", inFace(39.9, 0), "stop p.g: g runs into h, hole 1 on the front; it lies between 50 mm and 70 mm, the hole reaches 0.1 mm into it"}, {"within it", inFace(20, 0), ""}, {"in it there", inFace(20.1, 0), "stop p.g: g runs into h, hole 1 on the front; it lies between 50 mm and 70 mm, the hole reaches 0.1 mm into it"}, {"under it", inFace(30, 3), ""}, {"not under it", inFace(30, 2.9), "stop p.g: g runs into h, hole 1 on the front; it lies between 50 mm and 70 mm, the hole reaches 10 mm into it"},
		{"round the nose", shoulder(60, 96), ""}, {"under it", shoulder(59.8, 96), "stop p.g: g lies under nose, which stands on its face; from 59.8 mm on, nose is 60 mm"}, {"2 % of 100 beside it", shoulder(60, 96.2), "check p.g: g leaves little metal beside it; 1.9 mm left, wanted 2 mm (1.9)"}, {"out at the side", shoulder(60, 100.2), "stop p.g: g comes out at the side of its face; -0.1 mm left, wanted 2 mm (-0.1)"},
		{"a relief of a quarter", relief(7.5, 0.8), ""}, {"wider", relief(7.6, 0.8), "check p.s: the undercut of s eats its seat; 7.6 mm wide and 0.8 mm deep on 30 mm of 40 mm; wanted at most 7.5 mm and 0.8 mm (7.6)"}, {"deeper", relief(7.5, 0.9), "check p.s: the undercut of s eats its seat; 7.5 mm wide and 0.9 mm deep on 30 mm of 40 mm; wanted at most 7.5 mm and 0.8 mm (7.5)"},
		// 20 N on 500 are 10 N m, a quarter more than 8; 20 N at the rim of 400 are 4, and 1.5 times that 6.
		{"tried at a quarter more", slips("slips at 20 N on a 500 mm bar", "limiter set to 8 N m"), ""}, {"at more", slips("slips at 21 N on a 500 mm bar", "limiter set to 8 N m"), trial + "slips at 21 N on a 500 mm bar is 11 N m; set to 8 N m"}, {"at a quarter less", slips("slips at 20 N on a 500 mm bar", "limiter set to 12.5 N m"), ""}, {"at less", slips("slips at 20 N on a 500 mm bar", "limiter set to 13 N m"), trial + "slips at 20 N on a 500 mm bar is 10 N m; set to 13 N m"},
		{"tried at the rim", slips("slips at 25 N", "", wheel("20 N", "")), ""}, {"with more", slips("slips at 30 N", "", wheel("20 N", "")), trial + "slips at 30 N is 6 N m; set to 4 N m"}, {"in pounds", slips("slips at 5 lbf", "", wheel("20 N", "")), ""}, {"and more", slips("slips at 6 lbf", "", wheel("20 N", "")), trial + "slips at 6 lbf is 5 N m; set to 4 N m"},
		{"a limiter of half as much again", slips("", "limiter set to 6 N m", wheel("20 N", "")), ""}, {"of more", slips("", "limiter set to 6.1 N m", wheel("20 N", "")), "check .: the torque limiter and the hand wheel are held to different torques; 6 N m; 20 N at the rim of the wheel 400 mm is 4 N m"}, {"of less", slips("", "limiter set to 2.6 N m", wheel("20 N", "")), "check .: the torque limiter and the hand wheel are held to different torques; 2.6 N m; 20 N at the rim of the wheel 400 mm is 4 N m"},
		{"a clutch of half as much again", slips("", "", wheel("20 N", "clutch set to 6 N m")), ""}, {"of more", slips("", "", wheel("20 N", "clutch set to 6.1 N m")), "check .: the clutch in Hand wheel 400 mm and the force at its rim are different torques; 6 N m; 20 N at the rim is 4 N m"},
		{"ways", say(ways([]plan.Trap{{TurnDeg: 90}}), ways([]plan.Trap{{TurnDeg: 90, Instead: "pin"}}), ways([]plan.Trap{{Face: "back", OtherWay: true}}), ways([]plan.Trap{{OtherWay: true}}), ways([]plan.Trap{{OtherWay: true, TurnDeg: 90}}), ways(make([]plan.Trap, 2))),
			"one wrong way: turned by 90°, one wrong way: with pin instead, one wrong way: on its back, one wrong way: the other way round, one wrong way: the other way round at 90°, 2 wrong ways, such as turned by 0°"},
		// 10 round 100 are 11.46°, 2 are 2.29°.
		{"where a screw lands", say(fmt.Sprint(lands(11.4, 50, false, 0), lands(11.5, 50, false, 0), lands(348.6, 50, false, 0), lands(11.5, 50, false, 0.1), lands(0, 64.9, false, 0), lands(0, 65, false, 0), lands(0, 35.1, false, 0), lands(0, 90, true, 0))), "true false true true true false true true"},
		{"where no key comes to it", say(fmt.Sprint(shut(2.2, 50), shut(2.4, 50), shut(0, 56.9), shut(0, 57), shut(0, 0), shut(0, 100), shut(90, 0.1), shut(90, 99.9))), "false true false true false false true true"},
		{"screws of a motor", say(fmt.Sprint(screw(8, parts.PlainHole, "", false), screw(7.9, parts.PlainHole, "", false), screw(10.4, parts.PlainHole, "", false), screw(10.5, parts.PlainHole, "", false), screw(0, parts.ClearanceHole, "M8", false), screw(0, parts.ClearanceHole, "M10", false), screw(0, parts.TappedHole, "M8", false), screw(0, parts.TappedHole, "M8", true))),
			"false true false true false true false true"},
		{"the cure for an undercut too wide", reliefCure(""), "a narrower or shallower undercut, such as DIN 509 F"}, {"for one of the standard", reliefCure("DIN 509-F 1.2x0.4"), "a narrower or shallower undercut, of a smaller row of DIN 509, or a longer seat"},
		{"a fitted end at the face of a joint", spigot("head"), "true"}, {"what slides on it is what it is fitted for", spigot("body"), "false"},
		{"middles", say(fmt.Sprint(slices.Collect(middles(1, 2.5, 0.5))), fmt.Sprint(slices.Collect(middles(0, 1.2, 0.5)))), "[1.25 1.75 2.25], [0.25 0.75]"},
	} {
		p := &parts.Part{Name: text("p"), Title: text("P"), Quantity: 1}
		r := &reviewer{job: &parts.Job{Parts: []*parts.Part{p}, Tolerance: text("m")}, pl: &plan.Plan{}, views: map[string]*view{}, machine: func() *machine.Machine { return &machine.Machine{Stand: &stand.Stand{}} }}
		v := &view{reviewer: r, p: p, q: &plan.PartPlan{Section: &plan.Section{}}, lengthMm: 100}
		r.views["p"] = v
		c.rule(v)
		if got := strings.Join(told(r.found), "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// cyl is a step as the rules see it, from one place of the axis to another; its diameter is that drawn too, unless
// another is.
func cyl(name string, fromMm, toMm, diameterMm float64, drawn parts.Step) *cylinder {
	drawn.Name.Value, drawn.Size.Nominal.Mm = name, cmp.Or(drawn.Size.Nominal.Mm, diameterMm)
	return &cylinder{Step: &part.Step{Drawn: &drawn, Name: name, Seat: drawn.Seat.Value, FromMm: fromMm, ToMm: toMm, Size: part.Sized{NominalMm: diameterMm}}}
}

// sideBy are steps of one side beside one another.
func sideBy(inside bool, all ...*cylinder) []*cylinder {
	return inRow(seq.Map(all, func(c *cylinder) *part.Step { c.Inside = inside; return c.Step })...)
}
