package part

import "centrepop/parts"

// faults collects what is wrong with the input.
type faults struct {
	job  *parts.Job
	list parts.Errors
}

func (f *faults) fault(pos parts.Pos, what, right string) {
	f.list = append(f.list, f.job.Fault(pos, what, right))
}
