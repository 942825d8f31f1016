package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"
)

// maxWatched is how many files of a folder are looked at.
const maxWatched = 2000

// stamps are the times and sizes of the YAML files in a job's folder and below
// it, by their path from there; hidden folders are left out.
func stamps(folder string) map[string]string {
	out := map[string]string{}
	// A folder that cannot be read has no files to follow.
	_ = filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		switch name := filepath.Base(path); {
		case err != nil || len(out) >= maxWatched:
			return nil
		case d.IsDir() && path != folder && name[0] == '.':
			return filepath.SkipDir
		case d.IsDir() || filepath.Ext(name) != ".yaml" && filepath.Ext(name) != ".yml":
			return nil
		}
		info, err := os.Stat(path)
		if err != nil {
			return nil // it has gone this moment
		}
		rel, err := filepath.Rel(folder, path)
		if err == nil {
			out[filepath.ToSlash(rel)] = fmt.Sprint(info.ModTime().UnixNano(), info.Size(), info.Mode())
		}
		return nil
	})
	return out
}

func sameStamps(a, b map[string]string) bool { return len(a) == len(b) && len(changed(a, b)) == 0 }

// changed lists the files that are new or other than before.
func changed(before, now map[string]string) (files []string) {
	for name, stamp := range now {
		if before[name] != stamp {
			files = append(files, name)
		}
	}
	slices.Sort(files) // maps have no order
	return files
}

// settleFor is how long files must stay as they are to be read.
const settleFor = 15 * time.Millisecond

// settled waits until no file changes any more: a program that saves a file
// empties it first.
func settled(folder string, now map[string]string) map[string]string {
	for {
		time.Sleep(settleFor)
		again := stamps(folder)
		if sameStamps(now, again) {
			return again
		}
		now = again
	}
}
