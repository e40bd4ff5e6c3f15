package main

import (
	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/file"
	"handtight/bom/read"
	"handtight/bom/source"
)

// stdin is the name by which standard input is read.
const stdin = "-"

// load reads a build file and walks it; file errors come back as one error.
func (a *app) load(path string) (*bom.System, error) {
	build, faults := a.read(path)
	if len(faults) > 0 {
		return nil, faults
	}
	sys, faults := bom.Walk(build)
	if len(faults) > 0 {
		return nil, faults
	}
	// What cannot be counted is refused by every command alike, and not by the order alone.
	if _, err := sys.Order(); err != nil {
		return nil, err
	}
	return sys, nil
}

// read reads a build file, or with the name - the standard input, whose includes lie in
// the folder where the command runs.
func (a *app) read(path string) (*build.Build, source.Faults) {
	o := read.Options{Outside: a.outside}
	if path != stdin {
		return read.ReadWith(path, o)
	}
	const name = "standard input"
	text, err := file.ReadFrom(a.in, name, source.Limit)
	if err != nil {
		return nil, source.FaultsOf(name, err)
	}
	return read.ParseWith(name, text, o)
}
