package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"centrepop/layout"
	"centrepop/layout/changes"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates"
)

// changesCmd says what differs between two states of a job. It ends with
// errFindings if anything does.
func changesCmd(c *call) error {
	if err := c.parse(2, 2); err != nil {
		return err
	}
	was, err := earlier(c.args[0])
	if err != nil {
		return err
	}
	is, err := earlier(c.args[1])
	if err != nil {
		return err
	}
	report, err := changes.Compare(was.job, is.job)
	if err != nil {
		return err
	}
	if *c.json {
		err = c.print(report)
	} else {
		_, err = fmt.Fprintln(c.stdout, strings.Join(report.Lines(), "\n"))
	}
	if err == nil && report.Differs() {
		return errFindings
	}
	return err
}

// state is a job as it stands in a folder.
type state struct {
	job *parts.Job
	pl  *plan.Plan
}

// earlier reads a state of a job, a folder or a file.
func earlier(path string) (state, error) {
	file := jobIn(path)
	job, pl, err := load(file)
	if err != nil {
		return state{}, inFolder(err, filepath.Dir(file))
	}
	return state{job, pl}, nil
}

// since is what differs from an earlier state, for the sheets; nil if none is
// named.
func since(old string, job *parts.Job) (*templates.Since, error) {
	if old == "" {
		return nil, nil
	}
	was, err := earlier(old)
	if err != nil {
		return nil, err
	}
	report, err := changes.Compare(was.job, job)
	if err != nil {
		return nil, err
	}
	was.pl.Arrangement = layout.Arrange(was.job, was.pl)
	return &templates.Since{Plan: was.pl, Findings: review.Review(was.job, was.pl), Report: report}, nil
}

// jobIn is the job of a folder, or the job file itself.
func jobIn(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return filepath.Join(path, "job.yaml")
	}
	return path
}

// inFolder puts the folder before the files that faults name: both states of a
// job have files of the same names.
func inFolder(err error, folder string) error {
	var located parts.Errors
	if errors.As(err, &located) {
		for _, e := range located {
			e.Pos.File = filepath.Join(folder, e.Pos.File)
		}
	}
	return err
}
