package main

import (
	"handtight/bom"
)

// load reads a build file and walks it; file errors come back as one error.
func load(path string) (*bom.System, error) {
	build, faults := bom.Read(path)
	if len(faults) > 0 {
		return nil, faults
	}
	sys, faults := bom.Walk(build)
	if len(faults) > 0 {
		return nil, faults
	}
	return sys, nil
}
