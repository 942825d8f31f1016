package review

import (
	"slices"
	"testing"

	"centrepop/parts"
)

// A stop of a joint holds both of its parts, though the joint bears the name of
// a third; a check, an accepted finding and one of no part hold none.
func TestStops(t *testing.T) {
	t.Parallel()
	part := func(name string) *parts.Part { return &parts.Part{Name: parts.Text{Value: name}, File: name + ".yaml"} }
	job := &parts.Job{File: "job.yaml", Parts: []*parts.Part{part("lid"), part("box"), part("cover"), part("pin")}}
	job.Joints = []*parts.Joint{{Name: parts.Text{Value: "cover"}, Bolt: &parts.BoltJoint{Through: parts.JointRef{Part: "box"}, Into: parts.JointRef{Part: "lid"}}}}
	at := func(file string) parts.Pos { return parts.Pos{File: file, Line: 1, Column: 1} }
	for _, tt := range []struct {
		found Finding
		want  []string
	}{
		{Finding{Severity: Stop, Part: "cover", Pos: at("job.yaml")}, []string{"lid", "box"}},
		{Finding{Severity: Stop, Part: "cover", Pos: at("cover.yaml")}, []string{"cover"}},
		{Finding{Severity: Stop, Part: "pin", Pos: at("pin.yaml")}, []string{"pin"}},
		{Finding{Severity: Check, Part: "pin", Pos: at("pin.yaml")}, nil},
		{Finding{Severity: Stop, Part: "pin", Pos: at("pin.yaml"), Accepted: true}, nil},
		{Finding{Severity: Stop, Pos: at("job.yaml")}, nil},
	} {
		var got []string
		for _, s := range Stops(job, []Finding{tt.found}) {
			got = append(got, s.Part)
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%v holds %v, want %v", tt.found, got, tt.want)
		}
	}
}
