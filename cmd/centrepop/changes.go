package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"centrepop/layout/changes"
	"centrepop/parts"
)

// changesCmd says what differs between two states of a job. It ends with
// errFindings if anything does.
func changesCmd(c *call) error {
	if err := c.parse(2, 2); err != nil {
		return err
	}
	var jobs [2]*parts.Job
	for i, path := range c.args {
		job, err := loadJob(jobIn(path))
		if err != nil {
			return err
		}
		jobs[i] = job
	}
	report, err := changes.Compare(jobs[0], jobs[1])
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

// jobIn is the job of a folder, or the job file itself.
func jobIn(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return filepath.Join(path, "job.yaml")
	}
	return path
}
