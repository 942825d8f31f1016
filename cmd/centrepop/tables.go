package main

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// This file holds what the lookups share: wording refusals and printing an answer.

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
func (c *call) withUnit(mm float64) string { return c.w.Read(mm) + c.unit() }

// unit is what the writer leaves off its sizes.
func (c *call) unit() string { return words.When(c.w.Units != parts.Inches, " mm") }

// looked answers what a table or a computation of the libraries gives, in whose fields the names of
// the answer stand; as JSON with its numbers to a tenth of a micrometre, far finer than any tool.
func (c *call) looked(v any, write func()) error {
	if *c.json {
		tidy(reflect.ValueOf(v))
	}
	return c.answer(v, write)
}

// tidy rounds all numbers but limits of size, which are those of a standard; halves of the last place
// are forgiven what binary fractions take off.
func tidy(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			tidy(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type() != reflect.TypeFor[fits.Limits]() {
				tidy(v.Field(i))
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			tidy(v.Index(i))
		}
	case reflect.Float64:
		v.SetFloat(geom.Clean(words.Round(v.Float(), 4)))
	}
}

// between writes limits with their unit, rounded inward.
func (c *call) between(minMm, maxMm float64) string { return c.w.Limits(minMm, maxMm) + c.unit() }

func (c *call) series(mm []float64) string { return strings.Join(seq.Map(mm, c.w.Size), ", ") }
