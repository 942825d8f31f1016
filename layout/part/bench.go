package part

import (
	"math"

	"centrepop/layout/cutting"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// workedTo are limits that an operation is worked to: of a length, or across.
type workedTo struct {
	limits string
	along  bool
}

// bench puts the work in a shop's usual order: blank, turning from one side and
// then the other, marking out, drilling, slots, deburring, inspection. A flat
// part is bored after it is cut and before it is drilled, so that the template
// is set on a true bore.
type bench struct {
	*Numbered
	ops      []plan.Operation
	faced    map[parts.Face]int // the operation that faces an end
	held     map[int]bool       // operations in the setting of the one before
	finishes map[int]int        // the line of the first operation of a setting before which nothing is finished
	last     []string           // lines of the inspection
	later    bool               // what it cuts is cut after a weld, where that is held
	jigs     []Jigged

	top    string            // the line that marks TOP in an operation that does more
	worked map[workedTo]bool // the limits that stand in its operations, if the picture can leave them out

	ground     []string // what is measured once it is ground
	groundRefs []int

	roughed   bool       // both ends, before either is finished
	onCentres bool       // turned between centres
	tail      bool       // a centre may hold the free end in the setting
	face      parts.Face // looks at the tailstock in the setting

	moreMm float64 // sawn on for the jaws
	holeMm float64 // the drill that is through the middle after the first setting
}

// limits is the line of an operation that has the limits of a size by its name; none where nothing limits it.
func (b *bench) limits(name string, z Sized) []string { return b.limit(name, z, false) }

func (b *bench) limit(name string, z Sized, along bool) []string {
	l := b.limitsText(z)
	if l == "" {
		return nil
	}
	b.worked[workedTo{l, along}] = !z.leftOut()
	return []string{name + " " + l}
}

// wholeLimits are those of the part's length.
func (b *bench) wholeLimits(name string) []string { return b.limit(name, b.Sizes.whole(), true) }

// whole tells whether an outside runs from end to end, so that it is turned as far
// as the jaws allow.
func (b *bench) whole(s *Step) bool {
	return !s.Inside && geom.Alike(s.LengthMm(), b.LengthMm())
}

// rpm is the spindle speed for an operation at a diameter, from the shop's own
// list of the machine where it has one, with its remark and the tool; 0 for a material
// without data.
func (b *bench) rpm(op cutting.Op, diaMm float64, onLathe bool) (rpm float64, note string, tool cutting.Tool) {
	tool = cutting.HSS
	if b.Material == nil || !(diaMm > 0) {
		return 0, "", tool
	}
	if op != cutting.Drill && op != cutting.Ream && b.Job.Shop.CarbideTool {
		tool = cutting.Carbide
	}
	list := b.Job.Shop.DrillRPM
	if onLathe {
		list = b.Job.Shop.LatheRPM
	}
	want, err := b.wantedRPM(op, tool, diaMm, onLathe)
	if err != nil || len(list) == 0 {
		return math.Round(want/5) * 5, "", tool
	}
	rpm, _ = cutting.ChooseSpeed(want, seq.Map(list, func(n parts.Number) float64 { return n.Value }))
	switch { // a quarter too fast is borne by a light cut; common practice, no source
	case rpm > 1.25*want:
		with := words.Either(b.Material.Kind == material.GreyIron, "dry", "coolant")
		note = "slowest speed, " + words.Trim(want, 0) + " wanted: light cuts, " + with
	case rpm > 0 && rpm < 0.6*want:
		note = "nearest below " + words.Trim(want, 0)
	}
	return rpm, note, tool
}

// threadRPM is the fastest a thread is cut by hand and half-nut: the tool has to
// be drawn back in time. Common practice, no source.
const threadRPM = 150.0

// wantedRPM is the speed that tool and material would have. On the lathe the work turns, whatever cuts it, and bounds it.
func (b *bench) wantedRPM(op cutting.Op, tool cutting.Tool, diaMm float64, onLathe bool) (float64, error) {
	span, _, err := cutting.Speed(b.Material.Kind, op, tool)
	v := span.MidMPerMin()
	if op == cutting.Drill && b.Material.Kind == material.AusteniticStainless {
		v = span.MinMPerMin // it hardens under a drill that burns; two shop tables for 304, from ft/min, have 9 to 15 and 17
	}
	want := cutting.SpindleRPM(v, diaMm)
	if op == cutting.Thread {
		want = math.Min(want, threadRPM)
	}
	if !onLathe {
		return want, err
	}
	if limit := cutting.SpindleLimitRPM(b.swungMm()); limit > 0 {
		want = math.Min(want, limit)
	}
	return want, err
}

// swungMm is the largest diameter that a part swings in the lathe, corners and
// all, as bought where it is a bar or a casting, and whether it may be out of balance: anything but a round.
func (s *Sizes) swungMm() (mm float64, uneven bool) {
	box, k := s.OutlinePath().Bounds(), s.Part.Stock
	switch {
	case s.form.round() && k.Form == "square":
		return k.Size.Mm * math.Sqrt2, false
	case s.form.round() && !k.ByArea():
		return geom.Clean(math.Max(box.W(), k.Size.Mm)), false
	case s.form.round():
		return geom.Clean(box.W()), false
	}
	for _, c := range s.OutlinePath().Flatten(geom.FlatMm).Coords() { // about the bore, which need not be in the middle
		mm = max(mm, 2*math.Hypot(c.X, c.Y))
	}
	return geom.Clean(mm), true
}

func (b *bench) speed(op cutting.Op, diaMm float64) string {
	rpm, note, tool := b.rpm(op, diaMm, true)
	return words.When(rpm != 0, words.Join("; ", words.Trim(rpm, 0)+" rev/min at "+b.W.Dia(diaMm)+", "+string(tool), note))
}

// atSpeed is the speed of what turns in a drill or mill spindle, or of the work in the lathe; empty where
// none is known.
func (b *bench) atSpeed(op cutting.Op, mm float64, onLathe bool) string {
	if rpm, _, _ := b.rpm(op, mm, onLathe); rpm != 0 {
		return ", " + words.Trim(rpm, 0) + " rev/min"
	}
	return ""
}

// The phases of a setting, in the order they are worked.
const (
	outsidePhase = iota
	borePhase
	taperPhase
	undercutPhase
	chamferPhase
	groovePhase
	knurlPhase
	threadPhase
	finishPhase
)

// Bores tells an operation of the lathe, or of the mill in its place.
func Bores(o plan.Operation) bool { return o.Machine == plan.Lathe || o.Bores }

// gripNeedMm is what the jaws should have of the widest outside.
func (b *bench) gripNeedMm() float64 { return gripDias * b.widest().Size.NominalMm }

// Where a round is supported. Of a finished size a quarter of its tolerance may be
// bent aside; what sticks out over three diameters chatters, and jaws on less than a
// fifth of what sticks out, or on less than 0.15 diameters, let go. The tool stays clear
// of the jaws, and on less than leastJawMm nothing is turned that can be turned in two
// settings. Common practice, no source.
const (
	bendShare   = 0.25
	chatterDias = 3.0
	gripShare   = 1.0 / 5
	gripDias    = 0.15
	toolClearMm = 3.0
	leastJawMm  = 10.0
	leastHeldMm = 3.0 // jaws on less let go, however light the cut
)

// boughtTrueMm is how nearly opposite places of an outside that is as bought are set alike (common
// practice, no source).
const boughtTrueMm = 0.2

// truedMm is how true a finished diameter runs when a part is turned round (common
// practice, no source).
const truedMm = 0.02

// first tells whether it is the first of the two.
func (s setting) first() bool { return s.face == parts.Front }
