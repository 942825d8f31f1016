package joint

import (
	"centrepop/layout/bolts"
	"centrepop/layout/part"
)

// tappedHole is what a joint's bolts or studs are screwed into; nil where they go through.
func (t *joint) tappedHole() *bolts.TappedHole {
	if t.b.group == nil || t.b.group.Size.Thread == nil {
		return nil
	}
	h := t.b.group.Hole
	out := &bolts.TappedHole{ThreadMm: h.Depth.Mm, Material: threadMaterial(t.b.r), TensileMPa: tensileMPa(t.b.r), Through: h.Through}
	if h.Through {
		_, out.ThreadMm, _ = t.b.plane(t.meeting().Second)
	}
	return out
}

// tensileMPa is the tensile strength of a part as it is bought; 0 where none is kept, and for what
// is brittle.
func tensileMPa(r *part.Model) float64 {
	if r.Material == nil {
		return 0
	}
	size := r.Part.Stock.Size.Mm
	if r.Part.Thickness.Mm != 0 {
		size = r.Part.Thickness.Mm
	}
	s, err := r.Material.Strength(size)
	if err != nil {
		return 0
	}
	return s.TensileMPa
}

// threadMaterial is what a part's threads are cut in; an unknown material counts
// as steel.
func threadMaterial(r *part.Model) string {
	if r.Material == nil {
		return ""
	}
	return r.Material.Name
}
