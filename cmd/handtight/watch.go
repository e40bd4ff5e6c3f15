package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"syscall"
	"time"

	"handtight/bom/source"
)

// watchEvery is how often files are looked at.
const watchEvery = 300 * time.Millisecond

// errFaulty ends a watch whose last check met a file at fault: the faults are printed already.
var errFaulty = errors.New("the file was at fault when the watch ended")

// watch checks again whenever one of the build's files has changed, until it is interrupted,
// and ends with the status of the last check. Nothing that was printed is cleared, and a check
// that has begun is printed to its end.
func (a *app) watch(ctx context.Context, path string, every time.Duration, check func() (files []string, err error)) error {
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	tick := time.NewTicker(every)
	defer tick.Stop()
	known := []string{path}
	for n := 1; ; n++ {
		a.status = exitClear
		before := marksOf([]string{path})
		files, err := check()
		if err != nil {
			a.ui.fault(err)
		}
		known = watched(known, files, err)
		files = known
		seen := marksOf(files)
		if before[0] != seen[0] {
			seen = nil // it was saved while it was read
		}
		if lost := a.ui.lost(); lost != nil {
			return lost
		}
		a.ui.line("")
		a.ui.line("Watching %s; interrupt (Ctrl-C) to end.", counted(len(files), "file"))
		for changed := false; !changed; {
			select {
			case <-ctx.Done():
				if err != nil {
					return errFaulty
				}
				return nil
			case <-tick.C:
			}
			now := marksOf(files)
			changed = !slices.Equal(now, seen) && atRest(ctx, files, now, every)
		}
		a.ui.line("")
		a.ui.line("%s", a.ui.paint(bold, fmt.Sprintf("--- changed: check %d", n+1)))
	}
}

// watched are the files to look at: the build first, then what it includes, and where it
// could not be read, those that are at fault and those that were read before.
func watched(known, files []string, err error) []string {
	if err == nil {
		known = known[:1]
	}
	var faults source.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			files = append(files, f.Place.File)
		}
	}
	out := slices.Clone(known)
	for _, f := range files {
		if f != "" && !slices.Contains(out, f) {
			out = append(out, f)
		}
	}
	return out
}

// atRest waits until a file that is being saved stays as it is for a while.
func atRest(ctx context.Context, files []string, now []string, every time.Duration) bool {
	for ctx.Err() == nil {
		time.Sleep(every / 2)
		next := marksOf(files)
		if slices.Equal(now, next) {
			return true
		}
		now = next
	}
	return false
}

// marksOf tells for each file what changes when it is saved; "" where it is not there.
func marksOf(files []string) []string {
	out := make([]string, len(files))
	for i, f := range files {
		if info, err := os.Stat(f); err == nil {
			out[i] = fmt.Sprintf("%d %d", info.Size(), info.ModTime().UnixNano())
		}
	}
	return out
}
