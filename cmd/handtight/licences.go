package main

import _ "embed"

// licencesText is the notice that goes with the program: its own licence, and those of all
// modules that are linked in on any system. Written by .ci/licences.
//
//go:embed licences.txt
var licencesText string
