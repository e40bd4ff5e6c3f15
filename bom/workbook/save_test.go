package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// archive makes a zip archive of parts, by name.
func archive(t testing.TB, parts map[string]string) []byte {
	t.Helper()
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(w, parts[name])
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return buf.Bytes()
}

// changedBook is a book of ours after something was done to it.
func changedBook(t testing.TB, do func(f *excelize.File)) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(made(t, sample(t))))
	require.NoError(t, err)
	defer f.Close()
	do(f)
	buf, err := f.WriteToBuffer()
	require.NoError(t, err)
	return buf.Bytes()
}

func TestForeignFilesAreRefusedAndLeftAlone(t *testing.T) {
	own := made(t, sample(t))
	for _, tc := range []struct {
		why  string
		data []byte
		says string
	}{
		{"text", []byte("dear diary, this is not a workbook"), "it cannot be opened as a workbook"},
		{"empty", nil, "it cannot be opened as a workbook"},
		{"another workbook, whatever its name", func() []byte {
			f := excelize.NewFile()
			require.NoError(t, f.SetSheetName("Sheet1", buyName))
			buf, err := f.WriteToBuffer()
			require.NoError(t, err)
			return buf.Bytes()
		}(), "no sheet in it has the mark of a list of ours"},
		{"cut short", own[:len(own)/2], "it cannot be opened as a workbook"},
		{"a zip bomb", archive(t, map[string]string{"xl/workbook.xml": strings.Repeat(" ", unzippedLimit+1)}), "it cannot be opened as a workbook"},
		{"an archive of something else", archive(t, map[string]string{"readme.txt": "hello"}), "it cannot be opened as a workbook"},
		{"of a newer format", changedBook(t, func(f *excelize.File) {
			require.NoError(t, f.SetCustomProps(excelize.CustomProperty{Name: formatName, Value: "3"}))
		}), "it is of format 3, and this handtight knows format 2"},
		{"with a row as wide as a sheet", changedBook(t, func(f *excelize.File) {
			require.NoError(t, f.SetCellStr(buyName, "XFD"+spot(t, f, buyName, headKey+buyName, "Shop")[1:], "x"))
		}), `sheet "Buy" is too large to be ours`},
	} {
		t.Run(tc.why, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "order.xlsx")
			require.NoError(t, os.WriteFile(path, tc.data, 0o644))
			_, err := Save(path, sample(t), false)
			var foreign *ForeignFileError
			require.ErrorAs(t, err, &foreign)
			require.Equal(t, path, foreign.Path)
			require.ErrorContains(t, err, tc.says)
			require.ErrorContains(t, err, "Choose another name with -o, or write over it with --force")
			requireAlone(t, path, tc.data)

			rep, err := Save(path, sample(t), true)
			require.NoError(t, err, "forced")
			require.False(t, rep.Reissued)
			written, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, own, written)
		})
	}
}

// requireAlone checks that a file holds that and stands alone in its folder.
func requireAlone(t testing.TB, path string, data []byte) {
	t.Helper()
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.Equal(data, now), "the file is as it was")
	list, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, list, 1, "and nothing is left beside it")
}

func TestForceKeepsTheMarksOfOurOwn(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	rep, err := Save(path, sample(t), true)
	require.NoError(t, err)
	require.True(t, rep.Reissued)
	require.Equal(t, len(buyer), rep.Kept)
}

// A row may say that it is the last of a million: that is legal, and must not
// make a million rows of it.
func TestAFarRowDoesNotHoldUpReading(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	far := edited(t, data, func(text string) string {
		return strings.Replace(text, "</sheetData>",
			`<row r="1048576"><c r="A1048576" t="inlineStr"><is><t>far</t></is></c></row></sheetData>`, 1)
	})
	require.NoError(t, os.WriteFile(path, far, 0o644))
	f, _ := reissued(t, path, sample(t))
	requireBuyer(t, f)
}

func TestNothingIsHalfWritten(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	c := sample(t)
	c.Total = price(t, "1", "NZD")
	_, err = Save(path, c, true)
	require.Error(t, err, "a content that contradicts itself")
	requireAlone(t, path, before)
}

func TestPathsThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "folder.xlsx"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "plain"), nil, 0o644))
	for _, tc := range []struct{ why, path, says string }{
		{"a directory", "folder.xlsx", "folder.xlsx: this is a folder, not a file; name a file in it"},
		{"no such folder", "none/order.xlsx", "order.xlsx: it cannot be written: its folder is not there"},
		{"a file where a folder is due", "plain/order.xlsx", "order.xlsx: what should be its folder is none; name a file in a folder"},
		{"another ending", "order.ods", "does not end in .xlsx, and spreadsheet programs go by the ending; write "},
		{"no ending", "order", "order.xlsx"},
	} {
		t.Run(tc.why, func(t *testing.T) {
			_, err := Save(filepath.Join(dir, tc.path), sample(t), false)
			require.ErrorContains(t, err, tc.says)
		})
	}
	input := filepath.Join(dir, "input.xlsx")
	require.NoError(t, os.WriteFile(input, []byte("kept"), 0o644))
	_, err := Save(input, sample(t), true, input)
	require.ErrorContains(t, err, "never written over", "also when it is forced")
}

func TestAFolderWithoutLeaveToWrite(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "kept")
	require.NoError(t, os.Mkdir(dir, 0o555))
	t.Cleanup(func() { os.Chmod(dir, 0o755) })
	if f, err := os.Create(filepath.Join(dir, "probe")); err == nil {
		f.Close()
		t.Skip("this user may write into any folder")
	}
	_, err := Save(filepath.Join(dir, "order.xlsx"), sample(t), false)
	require.ErrorContains(t, err, "order.xlsx: it cannot be written: permission denied")
}

func TestSaveKeepsRightsAndLinks(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	require.NoError(t, os.Chmod(path, 0o600))
	link := filepath.Join(t.TempDir(), "link.xlsx")
	require.NoError(t, os.Symlink(path, link))
	f, _ := reissued(t, link, sample(t))
	requireBuyer(t, f)
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&os.ModeSymlink, "the link is still one")
	info, err = os.Stat(path)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o600), info.Mode().Perm())
}

// The marks of another build's book are kept where a line has the same key, and the
// report says whose book it was.
func TestAnotherBuildsBook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "list.xlsx")
	c := sample(t)
	_, err := Save(path, c, false)
	require.NoError(t, err)
	rep, err := Save(path, c, false)
	require.NoError(t, err)
	require.Empty(t, rep.Other)
	old := c.Title
	c.Title = "Tern: another build"
	rep, err = Save(path, c, false)
	require.NoError(t, err)
	require.Equal(t, old, rep.Other)
}
