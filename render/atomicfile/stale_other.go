//go:build !(linux || darwin || freebsd || netbsd || openbsd || dragonfly)

package atomicfile

import "os"

// Where files cannot be locked in this way, a leftover stays until it is
// deleted by hand, since nothing tells it from the file of a living process.

const renamesOpen = false

func claim(*os.File) claimed { return lockless }

func removeStale(string) {}
