package main

import (
	"path/filepath"
	"strings"

	"centrepop/layout"
	"centrepop/layout/changes"
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
	report, err := changes.Compare(was.Job, is.Job)
	if err != nil {
		return err
	}
	return c.judged(report, strings.Join(report.Lines(), "\n")+"\n", report.Differs())
}

// earlier reads a state of a job, a folder or a file.
func earlier(path string) (*layout.Worked, error) {
	file := jobIn(path)
	w, err := load(file)
	if err != nil {
		return nil, inFolder(err, filepath.Dir(file))
	}
	return w, nil
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
	report, err := changes.Compare(was.Job, job)
	if err != nil {
		return nil, err
	}
	was.Arrange()
	return &templates.Since{Plan: was.Plan, Findings: review.Review(was), Report: report}, nil
}
