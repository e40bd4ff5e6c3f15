package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"handtight/bom/starter"
)

// watchedOut is a buffer that a test reads while another goroutine writes.
type watchedOut struct {
	sync.Mutex
	text bytes.Buffer
}

func (s *watchedOut) Write(p []byte) (int, error) {
	s.Lock()
	defer s.Unlock()
	return s.text.Write(p)
}

func (s *watchedOut) String() string {
	s.Lock()
	defer s.Unlock()
	return s.text.String()
}

// A watch checks again when the build or what it includes is saved, also where it was at
// fault; it ends with the status of the last check, at the end of a line.
func TestWatch(t *testing.T) {
	dir := t.TempDir()
	path, parts := filepath.Join(dir, "build.toml"), filepath.Join(dir, "parts.toml")
	good, err := starter.Write(starter.Usual())
	require.NoError(t, err)
	good = bytes.Replace(good, []byte("include   = []"), []byte(`include   = ["parts.toml"]`), 1)
	extra := "[[item]]\nid = \"lamp\"\nkind = \"seal kit\"\n"
	write := func(path, text string) { require.NoError(t, os.WriteFile(path, []byte(text), 0o644)) }
	write(path, string(good))
	write(parts, extra)

	var out watchedOut
	u := newUI(&out, &out)
	a := &app{ui: u}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() {
		ended <- a.watch(ctx, path, 10*time.Millisecond, func() ([]string, error) { return a.checkOnce(path, &checkShown{}) })
	}()
	shows := func(part string, times int) {
		require.Eventually(t, func() bool { return strings.Count(out.String(), part) >= times }, 30*time.Second, 5*time.Millisecond, part)
	}
	shows("Watching 2 files", 1)
	shows("Nothing stops", 1)
	write(parts, strings.Replace(extra, "kind", "knd", 1))
	shows("knd", 1)
	shows("Watching 2 files", 2)
	write(parts, extra)
	shows("--- changed: check 3", 1)
	shows("Watching 2 files", 3)
	write(path, strings.Replace(string(good), "'1/2 NPT female', out = '3/8 NPT female'", "'3/4 NPT male', out = '3/8 NPT female'", 1)+"\n[[oops]]\n")
	shows("oops", 1)
	shows("Watching 2 files", 4)
	cancel()
	require.ErrorIs(t, <-ended, errFaulty, "the last check met a fault")
	require.True(t, strings.HasSuffix(out.String(), "\n"))
	require.NotContains(t, out.String(), "\x1b[2J", "nothing is cleared")
}

// The status is that of the last check alone.
func TestWatchStatus(t *testing.T) {
	path := filepath.Join(t.TempDir(), "build.toml")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	for _, status := range []int{exitClear, exitStops} {
		ctx, cancel := context.WithCancel(context.Background())
		a := &app{ui: newUI(&bytes.Buffer{}, &bytes.Buffer{}), status: exitFault}
		err := a.watch(ctx, path, time.Millisecond, func() ([]string, error) {
			if status != exitClear {
				a.status = status
			}
			cancel()
			return []string{path}, nil
		})
		require.NoError(t, err)
		require.Equal(t, status, a.status)
	}
}
