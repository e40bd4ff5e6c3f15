package page_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

var word = regexp.MustCompile(`<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>`)

// On A4 and on Letter nothing is printed beyond the margin, and no letter is smaller than 8
// points: a word's box is at least as high as its letters' size.
func TestOnPaper(t *testing.T) {
	ctx := browser(t)
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("HANDTIGHT_NEED_BROWSER") != "" {
			t.Fatal("pdftotext is not installed, and HANDTIGHT_NEED_BROWSER asks for it")
		}
		t.Skip("pdftotext is not installed: the printed page is not looked at")
	}
	dir := t.TempDir()
	for _, demo := range []string{"clean", "careless"} {
		name := filepath.Join(dir, demo+".html")
		require.NoError(t, os.WriteFile(name, written(t, demo), 0o644))
		for paper, size := range map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter} {
			t.Run(demo+" "+paper, func(t *testing.T) {
				require.NoError(t, chromedp.Do(ctx, chromedp.Navigate("file://"+name)))
				pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(size), chromedp.PDFPreferCSSPageSize()))
				require.NoError(t, err)
				file := filepath.Join(dir, fmt.Sprintf("%s-%s.pdf", demo, paper))
				require.NoError(t, os.WriteFile(file, pdf, 0o644))
				out, err := exec.Command("pdftotext", "-bbox", file, "-").Output()
				require.NoError(t, err)
				count := 0
				for _, m := range word.FindAllStringSubmatch(string(out), -1) {
					var v [4]float64
					for i := range v {
						v[i], _ = strconv.ParseFloat(m[i+1], 64)
					}
					count++
					require.GreaterOrEqual(t, v[0], 0.0, m[5])
					require.LessOrEqual(t, v[2], 842.0, m[5])
					require.GreaterOrEqual(t, v[3]-v[1], 7.9, "%s is printed small", m[5])
				}
				require.Greater(t, count, 500)
			})
		}
	}
}
