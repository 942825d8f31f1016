package sequence

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

// equalRuns gathers joints that follow one another and are the same work: equal
// parts on the same part, the same steps, checks and numbers. What only the last
// of them adds, such as finishing the part that all are welded to, ends a run.
func equalRuns(joints []*plan.JointPlan) [][]*plan.JointPlan {
	var out [][]*plan.JointPlan
	for _, j := range joints {
		if n := len(out); n > 0 {
			last := out[n-1]
			open := len(last[len(last)-1].Steps) == len(last[0].Steps) || j.Frame != "" && last[len(last)-1].Name != j.Frame
			if sameWork(last[0], j) && open {
				out[n-1] = append(last, j)
				continue
			}
		}
		out = append(out, []*plan.JointPlan{j})
	}
	return out
}

// sameWork tells whether two joints differ in nothing but which of several
// equal parts they join, and what b adds at its end.
func sameWork(a, b *plan.JointPlan) bool {
	if a.Frame != "" && a.Frame == b.Frame {
		return len(a.Problems)+len(b.Problems) == 0 && reflect.DeepEqual(a.Weld, b.Weld)
	}
	if a.Kind != b.Kind || a.A.Part != b.A.Part || a.B.Part != b.B.Part || a.A.Feature != b.A.Feature || a.B.Feature != b.B.Feature ||
		len(a.Placed)+len(b.Placed)+len(a.Problems)+len(b.Problems) > 0 || len(a.Steps) > len(b.Steps) || len(a.Checks) > len(b.Checks) {
		return false
	}
	return reflect.DeepEqual(unplaced(a.Weld, b.Weld), unplaced(b.Weld, a.Weld)) && reflect.DeepEqual(unnamed(a.Bolt), unnamed(b.Bolt)) && reflect.DeepEqual(a.Press, b.Press) &&
		slices.Equal(lines(a, a), lines(b, a))
}

// unplaced is a weld without the sides of its piece and their length, which are told with its place, and
// without what it finishes where the other of two finishes nothing.
func unplaced(w, other *plan.WeldPlan) *plan.WeldPlan {
	if w == nil || other == nil {
		return w
	}
	out := *w
	out.Corners, out.CornerMm, out.Flush, out.LengthMm, out.DepositedKg = nil, 0, nil, 0, 0
	if len(other.Finish) == 0 {
		out.Finish = nil
	}
	return &out
}

// unnamed are the bolts of a joint without the names of what they clamp.
func unnamed(b *plan.BoltPlan) *plan.BoltPlan {
	if b == nil {
		return nil
	}
	out := *b
	out.Grip = slices.Clone(b.Grip)
	for i := range out.Grip {
		out.Grip[i].What = ""
	}
	return &out
}

// lines are what is to do and to check as far as another does, said alike of equal pieces.
func lines(j, far *plan.JointPlan) []string {
	var out []string
	for _, s := range j.Steps[:len(far.Steps)] {
		out = append(out, s.Title, s.Hold, s.Caution, s.Alike)
	}
	for _, c := range j.Checks[:len(far.Checks)] {
		out = append(out, c.What, c.Wanted, c.Limits, c.Gauge)
	}
	return seq.Map(out, strings.NewReplacer(j.A.Title, j.A.PartTitle, j.B.Title, j.B.PartTitle).Replace)
}

// stepsWord is "Step 7" or "Steps 17–20".
func stepsWord(run []*plan.JointPlan) string {
	if len(run) == 1 {
		return "Step " + strconv.Itoa(run[0].N)
	}
	return "Steps " + words.Span(run[0].N, len(run))
}

// titleOf is the title of a step, of a frame with what is done.
func titleOf(run []*plan.JointPlan) string {
	return words.Either(frameRun(run), runTitle(run)+": tack all corners, check, weld", runTitle(run))
}

func namesOf(run []*plan.JointPlan) []string {
	return seq.Map(run, func(j *plan.JointPlan) string { return j.Name })
}

// runTitle is the title of a joint, of a run with all its pieces.
func runTitle(run []*plan.JointPlan) string {
	if frameRun(run) {
		return "Frame of " + strings.Join(barsOf(run), ", ")
	}
	if len(run) == 1 {
		return run[0].Title
	}
	return words.Capital(string(run[0].Kind)) + " " + joined(run) // one axis in common makes no run: they are welded or bolted
}

// joined names what a run joins, each side by its copies.
func joined(run []*plan.JointPlan) string {
	return copiesOf(run, func(k *plan.JointPlan) plan.JointEnd { return k.A }) + " to " + copiesOf(run, func(k *plan.JointPlan) plan.JointEnd { return k.B })
}

// copiesOf names one side of a run by its copies, each once: "Gusset 1, 2 and 3".
func copiesOf(run []*plan.JointPlan, side func(*plan.JointPlan) plan.JointEnd) string {
	copies := seq.Add(nil, seq.Map(run, func(k *plan.JointPlan) string { return strconv.Itoa(side(k).Copy) })...)
	first, n := side(run[0]), len(copies)
	if n == 1 {
		return first.Title
	}
	return first.PartTitle + " " + strings.Join(copies[:n-1], ", ") + " and " + copies[n-1]
}

// pieceWords are the piece that a run adds, or each of several.
func pieceWords(run []*plan.JointPlan) string {
	if len(run) > 1 {
		return "each piece"
	}
	return run[0].A.Title
}

// pieceWord heads the column of one of several equal pieces.
func pieceWord(run []*plan.JointPlan, j *plan.JointPlan, alone string) string {
	if len(run) == 1 {
		return alone
	}
	if frameRun(run) {
		return "corner " + strconv.Itoa(slices.Index(run, j)+1)
	}
	return "pc " + strconv.Itoa(j.A.Copy)
}

// frameRun tells whether a run is the corners of a frame.
func frameRun(run []*plan.JointPlan) bool { return len(run) > 1 && run[0].Frame != "" }

// barsOf are the bars that a frame's corners join, each once.
func barsOf(run []*plan.JointPlan) []string {
	var out []string
	for _, j := range run {
		out = seq.Add(out, j.B.Title, j.A.Title)
	}
	return out
}
