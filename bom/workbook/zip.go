package workbook

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"sync"

	"handtight/bom/each"
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

// write writes the archive, with the number of the issue in its place. The parts are packed at the
// same time, and written one after the other.
func (z *sortedZip) write(to io.Writer) error {
	packed := make([][]byte, len(z.parts))
	failed := make([]error, len(z.parts))
	headers := make([]*zip.FileHeader, len(z.parts))
	each.Of(len(z.parts), func(i int) {
		headers[i], packed[i], failed[i] = z.packed(z.parts[i])
	})
	zw := zip.NewWriter(to)
	for i, header := range headers {
		if failed[i] != nil {
			return failed[i]
		}
		w, err := zw.CreateRaw(header)
		if err != nil {
			return err
		}
		if _, err := w.Write(packed[i]); err != nil {
			return err
		}
	}
	return zw.Close()
}

// packed packs one part, as the archive's own writer would.
func (z *sortedZip) packed(p *zipPart) (*zip.FileHeader, []byte, error) {
	data := p.Bytes()
	if i := bytes.Index(data[:min(len(data), 4096)], []byte(numberSign)); i >= 0 && strings.HasPrefix(p.name, "xl/worksheets/") {
		data = slices.Concat(data[:i], []byte(strconv.Itoa(z.number)), data[i+len(numberSign):])
	}
	out := bytes.NewBuffer(make([]byte, 0, len(data)/packs+64))
	w := packers.Get().(*flate.Writer)
	defer packers.Put(w)
	w.Reset(out)
	if _, err := w.Write(data); err != nil {
		return nil, nil, err
	}
	if err := w.Close(); err != nil {
		return nil, nil, err
	}
	return &zip.FileHeader{
		Name: p.name, Method: zip.Deflate, CRC32: crc32.ChecksumIEEE(data),
		CompressedSize64: uint64(out.Len()), UncompressedSize64: uint64(len(data)),
	}, out.Bytes(), nil
}

// packs is about how many times smaller the text of a sheet gets.
const packs = 6

// packers are kept from book to book: one takes most of a megabyte.
var packers = sync.Pool{New: func() any {
	w, err := flate.NewWriter(nil, zipLevel)
	if err != nil {
		panic(err) // of a level that is none
	}
	return w
}}

// zipLevel is the level of the standard library's own archives.
const zipLevel = 5
