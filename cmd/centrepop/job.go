package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/parts/seq"
)

// loadJob reads a job file, or the job.yaml of a folder; "-" is a job on standard input, whose part files lie
// in the folder that centrepop runs in.
func loadJob(path string) (*parts.Job, error) {
	if path != "-" {
		job, err := read.Load(jobIn(path))
		if errors.Is(err, fs.ErrNotExist) {
			err = fmt.Errorf("job file %s: there is no such file", jobIn(path))
		}
		return job, err
	}
	src, err := io.ReadAll(io.LimitReader(os.Stdin, read.LargestFile+1))
	if err != nil {
		return nil, fmt.Errorf("standard input: %w", err)
	}
	return read.LoadText("standard-input.yaml", src, ".")
}

// jobIn is the job of a folder, or the job file itself.
func jobIn(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return filepath.Join(path, "job.yaml")
	}
	return path
}

func load(path string) (*layout.Worked, error) {
	job, err := loadJob(path)
	if err != nil {
		return nil, err
	}
	return layout.Resolve(job)
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

// work reads a job and works out what can be. Its joints' faults stay in the
// plan, but for those that leave nothing to print.
func work(path string) (*layout.Worked, error) {
	job, err := loadJob(path)
	if err != nil {
		return nil, err
	}
	w, err := layout.Work(job)
	if err != nil {
		return nil, err
	}
	say, errs := words.Writer{Units: job.Units}, parts.Errors{}
	for _, p := range w.Plan.Faults {
		if words.Unusable(p.Kind) {
			errs = append(errs, job.Fault(p.Pos, p.What, say.Fix(p)))
		}
	}
	if len(errs) > 0 {
		return nil, errs
	}
	return w, nil
}

// release is what the review says of a job that is to be printed or cut.
type release struct {
	findings []review.Finding
	stops    []review.Stopped
}

// reviewed reviews a job and arranges its parts in its plan.
func reviewed(w *layout.Worked) *release {
	var pictures sync.WaitGroup
	pictures.Go(w.Arrange)
	findings := review.Review(w)
	pictures.Wait()
	return &release{findings: findings, stops: review.Stops(w.Job, findings)}
}

// held are the names of the parts that are not released.
func (r *release) held() []string {
	return seq.Map(r.stops, func(s review.Stopped) string { return s.Part })
}

func (r *release) among(names []string) []string {
	return slices.DeleteFunc(r.held(), func(name string) bool { return !slices.Contains(names, name) })
}

// draft reads a job and works out what can be: what the review stops at is left
// to it, and only what cannot be read at all is an error. out is the file to be
// written: none of the job's own.
func draft(path, out string) (*parts.Job, *plan.Plan, *release, error) {
	w, err := work(path)
	if err != nil {
		return nil, nil, nil, err
	}
	if err := spare(out, jobIn(path), w.Job); err != nil {
		return nil, nil, nil, err
	}
	return w.Job, w.Plan, reviewed(w), nil
}
