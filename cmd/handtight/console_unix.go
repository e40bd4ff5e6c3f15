//go:build unix

package main

import "os"

// takesColour is true: a terminal without colours says so by TERM=dumb.
func takesColour(*os.File) bool { return true }
