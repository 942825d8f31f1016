package read

import (
	"cmp"
	"regexp"
	"strings"
	"sync"

	"centrepop/parts"
)

func (f *fields) holes() parts.HoleGroup {
	g := parts.HoleGroup{FaceGroup: f.faceGroup(), Size: f.holeSize(f.val("size"))}
	g.For, g.Fitted, g.Note = f.served(g.Name)
	f.headRoom(&g)
	return g
}

// faceGroup reads what holes and slots have in common, but for their use.
func (f *fields) faceGroup() parts.FaceGroup {
	g := parts.FaceGroup{Pos: f.n.pos, Name: f.name("name"), Face: f.face("face"), On: parts.Side(f.word("on")), Walls: f.word("walls"), Pattern: f.pattern()}
	g.Through, g.Depth = f.depth("depth")
	seenOn(&g.Pattern, g.Face)
	return g
}

// served reads what holes are for, what is fitted in them and what is printed beside their size: what is
// fitted and the note. What is not said, their name and note say.
func (f *fields) served(name parts.Text) (use parts.Use, fitted, note parts.Text) {
	fitted, note = f.text("fitted"), f.text("note")
	use = cmp.Or(parts.Use(f.word("for")), parts.HoleUse(name.Value, note.Value))
	switch {
	case fitted.Value == "":
		if fitted.Value = parts.Fitted(note.Value); fitted.Value != "" {
			fitted.Pos = note.Pos
		}
	case note.Value == "":
		note = fitted
	case !strings.Contains(note.Value, fitted.Value):
		note.Value = fitted.Value + "; " + note.Value
	}
	return use, fitted, note
}

// headRoom reads the enlargement of a hole at the marked face.
func (f *fields) headRoom(g *parts.HoleGroup) {
	if f.given("counterbore") && f.given("countersink") {
		f.fault(f.n.keyPos("countersink"), "a hole has both a counterbore and a countersink", "keep one of the two")
		return
	}
	if bore := f.sub("counterbore"); bore != nil {
		g.Counterbore = &parts.Counterbore{Diameter: bore.length("diameter"), Depth: bore.length("depth")}
		f.not(g.Counterbore.Diameter, "<=", g.Size.Size.Nominal, "a larger diameter", "the counterbore of %s is not wider than its hole of %s")
		f.not(g.Counterbore.Depth, ">=", g.Depth, "a hole deeper than its counterbore", "the counterbore is %s deep and the hole only %s")
	}
	if sink := f.sub("countersink"); sink != nil {
		g.Countersink = &parts.Countersink{Diameter: sink.length("diameter"), Angle: sink.angle("angle")}
		f.not(g.Countersink.Diameter, "<=", g.Size.Size.Nominal, "a larger diameter", "the countersink of %s is not wider than its hole of %s")
	}
}

// depth reads "through" or a length. Through is the default.
func (f *fields) depth(name string) (through bool, depth parts.Length) {
	if n := f.val(name); n == nil || n.kind == scalarNode && n.text == "through" {
		return true, parts.Length{}
	}
	return false, f.length(name)
}

// clearanceSeries are the words of ISO 273.
func clearanceSeries(w string) bool { return w == "fine" || w == "medium" || w == "coarse" }

func (r *reader) holeSize(n *node) parts.HoleSize {
	if n == nil {
		return parts.HoleSize{}
	}
	size := parts.HoleSize{Pos: n.pos, Make: parts.PlainHole}
	if n.kind == mapNode {
		if f := r.in(n, diameterGroup); f != nil {
			size.Size = f.size("diameter", hole)
		}
		return size
	}
	text, ok := r.scalar(n, "a hole size", holeExample)
	if !ok {
		return parts.HoleSize{}
	}
	words := strings.Fields(text)
	for i, w := range words {
		if i > 0 && (w == string(parts.ClearanceHole) || w == string(parts.TappedHole)) {
			size.Make = parts.HoleMake(w)
			r.threadedHole(n, &size, words[:i], strings.Join(words[i+1:], " "))
			return size
		}
	}
	if threadForm().MatchString(text) && (text[0] > '9' || strings.Contains(text, "UN")) {
		thread := words[0]
		if len(words) > 1 && strings.HasPrefix(words[1], "UN") {
			thread += " " + words[1]
		}
		r.faultf(n.pos, thread+" clearance or "+thread+" tap", "the size %s does not say what the hole is for", parts.Quote(text))
		return size
	}
	if _, wrong := parts.MmOf(text, r.units); wrong != "" {
		r.faultf(n.pos, holeExample, "%s is %s, which is no hole size: %s", n.label, parts.Quote(text), wrong)
		return size
	}
	size.Size.Nominal = r.length(n, positive)
	return size
}

// inchSize is the size of a screw in inches without its pitch: what it passes through is the same for every pitch.
var inchSize = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^([0-9]+[ -])?[0-9]+/[0-9]+$`) })

// threadedHole reads what stands before and behind the word that says what a hole is made for.
func (r *reader) threadedHole(n *node, size *parts.HoleSize, before []string, rest string) {
	size.Thread = strings.Join(before, " ")
	clearance, last := size.Make == parts.ClearanceHole, len(before)-1
	if f := strings.Fields(size.Thread); last > 0 && clearance && clearanceSeries(f[last]) {
		r.faultf(n.pos, parts.Quote(strings.Join(append(f[:last], string(size.Make), f[last]), " ")), "the clearance series %s stands before clearance", parts.Quote(f[last]))
		size.Thread = strings.Join(f[:last], " ")
	}
	if !threadForm().MatchString(size.Thread) {
		r.faultf(n.pos, "a thread such as M10, M40x1.5, G1/8 or 1/2-13 UNC", "%s is no thread", parts.Quote(size.Thread))
	}
	if clearance {
		size.Series = "medium"
		if inchSize().MatchString(size.Thread) {
			size.Thread += " UNC"
		}
	}
	switch {
	case rest == "":
	case clearance && clearanceSeries(rest):
		size.Series = rest
	case clearance:
		r.faultf(n.pos, "fine, medium or coarse", "the clearance series %s is not known", parts.Quote(rest))
	default:
		r.faultf(n.pos, "nothing after `tap`", "the words %s after tap are not known", parts.Quote(rest))
	}
}

func (f *fields) slots() parts.FaceSlot {
	s := parts.FaceSlot{FaceGroup: f.faceGroup(), Width: f.length("width"), Length: f.length("length"), Turn: f.angle("turn")}
	s.For = cmp.Or(parts.Use(f.word("for")), parts.HoleUse(s.Name.Value, ""))
	f.not(s.Length, "<=", s.Width, "an overall length above the width; turn says which way it lies", "the slot is %s long and %s wide")
	return s
}

// radial reads what is cut into a round from outside.
func (f *fields) radial() parts.Radial {
	d := parts.Radial{Pos: f.n.pos, Name: f.name("name"), Axial: f.length("axial"), From: f.face("from")}
	if c := f.val("clock"); c != nil && c.kind == listNode {
		d.Clock = f.angles("clock")
	} else if a, ok := f.reader.angle(c, -360, 360); ok {
		d.Clock = []parts.Angle{a}
	}
	d.Through, d.Depth = f.depth("depth")
	d.For, d.Fitted, d.Note = f.served(d.Name)
	switch key, v := f.oneOf(); key {
	case "size":
		d.Shape, d.Size = parts.RadialHole, f.holeSize(v)
	case "slot":
		d.Shape = parts.RadialSlot
		f.sub("slot").opening(&d)
	case "window":
		d.Shape = parts.RadialWindow
		if w := f.sub("window"); w != nil {
			w.opening(&d)
			d.Corner = w.cornerOf("window", d.Around, d.Along)
		}
	}
	return d
}

func (f *fields) opening(d *parts.Radial) {
	if f != nil {
		d.Around, d.Along = f.length("around"), f.length("along")
	}
}
