// Package each shares work out over the machine's cores. It knows nothing of the work: what is
// called must not change what another call reads, and writes only to a place of its own, so that
// the outcome does not depend on who was first.
package each

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Of calls do once for each number from 0 to n-1, several at a time, and comes back when all are
// done. A panic of a call is the caller's, when the others have ended.
func Of(n int, do func(i int)) {
	workers := min(n, runtime.GOMAXPROCS(0))
	if workers < 2 {
		for i := range n {
			do(i)
		}
		return
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	broken := make([]any, workers)
	for w := range workers {
		wait.Go(func() {
			defer func() { broken[w] = recover() }()
			for {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				do(i)
			}
		})
	}
	wait.Wait()
	for _, b := range broken {
		if b != nil {
			panic(b)
		}
	}
}

// Both calls two functions at the same time, and comes back when both are done. A panic is the
// caller's, as with [Of].
func Both(a, b func()) {
	Of(2, func(i int) {
		if i == 0 {
			a()
		} else {
			b()
		}
	})
}
