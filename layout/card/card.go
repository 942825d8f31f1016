// Package card fills the sheets at the end of a packet: the first run, the
// upkeep of the machine, the page for the electrician, and the sources of the
// tables.
//
// In: a job, and its plan with the joints worked out and arranged. Out: values of package
// plan, written in the job's units. What a joint knows (grease, end play,
// torque) comes from it and what it does not know from the job; of a motor
// only the torque at its output is computed. Sources: bearing makers' rule for grease, ISO 898-1 and
// SAE J429 behind the torques of package bolts.
package card

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// Fill works out the cards that a job asks for, and the sources of the tables.
// Joints that the plan lacks are left out: its faults say why.
func Fill(pl *plan.Plan, job *parts.Job) {
	c := cards{words.Writer{Units: job.Units}, pl, job}
	pl.FirstRun, pl.Upkeep, pl.Motor = c.firstRun(), c.upkeep(), c.motor()
	pl.Sources = sources(job)
}

type cards struct {
	w   words.Writer
	pl  *plan.Plan
	job *parts.Job
}
