package page_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/page"
	"handtight/bom/read"
	"handtight/bom/rule"
)

// Names are text wherever they stand, and the same build gives the same bytes.
func TestHostileNamesAreText(t *testing.T) {
	hostile := `<script>alert(1)</script><img src=x onerror=alert(2)>`
	text := fmt.Sprintf(`
[build]
name = '%[1]s'
currency = "EUR"
[duty]
pressure = "44 bar"
[[vendor]]
id = "shop"
name = '%[1]s'
currency = "EUR"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
about = '%[1]s'
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
flow = "4 L/min"
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = '%[1]s'
path = ["sea", "pump", "out"]
[[offer]]
item = "pump"
vendor = "shop"
code = '%[1]s'
price = "1.00"
`, hostile)
	var last []byte
	for range 3 {
		b, faults := read.Parse("hostile.toml", []byte(text))
		require.Empty(t, faults)
		sys, faults := bom.Walk(b)
		require.Empty(t, faults)
		order, err := sys.Order()
		require.NoError(t, err)
		var out bytes.Buffer
		require.NoError(t, page.Write(&out, page.Of(sys, rule.Check(sys), order, page.Options{Text: []byte(text)})))
		require.NotContains(t, strings.ToLower(out.String()), "<script")
		require.NotContains(t, out.String(), "<img")
		require.Contains(t, out.String(), "&lt;script&gt;")
		if last != nil {
			require.Equal(t, last, out.Bytes(), "the same build gives the same bytes")
		}
		last = out.Bytes()
	}
}

// A section asked for alone stands alone.
func TestOneSectionAlone(t *testing.T) {
	for _, only := range page.Sections {
		text := string(written(t, "clean", only))
		require.True(t, page.IsOurs([]byte(text)))
		require.Equal(t, only == "cards", strings.Contains(text, `id="cards"`), only)
		require.Equal(t, only == "stages", strings.Contains(text, `id="leak-test"`), only)
	}
}

// Every joint has its card, and every finding its place.
func TestEveryJointHasACard(t *testing.T) {
	for _, demo := range demos {
		text := string(written(t, demo))
		for n := 1; strings.Contains(text, fmt.Sprintf(">J%d</a>", n)); n++ {
			require.Contains(t, text, fmt.Sprintf(`id="j%d"`, n), demo)
		}
		require.NotContains(t, text, "ZgotmplZ")
		require.Less(t, len(text), 2<<20)
	}
}
