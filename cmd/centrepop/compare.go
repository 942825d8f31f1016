package main

import (
	"bytes"
	"errors"
	"strings"

	"centrepop/layout/compare"
	"centrepop/parts"
	"centrepop/parts/read"
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
	w, err := load(c.args[0])
	if err != nil {
		return err
	}
	job, plan := w.Job, w.Plan
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
		return badUse("--tolerance %s: 0.001 to 10 mm", *tolerance)
	}
	out := struct {
		Drawing string `json:"drawing"`
		*compare.Report
	}{c.args[2], report}
	return c.judged(out, strings.Join(report.Lines(c.args[2]), "\n")+"\n", len(report.Findings) > 0)
}

// readDrawing reads an SVG file; its faults come out located like those of
// part files.
func readDrawing(path string) (*compare.Sheet, error) {
	src, err := read.File(path, compare.MaxBytes)
	if err != nil {
		return nil, err
	}
	sheet, err := compare.Read(bytes.NewReader(src))
	var syntax *compare.SyntaxError
	if errors.As(err, &syntax) {
		pos := parts.Pos{File: path, Line: syntax.Line, Column: syntax.Column}
		return nil, parts.Errors{parts.FaultIn(strings.Split(string(src), "\n"), pos, syntax.What, "an SVG file as the cutter gets it")}
	}
	return sheet, err
}
