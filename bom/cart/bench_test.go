package cart_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/order"
	"handtight/bom/read"
)

// large makes a build of so many items, each an adaptor of its own, and a cart that
// buys them by words, every tenth by code.
func large(tb testing.TB, items int) (*bom.System, *order.Order, []byte) {
	tb.Helper()
	sizes := []string{"1/8", "1/4", "3/8", "1/2", "3/4", "1", "1 1/4", "1 1/2", "2"}
	families := []string{"NPT", "G", "R"}
	metals := []string{"316", "bronze", "brass", "pp", "duplex"}
	var b, c strings.Builder
	b.WriteString("[build]\nname = \"large\"\ncurrency = \"EUR\"\n[spares]\naway = \"9 months\"\nhours = \"250 h\"\n[[vendor]]\nid = \"v\"\nname = \"V\"\ncurrency = \"EUR\"\n")
	c.WriteString("Code,Description,Qty,Price EUR\n")
	for i := range items {
		a, z := sizes[i%9], sizes[i/9%9]
		f, m := families[i/81%3], metals[i/243%5]
		fmt.Fprintf(&b, "[[item]]\nid = \"a%d\"\nkind = \"adaptor\"\nabout = \"series %d\"\nextra = 1\nmaterial = %q\nports = { a = '%s %s male', b = '%s NPT female' }\n", i, i, m, a, f, z)
		fmt.Fprintf(&b, "[[offer]]\nitem = \"a%d\"\nvendor = \"v\"\ncode = \"C-%d\"\nprice = \"1.00\"\n", i, i)
		code := ""
		if i%10 == 0 {
			code = fmt.Sprintf("C-%d", i)
		}
		fmt.Fprintf(&c, "%s,\"Adaptor %s %s male x %s NPT female, %s, series %d\",1,1.00\n", code, a, f, z, m, i)
	}
	b.WriteString("[[run]]\nname = \"all\"\npath = [\"a0\", \"a1\"]\n")
	build, faults := read.Parse("large.toml", []byte(b.String()))
	require.Empty(tb, faults)
	sys, faults := bom.Walk(build)
	require.Empty(tb, faults)
	order, err := sys.Order()
	require.NoError(tb, err)
	return sys, order, []byte(c.String())
}

// The large cart is matched, and not only read.
func TestALargeCart(t *testing.T) {
	sys, order, data := large(t, 300)
	c, err := cart.Read("c.csv", data, cart.Options{})
	require.NoError(t, err)
	r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
	require.Len(t, r.Lines, 300)
	require.Greater(t, countOf(r, cart.Covers), 200)
}

// A cart of 5,000 lines against a build of 5,000 items, and tenths of it.
func BenchmarkCart(b *testing.B) {
	for _, n := range []int{50, 500, 5_000} {
		sys, order, data := large(b, n)
		b.Run(fmt.Sprintf("read/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, err := cart.Read("c.csv", data, cart.Options{})
				require.NoError(b, err)
			}
		})
		c, err := cart.Read("c.csv", data, cart.Options{})
		require.NoError(b, err)
		b.Run(fmt.Sprintf("judge/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				cart.Judge(sys, order, []*cart.Cart{c}, nil)
			}
		})
	}
}
