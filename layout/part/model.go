// Package part works out one part of a job: its sizes with their limits, its
// faces, section, flat patterns, features, operations, checks and cutting file.
// Lengths are millimetres and angles degrees. It names the standards of its
// tables where it uses them; faults of the input are located parts.Errors.
package part

import (
	"cmp"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// Model is one part worked out, and on its way there: each step of resolve
// fills the fields that later ones read.
type Model struct {
	Job  *parts.Job
	Part *parts.Part
	W    words.Writer
	Errs parts.Errors
	Out  *plan.PartPlan

	Material *material.Material // nil if the material is not known
	Steps    []Step             // every cylinder: outside first, then inside
	Groups   []Group            // hole groups in printing order
	Radials  []Radial
	saddled  []madeSaddle
}

// step is one cylinder of a turned part, or the bore or round outline of a
// flat one, with its place on the axis and its limits.
type Step struct {
	Name         string
	Inside       bool
	FromMm, ToMm float64
	Size         Sized
	Undercut     *parts.Undercut
	Seat, Finish string
	Ref          int // feature number
}

// madeGroup is a hole group or slot group worked out.
type Group struct {
	Hole   *parts.HoleGroup // nil for slots
	Slot   *parts.FaceSlot
	Group  *plan.Group
	Ref    int
	Size   Made
	Face   parts.Face
	Points []plan.XY
}

// madeRadial is a radial feature worked out.
type Radial struct {
	In   *parts.Radial
	Rows []plan.RadialRow
	Size Made
	Ref  int
}

// Work works out one part of a job; its faults are in Errs.
func Work(job *parts.Job, p *parts.Part) *Model {
	r := &Model{Job: job, Part: p, W: words.Writer{Units: job.Units}}
	r.resolve()
	return r
}

func (r *Model) fault(pos parts.Pos, what, right string) {
	r.Errs = append(r.Errs, r.Job.Fault(pos, what, right))
}

func (r *Model) resolve() {
	p := r.Part
	r.Out = &plan.PartPlan{
		Name: p.Name.Value, Title: p.Title.Value, Kind: string(p.Kind), Quantity: p.Quantity,
		Material: p.Material.Value, Top: p.Top.Value, StockText: r.StockText(),
	}
	for _, n := range p.Notes {
		r.Out.Notes = append(r.Out.Notes, n.Value)
	}
	if p.Material.Value != "" {
		if m, err := material.Find(p.Material.Value); err == nil {
			r.Material = &m
		} else {
			r.Out.Notes = append(r.Out.Notes, "Material "+p.Material.Value+" has no cutting data here: mass and speeds are left out.")
		}
	}
	r.cylinders()
	r.section()
	r.faces()
	r.roundFeatures()
	r.developments() // before features, operations and mass
	r.features()
	r.Out.Overall = r.overall()
	r.Out.MassKg = r.mass()
	r.ladders()
	r.operations()
	r.checks()
	r.cautions()
}

// made is the finished size of a hole and how to get there.
type Made struct {
	Thread     *threads.Thread
	DrillMm    float64 // last drill, or tap drill, or the finished size
	FinishedMm float64
	Size       Sized
	Text       string // "M10 tap, drill Ø8.5"
}

// sized is a diameter with its limits.
type Sized struct {
	NominalMm    float64
	MinMm, MaxMm float64 // equal to nominal where nothing limits it
	Limited      bool
	Class        string // "H7", "±0.1", "light press", "M40x1.5", "ISO 2768-m", or ""
	Source       string
	Thread       *threads.Thread
	Press        parts.Ref
}

// sizeOf limits a size: by its own fit, else by the job's general tolerance.
func (r *Model) sizeOf(s parts.Size) Sized {
	out := Sized{NominalMm: s.Nominal.Mm, MinMm: s.Nominal.Mm, MaxMm: s.Nominal.Mm}
	if s.Thread.Value != "" {
		t, err := threads.Parse(s.Thread.Value)
		if err != nil {
			r.fault(s.Thread.Pos, "thread "+s.Thread.Value+" is not known", Plain(err))
			return out
		}
		out.Thread, out.Class, out.Source = &t, t.Designation, t.Source
		out.NominalMm, out.MinMm, out.MaxMm = t.MajorMm, t.MajorMm, t.MajorMm
		return out
	}
	f := s.Fit
	switch {
	case f.Class.Value != "":
		l, err := fits.Limit(s.Nominal.Mm, f.Class.Value)
		if err != nil {
			r.fault(f.Class.Pos, "fit "+f.Class.Value+" cannot be used for "+r.W.Dia(s.Nominal.Mm), Plain(err))
			return out
		}
		out.MinMm, out.MaxMm, out.Limited = l.MinMm, l.MaxMm, true
		out.Class, out.Source = l.Class, "ISO 286-1 "+l.Class
	case f.LightPress.Set():
		out.Class, out.Press = "light press", f.LightPress
		out.Source = "common practice, no source"
	case len(f.Limits) == 2:
		out.MinMm, out.MaxMm, out.Limited = f.Limits[0].Mm, f.Limits[1].Mm, true
		out.Class, out.Source = "limits", "drawing"
	case f.PlusMinus.Set():
		out.MinMm, out.MaxMm, out.Limited = s.Nominal.Mm-f.PlusMinus.Mm, s.Nominal.Mm+f.PlusMinus.Mm, true
		out.Class, out.Source = "±"+r.W.Size(f.PlusMinus.Mm), "drawing"
	case r.Part.Kind == parts.Tube:
		out.Source = "tube as bought" // its maker's tolerance, not the shop's
	default:
		out.general(r.Job.Tolerance.Value)
	}
	return out
}

// general applies the ISO 2768-1 class, where one is named and covers the size.
func (s *Sized) general(class string) {
	if class == "" {
		return
	}
	if pm, err := fits.General(s.NominalMm, class); err == nil {
		s.MinMm, s.MaxMm, s.Limited = s.NominalMm-pm, s.NominalMm+pm, true
		s.Source = "ISO 2768-" + class
	}
}

// length limits a plain length by the general tolerance.
func (r *Model) length(mm float64) Sized {
	s := Sized{NominalMm: mm, MinMm: mm, MaxMm: mm}
	s.general(r.Job.Tolerance.Value)
	return s
}

// limitsText is "90.000 – 90.035", or empty where nothing limits the size.
func (r *Model) limitsText(s Sized) string {
	switch {
	case s.Class == "light press":
		return "measured counterpart − " + r.W.Size(0.03) + " … − " + r.W.Size(0.01)
	case s.Limited:
		return r.W.Limits(s.MinMm, s.MaxMm)
	}
	return ""
}

// plain turns a library's error into the advice of a located one.
func Plain(err error) string {
	s := err.Error()
	for _, p := range []string{"fits: ", "threads: ", "cutting: "} {
		s = strings.TrimPrefix(s, p)
	}
	return s
}

// cylinders collects the steps of the part with their limits.
func (r *Model) cylinders() {
	p := r.Part
	if p.Profile != nil {
		for _, side := range []struct {
			steps  []parts.Step
			inside bool
		}{{p.Profile.Outside, false}, {p.Profile.Inside, true}} {
			z := 0.0
			for _, s := range side.steps {
				r.Steps = append(r.Steps, Step{
					Name: s.Name.Value, Inside: side.inside, FromMm: z, ToMm: z + s.Length.Mm,
					Size: r.sizeOf(s.Size), Undercut: s.Undercut,
					Seat: s.Seat.Value, Finish: s.Finish.Value,
				})
				z += s.Length.Mm
			}
		}
		return
	}
	if p.Outline != nil {
		if p.Outline.Shape == parts.CircleOutline {
			size := p.Outline.Size
			if size.Nominal.Mm == 0 {
				size.Nominal = p.Outline.Width
			}
			r.Steps = append(r.Steps, Step{Name: "outline", ToMm: p.Thickness.Mm, Size: r.sizeOf(size)})
		}
		if p.Bore != nil {
			r.Steps = append(r.Steps, Step{Name: "bore", Inside: true, ToMm: p.Thickness.Mm, Size: r.sizeOf(p.Bore.Size)})
		}
	}
}

// stepNamed finds a step by name, or nil.
func (r *Model) StepNamed(name string) *Step {
	for i := range r.Steps {
		if r.Steps[i].Name == name {
			return &r.Steps[i]
		}
	}
	return nil
}

// sides returns the outside and the inside steps.
func (r *Model) Sides() (outside, inside []*Step) {
	for i := range r.Steps {
		if r.Steps[i].Inside {
			inside = append(inside, &r.Steps[i])
		} else {
			outside = append(outside, &r.Steps[i])
		}
	}
	return outside, inside
}

// widest is the outside step of the largest diameter, the first of equals; nil
// for a part without round outside.
func (r *Model) widest() *Step {
	outside, _ := r.Sides()
	if len(outside) == 0 {
		return nil
	}
	return slices.MaxFunc(outside, func(a, b *Step) int { return cmp.Compare(a.Size.NominalMm, b.Size.NominalMm) })
}

// lengthMm is the part's size along its axis: plate thickness, or overall length.
func (r *Model) LengthMm() float64 {
	switch {
	case r.Part.Profile != nil:
		return r.Part.Profile.LengthMm()
	case r.Part.Frustum != nil:
		return r.Part.Frustum.Height.Mm
	case r.Part.Transition != nil:
		return r.Part.Transition.Height.Mm
	}
	return r.Part.Thickness.Mm
}

func (m Made) ThreadName() string {
	if m.Thread == nil {
		return ""
	}
	return m.Thread.Designation
}

// fitted tells whether a size has limits of its own, not only the job's general
// tolerance.
func (s Sized) Fitted() bool { return s.Limited && !strings.HasPrefix(s.Source, "ISO 2768") }
