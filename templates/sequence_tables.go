package templates

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// goOnTable lists what to check before the next joint.
func goOnTable(j *plan.JointPlan) table {
	t := table{title: "Check before going on", rowMm: 9, columns: []column{
		{head: "What", flex: true, bold: true},
		{head: "Wanted", flex: true, firm: 24},
		{head: "Limits", flex: true, bold: true},
		{head: "With", flex: true},
		{head: "Measured", align: Centre, least: 22},
		{head: "Right", align: Centre, least: 11, tick: true},
	}}
	for _, c := range j.Checks {
		t.rows = append(t.rows, []string{upperFirst(c.What), c.Wanted, c.Limits, c.Gauge, "", ""})
	}
	return t
}

func figureTable(j *plan.JointPlan) table {
	t := table{title: "All numbers of this joint", columns: []column{
		{head: "What", size: 2.9, firm: 40, flex: true},
		{head: "Value", flex: true, bold: true, size: 2.9, firm: 75},
		{head: "From", flex: true, size: smallMm, spare: true},
	}}
	for _, fig := range j.Figures {
		t.rows = append(t.rows, []string{upperFirst(fig.Label), fig.Value, fig.Source})
	}
	return t
}

func boltTable(j *plan.JointPlan, units parts.Units) table {
	t := table{title: "Bolts: lengths in " + lengthWord(units) + ", preload in kN, torque in N m", columns: []column{
		{head: "No. off", align: Centre, bold: true},
		{head: "Order", bold: true, size: 4.2, least: 24},
		{head: "Grip", flex: true, least: 30},
		{head: "Engaged / needed", align: Centre, size: 3.8},
		{head: "Spare thread", align: Centre, spare: true},
		{head: "Stands out", align: Centre, spare: true},
		{head: "Preload", align: Centre, spare: true},
		{head: "Torque", align: Centre, spare: true, bold: true, size: 3.8},
		{head: "Friction", align: Centre, spare: true},
	}}
	b := j.Bolt
	if b == nil {
		return t
	}
	var grip []string
	for _, g := range b.Grip {
		grip = append(grip, g.What+" "+short(g.ThickMm, units))
	}
	grip = append(grip, "together "+short(b.GripMm, units))
	row := []string{strconv.Itoa(b.Count), joined("\n", b.Ordered, classOf(b)), strings.Join(grip, "\n"),
		short(b.EngagementMm, units) + " / " + short(b.NeedMm, units), lengthIf(b.SpareMm, units), lengthIf(b.ProtrusionMm, units), "", "", ""}
	if b.TorqueNm > 0 {
		row[6] = trimmed(b.PreloadN/1000, 1) + "\n" + span2(b.PreloadRangeN.Min/1000, b.PreloadRangeN.Max/1000, 1)
		row[7] = trimmed(b.TorqueNm, 0) + "\n" + span2(b.TorqueRangeNm.Min, b.TorqueRangeNm.Max, 0)
		row[8] = "K = " + trimmed(b.K, 3)
	}
	t.rows = append(t.rows, row)
	return t
}

// classOf is a bolt's class and head; a stud's has neither.
func classOf(b *plan.BoltPlan) string {
	if b.Class == "" {
		return "stud"
	}
	return joined(" ", b.Class, b.Head)
}

// lengthIf writes a length, nothing where there is none.
func lengthIf(mm float64, units parts.Units) string {
	if mm <= 0 {
		return ""
	}
	return short(mm, units)
}

// trapTable lists the wrong ways in which the holes still match.
func trapTable(j *plan.JointPlan) table {
	t := table{
		title:   "Traps: it also fits like this, and is wrong",
		columns: []column{{head: "Turned clockwise by", align: Centre, bold: true, size: 4.2, firm: 52}, {head: "Then", flex: true}},
	}
	for _, trap := range j.Traps {
		turn := degrees(trap.TurnDeg)
		if trap.Flip {
			turn += ", wrong way round"
			if trap.TurnDeg == 0 {
				turn = "wrong way round"
			}
		}
		var lines, loose []string
		for _, out := range trap.Out {
			if name, ok := strings.CutSuffix(out, " elsewhere (no rule says where it belongs)"); ok {
				loose = append(loose, name)
				continue
			}
			lines = append(lines, upperFirst(withHour(out)))
		}
		if len(loose) > 0 {
			lines = append(lines, "Elsewhere, with no rule to say where: "+strings.Join(loose, ", "))
		}
		then := strings.Join(lines, "\n")
		if i := slices.IndexFunc(t.rows, func(row []string) bool { return row[1] == then }); i >= 0 {
			t.rows[i][0] += "\n" + turn
			continue
		}
		t.rows = append(t.rows, []string{turn, then})
	}
	return t
}

var clockAngle = regexp.MustCompile(` at ([0-9.]+)°`)

// withHour says the first clock angle of a text by the hours too.
func withHour(text string) string {
	m := clockAngle.FindStringSubmatchIndex(text)
	if m == nil {
		return text
	}
	deg, err := strconv.ParseFloat(text[m[2]:m[3]], 64)
	if err != nil {
		return text
	}
	return text[:m[1]] + " (" + oclock(deg) + ")" + text[m[1]:]
}

// remedies are those that no step of the joint has said already.
func remedies(j *plan.JointPlan) []string {
	var out []string
	for _, r := range j.Remedies {
		if !slices.ContainsFunc(j.Steps, func(s plan.JointStep) bool { return slices.Contains(s.Do, r) }) {
			out = append(out, r)
		}
	}
	return out
}

// oclock says a clock angle by the hours, "4 o'clock"; between hours the
// nearer half, "half past 4".
func oclock(deg float64) string {
	halves := int(math.Round(deg/15)) % 24
	hour := halves / 2
	if hour == 0 {
		hour = 12
	}
	if halves%2 == 1 {
		return fmt.Sprintf("half past %d", hour)
	}
	return fmt.Sprintf("%d o’clock", hour)
}
