package joint

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// standing are parts with steps on one axis, in their places.
func standing(placed ...placedPart) *assembly {
	j := &assembly{shop: &shop{job: &parts.Job{}, w: words.Writer{Units: parts.Millimetres}}, placed: placed}
	for i := range placed {
		p := &placed[i]
		p.r.Part.Name.Value, p.r.Out = p.Part, &plan.PartPlan{Title: p.Part}
		j.models = append(j.models, p.r)
	}
	return j
}

// worked is a shaft of 40 with steps of some lengths.
func worked(steps ...any) *part.Model {
	p := &parts.Part{Name: parts.Text{Value: "shaft"}, Kind: parts.Shaft, Profile: &parts.Profile{}}
	for i := 0; i < len(steps); i += 2 {
		p.Profile.Outside = append(p.Profile.Outside, parts.Step{Name: parts.Text{Value: steps[i].(string)}, Size: parts.Size{Nominal: length(40)}, Length: length(float64(steps[i+1].(int)))})
	}
	return part.Work(&parts.Job{Units: parts.Millimetres}, p)
}

// lying is a part in its place: z0 along the axis, and s −1 for the other way round.
func lying(name string, z0, s float64, steps ...part.Step) placedPart {
	return placedPart{Instance: parts.Instance{Part: name, Copy: 1}, r: stepped(parts.Part{Profile: &parts.Profile{}}, steps...).r, at: placement{z0: z0, s: s}}
}

// of is a feature of a placed part: its first step.
func (p *placedPart) of() feature {
	return feature{ref: parts.JointRef{Part: p.Part, Copy: p.Copy}, r: p.r, step: &p.r.Steps[0]}
}

// TestStandsOut: how far a shaft of 100 stands out of a hub with a bore of 30, at the end that is nearer,
// whichever way the two lie; below 0 it ends in the hub.
func TestStandsOut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name     string
		shaft, s float64 // place of the shaft
		hub, h   float64 // and of the hub
		mm       float64
		span     geom.Span
		says     bool
	}{
		{"nearer the back", 0, 1, 40, 1, 30, geom.Span{FromMm: 70, ToMm: 100}, false}, {"nearer the front", 0, 1, 10, 1, 10, geom.Span{FromMm: 0, ToMm: 10}, false},
		{"in the middle", 0, 1, 35, 1, 35, geom.Span{FromMm: 0, ToMm: 35}, false},
		{"the hub turned", 0, 1, 95, -1, 5, geom.Span{FromMm: 95, ToMm: 100}, false}, {"the shaft turned", 100, -1, 40, 1, 30, geom.Span{FromMm: 0, ToMm: 30}, false}, {"both", 100, -1, 40, -1, 10, geom.Span{FromMm: 90, ToMm: 100}, false},
		{"ends in the hub", 0, 1, 80, 1, -10, geom.Span{FromMm: 110, ToMm: 100}, true}, {"begins in it", 0, 1, -10, 1, -10, geom.Span{FromMm: 0, ToMm: -10}, true}, {"level", 0, 1, 0, 1, 0, geom.Span{FromMm: 0, ToMm: 0}, false},
	} {
		j := standing(lying("shaft", c.shaft, c.s, cylinder(0, 100, 40, false)), lying("hub", c.hub, c.h, cylinder(0, 30, 40, true)))
		j.placed[0].r = worked("seat", 100)
		j.placed[1].r = worked("bore", 30)
		p := &joint{in: &parts.Joint{Kind: parts.PressKind, Press: &parts.PressJoint{}}, a: j.placed[0].of(), b: j.placed[1].of()}
		if mm, span := j.standsOutMm(p); mm != c.mm || span != c.span {
			t.Errorf("%s: %g of %v, want %g of %v", c.name, mm, span, c.mm, c.span)
		}
		if got := j.stopText(p); (got != "") != c.says {
			t.Errorf("%s: %q", c.name, got)
		}
		if !c.says {
			continue
		}
		p.b.r.Out.Title, p.b.ref.Feature = "hub", "bore"
		for _, deep := range []float64{0, 0.5} { // of the bore in the faces of the hub
			p.b.step.FromMm, p.b.step.ToMm = deep, 30-deep
			if got, want := j.stopText(p), words.Either(deep == 0, "level with hub.", "level with the end of hub bore there."); !strings.HasSuffix(got, want) {
				t.Errorf("%s, %g deep: %q, want %q", c.name, deep, got, want)
			}
		}
	}
}

// TestOutOf: a shaft that no shoulder stops is told where its front comes to that of its housing.
func TestOutOf(t *testing.T) {
	t.Parallel()
	for z, want := range map[float64]string{0: "its front level with the front of roller", -25: "its front 25 before the front of roller", 0.5: "its front 0.5 behind the front of roller"} {
		j := &making{assembly: standing(lying("axle", z, 1, cylinder(0, 100, 20, false)), lying("roller", 0, 1, cylinder(0, 50, 20, true)))}
		p := &joint{w: j.w, in: &parts.Joint{Kind: parts.BearingKind, Bearing: &parts.BearingJoint{Ball: true}}, a: j.placed[0].of(), b: j.placed[1].of()}
		if got := j.outOf(p); got != "its place, "+want {
			t.Errorf("%g: %q", z, got)
		}
	}
}

// TestConeStands: the cup of a bearing 20 wide backs onto 50 of a housing that lies the other way round
// from 200: its large end is at 200 − (50 − 20) of the shaft, 5 past a seat that ends at 165, and the
// cone of 18 ends 2 before a shoulder at 190.
func TestConeStands(t *testing.T) {
	t.Parallel()
	j := standing(lying("shaft", 0, 1, cylinder(165, 190, 40, false)), lying("housing", 200, -1, cylinder(30, 50, 80, true)))
	b := &joint{in: &parts.Joint{Kind: parts.BearingKind, Bearing: &parts.BearingJoint{Width: length(20), ConeWidth: length(18)}}, a: j.placed[0].of(), b: j.placed[1].of()}
	small := cylinder(190, 200, 50, false)
	m := mounting{cupDir: 1, coneDir: -1, cupBackMm: 50, coneBackMm: 165, small: &small}
	if mm := j.largeEndMm(b, m); mm != 170 {
		t.Errorf("the large end is at %g", mm)
	}
	for dia, want := range map[float64]float64{38: 5, 41: 5, 41.1: 0} {
		nut := cylinder(140, 165, dia, false)
		m.nut = &nut
		if got := j.standsOut(b, m); got != want {
			t.Errorf("under a nut of %g it stands out %g, want %g", dia, got, want)
		}
	}
	nut := cylinder(140, 165, 40, false)
	nut.Size.Thread = &threads.Thread{Designation: "M40x1.5", PitchMm: 1.5}
	m.nut = &nut
	for _, c := range []struct {
		at, along float64
		shape     parts.RadialShape
		short     float64
	}{{160, 26, parts.RadialSlot, 0}, {160, 24, parts.RadialSlot, 1}, {160, 24, parts.RadialHole, 0}, {140, 24, parts.RadialSlot, 21}, {139.9, 24, parts.RadialSlot, 0}, {165, 14, parts.RadialSlot, 1}, {165.1, 12, parts.RadialSlot, 0}} {
		b.out = &plan.JointPlan{}
		b.a.r.Radials = []part.Radial{{In: &parts.Radial{Shape: c.shape, Along: length(c.along), Around: length(6)}, Rows: []plan.RadialRow{{AxialMm: c.at}}}}
		j.nutShort(b, m)
		short := 0.0
		for _, p := range b.out.Problems {
			if p.Kind == plan.SlotShort {
				short = p.Args[1].Value
			}
		}
		if short != c.short {
			t.Errorf("a %s of %g at %g is %g short, want %g", c.shape, c.along, c.at, short, c.short)
		}
	}
	if mm, ok := j.clearance(b, m); mm != 2 || !ok {
		t.Errorf("%g before its shoulder, %v", mm, ok)
	}
	bare, wide := m, *b.in.Bearing
	bare.nut, bare.small = nil, nil
	wide.ConeWidth = parts.Length{}
	if mm, ok := j.clearance(b, bare); mm != 0 || ok || j.standsOut(b, bare) != 0 {
		t.Error("without a nut and a shoulder")
	}
	b.in.Bearing = &wide
	if mm, ok := j.clearance(b, m); mm != 0 || ok {
		t.Error("of a cone whose width nobody knows")
	}
}

// TestStandsOnItsNut: beside a thread stands the made nut that an earlier joint has put there by hand, its
// rim or the head of its screw, which stands out further; else the thread itself.
func TestStandsOnItsNut(t *testing.T) {
	t.Parallel()
	thread, bore := cylinder(0, 20, 40, false), cylinder(0, 15, 40, true)
	thread.Name, thread.Size.Thread = "lock-thread", &threads.Thread{Designation: "M40x1.5"}
	bore.Size.Thread = thread.Size.Thread
	plain := thread
	plain.Size.Thread = nil
	inside := thread
	inside.Inside = true
	for _, c := range []struct {
		name   string
		step   part.Step
		loose  string // after which joint the nut is put on
		proud  float64
		mm     float64
		stands string
	}{
		{"its nut", thread, "before", 0, 30, "nut"}, {"the head of its screw", thread, "before", 3, 33, "nut"}, {"its nut is put on later", thread, "later", 0, 20, "shaft lock thread"}, {"no nut is put on", thread, "", 0, 20, "shaft lock thread"},
		{"no thread", plain, "before", 0, 20, "shaft lock thread"}, {"a thread inside", inside, "before", 0, 20, "shaft lock thread"},
	} {
		j := &making{assembly: standing(lying("shaft", 0, 1, c.step), lying("nut", 0, 1, cylinder(0, 15, 60, false), cylinder(0, 5, 44, false), bore)), before: []*joint{{in: &parts.Joint{Name: parts.Text{Value: "before"}}}}}
		if c.loose != "" {
			j.job.Loose = []parts.Loose{{Part: parts.Text{Value: "washer"}, After: parts.Text{Value: "before"}}, {Part: parts.Text{Value: "nut"}, After: parts.Text{Value: c.loose}}}
		}
		if c.proud > 0 {
			j.models[1].Clamp = &part.Clamp{Row: plan.ClampRow{OutsideMm: 60, ProudMm: c.proud}}
		}
		if mm, name := j.standsOn(&j.placed[0], &j.placed[0].r.Steps[0]); mm != c.mm || name != c.stands {
			t.Errorf("%s: %g of %s, want %g of %s", c.name, mm, name, c.mm, c.stands)
		}
	}
}

// TestWall: beside heads 10 high round the middle at a radius of 50 stands what begins within their
// height and goes half a millimetre beyond the face they bear on; the nearest, of two the first.
func TestWall(t *testing.T) {
	t.Parallel()
	step := func(name string, from, to, mm float64, inside bool) placedPart {
		s := cylinder(from, to, mm, inside)
		s.Name = name
		return lying("flange", 0, 1, s)
	}
	hub := step("hub", 0, 20, 60, false)
	other, plate := hub, hub
	other.group = 1
	plate.r = stepped(parts.Part{Outline: &parts.Outline{}}, hub.r.Steps...).r
	for _, c := range []struct {
		name   string
		placed []placedPart
		dir    float64
		mm     float64
		who    string
	}{
		{"nothing", nil, 1, 0, ""}, {"a hub", []placedPart{hub}, 1, 20, "flange hub"}, {"of another group", []placedPart{other}, 1, 0, ""}, {"the plate they bear on", []placedPart{plate}, 1, 0, ""},
		{"behind the face", []placedPart{hub}, -1, 0, ""}, {"hardly beyond it", []placedPart{step("hub", -20, 0.4, 60, false)}, 1, 0, ""}, {"beyond it", []placedPart{step("hub", -20, 0.5, 60, false)}, 1, 20, "flange hub"},
		{"on the other side", []placedPart{step("hub", -20, 0, 60, false)}, -1, 20, "flange hub"}, {"from their height on", []placedPart{step("hub", 10, 20, 60, false)}, 1, 20, "flange hub"}, {"over them", []placedPart{step("hub", 10.1, 20, 60, false)}, 1, 0, ""},
		{"a rim round them", []placedPart{step("rim", 0, 20, 140, true)}, 1, 20, "flange rim"}, {"a bore they lie over", []placedPart{step("bore", 0, 20, 60, true)}, 1, 0, ""}, {"a disc they stand over", []placedPart{step("disc", 0, 20, 140, false)}, 1, 0, ""}, {"at its very edge", []placedPart{step("disc", 0, 20, 100, false)}, 1, 0, ""},
		{"the nearer", []placedPart{hub, step("ring", 0, 20, 70, false), step("tube", 0, 20, 64, false)}, 1, 15, "flange ring"}, {"as near", []placedPart{hub, step("ring", 0, 20, 60, false)}, 1, 20, "flange hub"},
	} {
		j := &making{assembly: standing(c.placed...)}
		side := headSide{dir: c.dir, pts: []plan.XY{{XMm: 30, YMm: 40}, {XMm: 0, YMm: -50}}, headMm: 10}
		if len(c.placed) > 0 {
			side.on.ref = parts.JointRef{Part: c.placed[0].Part, Copy: c.placed[0].Copy}
		}
		if mm, who, _ := j.wall(side, func(parts.Instance) bool { return true }); mm != c.mm || who != c.who {
			t.Errorf("%s: %g of %q, want %g of %q", c.name, mm, who, c.mm, c.who)
		}
		if mm, who, _ := j.wall(side, func(parts.Instance) bool { return false }); mm != 0 || who != "" {
			t.Errorf("%s: %g of %q, which was not asked for", c.name, mm, who)
		}
	}
}

// TestDraggedOff: a right-hand nut comes off where the shaft turns clockwise seen from it and a flight
// on its hub drags, a left-hand one where it turns the other way, and the other way round of the hub by which the shaft is driven; nothing tells where the motor turns either way, drives another shaft, or no step.
func TestDraggedOff(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		change  func(m *parts.Motor, t *joint, hub *parts.Part)
		dragged bool
	}{
		{"driven at its back, the nut in front", func(m *parts.Motor, t *joint, hub *parts.Part) {}, false},
		{"the nut behind", func(m *parts.Motor, t *joint, hub *parts.Part) { t.dir = 1 }, true},
		{"the other way", func(m *parts.Motor, t *joint, hub *parts.Part) { m.Rotation = "counter-clockwise" }, true},
		{"the other way, the nut behind", func(m *parts.Motor, t *joint, hub *parts.Part) { m.Rotation, t.dir = "counter-clockwise", 1 }, false},
		{"either way", func(m *parts.Motor, t *joint, hub *parts.Part) { t.dir = 1; m.Rotation = "either" }, false},
		{"another shaft", func(m *parts.Motor, t *joint, hub *parts.Part) { t.dir = 1; m.Drives.Part = "hub" }, false},
		{"no flight", func(m *parts.Motor, t *joint, hub *parts.Part) { t.dir = 1; hub.Flight = nil }, true},
		{"what it is driven by", func(m *parts.Motor, t *joint, hub *parts.Part) { t.b.ref.Feature = "drive" }, true},
		{"what it is driven by, the nut behind", func(m *parts.Motor, t *joint, hub *parts.Part) { t.dir = 1; t.b.ref.Feature = "drive" }, false},
		{"driven by no step", func(m *parts.Motor, t *joint, hub *parts.Part) { t.dir = 1; m.Drives.Feature = "end" }, false},
		{"driven at its front", func(m *parts.Motor, t *joint, hub *parts.Part) { m.Drives.Feature = "nose" }, true},
	} {
		j := &making{assembly: standing(lying("hub", 0, 1, cylinder(0, 30, 40, true)), placedPart{Instance: parts.Instance{Part: "shaft", Copy: 1}, r: worked("nose", 20, "seat", 60, "drive", 20), at: placement{s: 1}})}
		motor := &parts.Motor{Rotation: "clockwise", SeenFrom: "drive-end", Drives: parts.JointRef{Part: "shaft", Copy: 1, Feature: "drive"}}
		s := &joint{in: &parts.Joint{Kind: parts.SlideKind, Slide: &parts.SlideJoint{}}, a: j.placed[0].of(), b: j.placed[1].of(), ofHub: ofHub{dir: -1}}
		hub := j.models[0].Part
		hub.Flight = &parts.Flight{}
		j.job.Motor = motor
		c.change(motor, s, hub)
		tells := !slices.Contains([]string{"either way", "another shaft", "driven by no step"}, c.name)
		if got, left := j.draggedOff(s, false), j.draggedOff(s, true); got != c.dragged || left != (tells && !c.dragged) {
			t.Errorf("%s: %v, left-hand %v", c.name, got, left)
		}
	}
}

// TestFineSizes: what a weld leaves to be finished is a bore that is still open, and the
// outside of a tube of which only an end is joined.
func TestFineSizes(t *testing.T) {
	t.Parallel()
	fine := func(s part.Step, name string) part.Step {
		s.Name, s.Size.Limited, s.Size.MinMm, s.Size.MaxMm = name, true, s.Size.NominalMm, s.Size.NominalMm+0.046
		return s
	}
	hub := lying("hub", 0, 1, fine(cylinder(0, 30, 40, true), "bore"), fine(cylinder(0, 30, 80, false), "outside"))
	standing(hub)
	at := func(name string) feature {
		f := hub.of()
		f.step = f.r.StepNamed(name)
		return f
	}
	welded := at("outside")
	welded.step = nil
	for _, c := range []struct {
		name string
		made []*joint
		want string
	}{
		{"nothing joined", nil, "hub bore 40.000 – 40.046; hub outside 80.000 – 80.046"},
		{"a part in the bore", []*joint{{b: at("bore")}}, "hub outside 80.000 – 80.046"},
		{"a flange on an end", []*joint{{a: at("outside")}}, "hub bore 40.000 – 40.046; hub outside 80.000 – 80.046"},
	} {
		if got := strings.Join(fineSizes(welded, c.made), "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A seal of 50 in a housing, its shoulder behind it, comes from the front: not over a collar there, and
// so over the back end of the shaft before its cone, whichever way the two lie; with a collar behind as well it goes on nowhere.
func TestSealOnTheShaft(t *testing.T) {
	t.Parallel()
	step := func(name string, inside bool, dia, from, to float64) part.Step {
		return part.Step{Name: name, Inside: inside, Size: part.Sized{NominalMm: dia}, FromMm: from, ToMm: to}
	}
	for _, c := range []struct {
		name        string
		front, back float64
		s           float64
		want        string
	}{
		{"nothing in the way", 45, 40, 1, ""},
		{"a collar before it", 80, 40, 1, "over the back end of shaft"},
		{"of a shaft turned round", 40, 80, -1, "over the front end of shaft"},
		{"hardly larger", 50.4, 40, 1, ""},
		{"on both sides", 80, 60, 1, "seal-shut front of shaft"},
		{"only behind", 40, 80, 1, ""},
	} {
		bore := step("bore", true, 70, 20, 30)
		bore.Seat = "seal 50x70x8"
		housing := lying("housing", 0, 1, bore, step("cup", true, 60, 30, 60))
		at := -25.0
		if c.s < 0 {
			at = 75
		}
		shaft := lying("shaft", at, c.s, step("front", false, c.front, 0, 40), step("land", false, 50, 40, 60), step("back", false, c.back, 60, 100))
		j := &making{assembly: standing(housing, shaft)}
		b := &joint{in: &parts.Joint{}, a: shaft.of(), b: housing.of(), out: &plan.JointPlan{}}
		j.slipSeals(b)
		got := ""
		for _, s := range b.out.Steps {
			got = s.Do[0]
		}
		for _, p := range b.out.Problems {
			got = string(p.Kind) + " " + p.Args[2].Text
		}
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// TestOffsetHole: of four holes 50 from the middle, which may be off by half of what both are wider than
// the bolt, the last goes 2° aside, 1.745, or as many whole degrees more as that is wide: 3°, 2.617; 12°,
// 10.45; over 15°, 13.05, nothing helps. All joints of one drawing have the same; seen on its face.
func TestOffsetHole(t *testing.T) {
	t.Parallel()
	four := []plan.XY{{YMm: 50}, {XMm: 50}, {YMm: -50}, {XMm: -50}}
	for _, c := range []struct {
		name   string
		hole   float64 // in both parts, for a bolt of 10
		change func(first, second *joint)
		want   []float64 // the clock angles, of the flange and of the cover
	}{
		{"1 aside", 11, func(first, second *joint) {}, []float64{272, 272}}, {"1.7 aside", 11.7, func(first, second *joint) {}, []float64{272, 272}}, {"1.8 aside", 11.8, func(first, second *joint) {}, []float64{273, 273}},
		{"10 aside", 20, func(first, second *joint) {}, []float64{282, 282}}, {"13.1 aside", 23.1, func(first, second *joint) {}, nil}, {"13 aside", 23, func(first, second *joint) {}, []float64{285, 285}},
		{"wider in its other joint", 11, func(first, second *joint) { second.boltMm = 9 }, []float64{273, 273}},
		{"wider where another leads", 11, func(first, second *joint) { second.boltMm, second.a.ref.Feature = 9, "others" }, []float64{272, 272}},
		{"wider where nothing is bolted", 11, func(first, second *joint) { second.boltMm, second.in.Kind = 9, parts.WeldKind }, []float64{272, 272}},
		{"in a part that is nowhere", 11, func(first, second *joint) { second.boltMm, second.a.ref.Part, second.b.ref.Part = 9, "gone", "flange" }, []float64{272, 272}},
		{"of one flange", 11, func(first, second *joint) { second.boltMm, first.a.r.Part.Quantity = 9, 1 }, []float64{272, 272}},
		{"of more covers, which lead", 11, func(first, second *joint) { first.b.r.Part.Quantity = 3 }, []float64{272, 272}},
		{"on the other face of the cover", 11, func(first, second *joint) { first.b.group.Face = parts.Back }, []float64{272, 88}},
		{"one hole is missing", 11, func(first, second *joint) { first.b.group.Points = four[:3] }, []float64{272}},
		{"a single hole", 11, func(first, second *joint) { first.a.group.Points = four[:1] }, nil},
	} {
		j := &making{assembly: standing(lying("flange", 0, 1, cylinder(0, 10, 200, false)), lying("cover", 10, 1, cylinder(0, 10, 200, false)))}
		end := func(p *placedPart) feature {
			f := p.of()
			f.ref.Feature, f.step, f.group = "bolts", nil, &part.Group{FaceGroup: parts.FaceGroup{Face: parts.Front}, Points: four, Size: part.Made{FinishedMm: c.hole}, Group: &plan.Group{First: 1}}
			return f
		}
		bolted := func() *joint {
			return &joint{in: &parts.Joint{Kind: parts.BoltKind, Bolt: &parts.BoltJoint{}}, a: end(&j.placed[0]), b: end(&j.placed[1]), ofBolts: ofBolts{boltMm: 10}}
		}
		j.all = []*joint{bolted(), bolted()}
		j.all[0].a.r.Part.Quantity, j.all[0].b.r.Part.Quantity = 2, 1
		c.change(j.all[0], j.all[1])
		var got []float64
		for _, o := range j.offsetHole(j.all[0]) {
			got = append(got, o.AtDeg)
			if o.RightDeg != math.Round(o.AtDeg/90)*90 || !o.Clocked {
				t.Errorf("%s: %+v", c.name, o)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestStandsOver: a coupling on the end of a shaft of 100 covers heads 50 off the axis where it is larger
// and begins within the 30 they need, on the side that they look to.
func TestStandsOver(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		step   string
		dia    float64
		z, dir float64 // of the heads
		s      float64 // −1: the shaft lies the other way round, 0: in another group, 2: it lies nowhere
		over   bool
	}{
		{"right before them", "drive", 110, 80, 1, 1, true}, {"at the end of their room", "drive", 110, 50, 1, 1, true}, {"beyond it", "drive", 110, 49.9, 1, 1, false}, {"behind them", "drive", 110, 80.1, 1, 1, false}, {"they look away", "drive", 110, 80, -1, 1, false},
		{"larger by little", "drive", 100.1, 80, 1, 1, true}, {"as large as their circle", "drive", 100, 80, 1, 1, false},
		{"on the front", "nose", 110, 20, -1, 1, true}, {"at the end of their room", "nose", 110, 50, -1, 1, true}, {"beyond it", "nose", 110, 50.1, -1, 1, false}, {"behind them", "nose", 110, 19.9, -1, 1, false}, {"they look away", "nose", 110, 20, 1, 1, false},
		{"on the middle, as on the back", "seat", 110, 20, 1, 1, true}, {"turned round", "drive", 110, 20, -1, -1, true}, {"turned round, they look away", "drive", 110, 20, 1, -1, false},
		{"in another group", "drive", 110, 80, 1, 0, false}, {"on a step that is not there", "end", 110, 80, 1, 1, false}, {"nowhere", "drive", 110, 80, 1, 2, false},
	} {
		shaft := placedPart{Instance: parts.Instance{Part: "shaft", Copy: 1}, r: worked("nose", 20, "seat", 60, "drive", 20), at: placement{s: 1}}
		switch c.s {
		case -1:
			shaft.at = placement{z0: 100, s: -1}
		case 0:
			shaft.group = 1
		case 2:
			shaft.Copy = 2
		}
		j := &making{assembly: standing(shaft)}
		side := headSide{zMm: c.z, dir: c.dir, needMm: 30, pts: []plan.XY{{XMm: 30, YMm: 40}, {YMm: -50}}}
		if got := j.standsOver(&parts.Stands{On: parts.JointRef{Part: "shaft", Copy: 1, Feature: c.step}, Diameter: length(c.dia)}, side, nil); got != c.over {
			t.Errorf("%s on %s: %v", c.name, c.step, got)
		}
	}
}

// TestTurned: it shows that a part is turned where something on it lies off its axis.
func TestTurned(t *testing.T) {
	t.Parallel()
	face := func(f plan.Face) *plan.PartPlan { return &plan.PartPlan{Faces: []*plan.Face{{}, &f}} }
	for _, c := range []struct {
		name string
		p    *plan.PartPlan
		want bool
	}{
		{"a plain round", face(plan.Face{}), false}, {"a hole", face(plan.Face{Holes: []plan.Hole{{}, {RadiusMm: 1}}}), true}, {"on the axis", face(plan.Face{Holes: []plan.Hole{{}}}), false}, {"a slot", face(plan.Face{Slots: []plan.Slot{{}}}), true},
		{"a keyway", &plan.PartPlan{Keyways: []plan.KeywayRow{{}}}, true}, {"from its side", &plan.PartPlan{Radials: []plan.RadialRow{{}}}, true}, {"a branch", &plan.PartPlan{Developments: []plan.Development{{Kind: plan.BranchPattern}}}, true}, {"a cone", &plan.PartPlan{Developments: []plan.Development{{Kind: plan.ConePattern}}}, false},
	} {
		if got := turned(c.p); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	tie := func(up bool, names ...string) (r parts.LineRule) {
		for _, n := range names {
			r.Refs = append(r.Refs, parts.JointRef{Part: n, Copy: 1})
		}
		r.Up = up
		return r
	}
	for _, c := range []struct {
		rule parts.LineRule
		want bool
	}{{tie(false, "moved", "stays"), true}, {tie(false, "moved", "moved"), false}, {tie(false, "stays", "stays"), false}, {tie(true, "moved"), true}, {tie(true, "stays"), false}} {
		if got := (&shop{}).crosses(c.rule, []parts.Instance{{Part: "moved", Copy: 1}, {Part: "stays", Copy: 2}}); got != c.want {
			t.Errorf("%+v: %v", c.rule, got)
		}
	}
}

// TestCoverOf: a cover is named by the joint that bolts it on, whichever of its parts it is.
func TestCoverOf(t *testing.T) {
	t.Parallel()
	cover, housing := lying("cover", 0, 1, cylinder(0, 10, 90, false)), lying("housing", 10, 1, cylinder(0, 40, 90, false))
	standing(cover, housing)
	for _, j := range []*joint{{a: cover.of(), b: housing.of()}, {a: housing.of(), b: cover.of()}} {
		if got := j.coverOf(housing.of()); got != "cover" {
			t.Error(got)
		}
	}
}

// TestReachOf: on heads 6.4 high of M10, 16 across, a socket of 28 and its wrench of 25 go under what lies 53 over their seats,
// on bare threads a crow-foot under 6.4 + 5 + 25, and under less a spanner; sunk 3 they take 3 less of the last. A key in
// a socket head begins on the head. Over M10 the drive is the next. What is beside a socket, 11.5 round its bolt,
// bars only the wrench, and not that on a bar; what a socket strikes, no crow-foot that looks away from it.
func TestReachOf(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		over, mm, sunk, bolt float64 // and the diameter of what lies over them
		keyed                bool
		want                 reach
	}{
		{53, 140, 0, 10, false, bySocket}, {52.9, 140, 0, 10, false, byCrowFoot}, {36.4, 140, 0, 10, false, byCrowFoot}, {36.3, 140, 0, 10, false, bySpanner},
		{33.4, 140, 3, 10, false, byCrowFoot}, {33.3, 140, 3, 10, false, bySpanner}, {59.4, 140, 0, 10, true, bySocket}, {59.3, 140, 0, 10, true, bySpanner}, {56.4, 140, 3, 10, true, bySocket}, {56.3, 140, 3, 10, true, bySpanner},
		{73, 140, 0, 12, false, bySocket}, {72.9, 140, 0, 12, false, byCrowFoot}, {30, 76, 0, 10, false, bySocket}, {30, 78, 0, 10, false, byCrowFoot},
	} {
		lid := lying("lid", 20+c.over, 1, cylinder(0, 200, c.mm, false))
		j := &making{assembly: standing(lid)}
		lid.r.Out.Section = &plan.Section{LengthMm: 200, Outer: []plan.XY{{YMm: c.mm / 2}, {XMm: 200, YMm: c.mm / 2}}}
		in := &joint{in: &parts.Joint{Kind: parts.BoltKind, Bolt: &parts.BoltJoint{Head: words.When(c.keyed, string(bolts.Socket))}}, ofBolts: ofBolts{bolt: &bolts.Bolt{AcrossFlatsMm: 16}, boltMm: c.bolt}, a: lid.of(), b: lid.of()}
		side := headSide{zMm: 20, dir: 1, pts: []plan.XY{{YMm: 50}}, headMm: 6.4, sunkMm: c.sunk}
		if got, who := j.reachOf(in, side); got != c.want || got != bySocket && who != "lid" {
			t.Errorf("%+v: %v of %q", c, got, who)
		}
	}
}

// TestAllRound: a round bar of 40 is welded all round its end from 0.95 of the 125.7 round it on, 119.4: where no length is said and
// none of it is flush.
func TestAllRound(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		section  parts.BarSection
		cornerMm float64
		change   func(t *joint, p *plan.WeldPlan)
		round    float64
	}{
		{parts.RoundBar, 119.4, nil, 40}, {parts.RoundBar, 119.3, nil, 0}, {parts.FlatBar, 160, nil, 0},
		{parts.RoundBar, 125, func(t *joint, _ *plan.WeldPlan) { t.in.Weld.Length = length(20) }, 0}, {parts.RoundBar, 125, func(_ *joint, p *plan.WeldPlan) { p.Flush = []string{"front"} }, 0},
	} {
		bar := feature{ref: parts.JointRef{Part: "bar", Feature: "left"}, r: part.Work(&parts.Job{Units: parts.Millimetres}, &parts.Part{Kind: parts.BarPart, Bar: &parts.Bar{Section: c.section, Width: length(40), Depth: length(40), Length: length(300)}})}
		in, p := &joint{in: &parts.Joint{Weld: &parts.WeldJoint{}}, a: bar, b: bar}, &plan.WeldPlan{CornerMm: c.cornerMm, Corners: []plan.Corner{{}}}
		if c.change != nil {
			c.change(in, p)
		}
		if in.allRound(p); p.DiameterMm != c.round || (len(p.Corners) == 0) != (c.round > 0) {
			t.Errorf("%+v: all round %g, %d corners", c, p.DiameterMm, len(p.Corners))
		}
	}
}
