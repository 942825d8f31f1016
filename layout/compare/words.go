package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// sizes writes lengths with one unit at the end: "110 × 140 mm".
func (c *comparison) sizes(sep string, mm ...float64) string {
	unit := parts.By(c.want.Units, " mm", " in")
	w := words.Writer{Units: c.want.Units}
	out := seq.Map(mm, func(v float64) string { return strings.TrimSuffix(w.Read(v), unit) })
	return strings.Join(out, sep) + unit
}

func (c *comparison) place(x, y float64) string { return c.sizes(", ", x, y) }

func (c *comparison) dia(mm float64) string { return "Ø" + words.Writer{Units: c.want.Units}.Read(mm) }

func (c *comparison) thing(s *Shape) string {
	switch {
	case s.Sides > 0:
		return fmt.Sprintf("polygon of %d sides, %s over its corners and %s between them", s.Sides, c.dia(s.DiameterMm), c.sizes("", s.DiameterMm*math.Cos(math.Pi/float64(s.Sides))))
	case s.DiameterMm > 0:
		return "circle " + c.dia(s.DiameterMm)
	}
	return "contour of " + c.sizes(" × ", s.WidthMm, s.HeightMm)
}

// factors are the usual wrong scales: what the drawing has to be multiplied
// by, and how that comes about.
var factors = []struct {
	by  float64
	why string
}{
	{mmPerInch, "inches are read as millimetres"},
	{1 / mmPerInch, "millimetres are read as inches"},
	{96 / mmPerInch, "millimetres are read as pixels, 96 to the inch"},
	{mmPerInch / 96, "pixels, 96 to the inch, are read as millimetres"},
	{72 / mmPerInch, "millimetres are read as points, 72 to the inch"},
	{mmPerInch / 72, "points, 72 to the inch, are read as millimetres"},
	{90 / mmPerInch, "millimetres are read as pixels, 90 to the inch"},
	{mmPerInch / 90, "pixels, 90 to the inch, are read as millimetres"},
	{96.0 / 72, "72 and 96 dots to the inch are mixed up"},
	{72.0 / 96, "72 and 96 dots to the inch are mixed up"},
	{96.0 / 90, "90 and 96 dots to the inch are mixed up"},
	{90.0 / 96, "90 and 96 dots to the inch are mixed up"},
	{10, "millimetres are read as centimetres, or the other way"},
	{0.1, "millimetres are read as centimetres, or the other way"},
}

// sameScale is how near a scale must be to a factor to be explained by it.
const sameScale = 0.004

// why says how a scale comes about, if it is a usual one. The report's scale is
// rounded, so that it is compared with rounding to spare.
func (c *comparison) why() string {
	for _, f := range factors {
		if math.Abs(1/(c.report.Scale*f.by)-1) < sameScale {
			return ": " + f.why
		}
	}
	return ""
}

// name calls a hole or slot as the templates do.
func (p *Part) name(n int, group string) string {
	switch {
	case n == 0:
		return group
	case slices.ContainsFunc(p.Slots, func(s Slot) bool { return s.Group == group }):
		return fmt.Sprintf("slot %d (%s)", n, group)
	}
	return fmt.Sprintf("hole %d (%s)", n, group)
}

// says is what a finding says of each code: {by} how far, {at} where, {name} the hole, slot or mark, of what is
// {drawn} and what is {wanted} also its place, size and diameter.
var says = map[Code]string{
	Empty:          "the drawing holds nothing to cut",
	Scale:          "the drawing is {scale}",
	Mirror:         "the drawing is a mirror image of the front",
	Turned:         "the drawing is turned {turned}",
	OutlineMissing: "no closed contour can be the outline of {wanted size}{open}",
	OutlineSize:    "the outline is {drawn size}, not {wanted size}",
	OutlineShape:   "the outline has the right size but is up to {by} off, at {at}",
	Open:           "the {drawn} does not close: its ends are {by} apart, at {at}",
	Doubled:        "{one} lies on another one and would be cut twice",
	LinesUnread:    "{lines} on marking layers, the first here: neither marks nor the TOP line, and not compared",
	OthersUnread:   "{elements}, the first here, cannot be compared: texts, pictures, hidden or clipped things",
	HoleMissing:    "{name} {wanted dia} at {at} is missing",
	HoleExtra:      "the {drawn} at {at} is nothing of the part",
	Extra:          "the {drawn} at {at} is nothing of the part",
	HoleMoved:      "{name} is {by} from its place: at {drawn place}, not {at}",
	HoleDiameter:   "{name} is {drawn dia}, not {wanted dia} as cut",
	HoleShape:      "{name} is not round: a {drawn} stands for {wanted dia}, up to {by} off",
	BlindCut:       "{name} does not go through, and the drawing cuts it: {drawn}",
	SlotMissing:    "{name} {wanted size} at {at} is missing",
	SlotMoved:      "{name} is {by} from its place",
	SlotShape:      "{name} is not {wanted size} turned as drawn: up to {by} off",
	MarkMissing:    "the mark for {name} at {at} is missing",
	MarkMoved:      "the mark for {name} is {by} from its place: at {drawn place}, not {at}",
	MarkExtra:      "the mark at {at} is for nothing of the part",
}

func (c *comparison) say(f *Finding) string {
	r, one := c.report, "a line"
	pairs := []string{
		"{by}", c.sizes("", f.ByMm), "{at}", c.place(f.XMm, f.YMm), "{name}", c.want.name(f.N, f.Group),
		"{scale}", words.Trim(r.Scale, 4) + " times its size" + c.why(),
		"{turned}", words.Angle(math.Abs(r.TurnedDeg)) + " " + words.Either(r.TurnedDeg < 0, "anticlockwise", "clockwise"),
		"{open}", words.When(f.Drawn != nil, "; the one that could does not close"),
		"{lines}", words.Counted(f.Count, "line"), "{elements}", words.Counted(f.Count, "element"),
	}
	shape := func(name string, s *Shape) {
		pairs = append(pairs, "{"+name+"}", c.thing(s), "{"+name+" size}", c.sizes(" × ", s.WidthMm, s.HeightMm),
			"{"+name+" dia}", c.dia(s.DiameterMm), "{"+name+" place}", c.place(s.XMm, s.YMm))
	}
	if f.Drawn != nil {
		one = "the " + c.thing(f.Drawn)
		shape("drawn", f.Drawn)
	}
	if f.Wanted != nil {
		shape("wanted", f.Wanted)
	}
	return strings.NewReplacer(append(pairs, "{one}", one)...).Replace(says[f.Code])
}

// Lines writes the report for reading in a terminal, about a drawing of that
// name.
func (r *Report) Lines(drawing string) []string {
	w := words.Writer{Units: r.units}
	out := []string{fmt.Sprintf("%s against %s: %d closed contours, %d of them round; %d of %d openings in place and size (to %s)",
		drawing, r.Part, r.Contours, r.Circles, r.Matched, r.Wanted, w.Said(r.ToleranceMm))}
	if len(r.LeftOut) > 0 {
		out = append(out, "not cut, to be drilled: "+strings.Join(r.LeftOut, ", "))
	}
	if r.Marks > 0 || r.OtherLines > 0 {
		out = append(out, fmt.Sprintf("marks: %d of %d in place, %d drawn; %s on the marking layers %s",
			r.MarksRight, r.MarksWanted, r.Marks, words.Counted(r.OtherLines, "other line"), strings.Join(r.Layers, ", ")))
	}
	if len(r.Unmarked) > 0 {
		out = append(out, "neither cut nor marked: "+strings.Join(r.Unmarked, ", "))
	}
	for _, f := range r.Findings {
		at := words.Either(f.Line > 0, fmt.Sprintf("%s:%d:%d", drawing, f.Line, f.Column), drawing)
		out = append(out, fmt.Sprintf("%s: %s: %s", at, f.Code, f.What))
	}
	if len(r.Findings) == 0 {
		return append(out, "no differences")
	}
	return append(out, words.Counted(len(r.Findings), "finding"))
}
