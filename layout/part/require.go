package part

import (
	"slices"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// requirement is a tolerance of form, direction or place, or of equal copies.
type requirement struct {
	parts.Requirement
	source lookup.Source
}

// pressedSquareMm is how square to its outside the end of a tube is faced that a press is set level by: half of what
// ISO 2768-2 class H has up to 100 mm, from memory.
const pressedSquareMm = 0.1

// Square is by how much an end of the part may be out of square to its outside: by the drawing, else where a press is set
// level by the end of a tube. It is 0 where nothing asks.
func (s *Sizes) Square(face parts.Face) float64 {
	return seq.First(s.requirements(), func(q *requirement) bool { return q.Kind == parts.Squareness && q.Of.Value == string(face) }).withinMm()
}

// withinMm is the width of the zone; 0 of none.
func (q *requirement) withinMm() float64 {
	if q == nil {
		return 0
	}
	return q.Within.Mm
}

// requirements are those of the drawing, and that the end of a tube be square which a press is set level by.
func (s *Sizes) requirements() []*requirement {
	out := seq.Map(s.Part.Require, func(q parts.Requirement) *requirement { return &requirement{q, lookup.Told("drawing")} })
	for _, j := range s.Job.Of(parts.PressKind) {
		end, shaft := string(j.Meet.First), j.Press.Shaft
		asked := slices.ContainsFunc(out, func(q *requirement) bool { return q.Kind == parts.Squareness && q.Of.Value == end })
		if s.Part.Kind == parts.Tube && j.Meet.Level && shaft.Part == s.Part.Name.Value && !asked {
			square := parts.Requirement{Pos: s.Part.Pos, Kind: parts.Squareness, Within: parts.Length{Mm: pressedSquareMm}}
			square.Of.Value, square.To.Value = end, shaft.Feature
			out = append(out, &requirement{square, lookup.NoSource})
		}
	}
	return out
}

// toleranced says each kind as ISO 1101 does, its symbol first (the typeface has
// the symbols of the standard, ISO 1101:2017 table 1, from memory), and what
// measures it (common practice, no source).
var toleranced = map[parts.RequirementKind]struct{ symbol, name, gauge string }{
	parts.Flatness:    {"⏥", "flatness", "surface plate and feeler, or straight edge"},
	parts.Squareness:  {"⊥", "perpendicularity", "indicator across the face in one turn about the datum, or square and feeler"},
	parts.Parallelism: {"∥", "parallelism", "micrometer at four places, or indicator on a surface plate"},
	parts.RunOut:      {"↗", "circular run-out", "indicator, largest less smallest reading in one turn about the datum"},
	parts.Coaxiality:  {"◎", "coaxiality", "indicator, largest less smallest reading in one turn about the datum"},
	parts.EqualLength: {"", "equal", "micrometer or calipers, all pieces one after the other"},
}

// text is what is required in words: "perpendicularity of back to bore".
func (q *requirement) text() string {
	text := toleranced[q.Kind].name + " of " + words.Spaced(q.Of.Value)
	switch {
	case q.Kind == parts.EqualLength && q.Of.Value == "length":
		return "length the same on all pieces"
	case q.Kind == parts.EqualLength:
		return "length of " + words.Spaced(q.Of.Value) + " the same on all pieces"
	}
	text += words.When(q.To.Value != "", " to "+words.Spaced(q.To.Value))
	return text
}

// within is the width of the zone with the symbol: "⊥ 0.2".
func (q *requirement) within(w words.Writer) string {
	return words.Join(" ", toleranced[q.Kind].symbol, w.Size(q.Within.Mm))
}

func (q *requirement) feature(n *Numbered) plan.Feature {
	f := plan.Feature{Kind: plan.RequirementFeature, Name: q.text(), Size: q.within(n.W), Balloon: plan.XY{XMm: n.LengthMm(), YMm: n.Section.MaxMm * 0.7}}
	switch st := n.StepNamed(q.Of.Value); {
	case st != nil:
		f.Balloon = plan.XY{XMm: geom.Clean(st.MidMm()), YMm: st.RadiusMm()}
	case q.Of.Value == string(parts.Front):
		f.Balloon.XMm = 0
	}
	return f
}

// operations put it into the operation that makes the feature, while the part is
// still held, or else into the last one.
func (q *requirement) operations(b *bench) {
	const reading = "largest less smallest reading in one turn"
	i, ok := q.madeIn(b)
	line, datum := q.line(b), b.StepNamed(q.To.Value)
	earlier := ok && q.turned() && datum != nil && !b.onCentres && b.turnedBefore(datum, i)
	switch {
	case q.Kind != parts.EqualLength && (b.hard(q.Of.Value) || b.hard(q.To.Value)):
		b.ground, b.groundRefs = append(b.ground, "Before letting go: "+line), append(b.groundRefs, b.ref(q))
		return
	case !ok:
		b.last = append(b.last, line)
		return
	case earlier && (!datum.Inside || b.BoreMm() < leverMm):
		b.last = append(b.last, q.measuredBy(b, borne(datum)+", indicator on the other, "+reading))
		return
	case earlier:
		line = q.measuredBy(b, "indicator on "+words.Spaced(q.To.Value)+", through the bore, "+reading+"; what is turned from here on runs true to the spindle, not to that")
		for b.held[i] {
			i--
		}
		b.ops[i].Do = slices.Insert(b.ops[i].Do, b.finishes[i], "Before anything is finished: "+line)
	case q.Kind == parts.Squareness && datum != nil && !datum.Inside && (datum.Size.AsBought || b.turnedBefore(datum, i)): // an indicator reads nothing on what was faced in this setting
		line = q.measuredBy(b, "square along "+words.Spaced(datum.Name)+" and feeler, at four places")
		b.ops[i].Do = append(b.ops[i].Do, "Before letting go: "+line)
	case q.Kind == parts.Flatness: // no plate goes to a face in the chuck
		line = q.measuredBy(b, "straight edge and feeler")
		fallthrough
	default:
		b.ops[i].Do = append(b.ops[i].Do, "Before letting go: "+line)
	}
	b.ops[i].Refs = append(b.ops[i].Refs, b.ref(q))
}

// turned tells whether it is measured in a turn about its datum.
func (q *requirement) turned() bool { return q.Kind == parts.RunOut || q.Kind == parts.Coaxiality }

// line is that of an operation that has it measured: of equal copies, after the first.
func (q *requirement) line(b *bench) string {
	if st := b.StepNamed(q.Of.Value); st != nil && q.Kind == parts.EqualLength {
		return "Length of " + words.Spaced(st.Name) + " " + b.W.Said(st.LengthMm()) +
			": write down what the first piece has, set a stop by it, and make the others like it within " + b.W.Said(geom.Clean(q.Within.Mm/2)) +
			": micrometer or calipers."
	}
	return q.measuredBy(b, toleranced[q.Kind].gauge)
}

// measuredBy is the line of an operation that has it measured.
func (q *requirement) measuredBy(b *bench, gauge string) string {
	return words.Capital(q.text()) + " within " + b.W.Said(q.Within.Mm) + ": " + gauge + "."
}

// madeIn is the last operation of the setting in which there is all that it is measured between; not ok
// if no operation makes it.
func (q *requirement) madeIn(b *bench) (i int, ok bool) {
	i, ok = b.faced[parts.Face(q.Of.Value)]
	of, to := b.StepNamed(q.Of.Value), b.StepNamed(q.To.Value)
	makes := seq.Keep([]*Step{of, to}, func(s *Step) bool { return s != nil && (ok || of != nil) })
	if of != nil && q.Kind == parts.EqualLength { // it is there when the last of its two ends is
		makes = append(makes, b.beside(of)...)
		for face, k := range b.faced {
			if b.atFace(of, face) {
				i, ok = max(i, k), true
			}
		}
	}
	for k, o := range b.ops {
		if o.Machine == plan.Lathe && k >= i && slices.ContainsFunc(makes, func(s *Step) bool { return slices.Contains(o.Refs, b.ref(s)) }) {
			i, ok = k, true
		}
	}
	i = max(i, b.faced[parts.Face(q.To.Value)])
	for b.held[i+1] {
		i++
	}
	return i, ok
}

// leverMm is the least bore that lets a lever indicator through on its bar (common practice, no source).
const leverMm = 20

// turnedBefore tells whether a step was done with before the setting of an operation on the lathe.
func (b *bench) turnedBefore(s *Step, i int) bool {
	for b.held[i] {
		i--
	}
	return !slices.ContainsFunc(b.ops[i:], func(o plan.Operation) bool {
		return o.Machine == plan.Lathe && slices.Contains(o.Refs, b.ref(s))
	}) && !s.Size.AsBought
}

// borne is what turns a part about its datum once it is out of the chuck.
func borne(datum *Step) string {
	return words.Either(datum.Inside, "a mandrel in "+words.Spaced(datum.Name), words.Spaced(datum.Name)+" turned in V blocks")
}

func (q *requirement) checks(r *record) {
	r.add(plan.Check{
		Ref: r.ref(q), What: q.text(), Wanted: q.within(r.W), Limits: "within " + r.W.Said(q.Within.Mm),
		MaxMm: q.Within.Mm, Gauge: toleranced[q.Kind].gauge, Source: q.source,
	})
}
