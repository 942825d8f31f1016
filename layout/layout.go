// Package layout computes everything a sheet prints: it resolves a checked
// parts.Job into a Plan. It is pure: no files, no clock, no drawing.
//
// Lengths are millimetres and angles degrees inside; the strings of the Plan
// are written in the job's units. Clock angles are 0° at TOP and run clockwise
// looking at the named face; x is to the right, y up, and the origin is the
// part's axis (turned parts) or the centre of its outline.
//
// What the YAML reader cannot know (whether a thread or an ISO 286 class
// exists) is refused here, with the same located parts.Error.
//
// The sub-packages (fits, threads, cutting, ...) are small libraries that name
// their standards and can be used alone; this package puts them together.
package layout

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

// Resolve works out a job. The error is a parts.Errors with every fault of
// every part, each pointing at the input.
func Resolve(job *parts.Job) (*plan.Plan, error) {
	out := &plan.Plan{
		Job:       job.Name.Value,
		Revision:  job.Revision.Value,
		Date:      job.Date.Value,
		DrawnBy:   job.DrawnBy.Value,
		CheckedBy: job.CheckedBy.Value,
		Units:     job.Units,
		Paper:     job.Paper,
	}
	if job.Tolerance.Value != "" {
		out.Tolerance = "ISO 2768-" + job.Tolerance.Value
	}
	for _, n := range job.Notes {
		out.Notes = append(out.Notes, n.Value)
	}
	var errs parts.Errors
	var rs []*resolver
	for _, p := range job.Parts {
		r := &resolver{job: job, part: p, w: words.Writer{Units: job.Units}}
		r.resolve()
		rs = append(rs, r)
		errs = append(errs, r.errs...)
		out.Parts = append(out.Parts, r.out)
		out.Stock = append(out.Stock, plan.StockRow{
			Part: r.out.Title, Quantity: p.Quantity, Material: r.out.Material,
			Size: r.out.StockText, MassKg: r.out.MassKg,
		})
	}
	if len(errs) == 0 {
		errs = resolveJoints(out, job, rs)
	}
	if len(errs) > 0 {
		return nil, errs
	}
	return out, nil
}

// resolver works out one part. Its steps run in the order of resolve; each
// fills the fields that later ones read.
type resolver struct {
	job  *parts.Job
	part *parts.Part
	w    words.Writer
	errs parts.Errors
	out  *plan.PartPlan

	material *material.Material // nil if the material is not known
	steps    []step             // every cylinder: outside first, then inside
	made     []madeGroup        // hole groups in printing order
	radials  []madeRadial
	saddled  []madeSaddle
}

// step is one cylinder of a turned part, or the bore or round outline of a
// flat one, with its place on the axis and its limits.
type step struct {
	name         string
	inside       bool
	fromMm, toMm float64
	size         sized
	undercut     *parts.Undercut
	seat, finish string
	ref          int // feature number
}

// madeGroup is a hole group or slot group worked out.
type madeGroup struct {
	hole  *parts.HoleGroup // nil for slots
	slot  *parts.FaceSlot
	group *plan.Group
	ref   int
	size  made
	face  parts.Face
	pts   []plan.XY
}

// madeRadial is a radial feature worked out.
type madeRadial struct {
	radial *parts.Radial
	rows   []plan.RadialRow
	size   made
	ref    int
}

func (r *resolver) fault(pos parts.Pos, what, right string) {
	r.errs = append(r.errs, r.job.Fault(pos, what, right))
}

func (r *resolver) resolve() {
	p := r.part
	r.out = &plan.PartPlan{
		Name: p.Name.Value, Title: p.Title.Value, Kind: string(p.Kind), Quantity: p.Quantity,
		Material: p.Material.Value, Top: p.Top.Value, StockText: r.stockText(),
	}
	for _, n := range p.Notes {
		r.out.Notes = append(r.out.Notes, n.Value)
	}
	if p.Material.Value != "" {
		if m, err := material.Find(p.Material.Value); err == nil {
			r.material = &m
		} else {
			r.out.Notes = append(r.out.Notes, "Material "+p.Material.Value+" has no cutting data here: mass and speeds are left out.")
		}
	}
	r.cylinders()
	r.section()
	r.faces()
	r.roundFeatures()
	r.developments() // before features, operations and mass
	r.features()
	r.out.Overall = r.overall()
	r.out.MassKg = r.mass()
	r.ladders()
	r.operations()
	r.checks()
	r.cautions()
}

// made is the finished size of a hole and how to get there.
type made struct {
	thread     *threads.Thread
	drillMm    float64 // last drill, or tap drill, or the finished size
	finishedMm float64
	size       sized
	text       string // "M10 tap, drill Ø8.5"
}

// sized is a diameter with its limits.
type sized struct {
	nominalMm    float64
	minMm, maxMm float64 // equal to nominal where nothing limits it
	limited      bool
	class        string // "H7", "±0.1", "light press", "M40x1.5", "ISO 2768-m", or ""
	source       string
	thread       *threads.Thread
	press        parts.Ref
}

// sizeOf limits a size: by its own fit, else by the job's general tolerance.
func (r *resolver) sizeOf(s parts.Size) sized {
	out := sized{nominalMm: s.Nominal.Mm, minMm: s.Nominal.Mm, maxMm: s.Nominal.Mm}
	if s.Thread.Value != "" {
		t, err := threads.Parse(s.Thread.Value)
		if err != nil {
			r.fault(s.Thread.Pos, "thread "+s.Thread.Value+" is not known", plain(err))
			return out
		}
		out.thread, out.class, out.source = &t, t.Designation, t.Source
		out.nominalMm, out.minMm, out.maxMm = t.MajorMm, t.MajorMm, t.MajorMm
		return out
	}
	f := s.Fit
	switch {
	case f.Class.Value != "":
		l, err := fits.Limit(s.Nominal.Mm, f.Class.Value)
		if err != nil {
			r.fault(f.Class.Pos, "fit "+f.Class.Value+" cannot be used for "+r.w.Dia(s.Nominal.Mm), plain(err))
			return out
		}
		out.minMm, out.maxMm, out.limited = l.MinMm, l.MaxMm, true
		out.class, out.source = l.Class, "ISO 286-1 "+l.Class
	case f.LightPress.Set():
		out.class, out.press = "light press", f.LightPress
		out.source = "common practice, no source"
	case len(f.Limits) == 2:
		out.minMm, out.maxMm, out.limited = f.Limits[0].Mm, f.Limits[1].Mm, true
		out.class, out.source = "limits", "drawing"
	case f.PlusMinus.Set():
		out.minMm, out.maxMm, out.limited = s.Nominal.Mm-f.PlusMinus.Mm, s.Nominal.Mm+f.PlusMinus.Mm, true
		out.class, out.source = "±"+r.w.Size(f.PlusMinus.Mm), "drawing"
	case r.part.Kind == parts.Tube:
		out.source = "tube as bought" // its maker's tolerance, not the shop's
	default:
		out.general(r.job.Tolerance.Value)
	}
	return out
}

// general applies the ISO 2768-1 class, where one is named and covers the size.
func (s *sized) general(class string) {
	if class == "" {
		return
	}
	if pm, err := fits.General(s.nominalMm, class); err == nil {
		s.minMm, s.maxMm, s.limited = s.nominalMm-pm, s.nominalMm+pm, true
		s.source = "ISO 2768-" + class
	}
}

// length limits a plain length by the general tolerance.
func (r *resolver) length(mm float64) sized {
	s := sized{nominalMm: mm, minMm: mm, maxMm: mm}
	s.general(r.job.Tolerance.Value)
	return s
}

// limitsText is "90.000 – 90.035", or empty where nothing limits the size.
func (r *resolver) limitsText(s sized) string {
	switch {
	case s.class == "light press":
		return "measured mate − " + r.w.Size(0.03) + " … − " + r.w.Size(0.01)
	case s.limited:
		return r.w.Limits(s.minMm, s.maxMm)
	}
	return ""
}

// plain turns a library's error into the advice of a located one.
func plain(err error) string {
	s := err.Error()
	for _, p := range []string{"fits: ", "threads: ", "cutting: "} {
		s = strings.TrimPrefix(s, p)
	}
	return s
}

// cylinders collects the steps of the part with their limits.
func (r *resolver) cylinders() {
	p := r.part
	if p.Profile != nil {
		for _, side := range []struct {
			steps  []parts.Step
			inside bool
		}{{p.Profile.Outside, false}, {p.Profile.Inside, true}} {
			z := 0.0
			for _, s := range side.steps {
				r.steps = append(r.steps, step{
					name: s.Name.Value, inside: side.inside, fromMm: z, toMm: z + s.Length.Mm,
					size: r.sizeOf(s.Size), undercut: s.Undercut,
					seat: s.Seat.Value, finish: s.Finish.Value,
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
			r.steps = append(r.steps, step{name: "outline", toMm: p.Thickness.Mm, size: r.sizeOf(size)})
		}
		if p.Bore != nil {
			r.steps = append(r.steps, step{name: "bore", inside: true, toMm: p.Thickness.Mm, size: r.sizeOf(p.Bore.Size)})
		}
	}
}

// stepNamed finds a step by name, or nil.
func (r *resolver) stepNamed(name string) *step {
	for i := range r.steps {
		if r.steps[i].name == name {
			return &r.steps[i]
		}
	}
	return nil
}

// sides returns the outside and the inside steps.
func (r *resolver) sides() (outside, inside []*step) {
	for i := range r.steps {
		if r.steps[i].inside {
			inside = append(inside, &r.steps[i])
		} else {
			outside = append(outside, &r.steps[i])
		}
	}
	return outside, inside
}

// widest is the outside step of the largest diameter, the first of equals; nil
// for a part without round outside.
func (r *resolver) widest() *step {
	outside, _ := r.sides()
	if len(outside) == 0 {
		return nil
	}
	return slices.MaxFunc(outside, func(a, b *step) int { return cmp.Compare(a.size.nominalMm, b.size.nominalMm) })
}

// lengthMm is the part's size along its axis: plate thickness, or overall length.
func (r *resolver) lengthMm() float64 {
	switch {
	case r.part.Profile != nil:
		return r.part.Profile.LengthMm()
	case r.part.Frustum != nil:
		return r.part.Frustum.Height.Mm
	case r.part.Transition != nil:
		return r.part.Transition.Height.Mm
	}
	return r.part.Thickness.Mm
}
