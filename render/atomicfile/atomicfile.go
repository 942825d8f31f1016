// Package atomicfile writes a file whole or not at all: after a failure the
// file that was there before is there still, unchanged.
package atomicfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// newFileMode is the permission of a file that was not there before.
const newFileMode fs.FileMode = 0o644

// Write has write put out the content, and then puts it in place of the file
// at path. The content goes to a temporary file in the same folder, is synced
// to the disk, and is renamed over the old file, whose permission it keeps; a
// new file has the permission 0644. A symbolic link is followed, and the
// file it leads to replaced.
//
// An error of write is returned wrapped. On any error, and when write panics,
// the temporary file is removed and the old file kept. A process that is
// killed leaves at most its temporary file, hidden and named .NAME.*.tmp; no
// later run reads it, and it may be deleted. The folder must exist, and path
// must not name one.
func Write(path string, write func(io.Writer) error) (err error) {
	target, mode, err := resolve(path)
	if err != nil {
		return err
	}
	temp, err := os.CreateTemp(filepath.Dir(target), "."+filepath.Base(target)+".*.tmp")
	if err != nil {
		return plain(path, err)
	}
	done := false
	defer func() {
		if !done {
			temp.Close() // closed already or not: the first error is the one told
			os.Remove(temp.Name())
		}
	}()
	if err := write(temp); err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	if err := temp.Chmod(mode); err != nil {
		return plain(path, err)
	}
	if err := temp.Sync(); err != nil {
		return plain(path, err)
	}
	if err := temp.Close(); err != nil {
		return plain(path, err)
	}
	if err := os.Rename(temp.Name(), target); err != nil {
		return plain(path, err)
	}
	done = true
	return nil
}

// plain names the file that was asked for in place of the temporary one.
func plain(path string, err error) error {
	var atPath *fs.PathError
	var atLink *os.LinkError
	switch {
	case errors.As(err, &atPath):
		err = atPath.Err
	case errors.As(err, &atLink):
		err = atLink.Err
	}
	return fmt.Errorf("writing %s: %w", path, err)
}

// resolve returns where the file really lies and the permission to give it.
func resolve(path string) (string, fs.FileMode, error) {
	info, err := os.Stat(path)
	if os.IsNotExist(err) {
		return path, newFileMode, nil
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
