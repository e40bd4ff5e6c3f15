package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/pattern"
)

// Patterns are compiled when a command first needs them: a fault in one is found here.
func TestPatternsCompile(t *testing.T) { require.NoError(t, pattern.Faults()) }
