package review

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// told is each finding with its place, its numbers and the one to accept.
func told(found []Finding) (said []string) {
	for _, f := range found {
		s := f.What
		if f.Severity != "" {
			s = fmt.Sprintf("%s %s.%s: %s; %s", f.Severity, f.Part, f.Feature, f.What, f.Numbers)
		}
		if f.measured() {
			s += fmt.Sprintf(" (%.4g)", f.number())
		}
		said = append(said, s)
	}
	return said
}

// along is the first copy of a part of a section whose front lies so far behind the origin of an axis, its title its name.
func along(name string, frontMm float64, s *plan.Section) stand.OnAxis {
	of := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Name: parts.Text{Value: name}, Quantity: 1}}}}, Out: &plan.PartPlan{Name: name, Title: name, Section: s}}
	points := func(line []plan.XY) []assembly.ZR {
		return seq.Map(line, func(q plan.XY) assembly.ZR { return assembly.ZR{Z: -q.XMm, R: q.YMm} })
	}
	b := &assembly.Body{ID: parts.Instance{Part: name, Copy: 1}.ID(), Pose: assembly.Move(assembly.Vec{Z: -frontMm}), Solid: assembly.Of(assembly.Turned(points(s.Outer), points(s.Inner)))}
	return stand.On(assembly.Still, b, of)
}

// stood is a machine of some parts that stand so.
func stood(all ...stand.OnAxis) func() *machine.Machine {
	m := stand.Of(&parts.Job{}, seq.Map(all, func(p stand.OnAxis) *part.Model { return p.Of }), nil)
	for _, p := range all {
		m.Of[p.ID] = parts.Instance{Part: p.Of.Out.Name, Copy: 1}
		m.Bodies = append(m.Bodies, *p.Body)
	}
	return func() *machine.Machine { return &machine.Machine{Stand: m} }
}

// TestStandingBounds: what stands in and beside one another, at the bounds of the rules and a
// hair beyond, by hand; the bounds are the rules' own, common practice, no source. Each part
// is a ring along one axis.
func TestStandingBounds(t *testing.T) {
	t.Parallel()
	text := func(s string) parts.Text { return parts.Text{Value: s} }
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	ring := func(name string, from, to, inner, outer float64) stand.OnAxis { // diameters
		line := func(d float64) []plan.XY { return []plan.XY{{YMm: d / 2}, {XMm: to - from, YMm: d / 2}} }
		return along(name, from, &plan.Section{LengthMm: to - from, Inner: line(inner), Outer: line(outer)})
	}
	turned := func(p stand.OnAxis) stand.OnAxis { // the same place, its front at the back
		p.Pose = p.Pose.Of(assembly.Move(assembly.Vec{Z: -p.Of.Out.Section.LengthMm})).Of(assembly.Rotate(assembly.AxisY, 180))
		return stand.On(assembly.Still, p.Body, p.Of)
	}
	step := func(name string, from, to, diameter float64) *cylinder {
		return cyl(name, from, to, diameter, parts.Step{Seat: text("seal")})
	}
	job := func() *reviewer {
		return &reviewer{job: &parts.Job{Parts: []*parts.Part{{Name: text("cover"), Title: text("Cover")}}, Joints: []*parts.Joint{{Name: text("rear"), Kind: parts.BearingKind, Bearing: &parts.BearingJoint{}}}}, pl: &plan.Plan{}, views: map[string]*view{}}
	}
	viewOf := func(r *reviewer) *view { return &view{reviewer: r, p: r.job.Parts[0], q: &plan.PartPlan{}} }
	type rule = func(r *reviewer)
	standing := func(r *reviewer, me stand.OnAxis, others ...stand.OnAxis) standingIn {
		r.machine = stood(append(others, me)...)
		return standingIn{me, viewOf(r), others}
	}
	reaches := func(long, bore float64) rule { // a spigot of 80, 5 long, in a register so deep
		return func(r *reviewer) {
			me := standing(r, ring("cover", 0, 20, 0, 80), ring("housing", -20, long, bore, 120))
			r.centres(me.v, step("spigot", 0, 5, 80), me.Body, false)
		}
	}
	enters := func(from, to, outer float64, others ...stand.OnAxis) rule { // a bore of 50, 40 long
		return func(r *reviewer) {
			me := standing(r, ring("hub", 0, 40, 50, 90), append(others, ring("shaft", from, to, 0, outer))...)
			r.found = append(r.found, Finding{What: string(r.entersFrom(me, step("bore", 0, 40, 50)))})
		}
	}
	cone := func(lo, hi, dir, wide float64) rule { // a seat from 100 to 120, the bearing 20 wide
		return func(r *reviewer) {
			r.coneSeat(&plan.JointPlan{Name: "rear", A: plan.JointEnd{Part: "shaft", Copy: 1, Feature: "seat", FromMm: lo, ToMm: hi},
				Bearing: &plan.BearingPlan{Bearing: "32208", WidthMm: 20, ConeWidthMm: wide, LargeEndMm: 120, LargeEndDir: dir}}, stand.Line{ring("shaft", 0, 200, 0, 40)})
		}
	}
	covers := func(cup float64, all ...stand.OnAxis) rule { // a bearing of 80 in a seat from 100 to 130
		return func(r *reviewer) {
			all = append(all, ring("shaft", 0, 300, 0, 40), ring("housing", 0, 130, 80, 120))
			r.machine = stood(all...)
			r.openCover(&plan.JointPlan{A: plan.JointEnd{Part: "shaft", Copy: 1}, B: plan.JointEnd{Part: "housing", Copy: 1, FromMm: 100, ToMm: 130},
				Bearing: &plan.BearingPlan{Bearing: "32208", OutsideMm: 80, CupBackMm: cup}}, all)
		}
	}
	faces := func(face parts.Face, other stand.OnAxis) rule { // a groove of 60 to 70 in an end face
		return func(r *reviewer) {
			g := plan.GrooveRow{Name: "o", Face: face, FromMm: 0, ToMm: 40, InnerMm: 60, OuterMm: 70}
			r.facesRing(standing(r, ring("cover", 0, 40, 0, 90), other), g)
		}
	}
	beside := func(offMm float64) rule { // that groove before a disc of 200 whose axis lies so far from its own
		return func(r *reviewer) {
			disc := ring("disc", -20, 0, 0, 200)
			disc.Pose.At.X = offMm
			me := standing(r, ring("cover", 0, 40, 0, 90), disc)
			me.along = nil
			r.facesRing(me, plan.GrooveRow{Name: "o", Face: parts.Front, ToMm: 2, InnerMm: 60, OuterMm: 70})
		}
	}
	lip := func(outer, from float64) rule { // a seal of 60 outside for 40
		return func(r *reviewer) {
			me := standing(r, ring("cover", 0, 20, 60, 90), ring("shaft", from, 300, 0, outer))
			me.v.inside = sideBy(true, step("seat", 0, 10, 60))
			r.views = map[string]*view{"shaft": {reviewer: r}} // of no steps: what it says of its seats is asked in testdata/seal-of.unsaid
			r.lipOn(me, plan.SealMark{FromMm: 2, ToMm: 10, OuterMm: 60, InnerMm: 40})
		}
	}
	deep := func(a, b stand.OnAxis) rule {
		return func(r *reviewer) {
			r.machine = stood(a)
			for p, mm := range r.lyingIn(b.Body) {
				r.found = append(r.found, Finding{What: p.ID + " " + number(mm)})
			}
		}
	}
	stands := func(a, b roundEnd) rule {
		return func(r *reviewer) { r.standsOn(&plan.JointPlan{Name: "seam", Title: "Seam"}, a, b, 0) }
	}
	slips := func(small, overlap, bore float64) rule { // a cone of 2 of sheet, measured inside, in a bore
		return func(r *reviewer) {
			plate := &parts.Part{Name: text("plate"), Outline: &parts.Outline{}, Bore: &parts.Bore{Size: parts.Size{Nominal: mm(bore)}}}
			r.views["plate"], r.views["cone"] = &view{reviewer: r, p: plate, inside: sideBy(true, cyl("bore", 0, 10, bore, parts.Step{}))}, &view{reviewer: r}
			r.job.Parts = append(r.job.Parts, plate, &parts.Part{Name: text("cone"), Kind: parts.Cone, Frustum: &parts.Frustum{Small: mm(small), Formed: parts.Formed{Thickness: mm(2), Inside: true, Overlap: parts.Length{Mm: overlap}}}})
			r.job.Joints = []*parts.Joint{{Name: text("seam"), Weld: &parts.WeldJoint{Part: parts.JointRef{Part: "plate", Feature: "bore"}, To: parts.JointRef{Part: "cone", Feature: "small-end"}}}}
			r.slips(&plan.JointPlan{Name: "seam", Title: "Seam"})
		}
	}
	bearing := func(name string, bore, outside, width, cone float64) rule {
		return func(r *reviewer) {
			b := &parts.BearingJoint{Bearing: text(name), Bore: mm(bore), Outside: mm(outside), Width: mm(width)}
			if cone > 0 {
				b.ConeWidth = mm(cone)
			}
			r.bearingSizes(&parts.Joint{Name: text("rear"), Bearing: b})
		}
	}
	pushed := func(um float64, adjusted bool) rule { // on 40
		return func(r *reviewer) {
			r.pushed(&plan.JointPlan{Name: "rear", A: plan.JointEnd{Feature: "seat"}, Bearing: &plan.BearingPlan{Bearing: "32208", BoreMm: 40, Adjusted: adjusted, ConeFitUm: plan.Range{Min: 1, Max: um}}})
		}
	}
	loose := func(cone, cup plan.Range, rotating string, adjusted bool, others ...*plan.JointPlan) rule {
		return func(r *reviewer) {
			r.job.Units = parts.Inches
			r.w.Units = parts.Inches
			j := &plan.JointPlan{Name: "rear", A: plan.JointEnd{Feature: "seat"}, B: plan.JointEnd{Part: "housing", Feature: "cup"}, Bearing: &plan.BearingPlan{Bearing: "32208", Rotating: rotating, Adjusted: adjusted, ConeFitUm: cone, CupFitUm: cup}}
			r.pl.Joints = append(others, j)
			r.looseRing(j)
		}
	}
	other := func(min float64, adjusted bool) *plan.JointPlan {
		return &plan.JointPlan{Name: "front", Kind: "bearing", B: plan.JointEnd{Part: "housing"}, Bearing: &plan.BearingPlan{Bearing: "32208", Adjusted: adjusted, CupFitUm: plan.Range{Min: min, Max: 50}}}
	}
	tight, slack, level := plan.Range{Min: 5, Max: 50}, plan.Range{Min: -50.8, Max: -25.4}, plan.Range{Min: -25.4}
	lone := func(bore, shaft float64, fit string) rule {
		return func(r *reviewer) {
			r.job.Parts = append(r.job.Parts, &parts.Part{Name: text("pin"), Title: text("Pin")})
			r.job.Parts[1].Profile = &parts.Profile{}
			r.views["cover"], r.views["pin"] = viewOf(r), &view{reviewer: r, p: r.job.Parts[1]}
			r.views["cover"].inside = sideBy(true, cyl("bore", 0, 0, bore, parts.Step{Size: parts.Size{Fit: parts.Fit{Class: text(fit)}}}))
			r.views["pin"].outside = sideBy(false, step("end", 0, 10, shaft))
			r.views["pin"].outside[0].Drawn.Size.Fit.Pos.Line = 1
			r.views["cover"].loneBore()
		}
	}
	for _, c := range []struct {
		name string
		rule rule
		want string // places, what, numbers and the number to accept; "" where the rule is content
	}{
		{"a spigot 1.5 in", reaches(1.5, 80), ""}, {"1.4 in", reaches(1.4, 80), "check cover.spigot: spigot reaches into no register of its size; 1.4 mm of 5 mm at 80 mm, wanted 1.5 mm (1.4)"}, {"as long as it is", reaches(5, 80), ""},
		{"in a register 1.5 % wider", reaches(5, 81.19), ""}, {"just wider", reaches(5, 81.2), "check cover.spigot: spigot reaches into no register of its size; 0 mm of 5 mm at 80 mm, wanted 1.5 mm (0)"}, {"one 0.4 narrower", reaches(5, 79.61), ""}, {"just narrower", reaches(5, 79.6), "check cover.spigot: spigot reaches into no register of its size; 0 mm of 5 mm at 80 mm, wanted 1.5 mm (0)"},
		{"enters by the front", enters(-20, 0.8, 49.9), "front"}, {"hardly", enters(-20, 0.7, 49.9), ""}, {"by the back", enters(39, 60, 50), "back"}, {"0.3 a side smaller", enters(-20, 5, 49.41), "front"}, {"far smaller", enters(-20, 5, 49.4), ""}, {"larger", enters(-20, 5, 50.1), ""},
		{"by either end", enters(-20, 5, 50, ring("plug", 35, 60, 0, 50)), ""}, {"two by one end", enters(-20, 5, 50, ring("sleeve", -20, 10, 0, 50)), "front"}, {"through, its middle behind", enters(-10, 51, 50), "back"}, {"its middle before", enters(-11, 50, 50), "front"},
		{"three quarters of a cone of 20 on its seat", cone(105, 130, 1, 20), ""}, {"less", cone(105.1, 130, 1, 20), "stop rear.: the cone of 32208 stands beside its seat seat; 14.9 mm of 20 mm sit on it"}, {"the large end the other way", cone(100, 135, -1, 20), ""}, {"less there", cone(100, 134.9, -1, 20), "stop rear.: the cone of 32208 stands beside its seat seat; 14.9 mm of 20 mm sit on it"}, {"0.8 of the bearing", cone(108, 130, 1, 0), ""}, {"less of it", cone(108.1, 130, 1, 0), "stop rear.: the cone of 32208 stands beside its seat seat; 11.9 mm of 16 mm sit on it"}, {"beside it", cone(130, 140, 1, 20), "stop rear.: the cone of 32208 stands beside its seat seat; 0 mm of 20 mm sit on it"},
		{"a cover of 80 is open", covers(100, ring("cover", 130, 140, 80, 120)), "check cover.: cover leaves the bearing 32208 open; its bore is 80 mm, the bearing 80 mm outside (0)"}, {"of 79.9 is none", covers(100, ring("cover", 130, 140, 79.9, 120)), ""}, {"of 92 is open", covers(100, ring("cover", 130, 140, 91.9, 120)), "check cover.: cover leaves the bearing 32208 open; its bore is 91.9 mm, the bearing 80 mm outside (-11.9)"}, {"wider is no cover", covers(100, ring("cover", 130, 140, 92.1, 120)), ""},
		{"a cover 5 off", covers(100, ring("cover", 135, 145, 85, 120)), "check cover.: cover leaves the bearing 32208 open; its bore is 85 mm, the bearing 80 mm outside (-5)"}, {"farther off is none", covers(100, ring("cover", 135.1, 145, 85, 120)), ""}, {"the back of the cup at 130", covers(130, ring("cover", 90, 100, 85, 120)), "check cover.: cover leaves the bearing 32208 open; its bore is 85 mm, the bearing 80 mm outside (-5)"}, {"and a cover at the other end", covers(130, ring("cover", 130, 140, 85, 120)), ""}, {"another covers", covers(100, ring("cover", 130, 140, 85, 120), ring("plate", 132, 140, 60, 120)), ""}, {"over the housing", covers(100, turned(ring("cover", 120, 140, 85, 120))), "check cover.: cover leaves the bearing 32208 open; its bore is 85 mm, the bearing 80 mm outside (-5)"}, {"inside of it", covers(100, ring("cover", 110, 130, 85, 120)), ""},
		{"an O-ring half covered: 62.5 to 67.5", faces(parts.Front, ring("p", -20, 0, 62.5, 67.5)), ""}, {"less inside", faces(parts.Front, ring("p", -20, 0, 62.6, 90)), "stop cover.o: the O-ring of o lies where no face of p stands against it; 60 mm to 70 mm; the face is from 62.6 mm to 90 mm"}, {"less outside", faces(parts.Front, ring("p", -20, 0, 0, 67.4)), "stop cover.o: the O-ring of o lies where no face of p stands against it; 60 mm to 70 mm; the face is from 0 mm to 67.4 mm"}, {"at the back", faces(parts.Back, ring("p", 40, 60, 62.5, 67.5)), ""}, {"less there", faces(parts.Back, ring("p", 40, 60, 62.5, 67.4)), "stop cover.o: the O-ring of o lies where no face of p stands against it; 60 mm to 70 mm; the face is from 62.5 mm to 67.4 mm"}, {"nothing there", faces(parts.Back, ring("p", -20, 0, 0, 10)), ""},
		{"an O-ring of 65 before a disc of 200, 67.4 beside", beside(67.4), ""}, {"67.6 beside, on 69 of 72 rays", beside(67.6), "stop cover.o: the O-ring of o lies where no face of disc stands against it; 60 mm to 70 mm; 96 % of it lies on one"}, {"70 beside, on 61 of 72 rays", beside(70), "stop cover.o: the O-ring of o lies where no face of disc stands against it; 60 mm to 70 mm; 85 % of it lies on one"}, {"far beside", beside(140), ""},
		{"a lip on 40", lip(40, 0), ""}, {"on 40.1", lip(40.1, 0), "stop cover.seat: the seal of seat is not one for shaft; seal on 40.1 mm"}, {"on 39.9", lip(39.9, 0), "stop cover.seat: the seal of seat is not one for shaft; seal on 39.9 mm"}, {"as large as the seal", lip(60, 0), "stop cover.seat: the seal of seat is not one for shaft; seal on 60 mm"}, {"larger is no shaft", lip(60.1, 0), ""}, {"beyond it", lip(39, 6.1), ""},
		{"an overlap of 1 on radius", deep(ring("a", 0, 20, 30, 50), ring("b", 19, 40, 48, 60)), "a#1 1"}, {"too short to count", deep(ring("a", 0, 20, 30, 50), ring("b", 19.8, 40, 48, 60)), ""}, {"long enough", deep(ring("a", 0, 20, 30, 50), ring("b", 19.75, 40, 48, 60)), "a#1 0.25"}, {"one in the bore of the other", deep(ring("a", 0, 20, 30, 50), ring("b", 5, 15, 10, 30)), ""}, {"behind one another", deep(ring("a", 0, 20, 30, 50), ring("b", 20, 40, 30, 50)), ""},
		{"metal on 0.1 of metal", stands(roundEnd{50.1, 47, 0}, roundEnd{60, 50, 0}), ""}, {"on none", stands(roundEnd{50, 47, 0}, roundEnd{60, 50, 0}), "check seam.: Seam: the one stands in the opening of the other and on nothing; outside 50 mm, inside 50 mm (0)"}, {"a ledge of 3", stands(roundEnd{60, 47, 0}, roundEnd{64, 50, 0}), ""}, {"of a thicker wall", stands(roundEnd{60, 46.9, 0}, roundEnd{63, 50, 0}), ""}, {"of 3.1", stands(roundEnd{60, 46.9, 0}, roundEnd{63.1, 50, 0}), "check seam.: Seam: the insides leave a ledge; inside 46.9 mm on 50 mm (3.1)"}, {"on no bore", stands(roundEnd{60, 0, 0}, roundEnd{60, 50, 0}), ""},
		{"slips in level", slips(50, 0, 54), ""}, {"does not", slips(50, 0, 53.9), "stop seam.: Seam: neither goes into the other; outside 54 mm, inside 53.9 mm (-0.1)"}, {"4 of play", slips(50, 0, 58), ""}, {"4.1 of play", slips(50, 0, 58.1), "check seam.: Seam: too much play to weld; outside 54 mm, inside 58.1 mm (4.1)"}, {"2 a side for a lap of 2", slips(50, 12, 58), ""}, {"less", slips(50, 12, 57.9), "check seam.: Seam: the lapped seam does not go in; 1.95 mm of play on one side, the lap stands out 2 mm (1.95)"},
		{"32208 of its bore", bearing("32208", 40, 80, 24.75, 0), ""}, {"of another", bearing("32208", 40.1, 80, 24.75, 0), "stop rear.: 32208 has another bore than the joint gives; 40 mm, given 40.1 mm"}, {"30208 of its sizes", bearing("30208", 40, 80, 19.75, 0), ""}, {"of others", bearing("30208", 40, 80, 19.7, 0), "stop rear.: 30208 has other sizes than the joint gives; 80 mm × 19.75 mm, given 80 mm × 19.7 mm"}, {"a cone that stands out of its cup", bearing("LM11949", 19.05, 45.237, 15.494, 16.637), ""}, {"as much wider as any", bearing("LM1", 40, 80, 24, 27.6), ""}, {"wider", bearing("LM1", 40, 80, 24, 27.7), "stop rear.: the cone of LM1 is far wider than the bearing; 27.7 mm of 24 mm, wanted at most 27.6 mm"}, {"three quarters", bearing("LM1", 40, 80, 24, 18), ""}, {"less", bearing("LM1", 40, 80, 24, 17.9), "stop rear.: the cone of LM1 is far narrower than the bearing; 17.9 mm of 24 mm, wanted at least 18 mm"},
		{"a cone pushed", pushed(1000*pushedShare*40, true), ""}, {"too tight", pushed(1000*pushedShare*40+1, true), "check rear.: the cone that the nut of 32208 sets sits too tight on seat; 0.041 mm of interference at the most, wanted 0.04 mm (0.041)"}, {"not set", pushed(100, false), ""},
		{"a loose cone that turns", loose(slack, tight, "inner", false), "check rear.seat: a ring of 32208 is loose on seat: it turns with the load; 0.001 in to 0.002 in of play (0.0508)"}, {"level at the most", loose(level, tight, "inner", false), "check rear.seat: a ring of 32208 may be loose on seat: it turns with the load; 0.001 in of play to 0 in of tightness (0.0254)"}, {"a cup that turns", loose(slack, slack, "outer", false), "check rear.cup: a ring of 32208 is loose on cup: it turns with the load; 0.001 in to 0.002 in of play (0.0508)"}, {"a cone that is set", loose(slack, tight, "inner", true), ""}, {"a cup, loose as the other is", loose(slack, slack, "inner", true, other(-1, false)), ""}, {"a cup, the other tight", loose(slack, slack, "inner", true, other(1, false)), "check rear.cup: a ring of 32208 is loose on cup: the other, of front, is tight; 0.001 in to 0.002 in of play (0.0508)"}, {"level with it", loose(slack, slack, "inner", true, other(0, false)), ""}, {"set by the other", loose(tight, slack, "inner", false, other(1, true)), "check rear.cup: a ring of 32208 is loose on cup: the other, of front, is tight; 0.001 in to 0.002 in of play (0.0508)"}, {"set by none", loose(tight, slack, "inner", false, other(1, false)), ""}, {"a cup that is level", loose(tight, level, "inner", true, other(1, false)), ""},
		{"a bore on its shaft", lone(40, 40, "F8"), ""}, {"on a smaller", lone(40, 39.9, "F8"), "check cover.bore: the bore of Cover is a running fit on no shaft of the job; 40 mm F8; end of Pin is 39.9 mm (0.1)"}, {"on one 15 % smaller", lone(40, 34, "F8"), "check cover.bore: the bore of Cover is a running fit on no shaft of the job; 40 mm F8; end of Pin is 34 mm (6)"}, {"on none near", lone(40, 33.9, "F8"), ""}, {"no running fit", lone(40, 39.9, "H7"), ""}, {"no class", lone(40, 39.9, ""), ""},
	} {
		r := job()
		c.rule(r)
		if got := strings.Join(told(r.found), "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
