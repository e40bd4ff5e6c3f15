package file

import (
	"path"
	"runtime"
	"strings"
)

// deviceName refuses names that Windows takes for a device in whatever folder they stand,
// and names with a part behind a colon, which are a hidden stream of another file.
//
// Source: Microsoft, "Naming Files, Paths, and Namespaces" (memory).
func deviceName(given string) error {
	if runtime.GOOS != "windows" {
		return nil
	}
	return reserved(given)
}

// reserved judges a path by the rules of Windows, on any system.
func reserved(given string) error {
	p := strings.ReplaceAll(given, `\`, "/")
	if strings.HasPrefix(p, "//./") || strings.HasPrefix(p, "//?/") {
		return &Error{Path: given, Reason: "this names a device of the system, not a file", Remedy: "name a file on a disk, such as C:\\boat\\list.xlsx"}
	}
	if len(p) >= 2 && p[1] == ':' && (p[0]|0x20 >= 'a' && p[0]|0x20 <= 'z') {
		p = p[2:] // a drive
	}
	base := path.Base(p)
	if strings.Contains(p, ":") {
		return &Error{Path: given, Reason: "a colon stands in it behind the drive: that is no file of its own on Windows", Remedy: "take the colon out"}
	}
	stem, _, _ := strings.Cut(base, ".")
	stem = strings.ToUpper(strings.TrimRight(stem, " "))
	numbered := len(stem) == 4 && (stem[:3] == "COM" || stem[:3] == "LPT") && stem[3] >= '0' && stem[3] <= '9'
	if numbered || stem == "CON" || stem == "PRN" || stem == "AUX" || stem == "NUL" || stem == "CONIN$" || stem == "CONOUT$" {
		return &Error{Path: given, Reason: "Windows takes the name " + stem + " for a device, whatever its ending", Remedy: "choose another name"}
	}
	return nil
}
