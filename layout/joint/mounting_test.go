package joint

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// The rule for abutments stays inside what a maker allows: nothing it lets
// touch the small end is over da, no shoulder it asks for is under db, the
// cup's shoulder lies between the two Da (published in whole millimetres), and a ring on the thin side is over Db,
// or 1 mm under it: Db clears the cage, and there is none while a cup is pressed.
func TestAbutmentRule(t *testing.T) {
	t.Parallel()
	file, err := os.Open("../../testdata/reference/bearing_abutments.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 32 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		v := make([]float64, 9)
		for i := 1; i < 9; i++ {
			if v[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		d, D, da, db, cupLo, cupHi, faceDb := v[1], v[2], v[4], v[5], v[6], v[7], v[8]
		j := bearingOf(d, D, 0, 0)
		p := &plan.BearingPlan{}
		j.abutments(p)
		if !p.ByRule || p.SmallEndMaxMm > da || p.SmallEndMaxMm < d+1.5 {
			t.Errorf("%s: up to %v before the small end, the maker allows %v", row[0], p.SmallEndMaxMm, da)
		}
		if p.LargeEndMinMm < db || p.LargeEndMinMm > db+3 {
			t.Errorf("%s: shoulder %v at the large end, the maker asks %v", row[0], p.LargeEndMinMm, db)
		}
		if middle := (p.CupBackMinMm + p.CupBackMaxMm) / 2; middle < cupLo-0.5 || middle > cupHi+0.5 {
			t.Errorf("%s: cup shoulder around %v, the maker has %v to %v", row[0], middle, cupLo, cupHi)
		}
		if p.CupFaceMinMm < faceDb-1 || p.CupFaceMinMm > D-1 {
			t.Errorf("%s: ring of %v inside, the maker asks %v", row[0], p.CupFaceMinMm, faceDb)
		}
	}
}

// The shoulders of ball bearings at the least are da and Da of makers' tables, from memory: 6000 12 and 24, 6004 23.2 and 38.8, 6008 44.6 and
// 63.4, 6011 61 and 84, 6020 107 and 143, 6204 25.6 and 41.4, 6214 79 and 116, 6304 27 and 45, 6310 61 and 99, 6314 82 and 138, 6320 114 and
// 201; at the most three tenths of the section. Of a bearing that no table has a fifth of it. Sleeves press on a fifth of it, to a tenth of a millimetre.
func TestBallAbutments(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		bearing                    string
		d, D, least, most          float64 // of the shaft
		housing, open              float64
		in, out, cupIn, cupOut, um float64 // of the sleeve and the ring; how much narrower than its width it may be
		rule                       bool
	}{
		{"6000-2RS", 10, 26, 12, 14.8, 24, 21.2, 10.5, 13.2, 22.8, 25, 120, false}, {"6004", 20, 42, 23.2, 26.6, 38.8, 35.4, 20.5, 24.4, 37.6, 41, 120, false}, {"6008", 40, 68, 44.6, 48.4, 63.4, 59.6, 40.5, 45.6, 62.4, 67, 120, false}, {"6011", 55, 90, 61, 65.5, 84, 79.5, 55.5, 62, 83, 89, 150, false},
		{"6020", 100, 150, 107, 115, 143, 135, 100.5, 110, 140, 149, 200, false}, {"6204", 20, 47, 25.6, 28.1, 41.4, 38.9, 20.5, 25.4, 41.6, 46, 120, false}, {"6214", 70, 125, 79, 86.5, 116, 108.5, 70.5, 81, 114, 124, 150, false}, {"6304", 20, 52, 27, 29.6, 45, 42.4, 20.5, 26.4, 45.6, 51, 120, false}, {"6310", 50, 110, 61, 68, 99, 92, 50.5, 62, 98, 109, 120, false},
		{"6314", 70, 150, 82, 94, 138, 126, 70.5, 86, 134, 149, 150, false}, {"6320", 100, 215, 114, 134.5, 201, 180.5, 100.5, 123, 192, 214, 200, false}, {"own", 50.5, 80.5, 56.5, 59.5, 74.5, 71.5, 51, 56.5, 74.5, 79.5, 150, true}, {"own", 120.5, 180.5, 132.5, 138.5, 168.5, 162.5, 121, 132.5, 168.5, 179.5, 250, true},
		{"own", 180, 280, 200, 210, 260, 250, 180.5, 200, 260, 279, 250, true}, {"own", 180.5, 280.5, 200.5, 210.5, 260.5, 250.5, 181, 200.5, 260.5, 279.5, 300, true},
	} {
		p := &plan.BearingPlan{Bearing: c.bearing, BoreMm: c.d, OutsideMm: c.D}
		(&joint{w: words.Writer{Units: parts.Millimetres}}).ballAbutments(p)
		got := []float64{p.LargeEndMinMm, p.SmallEndMaxMm, p.CupBackMaxMm, p.CupBackMinMm, p.ConeSleeveInMm, p.ConeSleeveOutMm, p.CupRingInMm, p.CupRingOutMm, 1000 * narrowerMm(c.d)}
		for i, want := range []float64{c.least, c.most, c.housing, c.open, c.in, c.out, c.cupIn, c.cupOut, c.um} {
			if !geom.Alike(got[i], want) || p.ByRule != c.rule {
				t.Errorf("%s: %v in place %d of %v", c.bearing, want, i, got)
			}
		}
	}
}

// What the maker says goes before the rule, each value for itself.
func TestAbutmentsOfTheMaker(t *testing.T) {
	t.Parallel()
	p := &plan.BearingPlan{}
	bearingOf(40, 80, 49, 0).abutments(p)
	if p.SmallEndMaxMm != 49 || p.LargeEndMinMm != 48.4 || !p.ByRule {
		t.Errorf("da given: %+v", p)
	}
	j := bearingOf(40, 80, 49, 47)
	j.in.Bearing.CupDa, j.in.Bearing.CupDb = length(69), length(74)
	p = &plan.BearingPlan{}
	j.abutments(p)
	if p.LargeEndMinMm != 47 || p.CupBackMinMm != 69 || p.CupFaceMinMm != 74 || p.ByRule {
		t.Errorf("all given: %+v", p)
	}
}

// TestPushTools: a sleeve half a millimetre over the bore and a ring one under the outside, to a tenth; on the end of the cone that follows,
// and none where the cone slides on.
func TestPushTools(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		um   float64
		nut  *part.Step
		want [4]float64
	}{{0.5, nil, [4]float64{32.3, 40, 68, 72.4}}, {20, &part.Step{}, [4]float64{32.3, 43, 68, 72.4}}, {0, nil, [4]float64{0, 0, 68, 72.4}}} {
		p := &plan.BearingPlan{BoreMm: 31.76, OutsideMm: 73.431, SmallEndMaxMm: 40, LargeEndMinMm: 43, CupFaceMinMm: 68, ConeFitUm: plan.Range{Max: c.um}}
		bearingOf(31.76, 73.431, 0, 0).pushTools(p, mounting{nut: c.nut})
		if got := [4]float64{p.ConeSleeveInMm, p.ConeSleeveOutMm, p.CupRingInMm, p.CupRingOutMm}; got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

func bearingOf(d, outside, da, db float64) *joint {
	return &joint{w: words.Writer{Units: parts.Millimetres}, in: &parts.Joint{Kind: parts.BearingKind, Bearing: &parts.BearingJoint{
		Bore: length(d), Outside: length(outside), Da: length(da), Db: length(db)}}}
}

func length(mm float64) parts.Length {
	if mm == 0 {
		return parts.Length{}
	}
	return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}}
}

// A pair is named by where the backs of the cups look (ISO 5593 terms).
// The lock nuts N-06 and N-07 run on 1.173-18 and 1.376-18 (ABMA 8.2); a washer of that number is none.
func TestNutOrderedByItsNumber(t *testing.T) {
	t.Parallel()
	for item, want := range map[string]bool{"bearing nut N-06 with lock washer W-06": true, "N06": true, "bearing nut N-07": false, "nut AN-060": false, "lock washer W-06": false, "nut 1.173-18 UNS": true} {
		s := &shop{job: &parts.Job{Loose: []parts.Loose{{Item: parts.Text{Value: item}, As: parts.ANut}}}}
		if got := s.nutOrdered("1.173-18 UNS") != nil; got != want {
			t.Errorf("%s: %v", item, got)
		}
	}
}

func TestArrangement(t *testing.T) {
	t.Parallel()
	at := func(mm, dir float64) mounting { return mounting{cupBackMm: mm, cupDir: dir} }
	for _, c := range []struct {
		m, n mounting
		want string
	}{
		{at(26, 1), at(94, -1), "back to back"},
		{at(94, -1), at(26, 1), "back to back"},
		{at(0, -1), at(100, 1), "face to face"},
		{at(100, 1), at(0, -1), "face to face"},
		{at(26, 1), at(94, 1), "tandem"},
		{at(26, -1), at(94, -1), "tandem"},
	} {
		if got := arrangement(c.m, c.n); string(got) != c.want {
			t.Errorf("%v and %v: %s, want %s", c.m, c.n, got, c.want)
		}
	}
}

// TestMount: a cup stands on the one shoulder of its bore, 20 to 50, or on the spigot of a cover where there is none, and a cone the
// other way: on the shoulder of its seat, 0 to 30, else on a nut. The cover's way goes before where the shaft has a shoulder for that
// alone, but not before a nut beside the seat. A bearing that goes the other way round has its cone so.
func TestMount(t *testing.T) {
	t.Parallel()
	seat, bore := cylinder(0, 30, 40, false), cylinder(20, 50, 80, true)
	front, behind := cylinder(0, 20, 60, true), cylinder(50, 80, 60, true)
	high, low := cylinder(-20, 0, 50, false), cylinder(30, 60, 50, false) // shoulders of the shaft before and behind the seat
	thread := func(from, to float64) part.Step {
		s := cylinder(from, to, 38, false)
		s.Size.Thread = &threads.Thread{}
		return s
	}
	lid := func(dir, mm float64) mounting {
		return mounting{cupDir: dir, cupBackMm: mm, cupShoulder: &behind, lid: &joint{}}
	}
	for _, c := range []struct {
		name         string
		bore, shaft  []part.Step
		lid          mounting
		other        bool
		cup, cupMm   float64 // 0 where nothing holds the cup
		cone, coneMm float64
		fixed, nut   bool
	}{
		{"no shoulder", nil, []part.Step{high}, mounting{}, false, 0, 0, 0, 0, false, false}, {"one at either end", []part.Step{front, behind}, []part.Step{high}, mounting{}, false, 0, 0, 0, 0, false, false},
		{"at either end and a cover", []part.Step{front, behind}, []part.Step{high}, lid(1, 50), false, 0, 0, 0, 0, false, false},
		{"behind", []part.Step{behind}, []part.Step{high}, mounting{}, false, 1, 50, -1, 0, true, false}, {"in front", []part.Step{front}, []part.Step{low}, mounting{}, false, -1, 20, 1, 30, true, false},
		{"the other way round", []part.Step{behind}, []part.Step{low}, mounting{}, true, 1, 50, 1, 30, true, false}, {"a cover alone", nil, []part.Step{low}, lid(-1, 18), false, -1, 18, 1, 30, true, false},
		{"on a nut", []part.Step{behind}, []part.Step{thread(-30, 0)}, mounting{}, false, 1, 50, -1, 0, false, true}, {"on nothing", []part.Step{behind}, []part.Step{thread(30, 50)}, mounting{}, false, 1, 50, -1, 0, false, false},
		{"the shaft has a shoulder for the cover", []part.Step{behind}, []part.Step{low}, lid(-1, 18), false, -1, 18, 1, 30, true, false}, {"for both", []part.Step{behind}, []part.Step{high, low}, lid(-1, 18), false, 1, 50, -1, 0, true, false},
		{"for neither", []part.Step{behind}, nil, lid(-1, 18), false, 1, 50, -1, 0, false, false}, {"and a nut beside the seat", []part.Step{behind}, []part.Step{low, thread(-30, 0)}, lid(-1, 18), false, 1, 50, -1, 0, false, true}, {"and a nut apart from it", []part.Step{behind}, []part.Step{low, thread(-30, -10)}, lid(-1, 18), false, -1, 18, 1, 30, true, false},
		{"a cover on the same side", []part.Step{behind}, []part.Step{low}, lid(1, 48), false, 1, 50, -1, 0, false, false},
	} {
		b := &joint{in: &parts.Joint{Kind: parts.BearingKind, OtherWay: c.other, Bearing: &parts.BearingJoint{}}, a: stepped(parts.Part{}, append([]part.Step{seat}, c.shaft...)...), b: stepped(parts.Part{}, append([]part.Step{bore}, c.bore...)...), ofBearing: ofBearing{lid: c.lid}}
		m, held := b.mount()
		if held != (c.cup != 0) || m.cupDir != c.cup || m.cupBackMm != c.cupMm || m.coneDir != c.cone || m.coneBackMm != c.coneMm || (m.fixed != nil) != c.fixed || (m.nut != nil) != c.nut {
			t.Errorf("%s: %v, %+v", c.name, held, m)
		}
	}
}
