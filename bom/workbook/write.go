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
	buyName     = "Buy"
	jointsName  = "Joints"
	detailsName = "Details"
	ratesName   = "Findings" // rates and terms, and under them the findings, the questions and the duty
	asideName   = "Set aside"
	issueName   = "issue"
)

// The mark that tells a book of ours: a property of the document and, should a program drop
// that, the hidden cell behind the heads of each sheet, which names the sheet too. A change to
// the keys needs a new format number.
const (
	format     = 2
	formatName = "handtight format"
	headKey    = "handtight 2 "
)

// book is a workbook in the making.
type book struct {
	f      *excelize.File
	st     *styles
	c      *counted
	carry  *carry
	issue  *issue
	parts  *sortedZip
	rates  []Rate
	digits int // of the build's currency

	lines, other map[string]lineSums // results of formulas, by row
	sums         map[string]sums     // by shop
	links        int
	aside        int // rows on the sheet "Set aside"
}

// writeBook writes a book under the number of the issue before: a book that says the same is
// the same to the byte, and any other gets the next number.
func writeBook(w io.Writer, k *counted, carried *carry) (*book, error) {
	digits, _ := currency.GetDigits(k.Currency)
	f := excelize.NewFile()
	defer f.Close()
	parts := &sortedZip{number: max(carried.issue, 1)}
	f.SetZipWriter(func(w io.Writer) excelize.ZipWriter { parts.w = w; return parts })
	b := &book{f: f, c: k, carry: carried, digits: int(digits), rates: k.ownRates(), issue: &issue{}, parts: parts,
		st: &styles{f: f, ids: map[look]int{}, looks: map[int]look{}}}
	if err := b.reckon(); err != nil {
		return nil, err
	}
	if err := b.sheets(); err != nil {
		return nil, err
	}
	if err := b.properties(); err != nil {
		return nil, err
	}
	return b, f.Write(w)
}

// sheets writes each sheet in its place. What was typed and found no row comes last.
func (b *book) sheets() error {
	list := []struct {
		name  string
		write func() error
		rows  int
	}{
		{buyName, b.buy, 1}, {jointsName, b.joints, len(b.c.Joints) + len(b.c.Hoses)}, {detailsName, b.details, 1},
		{"Leak test", b.leak, len(b.c.Test)}, {ratesName, b.rateSheet, 1},
	}
	if err := b.defaultFont(); err != nil {
		return err
	}
	if err := b.f.SetSheetName(b.f.GetSheetName(0), list[0].name); err != nil {
		return err
	}
	for _, s := range list[1:] {
		if s.rows == 0 {
			continue
		}
		if _, err := b.f.NewSheet(s.name); err != nil {
			return err
		}
	}
	// Hidden before anything is streamed: the library would read every sheet again for it.
	if _, err := b.f.NewSheet(issueName); err != nil {
		return err
	}
	if err := b.f.SetSheetVisible(issueName, false, true); err != nil {
		return err
	}
	for _, s := range list {
		if s.rows == 0 {
			continue
		}
		if err := s.write(); err != nil {
			return fmt.Errorf("writing the workbook: %w", err)
		}
	}
	if err := b.asideSheet(); err != nil {
		return fmt.Errorf("writing the workbook: %w", err)
	}
	if err := b.ownSheets(); err != nil {
		return fmt.Errorf("writing the workbook: %w", err)
	}
	return b.issueSheet()
}

// defaultFont sets the font whose digits the column widths are counted in.
func (b *book) defaultFont() error {
	if err := b.f.SetDefaultFont(fontName); err != nil {
		return err
	}
	if font := b.f.Styles.Fonts.Font[0]; font.Sz != nil {
		size := fontSize
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
