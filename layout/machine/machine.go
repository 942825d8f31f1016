// Package machine finds what the machine in space shows, over the bodies that
// package stand puts in their places: parts in one another, what comes together
// and by which way, what can be put together wrongly, what does not touch, what
// covers an opening or a hole, and how the machine stands.
//
// In go a checked job, its parts worked out and its joints; out come problems as
// values and answers to who asks, in millimetres. The frame is that of package
// stand. It follows no standard of its own.
package machine

import (
	"math"
	"sync"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
)

// inf is further than anything lies.
var inf = math.Inf(1)

// Machine is the job in space, and what is found in it.
type Machine struct {
	*stand.Stand

	ways        [][]plan.Trap      // of each joint
	overlapping map[[2]string]bool // bodies that lie in one another, either way round
	staged      sync.Once
	stage       *Stage
}

// Of stands a job in space. The joints are those of its plan.
func Of(job *parts.Job, models []*part.Model, joints []*plan.JointPlan) *Machine {
	return &Machine{Stand: stand.Of(job, models, joints), overlapping: map[[2]string]bool{}}
}
