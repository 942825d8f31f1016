package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"centrepop/layout/compare"
	"centrepop/parts"
)

// compareCmd holds a cutting drawing that somebody else made against a part.
// It ends with errFindings if anything differs.
func compareCmd(c *call) error {
	tolerance := c.flags.String("tolerance", "0.1", "how far a place or a size may be off, 0.001 to 10 mm")
	if err := c.parse(3, 3); err != nil {
		return err
	}
	tol, err := parts.ParseLength(*tolerance, parts.Millimetres)
	if err != nil {
		return badUse("--tolerance %s: %s", *tolerance, err)
	}
	job, plan, err := load(c.args[0])
	if err != nil {
		return err
	}
	if _, err := partNamed(plan, c.args[1]); err != nil {
		return err
	}
	want, err := compare.Wanted(job, c.args[1])
	if err != nil {
		return err
	}
	sheet, err := readDrawing(c.args[2])
	if err != nil {
		return err
	}
	report, err := compare.Compare(want, sheet, tol)
	if err != nil {
		return badUse("%s", err)
	}
	if *c.json {
		err = c.print(struct {
			Drawing string `json:"drawing"`
			*compare.Report
		}{c.args[2], report})
	} else {
		compareText(c.stdout, c.args[2], report)
	}
	if err == nil && len(report.Findings) > 0 {
		return errFindings
	}
	return err
}

// readDrawing reads an SVG file; its faults come out located like those of
// part files.
func readDrawing(path string) (*compare.Sheet, error) {
	src, err := parts.ReadFile(path, compare.MaxBytes)
	if err != nil {
		return nil, err
	}
	sheet, err := compare.Read(bytes.NewReader(src))
	var syntax *compare.SyntaxError
	if errors.As(err, &syntax) {
		pos := parts.Pos{File: path, Line: syntax.Line, Column: syntax.Column}
		return nil, parts.Errors{parts.FaultIn(src, pos, syntax.What, "an SVG file as the cutter gets it")}
	}
	return sheet, err
}

// compareText writes the report for reading in a terminal.
func compareText(w io.Writer, drawing string, r *compare.Report) {
	fmt.Fprintf(w, "%s against %s: %d closed contours, %d of them round; %d of %d openings in place and size (to %g mm)\n",
		drawing, r.Part, r.Contours, r.Circles, r.Matched, r.Wanted, r.ToleranceMm)
	if len(r.LeftOut) > 0 {
		fmt.Fprintf(w, "not cut, to be drilled: %s\n", strings.Join(r.LeftOut, ", "))
	}
	if r.Marks > 0 || r.Texts > 0 {
		fmt.Fprintf(w, "not compared: %d lines on marking layers, %d texts and pictures\n", r.Marks, r.Texts)
	}
	for _, f := range r.Findings {
		at := drawing
		if f.Line > 0 {
			at = fmt.Sprintf("%s:%d:%d", drawing, f.Line, f.Column)
		}
		fmt.Fprintf(w, "%s: %s: %s\n", at, f.Code, f.What)
	}
	switch len(r.Findings) {
	case 0:
		fmt.Fprintln(w, "no differences")
	case 1:
		fmt.Fprintln(w, "1 finding")
	default:
		fmt.Fprintf(w, "%d findings\n", len(r.Findings))
	}
}
