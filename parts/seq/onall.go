package seq

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// OnAll calls f with 0 to n-1, on all processors and on no more of them at once than
// there are, and returns when all is done.
func OnAll(n int, f func(i int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				f(i)
			}
		})
	}
	all.Wait()
}
