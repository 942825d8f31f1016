// Package read reads a job: a YAML job file and the part files it lists.
//
// Load returns a model that is complete and valid, or an error that names
// every fault with file, line and column, the line itself and what would be
// right. Lengths come out in millimetres (inches are exactly 25.4 mm), angles
// in degrees, forces in newton. Whether a thread or a tolerance class exists is
// for the layout stage, which has the tables; it reports with Job.Fault.
//
// Only the part of YAML that a hand-written file needs is read: keys, lists
// and values. Anchors, aliases, merge keys, tags and further documents are
// refused, as are duplicate keys. Files are UTF-8 of at most 1 MiB.
package read

import (
	"fmt"
	"os"
	"path/filepath"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// Load reads a job file and the part files it lists, which must lie in the
// job file's folder or below; symbolic links that lead out of it are refused.
// The error is Errors if the input is at fault, in the order of the files; it
// wraps the file system's if the job file cannot be read.
func Load(jobPath string) (*parts.Job, error) {
	root, err := os.OpenRoot(filepath.Dir(jobPath))
	if err != nil {
		return nil, fmt.Errorf("job folder: %w", err)
	}
	defer root.Close()
	base := filepath.Base(jobPath)
	src, _, err := readRegular(root.Stat, root.Open, base, maxFileBytes)
	if err != nil {
		return nil, fmt.Errorf("job file %s: %w", base, err)
	}
	return loadFrom(root, base, src)
}

// LoadText reads the text of a job whose part files lie in a folder or below
// it, as Load does. name stands for the job file in places.
func LoadText(name string, src []byte, folder string) (*parts.Job, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, fmt.Errorf("job folder: %w", err)
	}
	defer root.Close()
	return loadFrom(root, name, src)
}

func loadFrom(root *os.Root, name string, src []byte) (*parts.Job, error) {
	s, tree := read(name, src)
	if tree == nil {
		return nil, s.sorted()
	}
	if part := tree.get("part"); part != nil && tree.get("job") == nil {
		s.fault(tree.keyPos("part"), "this is a part file, and a job is asked for", "the job file that lists it under parts; a new one begins with job:, units: and parts: ["+name+"]")
		return nil, s.sorted()
	}
	tree.label = "the job"
	l := &loader{fields: (&reader{source: s}).in(tree, jobGroup), root: root, sources: []*source{s}, doubt: map[*parts.Part]*source{}}
	l.head()
	l.parts()
	l.fewPlaces()
	l.refs()
	l.joints()
	l.loose()
	l.accept()
	l.cards()
	if errs := parts.Errors(seq.Flat(l.sources, func(one *source) []*parts.Error { return one.sorted() })); len(errs) > 0 {
		return nil, errs
	}
	return l.job, nil
}
