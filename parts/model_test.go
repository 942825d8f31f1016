package parts

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"centrepop/parts/geom"
)

// at is a length that was given.
func at(mm float64) Length { return Length{Mm: mm, Pos: Pos{Line: 1}} }

func deg(d float64) Angle { return Angle{Deg: d, Pos: Pos{Line: 1}} }

func text(s string) Text { return Text{Value: s, Pos: Pos{Line: 1}} }

// two holds the answers of a method with two, to two decimals.
func two[A, B any](a A, b B) string { return fmt.Sprint(rounded(a), " ", rounded(b)) }

func rounded(v any) any {
	if mm, ok := v.(float64); ok {
		return math.Round(100*mm)/100 + 0
	}
	return v
}

type answer struct {
	what      string
	got, want any
}

func same(t *testing.T, all []answer) {
	t.Helper()
	for _, c := range all {
		if got := rounded(c.got); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
}

// TestAlongTheAxis: where features lie in mm from the front face, given from either one; by hand.
func TestAlongTheAxis(t *testing.T) {
	t.Parallel()
	taper := func(tp Taper) float64 { return tp.SmallMm(40, 60) }
	same(t, []answer{
		{"as given", Front.FromFront(12, 100), 12.0},
		{"from the back", Back.FromFront(12, 100), 88.0},
		{"front looks out", Front.Outward(), -1.0},
		{"back looks out", Back.Outward(), 1.0},
		{"other", two(Front.Other(), Back.Other()), "back front"},
		{"screw in the middle", (&Clamp{}).AxialMm(30), 15.0},
		{"screw from the front", (&Clamp{Axial: at(8), From: Front}).AxialMm(30), 8.0},
		{"screw from the back", (&Clamp{Axial: at(8), From: Back}).AxialMm(30), 22.0},
		{"branch", (&EndPlace{Axial: at(80), From: Back}).AxialMm(500), 420.0},
		{"all of the step flat", two((&Flats{}).StretchMm(20, 60)), "20 60"},
		{"flat at its front", two((&Flats{Length: at(15), From: Front}).StretchMm(20, 60)), "20 35"},
		{"flat at its back", two((&Flats{Length: at(15), From: Back}).StretchMm(20, 60)), "45 60"},
		{"groove from the front", two((&Groove{Axial: at(7)}).StretchMm(2, 100)), "7 9"},
		{"groove from the back", two((&Groove{Axial: at(7), From: Back}).StretchMm(2, 100)), "91 93"},
		{"groove in a face", two((&Groove{In: text("front")}).Face(), (&Groove{In: text("back")}).Face()), "front back"},
		{"groove in a step", (&Groove{In: text("seat")}).Face(), Face("")},
		{"key in the middle of a shaft's step", two((&Keyway{Length: at(20)}).StretchMm(false, 30, 80, 200)), "45 65"},
		{"key from the front", two((&Keyway{Length: at(20), Axial: at(50)}).StretchMm(false, 30, 80, 200)), "40 60"},
		{"key from the back", two((&Keyway{Length: at(20), Axial: at(50), From: Back}).StretchMm(false, 30, 180, 200)), "140 160"},
		{"key all through", two((&Keyway{Length: at(20), Through: true}).StretchMm(true, 30, 80, 200)), "30 80"},
		{"key from a bore's mouth", two((&Keyway{Length: at(20)}).StretchMm(true, 30, 80, 200)), "30 50"},
		{"key from a bore's back", two((&Keyway{Length: at(20), From: Back}).StretchMm(true, 30, 80, 200)), "60 80"},
		{"Woodruff key in the middle", two((&Keyway{Disc: text("6x9"), Length: at(20)}).StretchMm(false, 30, 80, 200)), "55 55"},
		{"Woodruff key from the back", two((&Keyway{Disc: text("6x9"), Axial: at(50), From: Back}).StretchMm(false, 30, 80, 200)), "150 150"},
		{"for a Woodruff key, in a bore", two((&Keyway{Disc: text("6x9"), Through: true}).StretchMm(true, 30, 80, 200)), "30 80"},
		{"taper to", taper(Taper{To: at(33)}), 33.0},
		{"taper 1:12", taper(Taper{Ratio: Number{12, Pos{Line: 1}}}), 35.0},
		{"taper of 30° over all", taper(Taper{Angle: deg(30)}), 7.85}, // 40 − 2·60·tan 15°
		{"chamfer 2 × 60°", (&Chamfer{Size: at(2), Angle: deg(60)}).AcrossMm(), 3.46},
		{"radius 3", (&Chamfer{Radius: at(3), Size: at(1), Angle: deg(45)}).AcrossMm(), 3.0},
		{"crown", (&Chamfer{Radius: at(30), Sphere: true, Size: at(4), Angle: deg(45)}).AcrossMm(), 4.0},
		{"countersink of 60° down to its hole", (&Countersink{Diameter: at(12), Angle: deg(60)}).DepthMm(6), 5.2}, // 3/tan 30°
		{"with its own width and depth", fmt.Sprint(GreaseGroove.Plain(), ReliefGroove.Plain(), OtherGroove.Plain(), GrooveKind("retaining").Plain()), "true true true false"},
	})
	for want, c := range map[string]Chamfer{"chamfer": {}, "radius": {Radius: at(1)}, "crown": {Radius: at(20), Sphere: true}} {
		if c.Word() != want {
			t.Errorf("%s is called %s", want, c.Word())
		}
	}
}

// TestEdges: an edge is that of what its name begins with, also where a step is called like an edge.
func TestEdges(t *testing.T) {
	t.Parallel()
	p := Part{Chamfers: []Chamfer{{Edge: text("seat-front"), Size: at(2)}, {Edge: text("seat-front-back"), Size: at(3)}}}
	same(t, []answer{
		{"front", two((&Chamfer{Edge: text("seat-front")}).On()), "seat front"},
		{"back of a step called seat-front", two(EdgeOf("seat-front-back")), "seat-front back"},
		{"no edge", two(EdgeOf("seat")), "seat "},
		{"bevel", p.BevelMm("seat-front-back"), 3.0},
		{"no bevel", p.BevelMm("seat-back"), 0.0},
	})
}

// TestBar: ends, sides and walls of bars; by hand.
func TestBar(t *testing.T) {
	t.Parallel()
	tube := Bar{Section: RectangleBar, Width: at(60), Depth: at(40), Wall: at(4), Length: at(800),
		Left: BarEnd{Mitre: deg(30), Long: TopSide}, Right: BarEnd{Mitre: deg(45), Long: BottomSide}}
	solid := Bar{Section: RoundBar, Width: at(20)}
	sides := func(b Bar) string { return fmt.Sprint(b.Walls()) }
	rail, plate := &Part{Bar: &tube}, &Part{Outline: &Outline{}}
	ends := func(p *Part) (out string) {
		for side, end := range p.BarEnds() {
			out += fmt.Sprint(side, " ", end.Mitre.Deg, " ")
		}
		return out
	}
	same(t, []answer{
		{"its ends", two(ends(rail), ends(plate)), "left 30 right 45  "},
		{"by name", fmt.Sprint(rail.BarEnd("right") == &tube.Right, rail.BarEnd("left") == &tube.Left, rail.BarEnd("top") == nil, plate.BarEnd("left") == nil), "true true true true"},
		{"a tube", fmt.Sprint(rail.Tubular(), (&Part{Bar: &solid}).Tubular(), plate.Tubular()), "true false false"},
		{"one wall", fmt.Sprint((&HoleGroup{}).OneWall(), (&HoleGroup{FaceGroup: FaceGroup{Walls: BothWalls}}).OneWall(), (&HoleGroup{Size: HoleSize{Make: TappedHole}}).OneWall()), "true false false"},
		{"tube", fmt.Sprint(tube.Tube(), solid.Tube(), (&Bar{Section: AngleBar, Wall: at(5)}).Tube(), (&Bar{Section: SquareBar, Wall: at(2)}).Tube(), (&Bar{Section: RoundBar, Wall: at(2)}).Tube()), "true false false true true"},
		{"rise of the ends", two(tube.End(LeftEnd).RiseDeg(), tube.End(RightEnd).RiseDeg()), "30 -45"},
		{"square", two(solid.Left.RiseDeg(), solid.Left.Mitred()), "0 false"},
		{"mitred a little", (&BarEnd{Mitre: deg(0.5)}).Mitred(), true},
		{"mitred by nothing", (&BarEnd{Mitre: deg(0)}).Mitred(), false},
		{"coped", fmt.Sprint(solid.Left.Coped(), (&BarEnd{Round: at(60)}).Coped(), (&BarEnd{Onto: Ref{Part: "post"}}).Coped()), "false true true"},
		{"run back, left, at the top and the bottom", two(tube.EndMm(LeftEnd, 30), tube.EndMm(LeftEnd, -30)), "0 34.64"}, // 60·tan 30°
		{"run back, right", two(tube.EndMm(RightEnd, 30), tube.EndMm(RightEnd, 0)), "60 30"},
		{"walls", sides(tube), "[front back top bottom]"},
		{"legs", sides(Bar{Section: AngleBar}), "[front bottom]"},
		{"channel", sides(Bar{Section: ChannelBar, Open: TopSide}), "[front back bottom]"},
		{"front", tube.SideMm(FrontSide), geom.Box{Min: geom.Point{XMm: -400, YMm: -30}, Max: geom.Point{XMm: 400, YMm: 30}}},
		{"bottom", tube.SideMm(BottomSide), geom.Box{Min: geom.Point{XMm: -400, YMm: -20}, Max: geom.Point{XMm: 400, YMm: 20}}},
		{"top", tube.SideMm(TopSide), geom.Box{Min: geom.Point{XMm: -400, YMm: -20}, Max: geom.Point{XMm: 400, YMm: 20}}},
		{"an end", fmt.Sprint(LeftEnd.IsEnd(), RightEnd.IsEnd(), TopSide.IsEnd()), "true true false"},
		{"holes", two((&HoleGroup{FaceGroup: FaceGroup{Face: Back}}).Side(), (&HoleGroup{FaceGroup: FaceGroup{Face: Front, On: TopSide}}).Side()), "back top"},
	})
}

// TestFlanges: a flange hangs on a side or on the free edge of another, and its places are measured along its side.
func TestFlanges(t *testing.T) {
	t.Parallel()
	o := &Outline{Width: at(200), Height: at(120)}
	b := Bends{Flanges: []Flap{{Side: TopSide, Height: at(40), Left: at(10), Right: at(25)}, {Side: "left-2", Height: at(15), Left: at(5)}}}
	same(t, []answer{
		{"on the top", b.On(TopSide).Height.Mm, 40.0},
		{"on the right", b.On(RightSide) == nil, true},
		{"a side", two(TopSide.Base()), "top 0"},
		{"a free edge", two(Side("top-3").Base()), "top 2"},
		{"along the top", b.On(TopSide).BoxMm(o), geom.Box{Min: geom.Point{XMm: -90}, Max: geom.Point{XMm: 75, YMm: 40}}},
		{"along the left", b.On("left-2").BoxMm(o), geom.Box{Min: geom.Point{XMm: -55}, Max: geom.Point{XMm: 60, YMm: 15}}},
		{"along the right", (&Flap{Side: RightSide}).BoxMm(o), geom.Box{Min: geom.Point{XMm: -60}, Max: geom.Point{XMm: 60}}},
	})
}

// TestContours: the area of each outline, by hand.
func TestContours(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		o       Outline
		areaMm2 float64
	}{
		{Outline{Shape: CircleOutline, Width: at(100)}, 7853.98},
		{Outline{Shape: SquareOutline, Width: at(50), Height: at(9)}, 2500},
		{Outline{Shape: SquareOutline, Width: at(50), Corner: at(10)}, 2500 - 100*(4-math.Pi)},
		{Outline{Shape: RectangleOutline, Width: at(50), Height: at(20), Corner: at(5)}, 1000 - 25*(4-math.Pi)},
		{Outline{Shape: SlotOutline, Width: at(60), Height: at(20)}, 800 + 100*math.Pi},
		{Outline{Shape: PolygonOutline, Sides: 6, Width: at(40)}, 1385.64}, // 2√3·20²
		{Outline{Shape: PolygonOutline, Points: []Point{{X: at(0), Y: at(0)}, {X: at(30), Y: at(0)}, {X: at(0), Y: at(40)}}}, 600},
		{Outline{Shape: PathOutline, Path: text("M 0 0 L 20 0 L 20 10 L 0 10 Z")}, 200},
	} {
		if got := math.Abs(c.o.Contour().AreaMm2()); math.Abs(got-c.areaMm2) > 0.5 {
			t.Errorf("%s: %.2f mm², want %.2f", c.o.Shape, got, c.areaMm2)
		}
	}
}

// TestRounds: how long the rounds of turned parts are, what goes through, and what is flat.
func TestRounds(t *testing.T) {
	t.Parallel()
	step := func(name string, long float64) Step { return Step{Name: text(name), Length: at(long)} }
	turned := Part{Profile: &Profile{Outside: []Step{step("body", 30), step("nose", 10)}, Inside: []Step{step("bore", 15), step("eye", 20)}}}
	through := Profile{Outside: turned.Profile.Outside, Inside: []Step{step("bore", 40-1e-7)}}
	disc := Part{Outline: &Outline{Shape: CircleOutline, Width: at(90)}, Bore: &Bore{Size: Size{Nominal: at(20)}, AfterWeld: true}}
	same(t, []answer{
		{"lengths", two(turned.Profile.LengthMm(), turned.Profile.InsideMm()), "40 35"},
		{"through", fmt.Sprint(turned.Profile.Through(), through.Through(), (&Profile{}).Through()), "false true false"},
		{"flat or turned", fmt.Sprint(disc.Flat(), disc.Turned(), turned.Flat(), turned.Turned()), "true false false true"},
		{"plate", fmt.Sprint(Stock{Form: "plate"}.ByArea(), Stock{Form: "sheet"}.ByArea(), Stock{Form: "flat"}.ByArea()), "true true false"},
		{"without a datum", fmt.Sprint(Flatness.Alone(), EqualLength.Alone(), Squareness.Alone()), "true true false"},
	})
}

// TestHoles: where in the file a hole comes from, and which holes anchors go through.
func TestHoles(t *testing.T) {
	t.Parallel()
	given := Pattern{Pos: Pos{Line: 9}, Blame: []Pos{{Line: 4}, {Line: 5}}}
	circle := Pattern{Pos: Pos{Line: 9}, PCD: Length{Pos: Pos{Line: 7}}}
	anchors := func(g HoleGroup) bool { return g.Anchors() }
	same(t, []answer{
		{"its own line", given.PosOf(1).Line, 5},
		{"no line of its own", given.PosOf(2).Line, 9},
		{"the circle's", circle.PosOf(0).Line, 7},
		{"clearance", anchors(HoleGroup{FaceGroup: FaceGroup{Through: true}, Size: HoleSize{Make: ClearanceHole}}), true},
		{"blind", anchors(HoleGroup{Size: HoleSize{Make: ClearanceHole}}), false},
		{"tapped", anchors(HoleGroup{FaceGroup: FaceGroup{Through: true}, Size: HoleSize{Make: TappedHole}}), false},
		{"of a shackle", anchors(HoleGroup{FaceGroup: FaceGroup{Through: true, For: Lifting}}), false}, {"of no other use", anchors(HoleGroup{FaceGroup: FaceGroup{Through: true, For: NoUse}}), true},
		{"about the axis", fmt.Sprint(Pattern{PCD: at(90)}.AboutAxis(), Pattern{PCD: at(90), Centre: geom.Point{XMm: 5}}.AboutAxis(), Pattern{}.AboutAxis(), Pattern{PCD: at(1)}.AboutAxis()), "true false false true"},
		{"slot", (&FaceSlot{FaceGroup: FaceGroup{Through: true}}).Anchors(), true}, {"blind slot", (&FaceSlot{}).Anchors(), false}, {"slot of a drain", (&FaceSlot{FaceGroup: FaceGroup{Through: true, For: Drain}}).Anchors(), false},
		{"of a pin", anchors(HoleGroup{FaceGroup: FaceGroup{Through: true}, Size: HoleSize{Make: PlainHole, Size: Size{Fit: Fit{Pos: Pos{Line: 1}}}}}), false},
	})
}

// TestFeatures: every feature of a part of each form, with its kind, and the numbered ones.
func TestFeatures(t *testing.T) {
	t.Parallel()
	all := func(p Part) string {
		out := ""
		for _, f := range p.Features() {
			out += fmt.Sprintf("%s:%s:%d ", f.Name, f.Kind, f.N)
		}
		return strings.TrimSpace(out)
	}
	window := Radial{Name: text("window"), Clock: []Angle{deg(0), deg(90)}}
	for want, p := range map[string]Part{
		"outline:outline:0 bore:bore:0 top:TOP:0 pcd:holes:0 adjust:slots:0":   {Outline: &Outline{}, Bore: &Bore{}, Holes: []HoleGroup{{FaceGroup: FaceGroup{Name: text("pcd")}}}, Slots: []FaceSlot{{FaceGroup: FaceGroup{Name: text("adjust")}}}},
		"top:TOP:0 large-end:end:0 small-end:end:0":                            {Frustum: &Frustum{}},
		"top:TOP:0 mouth:end:0 round-end:end:0":                                {Transition: &Transition{}},
		"top:TOP:0 inside:end:0":                                               {Flight: &Flight{}},
		"top:TOP:0 left:end:0 right:end:0 front:end:0 back:end:0 bottom:end:0": {Bar: &Bar{}},
		"seat:outside step:0 eye:inside step:0 top:TOP:0 window:radial:0 port:radial:0 key:keyway:0 clip:groove:0 spanner:flats:0 window-1:radial:1 window-2:radial:2": {
			Profile: &Profile{Outside: []Step{{Name: text("seat")}}, Inside: []Step{{Name: text("eye")}}}, Radials: []Radial{window, {Name: text("port"), Clock: []Angle{deg(0)}}},
			Keyways: []Keyway{{Name: text("key")}}, Grooves: []Groove{{Name: text("clip")}}, Flats: []Flats{{Name: text("spanner")}}},
	} {
		if got := all(p); got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
	p := Part{Radials: []Radial{window}}
	f, ok := p.Feature("window-2")
	_, none := p.Feature("window-3")
	same(t, []answer{
		{"found", two(f.N, ok), "2 true"}, {"not there", none, false},
		{"names", fmt.Sprint(p.FeatureNames(), p.FeatureNames(RadialFeature)), "[top window] [window]"},
	})
	for name, want := range map[string]string{"window-2": "window 2 true", "window-1": "window 1 true", "in-line": "in 0 false", "window-0": "window 0 false", "-2": " 0 false", "a-2": "a 2 true", "plain": " 0 false"} {
		if base, n, ok := Numbered(name); fmt.Sprint(base, " ", n, " ", ok) != want {
			t.Errorf("%s: %q %d %v, want %s", name, base, n, ok, want)
		}
	}
}

// TestJoints: what each kind of joint holds, first and second, and what lies between.
func TestJoints(t *testing.T) {
	t.Parallel()
	a, b, c := JointRef{Part: "a", Feature: "f"}, JointRef{Part: "b", Copy: 2, Feature: "g"}, JointRef{Part: "c", Feature: "h"}
	for _, k := range []struct {
		j       Joint
		between int
	}{
		{Joint{Press: &PressJoint{Shaft: a, Bore: b}}, 0}, {Joint{Weld: &WeldJoint{Part: a, To: b}}, 0}, {Joint{Bearing: &BearingJoint{Cone: a, Cup: b}}, 0},
		{Joint{Bolt: &BoltJoint{Through: a, Into: b, Stack: []JointRef{c}}}, 1}, {Joint{Slide: &SlideJoint{Hub: a, On: b, Plate: c}}, 1}, {Joint{Slide: &SlideJoint{Hub: a, On: b}}, 0}, {Joint{Screw: &ScrewJoint{Screw: a, Nut: b}}, 0},
	} {
		first, second := k.j.Ends()
		if first != a || second != b || len(k.j.Refs()) != 2+k.between || !k.j.Names("a", "f") || !k.j.Names("b", "g") || k.j.Names("c", "h") != (k.between == 1) || k.j.Names("a", "g") {
			t.Errorf("%+v holds %v", k.j, k.j.Refs())
		}
	}
	if fit := (&Joint{Press: &PressJoint{Shaft: a, Bore: b}}); !fit.Holds("a") || !fit.Holds("b") || fit.Holds("c") || !b.Is(JointRef{Part: "b", Copy: 2, Feature: "g", Pos: Pos{Line: 7}}) ||
		b.Is(JointRef{Part: "b", Copy: 1, Feature: "g"}) || b.Is(JointRef{Part: "a", Copy: 2, Feature: "g"}) || b.Is(JointRef{Part: "b", Copy: 2, Feature: "f"}) {
		t.Error("which part, which copy of it, and which feature")
	}
	none, _ := (&Joint{}).Ends()
	job := Job{Parts: []*Part{{Name: text("a"), Quantity: 2}, {Name: text("b"), Quantity: 3}}, Joints: []*Joint{{Name: text("seam"), Kind: WeldKind, Weld: &WeldJoint{Part: JointRef{Part: "a", Copy: 2}, To: JointRef{Part: "b", Copy: 1}}}, {Name: text("fit"), Kind: PressKind, Press: &PressJoint{Shaft: JointRef{Part: "a", Copy: 1}}}}}
	split := Job{Parts: []*Part{{Name: text("ring"), Clamp: &Clamp{In: text("bore")}}}}
	gripped, turning := &Joint{Slide: &SlideJoint{Hub: JointRef{Part: "ring", Feature: "bore"}}}, &Joint{Slide: &SlideJoint{Hub: JointRef{Part: "ring", Feature: "mouth"}}}
	home := &Joint{Screw: &ScrewJoint{}, Meet: Meeting{Pos: Pos{Line: 1}, First: Back, Second: Front}}
	running, level := &Joint{Screw: &ScrewJoint{}}, &Joint{Screw: &ScrewJoint{}, Meet: Meeting{Pos: Pos{Line: 1}, Level: true}}
	same(t, []answer{
		{"none", two(none.Set(), a.Set()), "false true"},
		{"meeting", two(Meeting{}.Set(), Meeting{Pos: Pos{Line: 1}}.Set()), "false true"},
		{"of a kind", fmt.Sprint(len(job.Of(WeldKind)), len(job.Of(PressKind)), len(job.Of(SlideKind))), "1 1 0"},
		{"a stud", two((&Joint{}).Stud(), (&Joint{Bolt: &BoltJoint{Stud: text("pillar")}}).Stud()), " pillar"},
		{"stood on an edge", fmt.Sprint((&Joint{}).OnEdge(), (&Joint{Place: &Place{With: "left"}}).OnEdge(), (&Joint{Place: &Place{With: "back"}}).OnEdge()), "false true false"},
		{"by name", fmt.Sprint(job.Part("b").Quantity, job.Part("x") == nil, job.Joint("fit").Press != nil, job.Joint("x") == nil), "3 true true true"},
		{"no weld holds", fmt.Sprint(job.Unwelded(job.Parts[0]), job.Unwelded(job.Parts[1])), "[1] [2 3]"},
		{"on an edge", fmt.Sprint((&Place{With: "left"}).Edge(), (&Place{With: "front"}).Edge(), (&Place{With: "back"}).Edge()), "true false false"},
		{"set on", two((&TubeEnd{}).Joint(), (&TubeEnd{SetIn: true}).Joint()), "set on set in"},
		{"on a rim", fmt.Sprint((&Place{On: "rim"}).OnRim(), (&Place{On: "front"}).OnRim(), (&Place{On: "back"}).OnRim()), "true false false"},
		{"turns", fmt.Sprint(job.Runs(&Joint{Kind: BearingKind}), job.Runs(&Joint{Slide: &SlideJoint{}}), job.Runs(&Joint{Slide: &SlideJoint{KeptBy: a}}), job.Runs(&Joint{Kind: WeldKind})), "true true false false"},
		{"a screw", fmt.Sprint(home.Home(), job.Runs(home), running.Home(), job.Runs(running), job.Runs(level), (&Joint{Meet: home.Meet}).Home()), "true false false true true false"},
		{"a split ring grips", fmt.Sprint(split.Gripped(gripped), split.Runs(gripped), split.Gripped(turning), split.Runs(turning), split.Gripped(&Joint{Kind: WeldKind})), "true false false true false"},
	})
	plate := Job{Parts: []*Part{{Name: text("lid"), Holes: []HoleGroup{{FaceGroup: FaceGroup{Name: text("pcd"), Face: Back}}}}}}
	for want, j := range map[string]Joint{
		"front on back": {Kind: BoltKind, Bolt: &BoltJoint{Into: JointRef{Part: "lid", Feature: "pcd"}}}, // as usual: both look the same way
		"back on back":  {Kind: BoltKind, OtherWay: true, Bolt: &BoltJoint{Into: JointRef{Part: "lid", Feature: "pcd"}}},
		"front on left": {Kind: BoltKind, Meet: Meeting{Pos: Pos{Line: 4}, First: "front", Second: "left"}, Bolt: &BoltJoint{Into: JointRef{Part: "lid", Feature: "pcd"}}},
		" on ":          {Kind: BoltKind, Bolt: &BoltJoint{Into: JointRef{Part: "lid", Feature: "rim"}}},
	} {
		if m := plate.MeetingOf(&j); fmt.Sprint(m.First, " on ", m.Second) != want {
			t.Errorf("%s meets %s, want %s", m.First, m.Second, want)
		}
	}
	if (&Joint{Kind: WeldKind, Pos: Pos{Line: 3}}).Meeting(Front).Set() || (&Joint{Kind: BoltKind, Pos: Pos{Line: 3}}).Meeting("").Set() || plate.MeetingOf(&Joint{Kind: SlideKind, Slide: &SlideJoint{}}).Set() {
		t.Error("only bolts into a face say how two faces meet")
	}
	if said := (Meeting{Pos: Pos{Line: 4}, First: Back, Second: Back}); (&Joint{Kind: BoltKind, Meet: said}).Meeting(Front) != said {
		t.Error("what the job says of a meeting does not hold")
	}
	for looks, want := range map[string]string{"up": "0 0", "right": "90 270", "down": "180 180", "left": "270 90", "": "0 0"} {
		if got := two((&Place{On: "front", Looks: looks}).TurnDeg(), (&Place{On: "back", Looks: looks}).TurnDeg()); got != want {
			t.Errorf("%s: %s, want %s", looks, got, want)
		}
	}
}

// TestHeldTogether: what turns together, and what a job's joints do with a part.
func TestHeldTogether(t *testing.T) {
	t.Parallel()
	ref := func(part, feature string) JointRef { return JointRef{Part: part, Copy: 1, Feature: feature} }
	job := Job{
		Parts: []*Part{{Name: text("lid"), Holes: []HoleGroup{{FaceGroup: FaceGroup{Name: text("pcd"), Pattern: Pattern{Count: 6}}}, {FaceGroup: FaceGroup{Name: text("row"), Pattern: Pattern{Count: 4}}}}}},
		Joints: []*Joint{
			{Kind: BoltKind, Bolt: &BoltJoint{Through: ref("lid", "pcd"), Into: ref("drum", "rim"), Stack: []JointRef{ref("spacer", "eye")}, Stud: text("pillar")}, Anchored: text("base")},
			{Kind: BearingKind, Bearing: &BearingJoint{Cone: ref("drum", "hub"), Cup: ref("base", "seat")}},
			{Kind: WeldKind, Weld: &WeldJoint{Part: ref("arm", "end"), To: ref("post", "side")}},
			{Kind: WeldKind, Weld: &WeldJoint{Part: ref("post", "top"), To: ref("lid", "back")}},
			{Kind: BoltKind, Bolt: &BoltJoint{Through: ref("lid", "row"), Into: ref("drum", "row"), Stud: text("rod")}},
			{Kind: BoltKind, Bolt: &BoltJoint{Through: ref("lid", "none"), Into: ref("drum", "row"), Stud: text("pillar")}},
			{Kind: BoltKind, Bolt: &BoltJoint{Through: ref("lid", "row"), Into: ref("drum", "row"), Stud: text("pillar")}},
			{Kind: BoltKind, Bolt: &BoltJoint{Through: ref("lid", "row"), Into: ref("drum", "row"), Stud: text("pillar")}},
		},
		Loose: []Loose{{Item: text("grease")}, {Part: text("guard")}},
	}
	with := func(part string) (out []string) {
		for i := range job.Turning(Instance{part, 1}) {
			out = append(out, i.Part)
		}
		slices.Sort(out)
		return out
	}
	said := Meeting{Pos: Pos{Line: 4}}
	same(t, []answer{
		{"turn with the arm", fmt.Sprint(with("arm")), "[arm drum lid post spacer]"}, {"with the base", fmt.Sprint(with("base")), "[base]"},
		{"linked", fmt.Sprint(Linked(Instance{"arm", 1}, [][]Instance{{{"c", 1}, {"b", 1}}, {{"arm", 1}, {"b", 1}}, {{"arm", 2}, {"d", 1}}})), "[{arm 1} {b 1} {c 1}]"},
		{"bolts", fmt.Sprint(job.Bolts("lid", "pcd"), job.Bolts("lid", "back"), job.Bolts("lid", "rim"), job.Uses("lid", "back"), job.Uses("arm", "pcd")), "true false false true false"},
		{"holds", fmt.Sprint(job.Fastens("spacer"), job.Fastens("pillar")), "true false"},
		{"studs", fmt.Sprint(job.IsStud("pillar"), job.IsStud("lid"), job.IsStud(""), job.StudsBefore(job.Joints[0]), job.StudsBefore(job.Joints[6]), job.StudsBefore(job.Joints[7])), "true false false 0 6 10"},
		{"on the floor", fmt.Sprint(job.Anchors("base"), job.Anchors("lid"), job.Anchors("")), "true false false"},
		{"by hand", fmt.Sprint(job.ByHand("guard") == &job.Loose[1], job.ByHand("") == nil, job.ByHand("lid") == nil), "true true true"},
		{"keys of a meeting", fmt.Sprint(Meeting{}.Key(), " ", said.Key(), " ", Meeting{Pos: said.Pos, Level: true}.Key()), " face level"},
		{"narrowed", fmt.Sprint((&Part{}).Narrowed(), (&Part{Transition: &Transition{Offset: Point{X: at(5), Y: at(-7)}}}).Narrowed(), (&Part{Frustum: &Frustum{Offset: at(9)}}).Narrowed()), "{0 0} {5 -7} {0 9}"},
	})
	for what, p := range map[string]Part{"hole": {Holes: []HoleGroup{{}}}, "slot": {Slots: []FaceSlot{{}}}, "radial": {Radials: []Radial{{}}}, "keyway": {Keyways: []Keyway{{}}}, "flat": {Flats: []Flats{{}}}, "end": {Ends: []TubeEnd{{}}}, "clamp": {Clamp: &Clamp{}}} {
		p.Profile = &Profile{}
		if p.AllRound() || !(&Part{Profile: &Profile{}}).AllRound() || !(&Part{Kind: Tube}).AllRound() || (&Part{}).AllRound() {
			t.Errorf("a %s is on one side of a turned part", what)
		}
	}
}

// TestOnAxis: a place given by its origin lies on the axis where both of its lengths are 0; one given from edges does not say so.
func TestOnAxis(t *testing.T) {
	t.Parallel()
	for at, want := range map[[2]float64]bool{{0, 0}: true, {3, 0}: false, {0, -3}: false, {3, 4}: false} {
		if got := (&Place{At: &Point{X: Length{Mm: at[0]}, Y: Length{Mm: at[1]}}}).OnAxis(); got != want {
			t.Errorf("%v: %v", at, got)
		}
	}
	if (&Place{FromLeft: Length{Mm: 5}}).OnAxis() {
		t.Error("a place from an edge is on the axis")
	}
}

// TestMotor: torque is power over speed (2π rad a turn; 1 hp = 550 ft·lbf/s = 745.7 W, from memory), and which way the
// shaft turns that is driven, by looking along the axes.
func TestMotor(t *testing.T) {
	t.Parallel()
	n := func(v float64) Number { return Number{Value: v} }
	same(t, []answer{
		{"2.2 kW at 1420", (&Motor{KW: n(2.2), RPM: n(1420)}).OutputNm(), 14.79},
		{"behind a gear at 28", (&Motor{KW: n(2.2), RPM: n(1420), OutRPM: n(28)}).OutputNm(), 750.3},
		{"3 hp", (&Motor{HP: n(3)}).Watts(), 2237.1}, {"2.2 kW", (&Motor{KW: n(2.2)}).Watts(), 2200.0}, {"0.4 kW", (&Motor{KW: n(0.4)}).Kilowatts(), 0.4},
		{"no speed", (&Motor{KW: n(2.2)}).OutputNm(), 0.0},
	})
	for _, c := range []struct {
		rotation, from, through string
		clockwise, inLine       bool
	}{
		{"clockwise", "drive-end", "coupling", false, true}, // seen from the other side
		{"clockwise", "non-drive-end", "coupling", true, true},
		{"counter-clockwise", "drive-end", "coupling", true, true},
		{"clockwise", "drive-end", "reversing-gear", true, true},
		{"clockwise", "drive-end", "belt", true, false},
		{"clockwise", "non-drive-end", "belt", false, false},
		{"clockwise", "drive-end", "gear-pair", false, false},
	} {
		m := Motor{Rotation: c.rotation, SeenFrom: c.from, Through: c.through}
		if m.TurnsClockwise() != c.clockwise || m.InLine() != c.inLine {
			t.Errorf("%+v: clockwise %v, in line %v", c, m.TurnsClockwise(), m.InLine())
		}
	}
}

// TestPutOn: the bores of a coupling as ordered, holes that a motor stands on, and what turns the machine.
func TestPutOn(t *testing.T) {
	t.Parallel()
	bores := func(item string, u Units) string { return fmt.Sprint((&Loose{Item: text(item)}).Bores(u)) }
	holes := []HoleGroup{{FaceGroup: FaceGroup{Name: text("feet")}}}
	job := Job{Parts: []*Part{{Name: text("plate"), Outline: &Outline{}, Holes: holes}, {Name: text("ring"), Profile: &Profile{}, Holes: holes}, {Name: text("rail"), Bar: &Bar{}, Holes: holes}}}
	on := func(part, feature string) bool {
		return job.OnHoles(&Stands{On: JointRef{Part: part, Feature: feature}})
	}
	belted := func(through string, all ...Loose) string {
		return (&Job{Motor: &Motor{Through: through}, Loose: all}).Coupled().Item.Value
	}
	motor, belt, chain := Loose{Item: text("gear motor"), As: AMotor}, Loose{Item: text("V-belt")}, Loose{Item: text("drive"), Buy: text("roller chain 08B")}
	coupled := func(all ...Loose) string {
		if e := (&Job{Loose: all}).Coupled(); e != nil {
			return e.Item.Value + e.Part.Value
		}
		return ""
	}
	same(t, []answer{
		{"bores", bores("jaw coupling, bores 38 and 42 mm", Millimetres), "[38 42]"},
		{"in fractions", bores("coupling, bore 1/2 in x 1.25", Inches), "[12.7 31.75]"},
		{"none", bores("coupling", Millimetres) + bores("sleeve, bores 38 and 42", Millimetres), "[][]"},
		{"on holes", fmt.Sprint(on("plate", "feet"), on("ring", "feet"), on("rail", "feet"), on("plate", "rim"), on("x", "feet")), "true true false false false"},
		{"coupled", coupled(Loose{Item: text("grease")}, Loose{Item: text("gear motor, 2 kW"), As: AMotor}, Loose{Item: text("coupling"), Stands: &Stands{}}), "gear motor, 2 kW"},
		{"that stands", coupled(Loose{Part: text("lid")}, Loose{Item: text("coupling"), Stands: &Stands{}}), "coupling"},
		{"by a belt", fmt.Sprint(belted("belt", motor, belt), " ", belted("coupling", motor, belt), " ", belted("belt", motor, chain), " ", belted("belt", motor)), "V-belt gear motor drive gear motor"},
		{"by nothing", coupled(Loose{Part: text("lid")}), ""},
	})
}

// TestBeforeWeld: what is finished after the welds has metal left on its diameter and nothing cut into it until then.
func TestBeforeWeld(t *testing.T) {
	t.Parallel()
	in := func(names ...string) (out []Text) {
		for _, n := range names {
			out = append(out, text(n))
		}
		return out
	}
	name := in("seat", "nose", "eye")
	p := Part{Top: text("keyway"), Profile: &Profile{
		Outside: []Step{{Name: name[0], Size: Size{Nominal: at(50), Fit: Fit{Class: text("k6")}}, Length: at(30), AfterWeld: true}, {Name: name[1], Size: Size{Nominal: at(40)}, Length: at(10)}},
		Inside:  []Step{{Name: name[2], Size: Size{Nominal: at(20)}, Length: at(40), AfterWeld: true}}},
		Keyways: []Keyway{{In: name[0]}}, Grooves: []Groove{{In: name[0]}, {In: name[1]}}, Flats: []Flats{{In: name[1]}, {In: name[2]}},
		Require:  []Requirement{{Of: name[0], To: name[1]}, {Of: name[1], To: name[2]}, {Of: name[1]}},
		Chamfers: []Chamfer{{Edge: text("seat-front")}, {Edge: text("seat-back"), For: "weld"}, {Edge: text("nose-back")}, {Edge: text("seat-front-back")}}}
	b := p.BeforeWeld(2)
	edges := ""
	for _, c := range b.Chamfers {
		edges += c.Edge.Value + " "
	}
	disc := Part{Bore: &Bore{Size: Size{Nominal: at(60), Fit: Fit{Class: text("H7")}}, Leave: at(5), AfterWeld: true}}
	bore := disc.BeforeWeld(2).Bore
	two2 := p
	two2.Keyways = []Keyway{{In: name[0]}, {In: name[1]}}
	flatTop := p
	flatTop.Top.Value = "flat"
	same(t, []answer{
		{"outside, with metal left", two(b.Profile.Outside[0].Size.Nominal.Mm, b.Profile.Outside[0].Size.Fit.Class.Value), "52 "},
		{"as drawn", two(b.Profile.Outside[1].Size.Nominal.Mm, b.Profile.Outside[1].Length.Mm), "40 10"},
		{"inside", two(b.Profile.Inside[0].Size.Nominal.Mm, b.Profile.Inside[0].Length.Mm), "18 40"},
		{"the drawing stays", two(p.Profile.Outside[0].Size.Nominal.Mm, len(p.Keyways)), "50 1"},
		{"cut into them", fmt.Sprint(len(b.Keyways), len(b.Grooves), b.Grooves[0].In.Value, len(b.Flats), b.Flats[0].In.Value, len(b.Require)), "0 1nose1nose1"},
		{"TOP", fmt.Sprint(b.Top.Value, " ", two2.BeforeWeld(2).Top.Value, " ", flatTop.BeforeWeld(2).Top.Value), "scribe keyway flat"},
		{"edges", edges, "seat-back nose-back seat-front-back "},
		{"more left by the cutter", fmt.Sprint(bore.Size.Nominal.Mm, bore.Size.Fit.Class.Value, bore.Waits, bore.AfterWeld), "55true false"},
		{"left for the weld", (&Bore{Leave: at(1), AfterWeld: true}).LeftMm(2), 2.0},
		{"left by the cutter", (&Bore{Leave: at(1)}).LeftMm(2), 1.0},
		{"nothing later", (&Part{Bore: &Bore{}, Profile: &Profile{Outside: []Step{{}}}}).BeforeWeld(2) == nil, true},
	})
}

// TestFaults: a fault says where it is, shows the line with a caret under its column, and what would be right.
func TestFaults(t *testing.T) {
	t.Parallel()
	job := Job{Lines: map[string][]string{"a.yaml": {"one", "\tsize: 7  "}}}
	long := strings.Repeat("x", 130)
	for want, err := range map[string]error{
		"a.yaml:2:8: too small\n     size: 7\n           ^\nright: 8 or more": job.Fault(Pos{"a.yaml", 2, 8}, "too small", "8 or more"),
		"b.yaml:2:8: gone":             job.Fault(Pos{"b.yaml", 2, 8}, "gone", ""),
		"a.yaml:3:1: gone":             job.Fault(Pos{"a.yaml", 3, 1}, "gone", ""),
		"c:1:1: empty\n    key\n    ^": FaultIn([]string{"key"}, Pos{File: "c"}, "empty", ""),
		"c:1:61: far\n    " + long[:100] + "…\n" + strings.Repeat(" ", 64) + "^": FaultIn([]string{long}, Pos{"c", 1, 61}, "far", ""),
		"c:1:91: far\n    …" + long[:100] + "\n" + strings.Repeat(" ", 65) + "^": FaultIn([]string{long}, Pos{"c", 1, 91}, "far", ""),
		"c:1:71: far\n    " + long[:100] + "\n" + strings.Repeat(" ", 74) + "^":  FaultIn([]string{long[:100]}, Pos{"c", 1, 71}, "far", ""),
		"c:1:1: odd\n    x\n    ^": FaultIn([]string{"x"}, Pos{File: "c"}, "odd", ""),
		"c:1:1: one\n\nd:2:2: two": Errors{{Pos: Pos{"c", 1, 1}, What: "one"}, {Pos: Pos{"d", 2, 2}, What: "two"}},
	} {
		if err.Error() != want {
			t.Errorf("got\n%s\nwant\n%s", err, want)
		}
	}
	var one *Error
	if !errors.As(Errors{{What: "first"}, {What: "second"}}, &one) || one.What != "first" {
		t.Errorf("found %v", one)
	}
	for s, want := range map[string]string{strings.Repeat("é", 40): `"` + strings.Repeat("é", 40) + `"`, strings.Repeat("é", 41): `"` + strings.Repeat("é", 40) + `…"`} {
		if Quote(s) != want {
			t.Errorf("%s, want %s", Quote(s), want)
		}
	}
}

// TestFormed: what is formed from sheet, and how much its walls add outside or take inside, on the diameter.
func TestFormed(t *testing.T) {
	t.Parallel()
	cone := Part{Kind: Cone, Frustum: &Frustum{Formed: Formed{Thickness: at(3), Inside: true}}}
	hood := Part{Kind: TransitionPiece, Transition: &Transition{Formed: Formed{Thickness: at(2)}}}
	of := ""
	for _, k := range []Kind{Flange, Cone, TransitionPiece, Folded, FlightPart, BarPart, TurnedPart, Tube} {
		if k.OfSheet() {
			of += string(k) + " "
		}
	}
	same(t, []answer{
		{"sheet", of, "cone transition folded flight "},
		{"a cone by its inside", two(cone.Formed().Walls()), "6 0"},
		{"a transition by its outside", two(hood.Formed().Walls()), "0 4"},
		{"a plate", (&Part{Kind: Plate}).Formed() == nil, true},
		{"plates", fmt.Sprint((&Part{Kind: Plate, Outline: &Outline{}}).PlateLike(), (&Part{Kind: Folded, Outline: &Outline{}}).PlateLike(), (&Part{Kind: BarPart, Bar: &Bar{Section: FlatBar}}).PlateLike(), (&Part{Kind: BarPart, Bar: &Bar{Section: AngleBar}}).PlateLike()), "true false true false"},
		{"a tube as bought", fmt.Sprint((&Part{Kind: Tube}).BoughtTube(), (&Part{Kind: Tube, Rolled: &Formed{}}).BoughtTube(), (&Part{Kind: Cone}).BoughtTube()), "true false false"},
		// of 360 mm round 1 mm a degree: the lap reaches from 90 to 100, its middle is 95
		{"beside a seam", (&Formed{Seam: deg(90), Overlap: at(10)}).SeamGapMm(360/math.Pi, 120, 8), 12.0},
		{"before a seam", (&Formed{Seam: deg(10), Overlap: at(10)}).SeamGapMm(720/math.Pi, 350, 8), 32.0},
		{"in a seam", (&Formed{Seam: deg(90), Overlap: at(10)}).SeamGapMm(360/math.Pi, 102, 8), -6.0},
	})
	for name, one := range map[string]Part{"hole": {Holes: make([]HoleGroup, 1)}, "slot": {Slots: make([]FaceSlot, 1)}, "window": {Radials: make([]Radial, 1)}, "keyway": {Keyways: make([]Keyway, 1)},
		"flat": {Flats: make([]Flats, 1)}, "branch": {Ends: make([]TubeEnd, 1)}, "clamp": {Clamp: &Clamp{}}} {
		one.Profile = &Profile{}
		if one.AllRound() {
			t.Errorf("a part with a %s is the same all round", name)
		}
	}
	if !(&Part{Profile: &Profile{}}).AllRound() || !(&Part{Kind: Tube}).AllRound() || (&Part{Kind: Plate}).AllRound() {
		t.Error("what is turned and a tube are the same all round, a plate is not")
	}
}
