package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const carts = "../../testdata/carts"

// The clean carts, in two languages and both forms, build the clean build.
func TestCleanCarts(t *testing.T) {
	f := jsonOf(t, exitClear, "", "cart", cleanBuild, filepath.Join(carts, "elbe.csv"), filepath.Join(carts, "wharf.csv"), filepath.Join(carts, "pier.xlsx"))
	has(t, "cart", f, "build:string lines:list items:list questions:list notes:list counts:object")
	for _, l := range f["lines"].([]any) {
		has(t, "line", l, "cart:string line:number text:string status:string item:string confidence:number reason:string remedy:string quantity:number? price:string? currency:string items:strings also:strings evidence:list unit:string code:string")
	}
	for _, i := range f["items"].([]any) {
		has(t, "item", i, "item:string need:number in_cart:number status:string about:string unit:string unsure:strings reason:string remedy:string")
		require.Equal(t, "covered", i.(map[string]any)["status"])
	}
	has(t, "counts", f["counts"], "lines:number by_status:object items:number covered:number short:number short_of_spares:number missing:number surplus:number questions:number builds:bool")
	require.Empty(t, f["questions"])
}

// Each faulty cart alone cannot build it, says why, and says the same twice.
func TestFaultyCarts(t *testing.T) {
	for _, name := range []string{"quai.csv", "banchina.xlsx", "muelle.xlsx", "owner.csv"} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(carts, name)
			var out, again, errOut bytes.Buffer
			require.Equal(t, exitStops, run([]string{"cart", cleanBuild, path}, strings.NewReader(""), &out, &errOut), errOut.String())
			require.Equal(t, exitStops, run([]string{"cart", cleanBuild, path}, strings.NewReader(""), &again, &errOut))
			require.Equal(t, out.String(), again.String(), "the same carts give the same words")
			require.Empty(t, errOut.String())
			require.Contains(t, out.String(), "DO NOT SEND IT: ")
			for line := range strings.Lines(out.String()) {
				require.LessOrEqual(t, len([]rune(strings.TrimSuffix(line, "\n"))), plainWidth+60, line)
			}
			f := jsonOf(t, exitStops, "", "cart", cleanBuild, path)
			for _, q := range f["questions"].([]any) {
				has(t, "question", q, "cart:string line:number item:string choices:strings ask:string settles:number")
			}
		})
	}
}

// The workbook that order writes is a cart that buys the build.
func TestTheOrderIsACart(t *testing.T) {
	list := filepath.Join(t.TempDir(), "list.xlsx")
	var out, errOut bytes.Buffer
	require.Equal(t, exitClear, run([]string{"order", cleanBuild, "-o", list}, strings.NewReader(""), &out, &errOut), errOut.String())
	f := jsonOf(t, exitClear, "", "cart", cleanBuild, list)
	for _, i := range f["items"].([]any) {
		require.Equal(t, "covered", i.(map[string]any)["status"], i)
	}
	require.Empty(t, f["questions"])
}

// What is to be ordered instead is told in the order's own words, all that the place needs: the
// standard, the length, the voltage, and not the ends alone.
func TestInsteadSaysAllThatThePlaceNeeds(t *testing.T) {
	list := filepath.Join(t.TempDir(), "list.csv")
	require.NoError(t, os.WriteFile(list, []byte("Code;Description;Qty\n"+
		"R8-06-1200-A;Hose SAE 100R7 3/8\" 1200 mm, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends;1\n"+
		"MV-12-24;Solenoid valve 1/2 NPT female x 1/2 NPT female, bronze, 230 V, shut without current, 10 bar;1\n"), 0o644))
	f := jsonOf(t, exitStops, "", "cart", cleanBuild, list)
	lines := f["lines"].([]any)
	for i, wanted := range []string{`SAE 100R8 3/8", 1200 mm`, "24 V"} {
		line := lines[i].(map[string]any)
		require.Contains(t, line["status"], "wrong")
		require.Contains(t, line["remedy"], wanted)
	}
}
