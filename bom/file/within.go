package file

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Absolute reports whether a path begins at the root of a disk, by the rules of any
// system: a build that was written on Windows is read elsewhere.
func Absolute(path string) bool {
	if filepath.IsAbs(path) || strings.HasPrefix(path, "/") || strings.HasPrefix(path, `\`) {
		return true
	}
	return len(path) >= 2 && path[1] == ':' && (path[0]|0x20 >= 'a' && path[0]|0x20 <= 'z')
}

// Within reports whether a path lies in a folder or below it, also behind its links. A
// path where nothing stands is judged by its words.
func Within(dir, path string) bool {
	if !below(filepath.Clean(dir), filepath.Clean(path)) {
		return false
	}
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return errors.Is(err, fs.ErrNotExist) || noName(err)
	}
	realDir, err := filepath.EvalSymlinks(dir)
	return err == nil && below(realDir, real)
}

func below(dir, path string) bool {
	rel, err := filepath.Rel(dir, path)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator)) && !filepath.IsAbs(rel)
}

// ID is what tells two names of one file. The zero ID is no file.
type ID struct{ info fs.FileInfo }

// IDOf gives the identity of what stands at a path, behind its links.
func IDOf(path string) ID {
	info, err := os.Stat(path)
	if err != nil {
		return ID{}
	}
	return ID{info}
}

// Same reports whether both are one file.
func (a ID) Same(b ID) bool { return a.info != nil && b.info != nil && os.SameFile(a.info, b.info) }
