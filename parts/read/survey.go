package read

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"slices"

	"centrepop/parts"
	"centrepop/parts/seq"
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
	Name     parts.Text
	Units    parts.Units
	Caliper  parts.Length // zero if not said
	Bolt     parts.Text
	Thread   parts.Text // of tapped holes
	Spigot   Measured
	HolesPos parts.Pos
	First    parts.Angle // clock angle of hole 1
	Holes    []Measured
	Readings []SurveyReading
	source   *source
}

// Measured is a diameter as measured, with its own ± or that of the caliper.
type Measured struct{ Diameter, PlusMinus parts.Length }

// SurveyReading is one distance between two holes (numbers from 1), or from a
// hole to the spigot, where To is 0. Kind is over, between or centres.
type SurveyReading struct {
	Pos               parts.Pos
	From, To          int
	Kind              string
	Length, PlusMinus parts.Length
}

// LoadSurvey reads the file of a measured flange. The error is Errors if the
// file is at fault, and is the file system's if it cannot be read.
func LoadSurvey(path string) (*Survey, error) {
	src, err := File(path, maxFileBytes)
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
	r := &reader{source: s, units: parts.Millimetres}
	f := r.flange(tree)
	f.source = s
	if errs := s.sorted(); len(errs) > 0 {
		return nil, errs
	}
	return f, nil
}

// File reads a file whole, or its first most bytes and one more, for the
// caller to refuse. Folders, devices and pipes are not opened.
func File(path string, most int64) ([]byte, error) {
	src, _, err := readRegular(os.Stat, os.Open, path, most)
	if errors.Is(err, errNotRegular) {
		err = fmt.Errorf("%s: %w", path, err)
	}
	return src, err
}

// Fault makes an error at a place in the file.
func (f *Survey) Fault(pos parts.Pos, what, right string) *parts.Error {
	pos.File = f.source.file
	return parts.FaultIn(f.source.lines, pos, what, right)
}

// flange reads the whole file.
func (r *reader) flange(n *node) *Survey {
	f := r.in(n, flangeGroup)
	// The units come first: they are those of all lengths.
	r.units = parts.Units(cmp.Or(f.word("units"), string(parts.Millimetres)))
	out := &Survey{Units: r.units, Name: f.text("flange"), Bolt: f.thread(f.val("bolt")), Caliper: f.length("caliper")}
	if s := f.val("spigot"); s != nil && s.kind == scalarNode {
		out.Spigot = Measured{f.length("spigot"), out.Caliper}
	} else if own := f.sub("spigot"); own != nil {
		out.Spigot = Measured{own.length("diameter"), cmp.Or(own.length("plus-minus"), out.Caliper)}
	}
	f.sub("holes").flangeHoles(out)
	out.Readings = eachOf(f, "readings", func(one *fields) SurveyReading { return one.flangeReading(out) })
	return out
}

func (f *fields) flangeHoles(s *Survey) {
	if f == nil {
		return
	}
	s.HolesPos, s.First, s.Thread = f.n.keyPos("count"), f.angle("first"), f.thread(f.val("thread"))
	pm := cmp.Or(f.length("plus-minus"), s.Caliper)
	count, dia := f.count("count"), f.val("diameter")
	if dia == nil || count == 0 {
		return
	}
	if dia.kind == listNode {
		items, _ := f.items(dia, count, count, "one diameter for each hole, or a single one")
		s.Holes = seq.Map(items, func(item *node) Measured { return Measured{f.reader.length(item, positive), pm} })
		return
	}
	s.Holes = slices.Repeat([]Measured{{f.length("diameter"), pm}}, count)
}

func (f *fields) flangeReading(s *Survey) SurveyReading {
	f.n.label = "a reading"
	last := max(len(s.Holes), 1)
	out := SurveyReading{Pos: f.n.pos, From: f.reader.count(f.val("from"), 1, last)}
	if to := f.val("to"); to == nil || to.text != "spigot" {
		out.To = f.reader.count(to, 1, last)
	}
	key, _ := f.oneOf()
	if out.Kind = key; key != "" {
		out.Length = f.length(key)
	}
	out.PlusMinus = cmp.Or(f.length("plus-minus"), s.Caliper)
	return out
}
