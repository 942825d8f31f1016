package parts

import (
	"math"
	"slices"
	"strings"
)

// maxCount is the most holes in one group, and entries in one list.
const maxCount = 1000

const holeForms = "M10 clearance, M8 tap, 11 mm, 7/16 in or {diameter: 10, fit: H7}"

// holes reads the hole groups of a part's faces.
func (r *reader) holes(n *node) []HoleGroup {
	items, _ := r.items(n, 0, 200, "a list of hole groups")
	var out []HoleGroup
	for _, item := range items {
		if !r.group(item, slices.Concat([]string{"name", "face"}, patternKeys, []string{"datum", "size", "depth", "counterbore", "countersink", "note"})...) {
			continue
		}
		g := HoleGroup{
			Pos:     item.pos,
			Name:    r.name(r.need(item, "name", "name the holes, such as name: bolts")),
			Face:    r.face(item.get("face")),
			Pattern: r.pattern(item),
			Size:    r.holeSize(r.need(item, "size", holeForms)),
			Note:    r.text(item.get("note"), maxText),
		}
		g.Through, g.Depth = r.depth(item.get("depth"))
		r.headRoom(item, &g)
		out = append(out, g)
	}
	return out
}

// headRoom reads the enlargement of a hole at the marked face.
func (r *reader) headRoom(item *node, g *HoleGroup) {
	bore, sink := item.get("counterbore"), item.get("countersink")
	if bore != nil && sink != nil {
		r.fault(item.keyPos("countersink"), "a hole has both a counterbore and a countersink", "keep one of the two")
		return
	}
	if r.group(bore, "diameter", "depth") {
		g.Counterbore = &Counterbore{
			Diameter: r.length(r.need(bore, "diameter", "counterbore: {diameter: 18, depth: 11}"), positive),
			Depth:    r.length(r.need(bore, "depth", "counterbore: {diameter: 18, depth: 11}"), positive),
		}
		r.wider(g.Counterbore.Diameter, g.Size, "counterbore")
		if g.Depth.Set() && g.Counterbore.Depth.Set() && g.Counterbore.Depth.Mm >= g.Depth.Mm {
			r.faultf(g.Counterbore.Depth.Pos, "a hole deeper than its counterbore", "the counterbore is %s deep and the hole only %s", g.Counterbore.Depth.Text, g.Depth.Text)
		}
	}
	if r.group(sink, "diameter", "angle") {
		g.Countersink = &Countersink{Diameter: r.length(r.need(sink, "diameter", "countersink: {diameter: 20, angle: 90}"), positive)}
		g.Countersink.Angle, _ = r.angle(r.need(sink, "angle", "the included angle of the screw head, such as 90"), 30, 150)
		r.wider(g.Countersink.Diameter, g.Size, "countersink")
	}
}

// wider checks an enlargement against a hole whose diameter is given.
func (r *reader) wider(d Length, size HoleSize, what string) {
	hole := size.Size.Nominal
	if d.Set() && hole.Set() && d.Mm <= hole.Mm {
		r.faultf(d.Pos, "a larger diameter", "the %s of %s is not wider than its hole of %s", what, d.Text, hole.Text)
	}
}

func (r *reader) face(n *node) Face {
	if f := r.word(n, string(Front), string(Back)); f != "" {
		return Face(f)
	}
	return Front
}

// depth reads "through" or a blind depth. Through is the default.
func (r *reader) depth(n *node) (through bool, depth Length) {
	if n == nil || n.kind == scalarNode && n.text == "through" {
		return true, Length{}
	}
	depth = r.length(n, positive)
	return false, depth
}

// holeSize reads what a hole is.
func (r *reader) holeSize(n *node) HoleSize {
	if n == nil {
		return HoleSize{}
	}
	size := HoleSize{Pos: n.pos, Make: PlainHole}
	if n.kind == mapNode {
		if r.group(n, "diameter", "fit") {
			size.Size = r.size(r.need(n, "diameter", "{diameter: 10, fit: H7}"), n.get("fit"), hole)
		}
		return size
	}
	text, ok := r.scalar(n, "a hole size", holeForms)
	if !ok {
		return HoleSize{}
	}
	words := strings.Fields(text)
	for i, w := range words {
		if i == 0 || w != string(ClearanceHole) && w != string(TappedHole) {
			continue
		}
		size.Make, size.Thread = HoleMake(w), strings.Join(words[:i], " ")
		if !threadForm.MatchString(size.Thread) {
			r.faultf(n.pos, "a thread such as M10, M40x1.5, G1/8 or 1/2-13 UNC", "%s is no thread", quote(size.Thread))
		}
		if size.Make == ClearanceHole {
			size.Series = "medium"
		}
		rest := strings.Join(words[i+1:], " ")
		switch {
		case rest == "":
		case size.Make == ClearanceHole && (rest == "fine" || rest == "medium" || rest == "coarse"):
			size.Series = rest
		case size.Make == ClearanceHole:
			r.faultf(n.pos, "fine, medium or coarse", "the clearance series %s is not known", quote(rest))
		default:
			r.faultf(n.pos, "nothing after `tap`", "the words %s after tap are not known", quote(rest))
		}
		return size
	}
	if threadForm.MatchString(text) && (text[0] > '9' || strings.Contains(text, "UN")) {
		thread := words[0]
		if len(words) > 1 && strings.HasPrefix(words[1], "UN") {
			thread += " " + words[1]
		}
		r.faultf(n.pos, thread+" clearance or "+thread+" tap", "the size %s does not say what the hole is for", quote(text))
		return size
	}
	if _, wrong := parseLength(text, r.units); wrong != "" {
		r.faultf(n.pos, holeForms, "%s is %s, which is no hole size: %s", n.label, quote(text), wrong)
		return size
	}
	size.Size.Nominal = r.length(n, positive)
	return size
}

// slots reads the obround slots of a part's faces.
func (r *reader) slots(n *node) []FaceSlot {
	items, _ := r.items(n, 0, 200, "a list of slots")
	var out []FaceSlot
	for _, item := range items {
		if !r.group(item, slices.Concat([]string{"name", "face"}, patternKeys, []string{"datum", "width", "length", "turn", "depth"})...) {
			continue
		}
		s := FaceSlot{
			Pos:     item.pos,
			Name:    r.name(r.need(item, "name", "name the slot, such as name: adjust")),
			Face:    r.face(item.get("face")),
			Pattern: r.pattern(item),
			Width:   r.length(r.need(item, "width", "the width across the slot"), positive),
			Length:  r.length(r.need(item, "length", "the overall length of the slot"), positive),
			Turn:    r.clock(item.get("turn")),
		}
		s.Through, s.Depth = r.depth(item.get("depth"))
		if s.Width.Set() && s.Length.Set() && s.Length.Mm <= s.Width.Mm {
			r.faultf(s.Length.Pos, "an overall length above the width; turn says which way it lies", "the slot is %s long and %s wide", s.Length.Text, s.Width.Text)
		}
		out = append(out, s)
	}
	return out
}

// radials reads what is cut into a round from outside.
func (r *reader) radials(n *node) []Radial {
	items, _ := r.items(n, 0, 200, "a list of radial holes, slots and windows")
	var out []Radial
	for _, item := range items {
		if !r.group(item, "name", "clock", "axial", "from", "size", "slot", "window", "depth", "note") {
			continue
		}
		f := Radial{
			Pos:   item.pos,
			Name:  r.name(r.need(item, "name", "name it, such as name: grease-port")),
			Axial: r.length(r.need(item, "axial", "the distance of its centre from the face"), fromZero),
			From:  r.face(item.get("from")),
			Note:  r.text(item.get("note"), maxText),
		}
		if c := r.need(item, "clock", "a clock angle, or a list of them"); c != nil && c.kind == listNode {
			f.Clock = r.angles(c)
		} else if a, ok := r.angle(c, -360, 360); ok {
			f.Clock = []Angle{a}
		}
		f.Through, f.Depth = r.depth(item.get("depth"))
		key, v := r.oneOf(item, "size", "slot", "window")
		switch key {
		case "size":
			f.Shape, f.Size = RadialHole, r.holeSize(v)
		case "slot":
			f.Shape = RadialSlot
			if r.group(v, "around", "along") {
				r.opening(v, &f)
			}
		case "window":
			f.Shape = RadialWindow
			if r.group(v, "around", "along", "corner") {
				r.opening(v, &f)
				f.Corner = r.length(v.get("corner"), fromZero)
				if f.Around.Set() && f.Along.Set() && f.Corner.Mm > math.Min(f.Around.Mm, f.Along.Mm)/2 {
					r.faultf(f.Corner.Pos, "at most half the smaller side", "the corner radius %s does not fit the window", f.Corner.Text)
				}
			}
		}
		out = append(out, f)
	}
	return out
}

func (r *reader) opening(v *node, f *Radial) {
	f.Around = r.length(r.need(v, "around", "the length round the outside"), positive)
	f.Along = r.length(r.need(v, "along", "the length along the axis"), positive)
}
