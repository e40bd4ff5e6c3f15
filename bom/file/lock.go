package file

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// OpenElsewhere tells whether an office program says, by the file that it leaves beside a
// document, that it has it open, and what is known of who and since when. Such a file also
// stays behind where the program was killed.
//
// Source: the names of these files are common practice of office programs: .~lock.NAME#
// with its fields apart by commas, and ~$NAME, in which a name of over six letters loses
// its first two (memory).
func (o *Output) OpenElsewhere() (who string, open bool) {
	for _, path := range []string{o.given, o.path} {
		dir, name := filepath.Split(path)
		short := name
		if stem := strings.TrimSuffix(name, filepath.Ext(name)); len([]rune(stem)) > 6 {
			short = string([]rune(name)[2:])
		}
		for _, lock := range []string{".~lock." + name + "#", "~$" + name, "~$" + short} {
			info, err := os.Lstat(filepath.Join(dir, lock))
			if err != nil {
				continue
			}
			return describe(filepath.Join(dir, lock), info), true
		}
	}
	return "", false
}

// describe says who has a document open, as far as the file beside it tells.
func describe(path string, info fs.FileInfo) string {
	since := "since " + info.ModTime().Format("2006-01-02 15:04")
	text, err := Read(path, Limit{Bytes: 4096})
	if err != nil || !strings.HasSuffix(path, "#") {
		return since
	}
	fields := strings.Split(string(text), ",")
	name := strings.TrimSpace(fields[0])
	if len(fields) > 2 && name == "" {
		name = strings.TrimSpace(fields[1])
	}
	if len(fields) > 2 {
		if host := strings.TrimSpace(fields[2]); host != "" && name != "" {
			name += " on " + host
		}
	}
	if name == "" || len(name) > 200 {
		return since
	}
	return "by " + Name(name) + ", " + since
}

// Aside copies what stands at the place to a name beside it that holds nothing yet:
// list.issue-1.xlsx for list.xlsx, then list.issue-2.xlsx. It gives the copy's path.
//
// Errors: *[Error] if the old file cannot be read or the copy cannot be written; 9,999
// copies are the most.
func (o *Output) Aside(most Limit) (string, error) {
	data, err := o.Read(most)
	if err != nil {
		return "", err
	}
	ext := filepath.Ext(o.given)
	for n := 1; n < 10_000; n++ {
		path := fmt.Sprintf("%s.issue-%d%s", strings.TrimSuffix(o.given, ext), n, ext)
		f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, o.old.Mode().Perm())
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err == nil {
			_, err = f.Write(data)
			if sync := f.Sync(); err == nil {
				err = sync
			}
			if shut := f.Close(); err == nil {
				err = shut
			}
			if err != nil {
				_ = os.Remove(path)
			}
		}
		if err != nil {
			return "", &Error{Path: path, Reason: "the last issue cannot be kept beside the new one: " + Cause(err), Remedy: "make room for it there", Err: err}
		}
		return path, nil
	}
	return "", &Error{Path: o.given, Reason: "9,999 earlier issues stand beside it", Remedy: "move them to another folder"}
}
