package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// This file holds what the lookups share: reading lengths, wording refusals and
// printing an answer.

// lengthArg is a length on the command line: an argument or a flag.
type lengthArg struct {
	name, text string
	need       bool // it must be given
}

// readLengths reads the lengths that are given into mm, by name. The answer is
// written in inches if one of them is.
func readLengths(args ...lengthArg) (map[string]float64, words.Writer, error) {
	w := words.Writer{Units: parts.Millimetres}
	mm := map[string]float64{}
	for _, a := range args {
		if a.text == "" && a.need {
			return nil, w, badUse("%s is needed", a.name)
		}
		if a.text == "" {
			continue
		}
		v, err := parts.ParseLength(a.text, parts.Millimetres)
		if err != nil {
			return nil, w, badUse("%s %s: %s", a.name, a.text, err)
		}
		mm[a.name] = v
		if strings.HasSuffix(strings.TrimSpace(a.text), "in") {
			w.Units = parts.Inches
		}
	}
	return mm, w, nil
}

// wordRefusal words what a table or a computation refuses; other errors stay.
func wordRefusal(err error, w words.Writer) error {
	var bounds *lookup.RangeError
	var unknown *lookup.UnknownError
	switch {
	case errors.As(err, &unknown):
		return badUse("%s %q is not known: use %s", unknown.What, unknown.Value, strings.Join(unknown.Known, ", "))
	case errors.As(err, &bounds):
		var limits []string
		if !math.IsInf(bounds.Above, -1) && bounds.Above != lookup.Under(0) {
			limits = append(limits, "above "+said(w, bounds.Above, bounds.Unit))
		} else if bounds.Above == lookup.Under(0) {
			limits = append(limits, "0 or more")
		}
		if !math.IsInf(bounds.UpTo, 1) {
			limits = append(limits, "at most "+said(w, bounds.UpTo, bounds.Unit))
		}
		return badUse("%s is %s: it must be %s", bounds.What, said(w, bounds.Value, bounds.Unit), strings.Join(limits, " and "))
	}
	return err
}

func said(w words.Writer, v float64, unit string) string {
	switch unit {
	case "mm":
		return w.Said(v)
	case "deg":
		return words.Trim(v, 4) + "°"
	}
	return words.Trim(v, 4)
}

func (c *call) line(label, format string, args ...any) {
	fmt.Fprintf(c.stdout, "%-18s "+format+"\n", append([]any{label}, args...)...)
}

// withUnit writes a length as callipers read it, with its unit.
func withUnit(w words.Writer, mm float64) string { return w.Read(mm) + unit(w) }

// unit is what the writer leaves off its sizes.
func unit(w words.Writer) string {
	if w.Units == parts.Inches {
		return ""
	}
	return " mm"
}

// round4 rounds a value for JSON to a tenth of a micrometre, far finer than any
// tool; halves of the last place are forgiven what binary fractions take off.
func round4(v float64) float64 { return words.Round(v, 4) }

// between writes limits with their unit, rounded inward.
func between(w words.Writer, minMm, maxMm float64) string {
	return w.Limits(minMm, maxMm) + unit(w)
}

func series(w words.Writer, mm []float64) string {
	t := seq.Map(mm, w.Size)
	return strings.Join(t, ", ")
}
