package choose

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
)

func shopsBuild(t *testing.T) *bom.System {
	t.Helper()
	build, faults := bom.Read("../../testdata/shops/build.toml")
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	return sys
}

// The example: an alternative with the same threads is taken, and the cheaper one whose
// threads do not fit is refused with the joint that it would spoil.
func TestExample(t *testing.T) {
	c, err := Shops(context.Background(), shopsBuild(t))
	require.NoError(t, err)
	require.True(t, c.Proved)
	require.Equal(t, "605.60", c.Order.Total.Number())
	require.Equal(t, "714.53", c.Cheapest.Total.Number())
	require.Len(t, c.Swaps, 1)
	require.Equal(t, "strainer-light", c.Swaps[0].Item)
	require.Empty(t, c.Swaps[0].Cautions)
	require.Len(t, c.Refused, 1)
	require.Equal(t, "strainer-npt", c.Refused[0].Item)
	require.Equal(t, "flank-angles-differ", c.Refused[0].Stop.Slug)
	require.True(t, c.Refused[0].Saves.IsPositive())
	for _, l := range c.Order.Lines {
		require.NotEqual(t, "strainer", l.Need.Key)
		require.NotEqual(t, "strainer-npt", l.Need.Key)
	}
}

// pair is a part screwed onto the boat's own tail, and alternatives to it.
func pair(more string) string {
	return head[:strings.Index(head, "[[item]]")] + `
[[item]]
id = "sea"
kind = "sea"
ports = { out = 'G 1/2 male' }
[[item]]
id = "out"
kind = "drain"
ports = { in = 'G 1/2 male' }
[[item]]
id = "join"
kind = "union"
ports = { a = 'G 1/2 female swivel', b = 'G 1/2 female swivel' }
rated = "10 bar"
[[run]]
name = "all"
path = ["sea", "join", "out"]
` + vendor("near", "NZD", "") + offer("join", "near", "20.00", "") + offer("flat gasket G 1/2", "near", "1.00", "") + more
}

func union(id, ends, price string) string {
	text := fmt.Sprintf("[[item]]\nid = %q\nkind = \"union\"\nports = { a = '%[2]s', b = '%[2]s' }\nrated = \"10 bar\"\n[[option]]\nfor = \"join\"\nitem = %[1]q\n", id, ends)
	if price != "" {
		text += offer(id, "near", price, "")
	}
	return text
}

func TestOptions(t *testing.T) {
	for _, row := range []struct {
		why, more, taken, refused string
	}{
		{"cheaper with the same ends: taken", union("light", "G 1/2 female swivel", "15.00"), "light", ""},
		{"dearer: left", union("heavy", "G 1/2 female swivel", "25.00"), "", ""},
		{"at the same price: the build stays as it is", union("same", "G 1/2 female swivel", "20.00"), "", ""},
		{"the cheapest of several", union("a", "G 1/2 female swivel", "15.00") + union("b", "G 1/2 female swivel", "12.00"), "b", ""},
		{"cheaper, and it does not fit: refused", union("npt", "1/2 NPT female swivel", "5.00"), "", "it would make a stop"},
		{"without a price it is not free", union("none", "G 1/2 female swivel", ""), "", "no shop has a price for none, which it needs"},
		{"dearer and it does not fit: not worth a word", union("npt", "1/2 NPT female swivel", "50.00"), "", ""},
		{"a part without ports cannot stand for one with", store("oil", 1) + offer("oil", "near", "1.00", "") + "[[option]]\nfor = \"join\"\nitem = \"oil\"\n", "",
			"`oil` (oil) cannot stand for `join` (union)"},
	} {
		t.Run(row.why, func(t *testing.T) {
			c := chosen(t, pair(row.more))
			require.True(t, c.Proved)
			if row.taken == "" {
				require.Empty(t, c.Swaps)
			} else {
				require.Len(t, c.Swaps, 1)
				require.Equal(t, row.taken, c.Swaps[0].Item)
			}
			if row.refused == "" {
				require.Empty(t, c.Refused)
			} else {
				require.Len(t, c.Refused, 1)
				require.Equal(t, row.refused, c.Refused[0].Reason)
			}
		})
	}
}

// Two options that are each dearer can be cheaper together: both move to a shop whose
// freight is paid once.
func TestOptionsTogether(t *testing.T) {
	text := strings.Replace(pair(""), "path = [\"sea\", \"join\", \"out\"]", "path = [\"sea\", \"join\", \"mid\", \"end\", \"out\"]", 1) + `
[[item]]
id = "mid"
kind = "nipple"
ports = { a = 'G 1/2 male', b = 'G 1/2 male' }
rated = "10 bar"
[[item]]
id = "end"
kind = "union"
ports = { a = 'G 1/2 female swivel', b = 'G 1/2 female swivel' }
rated = "10 bar"
` + vendor("far", "NZD", `freight = "9.00"`) + offer("mid", "near", "3.00", "") + offer("end", "near", "20.00", "") +
		strings.Replace(union("join-2", "G 1/2 female swivel", "14.00"), `vendor = "near"`, `vendor = "far"`, 1)
	second := strings.Replace(union("end-2", "G 1/2 female swivel", "14.00"), `vendor = "near"`, `vendor = "far"`, 1)
	second = strings.Replace(second, `for = "join"`, `for = "end"`, 1)
	c := chosen(t, text+second)
	require.True(t, c.Proved)
	require.Len(t, c.Swaps, 2)
	saved, ok := c.Saves(c.Cheapest)
	require.True(t, ok)
	require.Equal(t, "3.00", saved.Number(), "twice 6.00 saved, and one freight of 9.00")
}

// More alternatives than ways are looked at: they come in the order of what they cost at the
// least, so that the first proves the rest dearer; where a freight that no bound sees hides the
// order, that is said.
func TestManyOptions(t *testing.T) {
	var b, near strings.Builder
	for i := range 300 {
		b.WriteString(union(fmt.Sprintf("u-%d", i), "G 1/2 female swivel", fmt.Sprintf("%d.00", 310-i)))
		near.WriteString(union(fmt.Sprintf("u-%d", i), "G 1/2 female swivel", fmt.Sprintf("18.%02d", 99-i/4)))
	}
	c := chosen(t, pair(b.String()))
	require.True(t, c.Proved)
	require.Len(t, c.Swaps, 1)
	require.Equal(t, "u-299", c.Swaps[0].Item)
	require.Equal(t, c.Order.Total.Number(), c.Bound.Number())

	c = chosen(t, strings.Replace(pair(near.String()), "currency = \"NZD\"\n\n[[offer]]", "currency = \"NZD\"\nfreight = \"40.00\"\n[[offer]]", 1))
	require.False(t, c.Proved)
	require.Len(t, c.Swaps, 1)
	require.Equal(t, "u-296", c.Swaps[0].Item, "the first of four at one price")
	require.True(t, c.Bound.IsPositive())
	cmp, err := c.Bound.Cmp(c.Order.Total)
	require.NoError(t, err)
	require.Negative(t, cmp)
}
