package picture

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// fromFront looks at the front, fromAbove down on the machine with its front at the left.
var (
	fromFront = assembly.Still
	fromAbove = assembly.Pose{X: assembly.AxisZ.Reversed(), Y: assembly.AxisX.Reversed(), Z: assembly.AxisY}
)

// The same of a machine that stands with its front up: cut with TOP at the right, from above
// with TOP at the right, from the side of TOP and from the other.
var (
	standing    = assembly.Pose{X: assembly.AxisY, Y: assembly.AxisZ, Z: assembly.AxisX}
	onItsFront  = assembly.Pose{X: assembly.AxisY, Y: assembly.AxisX.Reversed(), Z: assembly.AxisZ}
	besideTop   = assembly.Pose{X: assembly.AxisX.Reversed(), Y: assembly.AxisZ, Z: assembly.AxisY}
	oppositeTop = assembly.Pose{X: assembly.AxisX, Y: assembly.AxisZ, Z: assembly.AxisY.Reversed()}
)

// planes are those of the three views of the machine as it stands, and how they lie.
func (m *drawing) planes() (cut, end, top assembly.Pose, angle plan.Angle) {
	switch {
	case m.Up == assembly.AxisY:
		return stand.AlongAxis, fromFront, fromAbove, ""
	case m.Job.Units == parts.Inches:
		return standing, onItsFront, besideTop, plan.ThirdAngle
	}
	return standing, onItsFront, oppositeTop, plan.FirstAngle
}

// arrangement draws the machine as a whole, and what no joint ties to it for itself. It is nil
// where nothing is placed, and where no joint is made that it could be seen with.
func (s *drawing) arrangement() *plan.Arrangement {
	var all [][]assembly.Body
	for _, b := range s.Bodies {
		n := stand.StandsIn(&b)
		all = append(all, make([][]assembly.Body, max(0, n+1-len(all)))...)
		all[n] = append(all[n], b)
	}
	if len(all) == 0 || len(s.Joints) == 0 {
		return nil
	}
	out, cut := s.drawn(all[0], assembly.Still)
	s.names(out, cut)
	out.Opposed = s.Opposed()
	for n, bodies := range all[1:] {
		also, _ := s.drawn(bodies, assembly.Move(assembly.Vec{X: stand.ApartMm * float64(n+1)}))
		also.Holds = map[int]int{}
		for b := range seq.Refs(bodies) {
			also.Holds[s.itemOf(b.ID)]++
		}
		delete(also.Holds, 0)
		also.Title = s.Title(slices.MaxFunc(bodies, func(a, b assembly.Body) int {
			return cmp.Compare(a.Solid.Bulk().VolumeMm3, b.Solid.Bulk().VolumeMm3)
		}).ID)
		out.Apart = append(out.Apart, also)
	}
	return out
}

// drawn are the three views of bodies that hang together, from a place, and what the first cuts.
func (s *drawing) drawn(bodies []assembly.Body, at assembly.Pose) (out *plan.Arrangement, cut map[int]bool) {
	v := &viewed{drawing: s, j: s.Joints[len(s.Joints)-1], stands: map[string]bool{}}
	for b := range seq.Refs(bodies) {
		v.stands[b.ID] = true
	}
	across, end, above, angle := s.planes()
	across, end, above = at.Of(across), at.Of(end), at.Of(above)
	out, cut = &plan.Arrangement{Stands: angle}, map[int]bool{}
	out.Front.Shapes, out.Front.Centres = v.shapes(across, spanning(xy(-stand.ApartMm, -stand.ApartMm), xy(stand.ApartMm, stand.ApartMm)))
	for i := range out.Front.Shapes {
		out.Front.Shapes[i].New = false
		cut[out.Front.Shapes[i].Item] = true
	}
	var views sync.WaitGroup
	views.Go(func() { s.look(&out.Front, across, bodies) })
	views.Go(func() { s.look(&out.End, farOff(end), bodies) })
	views.Go(func() { s.look(&out.Top, farOff(above), bodies) })
	views.Wait()
	out.Front.Behind = slices.DeleteFunc(out.Front.Behind, func(p plan.Place) bool { return cut[p.Item] })
	if angle != "" {
		above = end
	}
	for _, b := range bodies {
		if r := s.PartOf(b.ID); r != nil && !cut[s.itemOf(b.ID)] {
			out.Beside = seq.Add(out.Beside, r.Out.Title)
		}
	}
	out.Anchors = s.anchors(above, bodies, xy(out.Top.MinMm.XMm, 0), angle != "")
	return out, cut
}

// farOff is a view from beyond what can be made.
func farOff(view assembly.Pose) assembly.Pose { return view.Shifted(view.Z.Times(stand.ApartMm)) }

// anchors are the holes and slots of what is anchored that no joint puts a screw through and that stand
// upright, in the view from above, and how far they lie from a place in it, of what stands on its end from the axis.
func (s *drawing) anchors(above assembly.Pose, bodies []assembly.Body, from plan.XY, onEnd bool) (list []plan.Anchor) {
	if onEnd {
		from = plan.XY{}
	}
	for b := range seq.Refs(bodies) {
		if !s.Job.Anchors(s.Of[b.ID].Part) {
			continue
		}
		var seen *part.Group // a hole has a mouth in each face
		for _, f := range s.HolesAndSlots(b) {
			if f.Group == seen || f.Used || !f.Group.Anchors() || math.Abs(f.Out.Dot(s.Up)) < 1-stand.Level {
				continue
			}
			seen = f.Group
			for _, q := range f.At {
				at := onPlane(above, q)
				off := at.Minus(from)
				list = append(list, plan.Anchor{AtMm: at, FromMm: xy(math.Abs(off.XMm), math.Abs(off.YMm)), DiameterMm: f.Group.Size.FinishedMm, Slot: f.Group.Hole == nil})
			}
		}
	}
	return list
}

// look adds the edges that are seen to a view, its size, and of each part a place
// on its longest edge.
func (s *drawing) look(view *plan.View, plane assembly.Pose, bodies []assembly.Body) {
	all := rectOf(nil)
	for i := range bodies {
		r, _ := extent(plane, &bodies[i])
		all = all.join(r)
	}
	view.MinMm, view.MaxMm = all.Min, all.Max
	longest := map[int]float64{}
	for _, l := range assembly.Look(bodies, plane, all.longest()/linesAcross) {
		line := seq.Map(l.Points, func(p geom.Point) plan.XY { return xy(p.XMm, p.YMm) })
		view.Lines = append(view.Lines, line)
		item := s.itemOf(l.ID)
		middle := spanning(line[0], line[1]).Middle()
		at := plan.Place{Item: item, AtMm: xy(middle.XMm, middle.YMm)}
		switch long := geom.Distance(line[0], line[1]); {
		case item == 0 || long <= longest[item]:
		case longest[item] == 0:
			longest[item] = long
			view.Behind = append(view.Behind, at)
		default:
			longest[item] = long
			view.Behind[slices.IndexFunc(view.Behind, func(p plan.Place) bool { return p.Item == item })] = at
		}
	}
}

// linesAcross is into how many pieces edges of a view are looked at: a millimetre
// of a drawing that fills a sheet.
const linesAcross = 70

// names lists what the front view of the machine does not cut, and what no view shows.
func (s *drawing) names(out *plan.Arrangement, cut map[int]bool) {
	add := func(list *[]string, name string) {
		if !cut[s.ItemOf[name]] {
			*list = seq.Add(*list, s.Model(name).Out.Title)
		}
	}
	out.Bought = s.Drive
	for _, e := range s.Job.Loose {
		if name := words.Head(e.Item.Value); name != "" && !e.Off && !slices.Contains(s.Drive, name) {
			out.ByHand = seq.Add(out.ByHand, name)
		}
	}
	for _, b := range s.Passing {
		add(&out.Passing, s.Of[b.ID].Part)
	}
	for _, i := range s.Floating {
		if s.Job.ByHand(i.Part) != nil {
			add(&out.ByHand, i.Part)
		} else {
			add(&out.Floating, i.Part)
		}
	}
}
