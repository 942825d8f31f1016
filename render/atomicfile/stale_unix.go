//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package atomicfile

import (
	"errors"
	"os"
	"syscall"
)

// renamesOpen says that an open file can be renamed, so that its lock is held
// until it is in place.
const renamesOpen = true

// claim locks a temporary file until its process closes it or ends. Between
// making and locking it another run can have taken it for a leftover.
func claim(file *os.File) claimed {
	switch err := syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); {
	case errors.Is(err, syscall.EWOULDBLOCK):
		return taken
	case err != nil:
		return lockless
	}
	own, err := file.Stat()
	if err != nil {
		return taken
	}
	if there, err := os.Lstat(file.Name()); err != nil || !os.SameFile(own, there) {
		return taken
	}
	return held
}

// removeStale removes a temporary file whose process has ended: nobody holds
// its lock.
func removeStale(name string) {
	info, err := os.Lstat(name)
	if err != nil || !info.Mode().IsRegular() {
		return
	}
	file, err := os.OpenFile(name, os.O_RDWR|syscall.O_NONBLOCK|syscall.O_NOFOLLOW, 0)
	if err != nil {
		return // somebody else's
	}
	defer file.Close()
	if claim(file) == held {
		_ = os.Remove(name) // a leftover more does no harm
	}
}
