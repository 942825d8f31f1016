package parts

import (
	"fmt"
	"math"
)

const stepForm = "{name: body, diameter: 165, fit: h9, length: 48} or {name: nose, thread: M40x1.5, length: 20}"

// profile reads a turned part along its axis.
func (r *reader) profile(n *node) *Profile {
	if !r.group(n, "outside", "inside") {
		return nil
	}
	p := &Profile{Pos: n.pos}
	p.Outside = r.steps(r.need(n, "outside", "the steps from the front face to the back"), shaft)
	p.Inside = r.steps(n.get("inside"), hole)
	return p
}

// steps reads outside (shaft) or inside (hole) steps.
func (r *reader) steps(n *node, s side) []Step {
	items, _ := r.items(n, 1, 100, "a list of steps such as "+stepForm)
	var out []Step
	for i, item := range items {
		if !r.group(item, "name", "diameter", "fit", "thread", "length", "seat", "undercut", "finish") {
			continue
		}
		step := Step{
			Pos:    item.pos,
			Name:   r.name(item.get("name")),
			Length: r.length(r.need(item, "length", stepForm), positive),
			Seat:   r.text(item.get("seat"), maxText),
			Finish: r.text(item.get("finish"), maxText),
		}
		if item.get("name") == nil {
			word := map[side]string{shaft: "outside", hole: "inside"}[s]
			step.Name = Text{Value: fmt.Sprintf("%s-%d", word, i+1), Pos: item.pos}
		}
		switch key, v := r.oneOf(item, "diameter", "thread"); key {
		case "diameter":
			step.Size = r.size(v, item.get("fit"), s)
		case "thread":
			step.Size.Thread = r.thread(v)
			if item.get("fit") != nil {
				r.fault(item.keyPos("fit"), "a threaded step takes no fit", "delete fit; the thread class comes with the thread")
			}
		}
		if u := item.get("undercut"); r.group(u, "width", "depth") {
			step.Undercut = &Undercut{
				Pos:   u.pos,
				Width: r.length(r.need(u, "width", "undercut: {width: 3, depth: 0.3}"), positive),
				Depth: r.length(r.need(u, "depth", "undercut: {width: 3, depth: 0.3}"), positive),
			}
			r.undercutRoom(step)
		}
		out = append(out, step)
	}
	return out
}

func (r *reader) undercutRoom(step Step) {
	u := step.Undercut
	if u.Width.Set() && step.Length.Set() && u.Width.Mm >= step.Length.Mm {
		r.faultf(u.Width.Pos, "an undercut narrower than the step", "the undercut is %s wide and the step %s long", u.Width.Text, step.Length.Text)
	}
	if d := step.Size.Nominal; u.Depth.Set() && d.Set() && u.Depth.Mm >= d.Mm/2 {
		r.faultf(u.Depth.Pos, "the depth of the groove on one side", "the undercut is %s deep at a diameter of %s", u.Depth.Text, d.Text)
	}
}

// tube reads a tube and expands it to a profile with the steps outside and
// bore.
func (r *reader) tube(n *node) *Profile {
	if !r.group(n, "outside", "fit", "wall", "length") {
		return nil
	}
	const form = "tube: {outside: 114.3 mm, wall: 4 mm, length: 600 mm}"
	od, fit := r.need(n, "outside", form), n.get("fit")
	if od != nil && od.kind == mapNode && r.group(od, "diameter", "fit") {
		od, fit = r.need(od, "diameter", "outside: {diameter: 114.3 mm, fit: h9}"), od.get("fit")
	}
	size := r.size(od, fit, shaft)
	wall := r.length(r.need(n, "wall", form), positive)
	length := r.length(r.need(n, "length", form), positive)
	p := &Profile{Pos: n.pos}
	if !size.Nominal.Set() || !wall.Set() || !length.Set() {
		return p
	}
	bore := Length{Mm: size.Nominal.Mm - 2*wall.Mm, Pos: wall.Pos,
		Text: fmt.Sprintf("%s less twice %s", size.Nominal.Text, wall.Text)}
	if bore.Mm < smallestMm {
		r.faultf(wall.Pos, "a wall under half the outside diameter", "the wall %s leaves no bore in a tube of %s", wall.Text, size.Nominal.Text)
		return p
	}
	p.Outside = []Step{{Pos: n.pos, Name: Text{Value: "outside", Pos: n.pos}, Size: size, Length: length}}
	p.Inside = []Step{{Pos: n.pos, Name: Text{Value: "bore", Pos: n.pos}, Size: Size{Nominal: bore}, Length: length}}
	return p
}

// maxPatternRadiusMm is the largest radius of a cone's flat pattern. Common
// practice, no source: over 100 m nobody can swing it, and the arc cannot be
// told from a straight line.
const maxPatternRadiusMm = 100_000.0

// patternRadiusMm is the slant distance from the large end to the apex, of a
// leaning cone at its longer side; 0 where the sizes do not give one.
func (f *Frustum) patternRadiusMm() float64 {
	taper := f.Large.Mm - f.Small.Mm
	if !f.Height.Set() || !f.Small.Set() || taper <= 0 {
		return 0
	}
	return math.Hypot(f.Height.Mm, taper/2+f.Offset.Mm) * f.Large.Mm / taper
}

// frustum reads a rolled cone.
func (r *reader) frustum(n *node) *Frustum {
	if !r.group(n, "large", "small", "height", "thickness", "offset", "measured", "seam", "overlap", "sheet") {
		return nil
	}
	const form = "cone: {large: 300, small: 150, height: 200, thickness: 2}"
	f := &Frustum{
		Pos:       n.pos,
		Large:     r.length(r.need(n, "large", form), positive),
		Small:     r.length(r.need(n, "small", form), positive),
		Height:    r.length(r.need(n, "height", form), positive),
		Thickness: r.length(r.need(n, "thickness", form), positive),
		Offset:    r.length(n.get("offset"), fromZero),
		Inside:    r.word(n.get("measured"), "outside", "inside") == "inside",
		Seam:      Angle{Deg: 180},
		Overlap:   r.length(n.get("overlap"), fromZero),
	}
	if seam := n.get("seam"); seam != nil {
		f.Seam = r.clock(seam)
	}
	f.SheetWidth, f.SheetHeight = r.sheetSize(n.get("sheet"))
	if f.Large.Set() && f.Small.Set() && f.Small.Mm >= f.Large.Mm {
		r.faultf(f.Small.Pos, "a small diameter below the large one; a straight one is kind tube",
			"the small end of %s is not smaller than the large end of %s", f.Small.Text, f.Large.Text)
	}
	if mm := f.patternRadiusMm(); mm > maxPatternRadiusMm {
		r.faultf(f.Small.Pos, "a larger taper, or kind tube",
			"the cone is so nearly a tube that its pattern has a radius of %.0f m", mm/1000)
	}
	least := 0.0 // small inside diameter, seen from the way it is measured
	if !f.Inside {
		least = 2 * f.Thickness.Mm
	}
	if f.Small.Set() && f.Thickness.Set() && f.Small.Mm <= least {
		r.faultf(f.Thickness.Pos, "a sheet thinner than half the small diameter", "the sheet of %s leaves no opening in the small end of %s", f.Thickness.Text, f.Small.Text)
	}
	if f.Offset.Set() && f.Large.Set() && f.Offset.Mm > f.Large.Mm {
		r.faultf(f.Offset.Pos, "at most the large diameter", "the offset %s is more than the large diameter %s", f.Offset.Text, f.Large.Text)
	}
	if f.Overlap.Set() && f.Small.Set() && f.Overlap.Mm > f.Small.Mm {
		r.faultf(f.Overlap.Pos, "at most the small diameter", "the overlap %s is more than the small diameter %s", f.Overlap.Text, f.Small.Text)
	}
	return f
}

// chamfers reads the bevels of a part. That the edges exist is checked with
// the geometry.
func (r *reader) chamfers(n *node) []Chamfer {
	items, _ := r.items(n, 0, 200, "a list of chamfers")
	var out []Chamfer
	for _, item := range items {
		if !r.group(item, "edge", "size", "angle", "for") {
			continue
		}
		const form = "{edge: bore-back, size: 5 mm, angle: 45, for: weld}"
		c := Chamfer{
			Pos:   item.pos,
			Edge:  r.name(r.need(item, "edge", form)),
			Size:  r.length(r.need(item, "size", form), positive),
			Angle: Angle{Deg: 45},
			For:   r.word(item.get("for"), "weld", "lead-in", "deburr"),
		}
		if a := item.get("angle"); a != nil {
			c.Angle, _ = r.angle(a, 1, 89)
		}
		out = append(out, c)
	}
	return out
}
