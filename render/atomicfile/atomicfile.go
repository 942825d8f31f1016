// Package atomicfile writes a file whole or not at all: after a failure the
// file that was there before is there still, unchanged, and nothing beside it.
package atomicfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
)

// newFileMode is the permission of a file that was not there before.
const newFileMode fs.FileMode = 0o644

// leftover is what the temporary files of all runs are called. The name does
// not hold that of the target, which may be as long as a name can be.
const leftover = ".centrepop-*.tmp"

// unfinished are the temporary files of this process. The lock is held while
// one is made or put in place, and for good once Abandon was called.
var (
	lock       sync.Mutex
	unfinished = map[string]bool{}
)

// Write has write put out the content, and then puts it in place of the file
// at path. The content goes to a temporary file in the same folder, made when
// the first of it comes, is synced to the disk, and is renamed over the old
// file, whose permission it keeps; a new file has the permission 0644. A
// symbolic link is followed, and the file it leads to replaced, or made if
// there is none yet. The folder must exist, and path must not name one.
//
// An error of write is returned wrapped. On any error, and when write panics,
// the temporary file is removed and the old file kept. Messages name the file
// that was asked for. A process that is killed without a chance to call
// Abandon can leave its temporary file, .centrepop-*.tmp; the next Write into
// that folder removes it, but none that a living process is writing.
func Write(path string, write func(io.Writer) error) error {
	target, mode, err := resolve(path)
	if err != nil {
		return err
	}
	t := &temporary{dir: filepath.Dir(target)}
	defer t.remove()
	err = write(t)
	if err == nil {
		err = t.put(target, mode)
	}
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	return nil
}

// Abandon removes the temporary files of all calls of Write and lets none of
// them finish: the process is about to end.
func Abandon() {
	lock.Lock() // and never unlocked
	for name := range unfinished {
		_ = os.Remove(name) // nobody is left to tell
	}
}

// temporary is a file in the making; the file is nil until something is
// written, and after it was put in place or removed.
type temporary struct {
	dir  string
	file *os.File
}

func (t *temporary) Write(p []byte) (int, error) {
	if t.file == nil {
		if err := t.create(); err != nil {
			return 0, bare(err)
		}
	}
	n, err := t.file.Write(p)
	return n, bare(err)
}

// create makes the file, and removes what killed runs have left.
func (t *temporary) create() error {
	lock.Lock()
	defer lock.Unlock()
	old, _ := filepath.Glob(filepath.Join(t.dir, leftover)) // the pattern is a good one
	for _, name := range old {
		removeStale(name)
	}
	for {
		file, err := os.CreateTemp(t.dir, leftover)
		if err != nil {
			return err
		}
		if claim(file) != taken {
			t.file = file
			unfinished[file.Name()] = true
			return nil
		}
		file.Close() // another run took it for a leftover in that moment
	}
}

func (t *temporary) put(target string, mode fs.FileMode) error {
	if t.file == nil { // nothing was written: an empty file
		if err := t.create(); err != nil {
			return bare(err)
		}
	}
	if err := errors.Join(t.file.Chmod(mode), t.file.Sync()); err != nil {
		return bare(err)
	}
	if !renamesOpen {
		if err := t.file.Close(); err != nil {
			return bare(err)
		}
	}
	lock.Lock()
	defer lock.Unlock()
	if err := os.Rename(t.file.Name(), target); err != nil {
		return bare(err)
	}
	t.file.Close() // all of it is on the disk already
	delete(unfinished, t.file.Name())
	t.file = nil
	return nil
}

// remove removes the file if it was not put in place.
func (t *temporary) remove() {
	if t.file == nil {
		return
	}
	lock.Lock()
	defer lock.Unlock()
	t.file.Close() // closed already or not: the first error is the one told
	os.Remove(t.file.Name())
	delete(unfinished, t.file.Name())
}

// bare is the error without the name of the temporary file.
func bare(err error) error {
	var atPath *fs.PathError
	var atLink *os.LinkError
	switch {
	case errors.As(err, &atPath):
		return atPath.Err
	case errors.As(err, &atLink):
		return atLink.Err
	}
	return err
}

// resolve returns where the file really lies and the permission to give it.
func resolve(path string) (string, fs.FileMode, error) {
	info, err := os.Stat(path)
	if os.IsNotExist(err) {
		target := follow(path)
		if _, err := os.Stat(filepath.Dir(target)); err != nil {
			return "", 0, fmt.Errorf("writing %s: the folder: %w", path, bare(err))
		}
		return target, newFileMode, nil
	}
	if err != nil {
		return "", 0, err
	}
	if !info.Mode().IsRegular() {
		return "", 0, fmt.Errorf("%s is not a regular file", path)
	}
	target, err := filepath.EvalSymlinks(path)
	if err != nil {
		return "", 0, err
	}
	return target, info.Mode().Perm(), nil
}

// follow returns where links lead that end at nothing. They end: the system
// has followed them.
func follow(path string) string {
	for {
		to, err := os.Readlink(path)
		if err != nil {
			return path
		}
		if !filepath.IsAbs(to) {
			to = filepath.Dir(path) + string(filepath.Separator) + to // not cleaned: a .. counts from where the folder lies
		}
		path = to
	}
}
