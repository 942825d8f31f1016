package review

import (
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestTorch: a torch of 20 wide, at 30° to 60° from a corner at radius 30, has 20 of bare
// wire and 150 of way. At 45° it is s/√2 along and s/√2 out, at s from the corner.
func TestTorch(t *testing.T) {
	t.Parallel()
	block := func(z0, z1, r0, r1 float64) []metal {
		return []metal{{"Block", []plan.XY{{XMm: z0, YMm: r0}, {XMm: z1, YMm: r0}, {XMm: z1, YMm: r1}, {XMm: z0, YMm: r1}}}}
	}
	for _, c := range []struct {
		name   string
		stands []metal
		want   float64 // 0 where the way is free
	}{
		{"a wall 10 before the end of its way: 150/√2 and 10 are 116.07", block(116, 120, 0, 300), 150}, {"behind it", block(116.1, 120, 0, 300), 0},
		{"9.14 along and 3.14 beside the nozzle where it begins", block(0, 5, 40, 41), 20}, {"9.14 and 5.14", block(0, 5, 38, 39), 0},
		{"on the wire", block(4.2, 4.3, 33, 35), 6}, {"on the other side", block(0, 200, 0, 15), 0},
	} {
		p, s := weldEnd{r: 30, dir: 1}.hits(c.stands, 1, 45)
		if p == nil {
			s = 0
		}
		if s != c.want {
			t.Errorf("%s: %v, want %v", c.name, s, c.want)
		}
	}
	mm := (&reviewer{job: &parts.Job{}}).mm
	for _, c := range []struct {
		name   string
		end    weldEnd
		stands []metal
		want   string
	}{
		{"past a disc 60 off, at 60° alone", weldEnd{r: 30, dir: 1, sides: []float64{1}}, block(60, 61, 0, 112), ""}, {"not past a larger one", weldEnd{r: 30, dir: 1, sides: []float64{1}}, block(60, 61, 0, 118), "Block in the way 101 mm from the weld"},
		{"out of a tube of 60 inside, at 30° alone", weldEnd{r: 30, dir: 1, sides: []float64{1}}, block(-50, 30, 60, 65), ""}, {"not out of a longer one", weldEnd{r: 30, dir: 1, sides: []float64{1}}, block(-50, 32, 60, 65), "Block in the way 43 mm from the weld"},
		{"deeper than a bore of 60 is wide", weldEnd{r: 30, dir: 1, depthMm: 61, sides: []float64{1}}, nil, ""}, {"than a narrower one", weldEnd{r: 29.9, dir: 1, depthMm: 61, sides: []float64{1}}, nil, "61 mm deep in a bore of 59.8 mm"}, {"as deep as it is wide", weldEnd{r: 29.9, dir: 1, depthMm: 59.8, sides: []float64{1}}, nil, ""},
	} {
		if got, _ := c.end.blocked(c.stands, mm); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestShares: rules of one part at their bound, where they are content, and beyond it, where
// they say so with these figures, by hand; the bounds are the rules' own, common practice, no
// source, where none is named.
func TestShares(t *testing.T) {
	t.Parallel()
	text := func(s string) parts.Text { return parts.Text{Value: s} }
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	size := func(v float64) parts.Size { return parts.Size{Nominal: mm(v)} }
	job := func() *view {
		p := &parts.Part{Name: text("p"), Title: text("P"), Quantity: 1}
		r := &reviewer{job: &parts.Job{Parts: []*parts.Part{p}}, pl: &plan.Plan{}, views: map[string]*view{}, machine: func() *machine.Machine { return &machine.Machine{Stand: &stand.Stand{}} }}
		v := &view{reviewer: r, p: p, q: &plan.PartPlan{}, lengthMm: 100}
		r.views["p"] = v
		return v
	}
	beside := func(v *view, name string) *view { // another part of the job
		o := &view{reviewer: v.reviewer, p: &parts.Part{Name: text(name), Title: text(strings.ToUpper(name[:1]) + name[1:]), Quantity: 1}, q: &plan.PartPlan{}, lengthMm: 100}
		v.views[name], v.job.Parts = o, append(v.job.Parts, o.p)
		return o
	}
	step := func(seat string, from, to, d float64) *cylinder {
		return cyl("s", from, to, d, parts.Step{Seat: text(seat)})
	}
	type rule = func(v *view)
	shoulder := func(seat string, high float64) rule {
		return func(v *view) {
			v.outside = sideBy(false, step(seat, 0, 30, 40), cyl("collar", 30, 50, 40+2*high, parts.Step{}))
			each(everyStep, (*view).contact)(v)
		}
	}
	key := func(long, nm float64, rounds int) rule { // 10 × 8 on 40
		return func(v *view) {
			if nm > 0 {
				v.job.Motor = &parts.Motor{Notes: []parts.Text{text("limiter set to " + number(nm) + " N m")}}
			}
			v.keyLength(plan.KeywayRow{Name: "k", FromMm: 5, ToMm: 5 + long, WidthMm: 10, HeightMm: 8, DiameterMm: 40, RoundEnds: rounds})
		}
	}
	twisted := func(nm, open float64) rule { // S235 yields at 225 over 16: EN 10025-2 Table 7
		return func(v *view) {
			v.p.Material = text("S235JR")
			if open > 0 {
				v.inside = sideBy(true, step("", 0, 30, open))
			}
			v.twist(step("", 0, 30, 20), nm)
		}
	}
	nut := func(long float64, metal, screw string) rule {
		return func(v *view) {
			o := beside(v, "screw")
			v.p.Material, o.p.Material = text(metal), text(screw)
			th, _ := threads.Parse("M8")
			nut, on := step("", 0, long, 8), step("", 0, long, 8)
			nut.Size.Thread, on.Size.Thread = &th, &th
			v.nutOn(o, nut, on)
		}
	}
	ring := func(least, most, gap float64, inside bool) rule {
		return func(v *view) {
			v.outside, v.inside = sideBy(false, step("", 0, 30, 40)), sideBy(true, step("", 0, 30, 40))
			g := plan.GrooveRow{Name: "o", In: "s", DiameterMm: 40, AgainstMm: 40 + gap, Inside: inside, ORing: &plan.ORingFit{SqueezeMin: least, SqueezeMax: most}}
			if inside {
				g.AgainstMm = 40 - gap
			}
			v.oring(g)
		}
	}
	leadIn := func(deg, long, bore float64) rule { // into a housing that the seat names
		return func(v *view) {
			o := beside(v, "housing")
			o.inside = sideBy(true, cyl("bore", 0, 0, bore, parts.Step{}))
			o.p.Chamfers = []parts.Chamfer{{Edge: text("bore-front"), Size: mm(long), Angle: parts.Angle{Deg: deg}}}
			v.outside = sideBy(false, step("housing", 0, 30, 40))
			v.oring(plan.GrooveRow{Name: "o", In: "s", DiameterMm: 40, AgainstMm: 40, LeadInMm: 3, ORing: &plan.ORingFit{SqueezeMin: 0.1, SqueezeMax: 0.2}})
		}
	}
	slot := func(wide, deep float64) rule { return func(v *view) { v.slotReach("h", parts.Pos{}, wide, deep) } }
	half := func(around, along float64) rule { // under a branch of 20 inside: 0.4 of 314.16 are 125.66
		return func(v *view) {
			line := func(r float64) []plan.XY { return []plan.XY{{YMm: r}, {XMm: 100, YMm: r}} }
			v.pl.Parts = []*plan.PartPlan{{Name: "p", Section: &plan.Section{LengthMm: 100, MaxMm: 12, Outer: line(12), Inner: line(10)}}}
			main := beside(v, "main")
			main.q.Radials = []plan.RadialRow{{Name: "w", Shape: "window", AxialMm: 50, OutsideMm: 100, AroundMm: around, AlongMm: along}}
			v.narrowOpening(v.p, &parts.TubeEnd{Place: &parts.EndPlace{}}, main, 50)
		}
	}
	foot := func(thick float64, thread string, hole float64) rule {
		return func(v *view) {
			v.p.Kind, v.p.Bar = parts.BarPart, &parts.Bar{Width: mm(60), Depth: mm(thick)}
			v.anchorRoom(&parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("h")}, Size: parts.HoleSize{Thread: thread, Size: size(hole)}})
		}
	}
	hangs := func(across, x, y float64) rule { // a plate of 100 × 40, by two holes whose middle lies there
		return func(v *view) {
			v.p.Bore, v.outline = &parts.Bore{}, []plan.XY{{XMm: -50, YMm: -20}, {XMm: 50, YMm: -20}, {XMm: 50, YMm: 20}}
			g := &parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("lifting"), For: parts.Lifting}}
			for _, at := range []plan.XY{{XMm: x - 30, YMm: y}, {XMm: x + 30, YMm: y}} {
				v.holes = append(v.holes, hole{group: g, name: "lifting", a: at, b: at, radiusMm: across / 2})
			}
			v.saidUse(g)
		}
	}
	finish := func(seat, ra string, inside bool) rule {
		return func(v *view) {
			c := step(seat, 0, 30, 40)
			c.Drawn.Finish, c.Inside = text("Ra "+ra), inside
			v.rough(c)
		}
	}
	limits := func(lo, hi float64) rule { // of 40
		return func(v *view) {
			c := step("", 0, 30, 40)
			c.Drawn.Size.Fit.Limits = []parts.Length{mm(lo), mm(hi)}
			v.limitsOff(c)
		}
	}
	flight := func(long, pitch float64) rule { // of 120 outside
		return func(v *view) {
			v.p.Kind, v.p.Flight = parts.FlightPart, &parts.Flight{Outside: mm(120), Pitch: mm(pitch), Length: mm(long)}
			sense(v)
		}
	}
	rises := func(high, offset, lap float64) rule { // from 100 to 60, of 2
		return func(v *view) {
			v.p.Kind, v.p.Frustum = parts.Cone, &parts.Frustum{Large: mm(100), Small: mm(60), Offset: mm(offset), Formed: parts.Formed{Height: mm(high), Thickness: mm(2), Overlap: mm(lap)}}
			sense(v)
		}
	}
	funnel := func(high float64) rule { // 60 by 80 to 40: its corners lie 50 off, 30 beyond the round
		return func(v *view) {
			v.p.Kind, v.p.Transition = parts.TransitionPiece, &parts.Transition{Width: mm(60), Depth: mm(80), Diameter: mm(40), Formed: parts.Formed{Height: mm(high)}}
			sense(v)
		}
	}
	behind := func(bore float64) rule { // a seal of 62 outside
		return func(v *view) {
			v.inside = sideBy(true, step("seal 40x62x8", 0, 8, 62), step("", 8, 30, bore))
			sense(v)
		}
	}
	welded := func(work func(v *view, w *parts.WeldJoint, j *plan.WeldPlan)) rule {
		return func(v *view) {
			beside(v, "other")
			in := &parts.Joint{Name: text("w"), Kind: parts.WeldKind, Weld: &parts.WeldJoint{Part: parts.JointRef{Part: "p", Feature: "seat"}, To: parts.JointRef{Part: "other"}}}
			j := &plan.JointPlan{Name: "w", Kind: "weld", Title: "W", Weld: &plan.WeldPlan{}}
			v.job.Joints, v.pl.Joints = []*parts.Joint{in}, []*plan.JointPlan{j}
			work(v, in.Weld, j.Weld)
			weldSense(v.reviewer)
		}
	}
	stick := func(thin float64) rule {
		return welded(func(_ *view, w *parts.WeldJoint, j *plan.WeldPlan) { w.Process, j.ThinnerMm = "MMA", thin })
	}
	leg := func(leg, thin float64) rule {
		return welded(func(_ *view, w *parts.WeldJoint, j *plan.WeldPlan) {
			w.Type, w.Size, j.ThinnerMm = "fillet", mm(leg), thin
		})
	}
	prepared := func(chamfer float64) rule { // of 10
		return welded(func(v *view, w *parts.WeldJoint, j *plan.WeldPlan) {
			w.Type, j.ThinnerMm = "bevel", 10
			v.p.Chamfers = []parts.Chamfer{{Edge: text("seat-front"), For: "weld", Size: mm(chamfer)}}
		})
	}
	seam := func(long float64, end parts.BarEnd) rule { // of a bar of 30 × 20: 100 round
		return welded(func(v *view, w *parts.WeldJoint, _ *plan.WeldPlan) {
			w.Part.Feature, w.Type, w.Length = string(parts.LeftEnd), "square", mm(long)
			v.p.Kind, v.p.Bar = parts.BarPart, &parts.Bar{Width: mm(30), Depth: mm(20), Left: end}
		})
	}
	corners := func(long float64, sides int) rule { // of 120 together
		return welded(func(_ *view, w *parts.WeldJoint, j *plan.WeldPlan) {
			w.Type, w.Length, w.Sides, j.CornerMm = "fillet", mm(long), sides, 120
		})
	}
	onRound := func(d float64) rule { // a bar of 20 × 20, square: r − √(r² − 100)
		return welded(func(v *view, w *parts.WeldJoint, _ *plan.WeldPlan) {
			w.Part.Feature, w.Type = string(parts.LeftEnd), "bevel"
			v.p.Kind, v.p.Bar = parts.BarPart, &parts.Bar{Width: mm(20), Depth: mm(20)}
			o := beside(v, "tube")
			o.p.Profile = &parts.Profile{}
			o.outside, w.To = sideBy(false, step("", 0, 100, d)), parts.JointRef{Part: "tube", Feature: "s"}
		})
	}
	root := func(gap float64) rule {
		return func(v *view) { v.rootGap(&parts.TubeEnd{Gap: mm(gap)}) }
	}
	presses := func(on float64) rule { // of 40
		return func(v *view) {
			v.shortPress(&plan.JointPlan{Name: "f", Title: "F", B: plan.JointEnd{FromMm: 10, ToMm: 50}, Press: &plan.PressPlan{LengthMm: on}})
		}
	}
	sheet := func(thick float64) rule {
		return func(v *view) { v.p.Stock = parts.Stock{Form: "plate", Size: mm(thick)}; v.thinPlate() }
	}
	register := func(off, wide, deep float64) rule { // of a spigot of 40 that is 5 in a plate, the hole so far off and from so deep
		return func(v *view) {
			disc := func(d float64) *plan.Section {
				return &plan.Section{LengthMm: 5, Outer: []plan.XY{{YMm: d / 2}, {XMm: 5, YMm: d / 2}}}
			}
			spigot := along("spigot", 0, disc(40))
			spigot.Of.Steps = []part.Step{{Size: part.Sized{NominalMm: 40}, ToMm: 5}}
			spigot.Pose.At = assembly.Vec{X: 30, Y: -20}
			v.reviewer.machine = stood(along("p", 0, disc(200)), spigot)
			v.holes = []hole{{name: "h", a: plan.XY{XMm: 30 + off, YMm: -20}, fromMm: deep, toMm: 10, group: &parts.HoleGroup{Size: parts.HoleSize{Make: parts.PlainHole, Size: parts.Size{Nominal: mm(wide), Fit: parts.Fit{Class: text("H8")}}}}}}
			if !v.takesSpigot("h") {
				v.add(Finding{Numbers: "none"})
			}
		}
	}
	meets := func(off float64) rule { // three M8 of 30 pitch through 9
		return func(v *view) {
			wall := beside(v, "wall")
			wall.outside, wall.inside = sideBy(false, step("", 0, 100, 120)), sideBy(true, step("", 0, 100, 100))
			for _, z := range []float64{10, 40, 70 + off} {
				wall.q.Radials = append(wall.q.Radials, plan.RadialRow{Name: "h", AxialMm: z, DiameterMm: 9})
			}
			g := &parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("row"), Through: true, Pattern: parts.Pattern{Shape: geom.Along{Count: 3, PitchMm: 30}}}}
			th, _ := threads.Parse("M8")
			v.boughtInto(&parts.Loose{How: text("through the wall")}, v, g, th, 30)
		}
	}
	clampOf := func(edit func(c *plan.ClampRow), slot float64, metal string) rule { // of M8, 10 of metal all round
		return func(v *view) {
			v.p.Material, v.p.Clamp = text(metal), &parts.Clamp{Slot: mm(slot)}
			v.q.Clamp = &plan.ClampRow{MajorMm: 8, AxialMm: 50, HeadMm: 13, InnerMm: 10, OuterMm: 10, GripMm: 10, HoldsMm: 20}
			edit(v.q.Clamp)
			v.clamped(v.q.Clamp)
		}
	}
	steel := func(edit func(c *plan.ClampRow)) rule { return clampOf(edit, 2, "S235JR") }
	keyed := func(from, to float64) rule { // on 40, behind a shoulder of 60
		return func(v *view) {
			v.outside = sideBy(false, step("", 0, 20, 60), step("", 20, 80, 40))
			v.outside[0].Name = "collar"
			v.keywayEnds(plan.KeywayRow{Name: "k", In: "s", FromMm: from, ToMm: to})
		}
	}
	useful := func(q parts.Requirement, d float64, edit rule) rule {
		return func(v *view) {
			v.q.Section = &plan.Section{MaxMm: d / 2}
			edit(v)
			most, _, _ := v.useful(q)
			v.add(Finding{Numbers: v.mm(most)})
		}
	}
	plain := func(*view) {}
	reaches := func(high float64) rule { // from a tube of 60 into a keyway 4 deep in 50
		return func(v *view) {
			v.p.Kind, v.p.For, v.p.Bar = parts.BarPart, parts.AKey, &parts.Bar{Width: mm(high), Depth: mm(8)}
			tube, shaft := beside(v, "tube"), beside(v, "shaft")
			tube.p.Kind, tube.inside = parts.Tube, sideBy(true, step("", 0, 100, 60))
			shaft.outside = sideBy(false, step("", 0, 100, 50))
			shaft.p.Radials = []parts.Radial{{Name: text("k"), Axial: mm(50), Shape: parts.RadialSlot, Around: mm(8), Along: mm(30), Depth: mm(4)}}
			v.keyReach(v, tube)
		}
	}
	nutOn := func(long float64, name string) rule { // M40x1.5: its nut is 9 high, ISO 2982-2
		return func(v *view) {
			v.p.Radials = []parts.Radial{{Name: text(name)}}
			c := step("", 0, long, 40)
			c.Drawn.Size.Thread = text("M40x1.5")
			v.outside = sideBy(false, c)
			th, _ := threads.Parse("M40x1.5")
			v.nutRoom(&plan.JointPlan{A: plan.JointEnd{Part: "p"}, Bearing: &plan.BearingPlan{HeldBy: "M40x1.5"}}, th)
		}
	}
	for _, c := range []struct {
		name string
		rule rule
		want string // figures; "" where the rule is content
	}{
		{"half a millimetre of shoulder, with 0.5 off its edge and off the other's", shoulder("hub", 1.5), ""}, {"less", shoulder("hub", 1.4), "1.4 mm high, less 0.5 mm off its edge and 0.5 mm for the edge of what sits there; wanted 0.5 mm"},
		{"the corner of a bearing takes 1", shoulder("bearing 6008", 2), ""}, {"less", shoulder("bearing 6008", 1.9), "1.9 mm high, less 0.5 mm off its edge and 1 mm for the edge of what sits there; wanted 0.5 mm"}, {"0.5 is a shoulder", shoulder("hub", 0.5), "0.5 mm high, less 0.5 mm off its edge and 0.5 mm for the edge of what sits there; wanted 0.5 mm"}, {"and less is none", shoulder("hub", 0.49), ""},
		{"a key of half the diameter between its ends", key(30, 0, 2), ""}, {"shorter", key(29.9, 0, 2), "19.9 mm between its round ends, wanted 20 mm"},
		{"2000 · 80 / 40 / (40 · 8 / 2) are 25", key(35, 80, 2), ""}, {"shorter", key(34.9, 80, 2), "24.9 mm between its round ends, wanted 25 mm"},
		{"a key with one round end", key(25, 0, 1), ""}, {"with square ends", key(20, 0, 0), ""}, {"shorter", key(24.9, 0, 1), "19.9 mm along its straight sides, wanted 20 mm"}, {"square", key(19.9, 0, 0), "19.9 mm along its straight sides, wanted 20 mm"},
		{"16 · 101.9 / (π · 20³) are 64.9 of 0.2885 · 225", twisted(101.9, 0), ""}, {"more", twisted(102, 0), "102 N m: 65 MPa of shear, wanted at most 65 MPa in S235JR, without its keyway"},
		{"with a bore of 10, 15/16 of it", twisted(95.5, 10), ""}, {"more", twisted(95.7, 10), "96 N m: 65 MPa of shear, wanted at most 65 MPa in S235JR, without its keyway"},
		{"a nut of two diameters travels", nut(16, "S235JR", "C45"), "16 mm of thread on M8"}, {"a shorter one holds", nut(15.9, "S235JR", "C45"), ""}, {"bronze on steel", nut(16, "CuSn12", "C45"), ""}, {"bronze on bronze", nut(16, "CuSn12", "CuSn12"), "16 mm of thread on M8"},
		{"squeezed by 8 to 35 %", ring(0.08, 0.35, 0, false), ""}, {"by less", ring(0.079, 0.35, 0, false), "7.9 % to 35 %, wanted 8 % to 35 %"}, {"by more", ring(0.08, 0.351, 0, false), "8 % to 35.1 %, wanted 8 % to 35 %"},
		{"a gap of 0.3", ring(0.1, 0.2, 0.3, false), ""}, {"of more", ring(0.1, 0.2, 0.31, false), "0.31 mm on diameter, wanted at most 0.3 mm"}, {"of less than none", ring(0.1, 0.2, -0.01, false), "39.99 mm and 40 mm"},
		{"inside, of 0.3", ring(0.1, 0.2, 0.3, true), ""}, {"of more", ring(0.1, 0.2, 0.31, true), "0.31 mm on diameter, wanted at most 0.3 mm"}, {"of less than none", ring(0.1, 0.2, -0.01, true), "40.01 mm and 40 mm"},
		{"a lead-in of 3 at 10°", leadIn(10, 3, 40), ""}, {"flatter", leadIn(9.9, 3, 40), "wanted 3 mm at 15° on bore-front or bore-back"}, {"at 20°", leadIn(20, 3, 40), ""}, {"steeper", leadIn(20.1, 3, 40), "wanted 3 mm at 15° on bore-front or bore-back"}, {"shorter", leadIn(15, 2.9, 40), "wanted 3 mm at 15° on bore-front or bore-back"},
		{"into a bore 0.4 larger", leadIn(15, 2.9, 40.4), "wanted 3 mm at 15° on bore-front or bore-back"}, {"into another", leadIn(15, 2.9, 40.5), ""},
		{"a slot of 5", slot(5, 30), ""}, {"narrower and four times as deep", slot(4.9, 19.6), ""}, {"and deeper", slot(4.9, 19.7), "4.9 mm wide and 19.7 mm deep, wanted at most 19.6 mm"},
		{"0.4 of a bore of 20 open", half(12.6, 10), ""}, {"less", half(12.5, 10), "12.5 mm by 10 mm under a bore of 20 mm"},
		{"a foot of half an anchor", foot(8, "M16", 18), ""}, {"thinner", foot(7.9, "M16", 18), "7.9 mm, wanted at least 8 mm"}, {"of a plain hole of 17.6", foot(8, "", 17.6), ""}, {"thinner", foot(7.9, "", 17.6), "7.9 mm, wanted at least 8 mm"},
		{"hung up 5 of 100 beside its middle", hangs(9, 5, 0), ""}, {"farther", hangs(9, 5.1, 0), "the middle of the holes lies 5.1 mm beside its own, wanted at most 5 mm"}, {"to the left", hangs(9, -5.1, 0), "the middle of the holes lies 5.1 mm beside its own, wanted at most 5 mm"}, {"2 of 40 over it", hangs(9, 0, 2), ""}, {"farther", hangs(9, 0, 2.1), "the middle of the holes lies 2.1 mm beside its own, wanted at most 2 mm"}, {"8.1 from the edge", hangs(9, 0, 11.9), "the middle of the holes lies 11.9 mm beside its own, wanted at most 2 mm"}, {"8 from it", hangs(9, 0, 12), ""}, {"under it", hangs(9, 0, -2.1), "the middle of the holes lies 2.1 mm beside its own, wanted at most 2 mm"}, {"a shackle goes through", hangs(6.3, 0, 0), ""}, {"through none", hangs(6.2, 0, 0), "6.2 mm, wanted 6.3 mm"},
		// ISO 6194-1 has Ra 0.2 to 0.8 for the land; 6.3 for the bore: DIN 3760 as seal makers print it.
		{"a bearing's seat", finish("bearing 6008", "3.2", false), ""}, {"rougher", finish("bearing 6008", "3.3", false), "Ra 3.3 µm, wanted at most Ra 3.2 µm"}, {"a lip's", finish("seal 40x62x8", "0.8", false), ""}, {"rougher", finish("seal 40x62x8", "0.85", false), "Ra 0.85 µm, wanted at most Ra 0.8 µm"},
		{"a seal's bore", finish("seal 40x62x8", "6.3", true), ""}, {"rougher", finish("seal 40x62x8", "6.4", true), "Ra 6.4 µm, wanted at most Ra 6.3 µm"}, {"nothing's", finish("", "12.5", true), ""},
		{"limits 0.25 over", limits(40.25, 40.3), ""}, {"more", limits(40.26, 40.3), "40.26 mm to 40.3 mm for 40 mm"}, {"under", limits(39.7, 39.75), ""}, {"more", limits(39.7, 39.74), "39.7 mm to 39.74 mm for 40 mm"},
		{"half a turn", flight(60, 120), ""}, {"less", flight(59.9, 120), "59.9 mm, wanted at least 60 mm"}, {"a third of its outside in a turn", flight(200, 40), ""}, {"less", flight(200, 39.9), "39.9 mm, wanted at least 40 mm"}, {"one and a half", flight(200, 180), ""}, {"more", flight(200, 180.1), "180.1 mm, wanted at most 180 mm"},
		{"a cone 5 high for 20", rises(5, 0, 0), ""}, {"lower", rises(4.9, 0, 0), "4.9 mm, wanted at least 5 mm"}, {"10 off its middle", rises(7.5, -10, 0), ""}, {"lower", rises(7.4, -10, 0), "7.4 mm, wanted at least 7.5 mm"}, {"a lap of 20 thicknesses", rises(50, 0, 40), ""}, {"more", rises(50, 0, 40.1), "40.1 mm, wanted at most 40 mm"},
		{"a funnel 7.5 high for 30", funnel(7.5), ""}, {"lower", funnel(7.4), "7.4 mm, wanted at least 7.5 mm"},
		{"1.5 of shoulder behind a seal", behind(59), ""}, {"less", behind(59.2), "1.4 mm, wanted at least 1.5 mm"}, {"a wider bore", behind(63), "0 mm, wanted at least 1.5 mm"}, {"the same bore", behind(62), ""},
		{"2.4 by stick", stick(2.4), ""}, {"thinner", stick(2.3), "2.3 mm, wanted at least 2.4 mm"}, {"a leg of 4 on 3", leg(4, 3), ""}, {"a larger one", leg(4.1, 3), "4.1 mm on 3 mm, wanted at most 4 mm"}, {"of 12 on 10", leg(12, 10), ""}, {"a larger one", leg(12.1, 10), "12.1 mm on 10 mm, wanted at most 12 mm"},
		{"prepared half through", prepared(5), ""}, {"shallower", prepared(4.9), "4.9 mm for a wall of 10 mm, wanted at least 5 mm"},
		{"a quarter of the edge", seam(25, parts.BarEnd{}), ""}, {"less", seam(24.9, parts.BarEnd{}), "24.9 mm on 100 mm, wanted at least 25 mm"}, {"all of it", seam(100, parts.BarEnd{}), ""}, {"more", seam(100.1, parts.BarEnd{}), "100.1 mm on 100 mm"},
		{"a quarter of its corners", corners(30, 1), ""}, {"less", corners(29.9, 1), "29.9 mm on 120 mm, wanted at least 30 mm"}, {"half of that on each side", corners(15, 2), ""}, {"less", corners(14.9, 2), "29.8 mm on 120 mm, wanted at least 30 mm"},
		{"of one that is coped, 1.3 of it", seam(130, parts.BarEnd{Round: mm(60)}), ""}, {"more", seam(130.1, parts.BarEnd{Round: mm(60)}), "130.1 mm on 130 mm"},
		{"a square end on 65", onRound(65), ""}, {"on less", onRound(64), "its sides stand off by 1.603 mm, wanted at most 1.6 mm"}, // 1/16 in: AWS D1.1
		{"a root of 4", root(4), ""}, {"wider", root(4.1), "4.1 mm, wanted at most 4 mm"}, {"a press by a quarter", presses(10), ""}, {"by less", presses(9.9), "9.9 mm of 40 mm, wanted at least 10 mm"},
		{"a clamp with room", steel(func(*plan.ClampRow) {}), ""}, {"a cut of a saw", clampOf(func(*plan.ClampRow) {}, 0.75, "S235JR"), ""}, {"narrower", clampOf(func(*plan.ClampRow) {}, 0.74, "S235JR"), "0.74 mm, wanted 0.75 mm"},
		{"a quarter of M8 inside", steel(func(c *plan.ClampRow) { c.InnerMm = 2 }), ""}, {"less", steel(func(c *plan.ClampRow) { c.InnerMm = 1.9 }), "1.9 mm, wanted 2 mm"}, {"outside", steel(func(c *plan.ClampRow) { c.OuterMm = 2 }), ""}, {"less", steel(func(c *plan.ClampRow) { c.OuterMm = 1.9 }), "1.9 mm, wanted 2 mm"},
		{"half of it under the head", steel(func(c *plan.ClampRow) { c.GripMm = 4 }), ""}, {"less", steel(func(c *plan.ClampRow) { c.GripMm = 3.9 }), "3.9 mm, wanted 4 mm"}, {"all of it in steel", steel(func(c *plan.ClampRow) { c.HoldsMm = 8 }), ""}, {"less", steel(func(c *plan.ClampRow) { c.HoldsMm = 7.9 }), "7.9 mm, wanted 8 mm"},
		{"half as much again in bronze", clampOf(func(c *plan.ClampRow) { c.HoldsMm = 12 }, 2, "CuSn12"), ""}, {"less", clampOf(func(c *plan.ClampRow) { c.HoldsMm = 11.9 }, 2, "CuSn12"), "11.9 mm, wanted 12 mm"},
		{"its head 2 from the front", steel(func(c *plan.ClampRow) { c.AxialMm = 8.5 }), ""}, {"nearer", steel(func(c *plan.ClampRow) { c.AxialMm = 8.4 }), "1.9 mm, wanted 2 mm"}, {"from the back", steel(func(c *plan.ClampRow) { c.AxialMm = 91.5 }), ""}, {"nearer", steel(func(c *plan.ClampRow) { c.AxialMm = 91.6 }), "1.9 mm, wanted 2 mm"},
		{"a keyway 1.5 from its free end", keyed(30, 78.5), ""}, {"nearer", keyed(30, 78.6), "1.4 mm of metal left, wanted at least 1.5 mm"}, {"out at it", keyed(30, 80), ""}, {"near the shoulder", keyed(20.5, 60), ""},
		{"a key 2 deep in 4, past no end of its keyway", reaches(7), "2 mm in the way of the key, which stands fast in its tube"}, {"less", reaches(6.9), "1.9 mm beyond the gap, in a keyway 4 mm deep"}, {"to the bottom", reaches(9), "4 mm in the way of the key, which stands fast in its tube"}, {"beyond", reaches(9.1), "4.1 mm beyond the gap, in a keyway 4 mm deep"},
		// ISO 2768-2 class L: 0.4 to 100, 0.8 to 300 and 1.6 to 3000 flat, 0.6 to 100 and 1 to 300 square, run-out 0.5.
		{"flat to 100", useful(parts.Requirement{Kind: parts.Flatness}, 100, plain), "0.4 mm"}, {"beyond", useful(parts.Requirement{Kind: parts.Parallelism}, 100.1, plain), "0.8 mm"}, {"to 3000", useful(parts.Requirement{Kind: parts.Flatness}, 3000, plain), "1.6 mm"}, {"beyond", useful(parts.Requirement{Kind: parts.Flatness}, 3001, plain), "0 mm"},
		{"square to 100", useful(parts.Requirement{Kind: parts.Squareness}, 100, plain), "0.6 mm"}, {"beyond", useful(parts.Requirement{Kind: parts.Squareness}, 101, plain), "1 mm"}, {"run-out", useful(parts.Requirement{Kind: parts.RunOut}, 100, plain), "0.5 mm"},
		{"a face that seals", useful(parts.Requirement{Kind: parts.Flatness, Of: text("front")}, 100, func(v *view) { v.p.Notes = []parts.Text{text("the front takes the gasket")} }), "0.2 mm"}, {"another", useful(parts.Requirement{Kind: parts.Flatness, Of: text("back")}, 100, func(v *view) { v.p.Notes = []parts.Text{text("the front takes the gasket")} }), "0.4 mm"},
		{"a bearing's seat", useful(parts.Requirement{Kind: parts.RunOut, Of: text("s")}, 100, func(v *view) { v.outside = sideBy(false, step("bearing 6008", 0, 30, 40)) }), "0.06 mm"}, {"another", useful(parts.Requirement{Kind: parts.RunOut, Of: text("s")}, 100, func(v *view) { v.outside = sideBy(false, step("hub", 0, 30, 40)) }), "0.5 mm"},
		{"a thread as long as its nut", nutOn(9, "oil"), ""}, {"shorter", nutOn(8.9, "oil"), "8.9 mm of M40x1.5, wanted 9 mm"}, {"with a washer of 1.25 and a turn", nutOn(11.75, "lock-washer"), ""}, {"shorter", nutOn(11.7, "lock-washer"), "11.7 mm of M40x1.5, wanted 11.75 mm"},
		{"plate of 3", sheet(3), ""}, {"thinner", sheet(2.9), "2.9 mm, wanted 3 mm"}, // EN 10029, scope
		{"a register beside the middle", register(0.99, 40, 0), ""}, {"farther", register(1, 40, 0), "none"}, {"0.4 narrower", register(0, 39.61, 0), ""}, {"more", register(0, 39.6, 0), "none"}, {"1.5 % wider", register(0, 40.59, 0), ""}, {"more", register(0, 40.6, 0), "none"}, {"behind a wider one", register(0, 40, 4.9), ""}, {"beyond its end", register(0, 40, 5), "none"},
		{"off by 1 of play and 0.25", meets(1.25), ""}, {"more", meets(1.26), "1.26 mm off, with 1 mm of play"},
	} {
		v := job()
		c.rule(v)
		var said []string
		for _, f := range v.found {
			said = append(said, f.Numbers)
		}
		if got := strings.Join(said, "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
