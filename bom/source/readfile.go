package source

import (
	"errors"
	"strconv"

	"handtight/bom/file"
)

// Limit bounds a build file.
var Limit = file.Limit{Bytes: MaxBytes, Remedy: "keep in it what this build uses"}

// ReadFile reads a regular file of at most [MaxBytes] as [file.Read] does. The fault names
// the path as it was given, and no other.
func ReadFile(path string) ([]byte, Faults) {
	if path == "" {
		return nil, Faults{{Place{}, "no file is named", "give the path of a build file, which ends in .toml"}}
	}
	text, err := file.Read(path, Limit)
	if err != nil {
		return nil, FaultsOf(path, err)
	}
	return text, nil
}

// FaultsOf makes faults of a file of the error that it could not be read.
func FaultsOf(path string, err error) Faults {
	if e := (*file.Error)(nil); errors.As(err, &e) {
		return Faults{{Place{File: path}, e.Reason, e.Remedy}}
	}
	return Faults{{Place{File: path}, err.Error(), "check its name and the disk that it is on"}}
}

func tooLarge(path string) Fault {
	return Fault{Place{File: path}, "this file is larger than " + strconv.Itoa(MaxBytes>>20) + " MiB", Limit.Remedy}
}
