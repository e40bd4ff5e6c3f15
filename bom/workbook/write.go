package workbook

import (
	"fmt"
	"io"
	"strconv"

	"github.com/bojanz/currency"
	"github.com/xuri/excelize/v2"
)

// The sheets that other sheets, or an earlier issue, are looked up in.
const (
	orderName = "Order"
	ratesName = "Rates"
	asideName = "Set aside"
)

// The mark that tells a book of ours, in a property of the document and, should
// a program drop that, at the head of a hidden column. A change to the hidden
// columns needs a new format number.
const (
	format       = 1
	formatName   = "handtight format"
	formatPrefix = "handtight "
	formatMark   = formatPrefix + "1"
)

// book is a workbook in the making.
type book struct {
	f      *excelize.File
	st     *styles
	c      *counted
	placed *placement
	rates  []Rate
	digits int // of the build's currency
}

// Write writes the workbook for a Content to w, with the marks in their rows and
// those without a row on a sheet "Set aside". Nothing reaches w before the whole
// book is made. The same arguments give the same bytes.
//
// Errors: *ContentError when the Content contradicts itself; an error when the
// book would be larger than Save can read back; what w returns.
func Write(w io.Writer, c Content, marks Marks) error {
	k, err := count(c)
	if err != nil {
		return err
	}
	return write(w, k, place(k, marks))
}

func write(w io.Writer, k *counted, placed *placement) error {
	digits, _ := currency.GetDigits(k.Currency)
	f := excelize.NewFile()
	defer f.Close()
	f.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return &sortedZip{w: w} })
	b := &book{f: f, c: k, placed: placed, digits: int(digits), rates: k.ownRates(),
		st: &styles{f: f, ids: map[look]int{}}}
	if err := b.sheets(); err != nil {
		return err
	}
	if err := b.properties(); err != nil {
		return err
	}
	return f.Write(w)
}

// sheets writes each sheet in its place.
func (b *book) sheets() error {
	list := []struct {
		name  string
		write func() error
	}{
		{orderName, b.order}, {"Spares", b.spares}, {"Joints", b.joints}, {"Segments", b.segments}, {"States", b.states},
		{partsName, b.parts}, {dutyName, b.duty}, {"Findings", b.findings}, {ratesName, b.rateSheet}, {"Assumptions", b.assumptions},
	}
	if len(b.placed.aside) > 0 {
		list = append(list, struct {
			name  string
			write func() error
		}{asideName, b.asideSheet})
	}
	if err := b.defaultFont(); err != nil {
		return err
	}
	if err := b.f.SetSheetName(b.f.GetSheetName(0), list[0].name); err != nil {
		return err
	}
	for _, s := range list[1:] {
		if _, err := b.f.NewSheet(s.name); err != nil {
			return err
		}
	}
	for _, s := range list {
		if err := s.write(); err != nil {
			return fmt.Errorf("writing the workbook: %w", err)
		}
	}
	return nil
}

// defaultFont sets the font whose digits the column widths are counted in.
func (b *book) defaultFont() error {
	if err := b.f.SetDefaultFont(fontName); err != nil {
		return err
	}
	if font := b.f.Styles.Fonts.Font[0]; font.Sz != nil {
		size := 10.0
		font.Sz.Val = &size
	}
	return nil
}

// properties sets who made the book and when: the day of the rates, never the
// clock's, so that the same build gives the same bytes.
func (b *book) properties() error {
	day := b.c.RatesDate
	if day == "" {
		day = "2000-01-01"
	}
	day += "T00:00:00Z"
	if err := b.f.SetDocProps(&excelize.DocProperties{
		Title: clean(b.c.Title), Creator: "handtight", LastModifiedBy: "handtight",
		Created: day, Modified: day, Language: "en",
	}); err != nil {
		return err
	}
	if err := b.f.SetAppProps(&excelize.AppProperties{Application: "handtight"}); err != nil {
		return err
	}
	if err := b.f.SetCustomProps(excelize.CustomProperty{Name: formatName, Value: strconv.Itoa(format)}); err != nil {
		return err
	}
	full := true
	return b.f.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &full})
}
