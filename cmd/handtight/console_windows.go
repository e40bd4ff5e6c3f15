package main

import (
	"os"

	"golang.org/x/sys/windows"
)

// takesColour asks the console to act on colour codes. An old one cannot, and would print
// them as letters: there the text stays plain.
func takesColour(file *os.File) bool {
	console := windows.Handle(file.Fd())
	var mode uint32
	if windows.GetConsoleMode(console, &mode) != nil {
		return false
	}
	return windows.SetConsoleMode(console, mode|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING) == nil
}
