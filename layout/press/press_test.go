package press

import (
	"math"
	"slices"
	"strings"
	"testing"
)

const (
	psi  = 0.006894757293168 // MPa
	inch = 25.4
)

// elasticSteel is a plain material of the given modulus, strong enough not to matter.
func elasticSteel(eMPa float64) Material {
	return Material{Name: "test steel", EMPa: eMPa, Nu: 0.292, AlphaPerK: 11e-6, ContractPerK: 8.5e-6, StrengthMPa: 500}
}

// joint is a same-material joint with friction 0.12 over 50 mm.
func joint(shaftBore, d, hubOutside, interference, eMPa float64) Input {
	m := elasticSteel(eMPa)
	return Input{
		Hub: Member{hubOutside, d, m}, Shaft: Member{d, shaftBore, m},
		InterferenceMm: interference, LengthMm: 50, Friction: Friction{0.12, 0.12, "test"},
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6g, want %.6g +- %.2g", what, got, want, tol)
	}
}

// testdata/reference/worked_examples.md (b), row 1: Shigley 8th ed. solutions
// manual, problem 5-35. Force and torque: derived there for L = 50, f = 0.12. Both
// work on from the rounded 19.41 MPa, hence the tolerances.
func TestShigley535(t *testing.T) {
	r, err := Solve(joint(25, 50, 75, 0.02, 207e3))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "pressure", r.PressureMPa, 19.41, 0.005)
	near(t, "inner hoop", r.ShaftOutside.HoopMPa, -32.35, 0.01)
	near(t, "inner radial", r.ShaftOutside.RadialMPa, -19.41, 0.005)
	near(t, "inner von Mises", r.ShaftOutside.VonMisesMPa, 28.20, 0.02)
	near(t, "outer hoop", r.HubBore.HoopMPa, 50.47, 0.02)
	near(t, "outer radial", r.HubBore.RadialMPa, -19.41, 0.005)
	near(t, "outer von Mises", r.HubBore.VonMisesMPa, 62.48, 0.03)
	near(t, "force", r.ForceN.Max, 18293, 4)
	near(t, "torque", r.TorqueNm.Max, 457.3, 0.1)
	near(t, "force span", r.ForceN.Min, r.ForceN.Max, 0)
	near(t, "hub safety", r.HubSafety, 500/62.48, 0.01)
}

// Row 2: the problem before 5-35, part (b): 2 in solid shaft, ring 3 in.
func TestShigleySolidShaft(t *testing.T) {
	r, err := Solve(joint(0, 2*inch, 3*inch, 2*0.0005*inch, 30e6*psi))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "pressure", r.PressureMPa/psi, 4167, 1)
	for what, s := range map[string]Stress{"surface": r.ShaftOutside, "centre": r.ShaftBore} {
		near(t, what+" hoop", s.HoopMPa/psi, -4167, 1)
		near(t, what+" radial", s.RadialMPa/psi, -4167, 1)
		near(t, what+" von Mises", s.VonMisesMPa/psi, 4167, 1)
	}
	near(t, "ring hoop", r.HubBore.HoopMPa/psi, 10830, 5)
	near(t, "ring von Mises", r.HubBore.VonMisesMPa/psi, 13410, 5)
}

// Rows 5 and 8: problems 3-65 and 3-67 through the limits of their fits, and the
// US-unit example (exact 2083, the book rounds to 2100).
func TestShigleyLimits(t *testing.T) {
	for _, c := range []struct {
		shaftHi, shaftLo, boreHi, boreLo, pHi, pLo float64 // in, psi
	}{
		{1.5023, 1.5017, 1.5010, 1.5000, 17250, 5250},
		{1.5030, 1.5024, 1.5010, 1.5000, 22500, 10500},
	} {
		in := joint(0, 1.5*inch, 3*inch, 0, 30e6*psi)
		l, err := Range(in, (c.shaftLo-c.boreHi)*inch, (c.shaftHi-c.boreLo)*inch)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "loosest", l.Loosest.PressureMPa/psi, c.pLo, 1)
		near(t, "tightest", l.Tightest.PressureMPa/psi, c.pHi, 1)
		near(t, "least force", l.ForceN().Min, l.Loosest.ForceN.Min, 0)
		near(t, "greatest torque", l.TorqueNm().Max, l.Tightest.TorqueNm.Max, 0)
	}
	r, err := Solve(joint(0, 4*inch, 6*inch, 2*0.0005*inch, 30e6*psi))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "row 8", r.PressureMPa/psi, 2083, 1)
}

// For unlike materials no published answer is kept: instead the parts must meet.
// Surface displacement from Hooke's law, (d/2E)(hoop - nu radial), must differ
// by just half the interference, and force must balance through each wall.
func TestPartsMeet(t *testing.T) {
	for _, names := range [][2]string{{"EN-GJL-250", "C45"}, {"CuSn8", "S355"}, {"6082", "1.4301"}, {"S235", "bronze"}} {
		hub, err := Lookup(names[0], 20)
		if err != nil {
			t.Fatal(err)
		}
		shaft, err := Lookup(names[1], 20)
		if err != nil {
			t.Fatal(err)
		}
		for _, bore := range []float64{0, 12, 35} {
			in := Input{Member{80, 40, hub}, Member{40, bore, shaft}, 0.03, 40, Friction{0.1, 0.2, ""}, 0, 0, 0}
			r, err := Solve(in)
			if err != nil {
				t.Fatal(err)
			}
			u := func(s Stress, m Material) float64 { return 20 / m.EMPa * (s.HoopMPa - m.Nu*s.RadialMPa) }
			near(t, names[0]+" gap", u(r.HubBore, hub)-u(r.ShaftOutside, shaft), 0.015, 1e-12)
			near(t, "hoop plus radial in hub", r.HubBore.HoopMPa+r.HubBore.RadialMPa, r.HubOutside.HoopMPa, 1e-9)
			if bore > 0 {
				near(t, "hoop plus radial in shaft", r.ShaftOutside.HoopMPa+r.ShaftOutside.RadialMPa, r.ShaftBore.HoopMPa, 1e-9)
				near(t, "bore closes", r.BoreClosesMm, -bore/shaft.EMPa*r.ShaftBore.HoopMPa, 1e-12)
			} else {
				near(t, "solid bore closes", r.BoreClosesMm, 0, 0)
			}
			near(t, "force span", r.ForceN.Max, 2*r.ForceN.Min, 1e-6)
		}
	}
}

// Torque is force at the joint's radius, and radii of a brittle ring are judged by
// the greatest tension and a third of the greatest compression.
func TestTorqueAndBrittle(t *testing.T) {
	t.Parallel()
	in := joint(20, 50, 100, 0.03, 207e3)
	in.Friction = Friction{0.1, 0.3, ""}
	r, err := Solve(in)
	if err != nil {
		t.Fatal(err)
	}
	normal := r.PressureMPa * math.Pi * 50 * in.LengthMm
	near(t, "least force", r.ForceN.Min, 0.1*normal, 1e-6)
	near(t, "greatest force", r.ForceN.Max, 0.3*normal, 1e-6)
	near(t, "least torque", r.TorqueNm.Min, 0.1*normal*0.025, 1e-6)
	near(t, "greatest torque", r.TorqueNm.Max, 0.3*normal*0.025, 1e-6)
	m := Material{StrengthMPa: 100, Brittle: true}
	near(t, "tension", m.safety(Stress{HoopMPa: 50, RadialMPa: -20}, Stress{}), 2, 1e-12)
	near(t, "compression", m.safety(Stress{HoopMPa: -50, RadialMPa: -60}, Stress{}), 5, 1e-12)
	near(t, "radial tension", m.safety(Stress{RadialMPa: 25}, Stress{}), 4, 1e-12)
	near(t, "worse of two", m.safety(Stress{HoopMPa: 10}, Stress{HoopMPa: 80}), 1.25, 1e-12)
	near(t, "little stress", m.safety(Stress{HoopMPa: 0.5}, Stress{}), 200, 1e-12)
	near(t, "none", m.safety(Stress{}, Stress{}), 1000, 0)
	near(t, "least stress told", m.safety(Stress{HoopMPa: 0.05}, Stress{}), 1000, 0)
}

func TestRoughness(t *testing.T) {
	in := joint(0, 50, 100, 0.03, 207e3)
	in.HubRzUm, in.ShaftRzUm = 6.3, 4
	r, err := Solve(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "loss, DIN 7190:2001", r.LossMm, 0.8*0.0103, 1e-12)
	near(t, "effective", r.EffectiveMm, 0.03-0.8*0.0103, 1e-12)
	l, err := Range(in, 0.01, 0.03)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "loosest loss", l.Loosest.LossMm, 0.8*0.0103, 1e-12)
	near(t, "tightest loss, DIN 7190-1:2017", l.Tightest.LossMm, 0.4*0.0103, 1e-12)
	in.Smoothing = Smoothing2017
	if l, err = Range(in, 0.01, 0.03); err != nil {
		t.Fatal(err)
	}
	near(t, "set smoothing", l.Loosest.LossMm, 0.4*0.0103, 1e-12)

	// All lost, and a transition fit with clearance at one end.
	in.Smoothing = 0
	in.InterferenceMm = 0.005
	if r, err = Solve(in); err != nil || r.PressureMPa != 0 || r.ForceN.Max != 0 || len(r.Cautions) != 1 || r.Cautions[0] != (Caution{Code: Flattened, Mm: r.LossMm, OfMm: 0.005}) || r.HubSafety != 1000 || r.ShaftSafety != 1000 {
		t.Errorf("all lost: %+v, %v", r, err)
	}
	in.HubRzUm, in.ShaftRzUm = 0, 0
	if l, err = Range(in, 0.02, 0.02); err != nil || l.Loosest.PressureMPa != l.Tightest.PressureMPa || l.Loosest.PressureMPa <= 0 {
		t.Errorf("one interference: %+v, %v", l, err)
	}
	in.HubRzUm, in.ShaftRzUm = 6.3, 4
	if l, err = Range(in, -0.01, 0.02); err != nil || l.Loosest.PressureMPa != 0 || l.Tightest.PressureMPa <= 0 || len(l.Loosest.Cautions) != 1 || l.Loosest.Cautions[0] != (Caution{Code: Loose, Mm: 0.01}) {
		t.Errorf("transition fit: %+v, %v", l, err)
	}
}

func TestCautions(t *testing.T) {
	s235, _ := Lookup("S235JR", 20)
	grey, _ := Lookup("GG25", 20)
	in := Input{Member{60, 50, s235}, Member{50, 40, s235}, 0.15, 30, Friction{0.1, 0.2, ""}, 0, 0, 0}
	r, err := Solve(in)
	if err != nil {
		t.Fatal(err)
	}
	want := []Caution{{Code: Yields, Who: HubMember, Material: "S235", Safety: r.HubSafety}, {Code: Yields, Who: ShaftMember, Material: "S235", Safety: r.ShaftSafety}, {Code: BoreCloses, Who: ShaftMember, Mm: r.BoreClosesMm}}
	if r.HubSafety >= 1 || r.ShaftSafety >= 1 || !slices.Equal(r.Cautions, want) {
		t.Errorf("cautions %+v, want %+v", r.Cautions, want)
	}
	in.Hub.Material = grey
	if r, err = Solve(in); err != nil || r.Cautions[0] != (Caution{Code: Breaks, Who: HubMember, Material: "EN-GJL-250", Safety: r.HubSafety}) {
		t.Errorf("grey iron hub: %+v, %v", r.Cautions, err)
	}
	// Brittle hub is judged by its hoop tension, not by von Mises.
	near(t, "brittle safety", r.HubSafety, grey.StrengthMPa/r.HubBore.HoopMPa, 1e-9)
	// A brittle hub is remarked under a safety of 2, a bore that closes from 5 um.
	for _, f := range []float64{1.9, 2.1} {
		in.InterferenceMm = r.InterferenceMm * r.HubSafety / f
		close, err := Solve(in)
		if remarked := slices.ContainsFunc(close.Cautions, func(c Caution) bool { return c.Code == Brittle && c.LeastSafety == 2 }); err != nil || remarked != (f < 2) || math.Abs(close.HubSafety-f) > 1e-9 {
			t.Errorf("safety %v: %+v", f, close.Cautions)
		}
	}
	for _, um := range []float64{4.9, 5.1} {
		in.InterferenceMm = r.InterferenceMm * um / 1000 / r.BoreClosesMm
		close, err := Solve(in)
		if remarked := slices.ContainsFunc(close.Cautions, func(c Caution) bool { return c.Code == BoreCloses }); err != nil || remarked != (um > 5) {
			t.Errorf("bore closes %v um: %+v", um, close.Cautions)
		}
	}
	// Just at its strength, or at a safety of 2 where it breaks, nothing is to be remarked.
	in.Hub.Material = grey
	for safety, want := range map[float64][]Code{0.99: {Breaks, Yields}, 1: {Brittle}, 1.99: {Brittle}, 2: nil} {
		var got []Code
		for _, c := range in.cautions(Result{InterferenceMm: 1, EffectiveMm: 1, HubSafety: safety, ShaftSafety: safety}) {
			got = append(got, c.Code)
		}
		if !slices.Equal(got, want) {
			t.Errorf("safety %v: %v, want %v", safety, got, want)
		}
	}
	// A fit whose least is nothing has nothing to flatten, and is loose.
	if l, err := Range(in, 0, 0.02); err != nil || !slices.Equal(l.Loosest.Cautions, []Caution{{Code: Loose}}) {
		t.Errorf("nothing at the least: %+v, %v", l.Loosest.Cautions, err)
	}
	// As many times the pressed interference as the safety is where the first member
	// reaches its strength.
	in.Hub.Material, in.InterferenceMm = s235, 0.15
	r, _ = Solve(in)
	in.InterferenceMm = r.LossMm + r.EffectiveMm*min(r.HubSafety, r.ShaftSafety)
	if r, err = Solve(in); err != nil {
		t.Fatal(err)
	}
	near(t, "safety at yield", min(r.HubSafety, r.ShaftSafety), 1, 1e-9)
}

func TestSolveRefuses(t *testing.T) {
	good := joint(0, 50, 100, 0.03, 207e3)
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		says  string // in the refusal
		spoil func(*Input)
	}{
		{"interference 0 mm", func(in *Input) { in.InterferenceMm = 0 }},
		{"interference -0.01 mm", func(in *Input) { in.InterferenceMm = -0.01 }},
		{"interference NaN mm", func(in *Input) { in.InterferenceMm = nan }},
		{"hub inside diameter 50 mm does not fit its outside 50 mm", func(in *Input) { in.Hub.OutsideMm = 50 }},
		{"hub bore 0 mm and shaft 50 mm differ", func(in *Input) { in.Hub.InsideMm = 0 }},
		{"hub outside diameter +Inf mm is not", func(in *Input) { in.Hub.OutsideMm = inf }},
		{"shaft outside diameter 0 mm is not", func(in *Input) { in.Shaft.OutsideMm = 0 }},
		{"shaft inside diameter 50 mm does not fit its outside 50 mm", func(in *Input) { in.Shaft.InsideMm = 50 }},
		{"shaft inside diameter -1 mm", func(in *Input) { in.Shaft.InsideMm = -1 }},
		{"hub bore 50 mm and shaft 52 mm differ", func(in *Input) { in.Shaft.OutsideMm = 52 }},
		{"length NaN mm", func(in *Input) { in.LengthMm = nan }},
		{"no finite answer", func(in *Input) { in.LengthMm = 1e307 }}, // whose torque is over all numbers
		{"no finite answer", func(in *Input) { in.InterferenceMm = 1e306 }},
		{"friction 0 to 0", func(in *Input) { in.Friction = Friction{} }},
		{"friction 0.2 to 0.1", func(in *Input) { in.Friction = Friction{0.2, 0.1, ""} }},
		{"friction 0.12 to NaN", func(in *Input) { in.Friction.Max = nan }},
		{"roughness -1 and 0 um", func(in *Input) { in.HubRzUm = -1 }},
		{"roughness 0 and -1 um", func(in *Input) { in.ShaftRzUm = -1 }},
		{"no wall left between 50.1 mm and the joint at 50.1", func(in *Input) { in.Hub.InsideMm, in.Hub.OutsideMm, in.Shaft.OutsideMm = 50, 50.1, 50.2 }},
		{"no wall left between 100 mm and the joint at 49.85", func(in *Input) { in.Shaft.InsideMm, in.Hub.InsideMm = 49.9, 49.7 }},
		{"smoothing NaN", func(in *Input) { in.Smoothing = Smoothing(nan) }},
		{"hub: material", func(in *Input) { in.Hub.Material.EMPa = 0 }},
		{"shaft: material", func(in *Input) { in.Shaft.Material.StrengthMPa = inf }},
		{"shaft: material", func(in *Input) { in.Shaft.Material.Nu = 0.5 }},
		{"hub: material", func(in *Input) { in.Hub.Material.Nu = -0.01 }},
	} {
		in := good
		c.spoil(&in)
		if r, err := Solve(in); err == nil || !strings.Contains(err.Error(), c.says) || r.HubSafety != 0 {
			t.Errorf("%s: %+v, %v", c.says, r, err)
		}
	}
	cork := good // which does not widen when pressed
	cork.Hub.Material.Nu = 0
	if _, err := Solve(cork); err != nil {
		t.Error(err)
	}
	for _, lim := range [][2]float64{{0.03, 0.02}, {-0.02, 0}, {nan, 0.02}, {0.01, nan}, {math.Inf(-1), 0.02}, {0.01, inf}} {
		if l, err := Range(good, lim[0], lim[1]); err == nil {
			t.Errorf("Range%v: %+v, want an error", lim, l)
		}
	}
	if _, err := Solve(good); err != nil {
		t.Errorf("good input refused: %v", err)
	}
}

// TestFreeSurfaces: no stress stands on a free surface, the pressure on the joint;
// in a solid shaft it is the same throughout (Lamé).
func TestFreeSurfaces(t *testing.T) {
	t.Parallel()
	m := Material{Name: "steel", EMPa: 210_000, Nu: 0.3, StrengthMPa: 300}
	for _, bore := range []float64{0, 0.4, 30} {
		r, err := Input{
			Hub: Member{InsideMm: 50, OutsideMm: 80, Material: m}, Shaft: Member{InsideMm: bore, OutsideMm: 50, Material: m},
			InterferenceMm: 0.03, LengthMm: 40, Friction: Friction{Min: 0.1, Max: 0.2},
		}.solve()
		if err != nil {
			t.Fatal(err)
		}
		inner := 0.0
		if bore == 0 {
			inner = -r.PressureMPa
		}
		for what, got := range map[string][2]float64{
			"hub outside": {r.HubOutside.RadialMPa, 0}, "hub bore": {r.HubBore.RadialMPa, -r.PressureMPa}, "shaft outside": {r.ShaftOutside.RadialMPa, -r.PressureMPa}, "shaft bore": {r.ShaftBore.RadialMPa, inner},
		} {
			if got[0] != got[1] || r.PressureMPa < 1 {
				t.Errorf("bore %v: radial stress at the %s is %v, want %v", bore, what, got[0], got[1])
			}
		}
		if (r.BoreClosesMm > 0) != (bore > 0) {
			t.Errorf("a bore of %v closes by %v", bore, r.BoreClosesMm)
		}
	}
}

// TestSafety: a ductile material by von Mises; a brittle one by its tension, and by
// a third of its compression.
func TestSafety(t *testing.T) {
	t.Parallel()
	ductile, brittle := Material{StrengthMPa: 300}, Material{StrengthMPa: 300, Brittle: true}
	none := state(0, 0)
	for _, c := range []struct {
		m    Material
		a, b Stress
		want float64
	}{
		{ductile, state(100, 0), none, 3}, {ductile, state(-100, -100), none, 3}, {ductile, none, state(50, -50), 300 / (50 * math.Sqrt(3))},
		{brittle, state(100, -100), none, 3}, {brittle, state(-150, -30), none, 6}, {brittle, state(0.5, 0), none, 600}, {brittle, none, state(-0.9, 0), 1000}, {brittle, state(30, -300), state(60, 0), 3},
	} {
		near(t, "safety", c.m.safety(c.a, c.b), c.want, 1e-9)
	}
}
