// Package layouttest has what the tests of the rooms over package part share: jobs
// read and worked out, and what stands and is found in them. In go files of a job or
// their texts; out come values of packages part, machine and plan, in their units. What
// cannot be read or worked out ends the test.
package layouttest

import (
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"testing"

	"centrepop/layout"
	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
	"centrepop/parts/seq"
)

// demos are those of the repository, from a package under layout.
const demos = "../../testdata"

// Main runs the tests of a package and lets rubbish lie longer: they work out hundreds of jobs, and a sixth of their time
// went to clearing up.
func Main(m *testing.M) {
	debug.SetGCPercent(400)
	m.Run()
}

// A rib of 100 × 60 × 10, two of it, and a plate of 400 × 200 × 20 to weld it on, in mm; a job of both as far as its joints,
// and a weld, to be ended by its place and a brace.
const (
	BasePart = "part: base\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [400, 200]}\n"
	RibPart  = "part: rib\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {polygon: {points: [[0, 0], [100, 0], [0, 60]]}}\n"
	RibJob   = "job: Rib\nunits: mm\nparts: [base.yaml, rib.yaml]\njoints:\n"
	RibWeld  = "  - {name: rib, weld: {part: rib.outline, to: base.outline, type: fillet, length: 100}"
)

// Write puts files of a small job into a folder of the test, and names its job.
func Write(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "job.yaml")
}

// Edited is a demo job with texts of its files replaced, each a file, what stands there and what is to.
func Edited(t testing.TB, job string, edits ...[3]string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Join(demos, job))); err != nil {
		t.Fatal(err)
	}
	for _, e := range edits {
		src, err := os.ReadFile(filepath.Join(dir, e[0]))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(src), e[1]) {
			t.Fatalf("%s has no %q", e[0], e[1])
		}
		if err := os.WriteFile(filepath.Join(dir, e[0]), []byte(strings.Replace(string(src), e[1], e[2], 1)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "job.yaml")
}

// EditedOnce is Edited with those of the edits whose text stands there once, after those before it.
func EditedOnce(t testing.TB, job string, edits ...[3]string) string {
	t.Helper()
	var some [][3]string
	files := map[string]string{}
	for _, e := range edits {
		if files[e[0]] == "" {
			src, err := os.ReadFile(filepath.Join(demos, job, e[0]))
			if err != nil {
				t.Fatal(err)
			}
			files[e[0]] = string(src)
		}
		if strings.Count(files[e[0]], e[1]) == 1 {
			files[e[0]] = strings.Replace(files[e[0]], e[1], e[2], 1)
			some = append(some, e)
		}
	}
	return Edited(t, job, some...)
}

// Worked are the small jobs in testdata/worked of package joint that are held whole, in every room.
var Worked = []string{"barrel", "drive", "feeder", "formed", "frame", "inch", "screw", "sieve", "stood", "vice", "winch"}

// Small is the file of one of Worked.
func Small(t testing.TB, name string) string {
	t.Helper()
	return golden.Job(t, filepath.Join("..", "joint", "testdata", "worked", name+".yaml"))
}

// Whole holds what a room writes of each of Worked, from its machine and its plan, to testdata/worked of that room.
func Whole(t *testing.T, says func(b *strings.Builder, m *machine.Machine, p *plan.Plan)) {
	t.Parallel()
	for _, name := range Worked {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			m, p := Load(t, Small(t, name))
			var b strings.Builder
			says(&b, m, p)
			golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), []byte(b.String()))
		})
	}
}

// job is a job as it is read.
func job(t testing.TB, path string) *parts.Job {
	t.Helper()
	in, err := read.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// Model is one part worked out, from its text.
func Model(t testing.TB, text string) *part.Model {
	t.Helper()
	in := job(t, Write(t, map[string]string{"p.yaml": text, "job.yaml": "job: J\nunits: mm\nparts: [p.yaml]\n"}))
	return part.Work(in, in.Parts[0])
}

// work is a job worked out.
func work(t testing.TB, path string) *layout.Worked {
	t.Helper()
	w, err := layout.Work(job(t, path))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// loaded are the demos that Load has worked out.
var loaded sync.Map

// Load is the machine of a job, with what is found in it, and its plan: of a demo worked out once for all, who read them alone.
func Load(t testing.TB, path string) (*machine.Machine, *plan.Plan) {
	t.Helper()
	work := func() *layout.Worked { return work(t, path) }
	if strings.HasPrefix(path, demos) {
		once, _ := loaded.LoadOrStore(path, sync.OnceValue(work))
		work = once.(func() *layout.Worked)
	}
	w := work()
	return w.Machine(), w.Plan
}

// Stood is Load without what is looked for in the machine: with what its places alone show.
func Stood(t testing.TB, path string) (*machine.Machine, *plan.Plan) {
	t.Helper()
	w := work(t, path)
	return Standing(w), w.Plan
}

// Standing is the machine of what is worked out, which is not looked at.
func Standing(w *layout.Worked) *machine.Machine {
	return machine.Of(w.Job, seq.Map(w.Job.Parts, func(p *parts.Part) *part.Model { return w.Model(p.Name.Value) }), w.Plan.Joints)
}

// pictured works out a demo once, by its name.
var pictured sync.Map

// Pictured are the joints of a demo by their names and its arrangement, worked out once for all: they are read alone.
func Pictured(t testing.TB, name string) (map[string]*plan.JointPlan, *plan.Arrangement) {
	t.Helper()
	once, _ := pictured.LoadOrStore(name, sync.OnceValue(func() *layout.Worked {
		w := work(t, filepath.Join(demos, name, "job.yaml"))
		w.Arrange()
		return w
	}))
	w, out := once.(func() *layout.Worked)(), map[string]*plan.JointPlan{}
	for _, j := range w.Plan.Joints {
		out[j.Name] = j
	}
	return out, w.Plan.Arrangement
}

// Body is what stands in a machine by its name.
func Body(t testing.TB, m *machine.Machine, id string) *assembly.Body {
	t.Helper()
	i := slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return b.ID == id })
	if i < 0 {
		t.Fatalf("no body %s", id)
	}
	return &m.Bodies[i]
}

// Boxed holds a body to the room that it stands in, to 1e-6 mm.
func Boxed(t testing.TB, m *machine.Machine, id string, low, high assembly.Vec) {
	t.Helper()
	b := Body(t, m, id).Box()
	if b.Low.Sub(low).Len() > 1e-6 || b.High.Sub(high).Len() > 1e-6 {
		t.Errorf("%s stands at %+v to %+v, want %+v to %+v", id, b.Low, b.High, low, high)
	}
}

// Found are the problems of some kinds in a small job, with their arguments.
func Found(t testing.TB, files map[string]string, kinds ...plan.ProblemKind) string {
	t.Helper()
	m, _ := Load(t, Write(t, files))
	return Argued(m, kinds...)
}

// Argued are the problems of a machine, of some kinds where they are given, with their arguments.
func Argued(m *machine.Machine, kinds ...plan.ProblemKind) string {
	var out []string
	for _, p := range m.Problems {
		if len(kinds) > 0 && !slices.Contains(kinds, p.Kind) {
			continue
		}
		args := []string{string(p.Kind)}
		for _, a := range p.Args {
			if a.Text == "" {
				a.Text = words.Trim(a.Value, 9)
			}
			args = append(args, a.Text)
		}
		out = append(out, strings.Join(args, " "))
	}
	return strings.Join(out, "; ")
}
