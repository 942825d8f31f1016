package sequence

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

func boltTable(j *plan.JointPlan, units parts.Units) draw.Table {
	t := draw.Table{Title: "Bolts: lengths in " + figures.LengthWord(units) + ", preload in kN, torque in N m", Columns: []draw.Column{
		{Head: "No. off", Align: draw.Centre, Bold: true},
		{Head: "Order", Bold: true, Size: 4.2, Least: 24},
		{Head: "Grip", Flex: true, Least: 30},
		{Head: "Engaged / needed", Align: draw.Centre, Size: 3.8},
		{Head: "Spare thread", Align: draw.Centre, Spare: true},
		{Head: "Stands out", Align: draw.Centre, Spare: true},
		{Head: "Preload", Align: draw.Centre, Spare: true},
		{Head: "Torque", Align: draw.Centre, Spare: true, Bold: true, Size: 3.8},
		{Head: "Friction", Align: draw.Centre, Spare: true},
	}}
	b := j.Bolt
	if b == nil {
		return t
	}
	var grip []string
	for _, g := range b.Grip {
		grip = append(grip, g.What+" "+figures.Short(g.ThickMm, units))
	}
	grip = append(grip, "together "+figures.Short(b.GripMm, units))
	row := []string{strconv.Itoa(b.Count), figures.Joined(" ", b.Ordered, classOf(b)), strings.Join(grip, ", "),
		figures.Short(b.EngagementMm, units) + " / " + figures.Short(b.NeedMm, units), lengthIf(b.SpareMm, units), lengthIf(b.ProtrusionMm, units), "", "", ""}
	if b.TorqueNm > 0 {
		row[6] = figures.Trimmed(b.PreloadN/1000, 1) + "\n" + span2(b.PreloadRangeN.Min/1000, b.PreloadRangeN.Max/1000, 1)
		row[7] = figures.Trimmed(b.TorqueNm, 0) + " " + b.Threads + "\n" + figures.Trimmed(b.OtherTorqueNm, 0) + " " + b.OtherThreads
		row[8] = "K = " + figures.Trimmed(b.K, 3)
	}
	t.Rows = append(t.Rows, row)
	return t
}

// classOf is a bolt's class and head; a stud's has neither.
func classOf(b *plan.BoltPlan) string {
	if b.Class == "" {
		return "stud"
	}
	return figures.Joined(" ", b.Class, b.Head)
}

// lengthIf writes a length, nothing where there is none.
func lengthIf(mm float64, units parts.Units) string {
	if mm <= 0 {
		return ""
	}
	return figures.Short(mm, units)
}

// trapLine says in a line which wrong ways of putting it together also fit, and
// what would then be out of place.
func trapLine(j *plan.JointPlan) string {
	var turns, round, outs []string
	for _, trap := range j.Traps {
		if turn := figures.Degrees(trap.TurnDeg); trap.OtherWay {
			round = append(round, turn)
		} else {
			turns = append(turns, turn)
		}
		for _, out := range trap.Out {
			name, loose := strings.CutSuffix(out, " elsewhere (no rule says where it belongs)")
			if loose {
				out = name + " elsewhere"
			}
			if out = withHour(out); !slices.Contains(outs, out) {
				outs = append(outs, out)
			}
		}
	}
	var ways []string
	if len(turns) > 0 {
		ways = append(ways, "turned by "+strings.Join(turns, ", "))
	}
	if len(round) > 0 {
		ways = append(ways, "the wrong way round at "+strings.Join(round, ", "))
	}
	if len(ways) == 0 {
		return ""
	}
	const most = 4
	if n := len(outs); n > most {
		outs = append(outs[:most], "and "+strconv.Itoa(n-most)+" more")
	}
	return "It also fits " + strings.Join(ways, ", and ") + ", and is wrong: " + strings.Join(outs, "; ") + "."
}

var clockAngle = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(` at ([0-9.]+)°`) })

// withHour says the first clock angle of a text by the hours too.
func withHour(text string) string {
	m := clockAngle().FindStringSubmatchIndex(text)
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
