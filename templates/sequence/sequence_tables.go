package sequence

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

// trapLine says in a line which wrong ways of putting it together also fit, how one
// sees the right one, and what else would then be out of place.
func trapLine(j *plan.JointPlan) string {
	var turns, round, edges, copies, rights, outs []string
	for _, trap := range slices.Concat(j.Traps, j.Ways) {
		switch turn := words.Angle(trap.TurnDeg); {
		case trap.Instead != "":
			copies = append(copies, trap.Instead)
			continue
		case len(trap.Out) == 0:
			continue // it changes nothing
		case trap.Face != "":
			edges = append(edges, trap.Face)
		case trap.OtherWay:
			round = append(round, turn)
		default:
			turns = append(turns, turn)
		}
		for _, out := range trap.Out {
			list, text := &outs, out.What
			if out.Clocked {
				list, text = &rights, text+" at "+words.Angle(out.RightDeg)+" ("+oclock(out.RightDeg)+")"
			}
			*list = seq.Add(*list, text)
		}
	}
	instead := listed("It also goes together with ", copies, " and ", " instead.")
	ways := words.Join(", and ", listed("turned by ", turns, ", ", ""), listed("the wrong way round at ", round, ", ", ""), listed("on its ", edges, " or its ", ""))
	if ways == "" {
		return instead
	}
	if len(j.Traps) == 0 && j.Bolt == nil { // it is fixed for good
		return words.Join(" ", "It also fits "+ways+", wrongly: look again before it is fixed.", instead)
	}
	mark := words.When(len(j.Traps) == 0, "Once all lies as its place and the picture say, scribe a line across both.")
	return words.Join(" ", "It also fits "+ways+", and is wrong then.", some("Right is ", rights), some("Out of place then: ", outs), instead, mark)
}

// listed are texts after a head and before a tail, apart by between; empty for none.
func listed(head string, list []string, between, tail string) string {
	return words.When(len(list) != 0, head+strings.Join(list, between)+tail)
}

// some is a sentence of the first of a list and how many more there are, empty for none.
func some(head string, list []string) string {
	const most = 4
	if n := len(list); n > most {
		list = append(list[:most:most], "and "+strconv.Itoa(n-most)+" more")
	}
	return listed(head, list, "; ", ".")
}

// remedies are those that no step of the joint has said already.
func remedies(j *plan.JointPlan) []string {
	return seq.Keep(j.Remedies, func(r string) bool {
		return !slices.ContainsFunc(j.Steps, func(s plan.JointStep) bool { return slices.Contains(s.Do, r) })
	})
}

// oclock says a clock angle by the hours, "4 o'clock"; between hours the
// nearest quarter, "half past 4".
func oclock(deg float64) string {
	quarters := int(math.Round(deg/7.5)) % 48
	hour := cmp.Or(quarters/4, 12)
	switch quarters % 4 {
	case 1:
		return fmt.Sprintf("quarter past %d", hour)
	case 2:
		return fmt.Sprintf("half past %d", hour)
	case 3:
		return fmt.Sprintf("quarter to %d", hour%12+1)
	}
	return fmt.Sprintf("%d o’clock", hour)
}
