package compare

import (
	"fmt"
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Round is a round opening that is cut: a hole, or the bore.
type Round struct {
	N     int    // number on the front, 0 for the bore
	Group string // bore, or the hole group's name
	geom.Point
	DiameterMm float64 // as cut
	// Later marks what is usually not cut but drilled afterwards: tapped and
	// reamed holes, and those too small for the cutter. Its group may be left
	// out.
	Later bool
}

// Slot is an obround opening that is cut.
type Slot struct {
	N     int
	Group string
	geom.Point
	WidthMm  float64
	LengthMm float64 // overall
	EndsMm   [2]plan.XY
	Later    bool // too narrow for the cutter; may be left out
}

// Mark is a place to be marked, for a hole that is drilled afterwards or an end
// of a slot. N and Group are those of the hole or slot.
type Mark struct {
	N     int
	Group string
	geom.Point
}

// Part is a flat part as it should be cut, seen on its front.
type Part struct {
	Name    string
	Units   parts.Units // of what is said about it
	Outline plan.Contour
	Rounds  []Round
	Slots   []Slot
	// Blind are the holes and slots (as circles of their width) that do not
	// go through, of both faces.
	Blind []Round
	Marks []Mark
	// TopLine is the scribed line that shows TOP, empty if there is none.
	TopLine []plan.XY

	edge contour
}

// How far a straight piece may be from its curve: in a drawing, and in the
// part's own outline that it is held against.
const (
	flatMm = 0.002
	wantMm = 0.0005
)

// Wanted is the part as it should be cut. It refuses parts that are not flat,
// with a parts.Errors where the part cannot be laid out.
func Wanted(job *parts.Job, name string) (*Part, error) {
	p := job.Part(name)
	if p == nil {
		return nil, fmt.Errorf("no part %s in the job", name)
	}
	if p.Outline == nil {
		return nil, parts.Errors{job.Fault(p.Name.Pos, "the part "+name+" is not cut from plate", "a part with an outline")}
	}
	cut := p.Stock.Cut
	if !slices.Contains(cutters, cut) {
		cut = cutters[0]
	}
	profile, err := part.CutProfile(job, name, part.CutOptions{Cut: cut})
	if err != nil {
		return nil, err
	}
	out := &Part{Name: name, Units: job.Units, TopLine: profile.TopLine}
	if b := p.Bore; b != nil {
		out.Rounds = append(out.Rounds, Round{Group: "bore", DiameterMm: b.Size.Nominal.Mm - part.BoreLeftMm(job, b)})
	}
	for _, face := range []parts.Face{parts.Front, parts.Back} {
		view, err := part.FaceView(job, name, face)
		if err != nil {
			return nil, err
		}
		if view != nil {
			out.add(p, view)
		}
	}
	out.mark(profile.Marks)
	out.Outline = profile.Contours[len(profile.Contours)-1].Path // it is cut last
	return out, out.setEdge()
}

// add takes the holes and slots of a face: all that show on the front, and
// what is blind from the back.
func (out *Part) add(p *parts.Part, view *plan.Face) {
	through := map[string]bool{}
	for _, h := range p.Holes {
		through[h.Name.Value] = h.Through
	}
	for _, s := range p.Slots {
		through[s.Name.Value] = s.Through
	}
	front, hand := view.Face == parts.Front, 1.0
	if !front {
		hand = -1
	}
	for _, h := range view.Holes {
		r := Round{N: h.N, Group: h.Group, Point: xy(hand*h.XMm, h.YMm), DiameterMm: h.DiameterMm}
		if !through[h.Group] {
			out.Blind = append(out.Blind, r)
		} else if front {
			out.Rounds = append(out.Rounds, r)
		}
	}
	for _, s := range view.Slots {
		if !through[s.Group] {
			out.Blind = append(out.Blind, Round{N: s.N, Group: s.Group, Point: xy(hand*s.XMm, s.YMm), DiameterMm: s.WidthMm})
		} else if front {
			out.Slots = append(out.Slots, Slot{N: s.N, Group: s.Group, Point: xy(s.XMm, s.YMm), WidthMm: s.WidthMm, LengthMm: s.LengthMm, EndsMm: s.EndsMm})
		}
	}
}

// sameMm is how near two places are that were computed from the same numbers.
const sameMm = 1e-3

// mark notes what is marked and not cut, each under the name of its opening.
func (out *Part) mark(marks []plan.CutMark) {
	for _, m := range marks {
		on := func(p point) bool { return geom.Distance(m.AtMm, p) < sameMm }
		made := Mark{Point: m.AtMm}
		for i := range out.Rounds {
			if r := &out.Rounds[i]; on(r.Point) {
				made.N, made.Group, r.Later = r.N, r.Group, true
			}
		}
		for i := range out.Slots {
			s := &out.Slots[i]
			if slices.ContainsFunc(s.EndsMm[:], on) {
				made.N, made.Group, s.Later = s.N, s.Group, true
			}
		}
		for _, b := range out.Blind {
			if on(b.Point) {
				made.N, made.Group = b.N, b.Group
			}
		}
		out.Marks = append(out.Marks, made)
	}
}

// cutters are those that follow a drawing; the first stands for a cutter that
// is not named.
var cutters = []string{"laser", "plasma", "waterjet", "flame"}

// setEdge turns the outline into points.
func (p *Part) setEdge() error {
	path, err := canvas.ParseSVGPath(string(p.Outline))
	if err != nil {
		return fmt.Errorf("compare: outline of %s: %w", p.Name, err)
	}
	points := seq.Map(path.Flatten(wantMm).Split()[0].Coords(), func(q canvas.Point) point { return xy(q.X, q.Y) })
	p.edge = contour{closed: true, points: thin(points, true, wantMm)}
	if len(p.edge.points) < 3 {
		return fmt.Errorf("compare: the outline of %s encloses nothing", p.Name)
	}
	return nil
}

// contour is the slot's edge.
func (s Slot) contour() contour {
	c := contour{closed: true}
	dir := math.Atan2(s.EndsMm[0].YMm-s.EndsMm[1].YMm, s.EndsMm[0].XMm-s.EndsMm[1].XMm)
	const arc = 90
	for side, e := range s.EndsMm {
		from := dir - math.Pi/2 + math.Pi*float64(side)
		for i := range arc + 1 {
			sin, cos := math.Sincos(from + math.Pi*float64(i)/arc)
			c.points = append(c.points, xy(e.XMm+s.WidthMm/2*cos, e.YMm+s.WidthMm/2*sin))
		}
	}
	return c
}
