package main

import (
	"testing"

	"github.com/stretchr/testify/require"
)

const shopsBuild = "../../testdata/shops/build.toml"

func TestChooseJSON(t *testing.T) {
	f := jsonOf(t, exitClear, "", "choose", shopsBuild)
	has(t, "choose", f, "plan:object proved:bool no_less_than:string currency:string line_by_line:object one_shop:list swaps:list refused:list arrivals:list cuts:list")
	require.Equal(t, true, f["proved"])
	require.Equal(t, "605.60", f["no_less_than"])
	has(t, "plan", f["plan"], "lines:list vendors:list total:string currency:string")
	has(t, "line_by_line", f["line_by_line"], "total:string saved:string")
	each(t, "one_shop", f["one_shop"], "vendor:string total:string? saved:string? lacks:strings")
	each(t, "swaps", f["swaps"], "for:string item:string cautions:strings")
	each(t, "refused", f["refused"], "for:string item:string saves:string? reason:string")
	each(t, "arrivals", f["arrivals"], "vendor:string days:number? items:strings without_lead:strings")
	cuts := each(t, "cuts", f["cuts"], "item:string vendor:string bought_m:number waste_m:number proved:bool lengths:list")
	lengths := each(t, "lengths", cuts[0].(map[string]any)["lengths"], "m:number aboard:bool waste_m:number pieces:list")
	each(t, "pieces", lengths[0].(map[string]any)["pieces"], "hose:string m:number")
}

func TestCompareJSON(t *testing.T) {
	f := jsonOf(t, exitStops, "", "compare", cleanBuild, carelessBuild)
	has(t, "compare", f, "old:string new:string added:list removed:list replaced:list changed:list joints:list segments:list new_findings:list gone_findings:list counts:object")
	each(t, "added", f["added"], "name:string item:string kind:string about:string run:string")
	each(t, "replaced", f["replaced"], "run:string old:object new:object")
	each(t, "changed", f["changed"], "item:string what:string old:string new:string")
	each(t, "joints", f["joints"], "number:number old:string new:string old_verdict:string new_verdict:string worse:bool")
	each(t, "segments", f["segments"], "old:object new:object worse:strings better:strings")
	each(t, "new_findings", f["new_findings"], "severity:string slug:string place:string reason:string remedy:string")
	counts := f["counts"].(map[string]any)
	require.Positive(t, counts["new_stops"])
	require.Positive(t, counts["worse_joints"])
	require.Positive(t, counts["worse_segments"])

	same := jsonOf(t, exitClear, "", "compare", cleanBuild, cleanBuild)
	for _, list := range []string{"added", "removed", "replaced", "changed", "joints", "segments", "new_findings", "gone_findings"} {
		require.Empty(t, same[list], list)
		require.NotNil(t, same[list], "%s is a list and not null", list)
	}
}

func TestSparesJSON(t *testing.T) {
	f := jsonOf(t, exitClear, "", "spares", cleanBuild)
	has(t, "spares", f, "spares:list chance_without_any:number next:list currency:string unpriced:number")
	each(t, "spares", f["spares"], "item:string about:string class:string placed:number planned:number spares:number aboard:number unit:string chance_without:number? why:string")
	next := each(t, "next", f["next"], "item:string pieces:number cost:string chance_before:number chance_after:number fall_per_unit:number")
	require.Len(t, next, nextBuys)
}
