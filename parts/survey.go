package parts

import (
	"cmp"
	"errors"
	"fmt"
	"os"
)

// Bounds on a file of a measured flange: nobody writes more by hand.
const (
	maxFlangeHoles    = 36
	maxFlangeReadings = 400
)

// Survey is a measured flange as it was written down:
//
//	flange: gearbox motor flange
//	units: mm                     # or in
//	caliper: 0.05                 # ± of every reading that says nothing else
//	spigot: {diameter: 230.02, plus-minus: 0.02}
//	holes: {count: 4, diameter: 14.5, first: 45}
//	bolt: M12
//	readings:
//	  - {from: 1, to: 2, over: 201.9}
//	  - {from: 1, to: 3, between: 250.5, plus-minus: 0.1}
type Survey struct {
	Name     Text
	Units    Units
	Caliper  Length // zero if not said
	Bolt     Text
	Thread   Text // of tapped holes
	Spigot   Measured
	HolesPos Pos
	First    Angle // clock angle of hole 1
	Holes    []Measured
	Readings []SurveyReading
	source   *source
}

// Measured is a diameter as measured, with its own ± or that of the caliper.
type Measured struct{ Diameter, PlusMinus Length }

// SurveyReading is one distance between two holes (numbers from 1), or from a
// hole to the spigot, where To is 0. Kind is over, between or centres.
type SurveyReading struct {
	Pos               Pos
	From, To          int
	Kind              string
	Length, PlusMinus Length
}

// LoadSurvey reads the file of a measured flange. The error is Errors if the
// file is at fault, and is the file system's if it cannot be read.
func LoadSurvey(path string) (*Survey, error) {
	src, err := ReadFile(path, maxFileBytes)
	if err != nil {
		return nil, err
	}
	return parseSurvey(path, src)
}

func parseSurvey(path string, src []byte) (*Survey, error) {
	s, tree := read(path, src)
	if tree == nil {
		return nil, s.sorted()
	}
	r := &reader{source: s, units: Millimetres}
	f := r.flange(tree)
	f.source = s
	if errs := s.sorted(); len(errs) > 0 {
		return nil, errs
	}
	return f, nil
}

// ReadFile reads a file whole, or its first most bytes and one more, for the
// caller to refuse. Folders, devices and pipes are not opened.
func ReadFile(path string, most int64) ([]byte, error) {
	src, _, err := readRegular(os.Stat, os.Open, path, most)
	if errors.Is(err, errNotRegular) {
		err = fmt.Errorf("%s: %w", path, err)
	}
	return src, err
}

// Fault makes an error at a place in the file.
func (f *Survey) Fault(pos Pos, what, right string) *Error {
	pos.File = f.source.file
	return faultIn(f.source.lines, pos, what, right)
}

// flange reads the whole file.
func (r *reader) flange(n *node) *Survey {
	r.group(n, "flange", "units", "caliper", "spigot", "holes", "bolt", "readings")
	f := &Survey{Units: Millimetres}
	// The units come first: they are those of all lengths.
	if w := r.word(n.get("units"), string(Millimetres), string(Inches)); w != "" {
		f.Units, r.units = Units(w), Units(w)
	}
	f.Name = r.text(n.get("flange"), maxText)
	f.Bolt = r.thread(n.get("bolt"))
	f.Caliper = r.length(n.get("caliper"), positive)
	if s := n.get("spigot"); s != nil {
		f.Spigot = r.measured(s, f.Caliper)
	}
	r.flangeHoles(r.need(n, "holes", "holes: {count: 4, diameter: 14.5}"), f)
	items, _ := r.items(r.need(n, "readings", "readings: [{from: 1, to: 2, over: 201.9}, ...]"), 1, maxFlangeReadings, "readings such as {from: 1, to: 2, over: 201.9}")
	for _, item := range items {
		f.Readings = append(f.Readings, r.flangeReading(item, f))
	}
	return f
}

// measured reads a diameter, alone or with its own ±.
func (r *reader) measured(n *node, plusMinus Length) Measured {
	if n.kind == scalarNode {
		return Measured{r.length(n, positive), plusMinus}
	}
	if !r.group(n, "diameter", "plus-minus") {
		return Measured{}
	}
	own := r.length(n.get("plus-minus"), positive)
	return Measured{r.length(r.need(n, "diameter", "{diameter: 230.02, plus-minus: 0.02}"), positive), cmp.Or(own, plusMinus)}
}

func (r *reader) flangeHoles(n *node, f *Survey) {
	if !r.group(n, "count", "diameter", "plus-minus", "first", "thread") {
		return
	}
	f.HolesPos = n.keyPos("count")
	f.First = r.clock(n.get("first"))
	f.Thread = r.thread(n.get("thread"))
	pm := cmp.Or(r.length(n.get("plus-minus"), positive), f.Caliper)
	count := r.count(r.need(n, "count", "count: 4"), 3, maxFlangeHoles)
	dia := r.need(n, "diameter", "diameter: 14.5, or a list of one for each hole")
	if dia == nil || count == 0 {
		return
	}
	if dia.kind == listNode {
		items, _ := r.items(dia, count, count, "one diameter for each hole, or a single one")
		for _, item := range items {
			f.Holes = append(f.Holes, Measured{r.length(item, positive), pm})
		}
		return
	}
	all := r.length(dia, positive)
	for range count {
		f.Holes = append(f.Holes, Measured{all, pm})
	}
}

func (r *reader) flangeReading(n *node, f *Survey) SurveyReading {
	if !r.group(n, "from", "to", "over", "between", "centres", "plus-minus") {
		return SurveyReading{}
	}
	const right = "{from: 1, to: 2, over: 201.9}"
	n.label = "a reading"
	out := SurveyReading{Pos: n.pos, From: r.count(r.need(n, "from", right), 1, max(len(f.Holes), 1))}
	if to := r.need(n, "to", right); to == nil || to.text != "spigot" {
		out.To = r.count(to, 1, max(len(f.Holes), 1))
	}
	kind, length := r.oneOf(n, "over", "between", "centres")
	out.Kind, out.Length = kind, r.length(length, positive)
	out.PlusMinus = cmp.Or(r.length(n.get("plus-minus"), positive), f.Caliper)
	return out
}
