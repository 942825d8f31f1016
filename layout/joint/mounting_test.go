package joint

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
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
