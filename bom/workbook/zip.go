package workbook

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strconv"
	"strings"
)

// unzippedLimit is how large a book may be unpacked, written or read: about
// 25,000 lines, and far below what harms a computer.
const unzippedLimit = 64 << 20

// sortedZip holds a workbook's parts back and writes them in the order of their
// names: the library hands them over in the order of a map.
//
// The number of the issue is put in last: whether a book is a new issue shows only when it is
// made, by what stood there before.
type sortedZip struct {
	w      io.Writer
	parts  []*zipPart
	number int
}

// numberSign stands for the number of the issue until the archive is written.
const numberSign = "handtight:number-of-the-issue"

type zipPart struct {
	name string
	bytes.Buffer
}

// Create starts a part.
func (z *sortedZip) Create(name string) (io.Writer, error) {
	p := &zipPart{name: name}
	z.parts = append(z.parts, p)
	return p, nil
}

// AddFS is asked for by the library's interface and never called by it.
func (z *sortedZip) AddFS(fs.FS) error { return errors.ErrUnsupported }

// Close writes the archive.
func (z *sortedZip) Close() error {
	slices.SortFunc(z.parts, func(a, b *zipPart) int { return strings.Compare(a.name, b.name) })
	size := 0
	for _, p := range z.parts {
		size += p.Len()
	}
	if size > unzippedLimit {
		return fmt.Errorf("the book would be %d MB unpacked, above the %d MB that it can be read back from; split the build into several",
			size>>20, unzippedLimit>>20)
	}
	return z.write(z.w)
}

// write writes the archive, with the number of the issue in its place.
func (z *sortedZip) write(to io.Writer) error {
	zw := zip.NewWriter(to)
	for _, p := range z.parts {
		w, err := zw.Create(p.name)
		if err != nil {
			return err
		}
		data := p.Bytes()
		if i := bytes.Index(data[:min(len(data), 4096)], []byte(numberSign)); i >= 0 && strings.HasPrefix(p.name, "xl/worksheets/") {
			data = slices.Concat(data[:i], []byte(strconv.Itoa(z.number)), data[i+len(numberSign):])
		}
		if _, err := w.Write(data); err != nil {
			return err
		}
	}
	return zw.Close()
}
