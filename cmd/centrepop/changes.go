package main

import (
	"errors"
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
		file := jobIn(path)
		job, _, err := load(file)
		if err != nil {
			return inFolder(err, filepath.Dir(file))
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
