package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

func TestThreadsTooWeak(t *testing.T) {
	list := example(t, threadsTooWeak, threadsTooWeak.Wrong)["threads-too-weak"]
	require.Len(t, list, 1, "both joints of the nipple are one report")
	f := list[0]
	require.Equal(t, finding.Caution, f.Severity)
	require.Equal(t, "J2 pump.out - nipple.a and 1 more", f.At())
	// 1280 bar of 316 on 316 (20 ksi), at 2 ksi of PVC: a tenth
	require.Equal(t, "by an estimate its threads bear 128 bar, screwed together by hand, and it sees 150 bar: throttle (brine throttle) left shut. "+
		"So it is with J3 nipple.b - throttle.in (128 bar).", f.Reason)
	require.Len(t, f.Related, 1)

	require.NotContains(t, example(t, threadsTooWeak, strings.Replace(threadsTooWeak.Wrong, "150 bar", "120 bar", 1)), "threads-too-weak", "below what they bear")
	require.NotContains(t, example(t, threadsTooWeak, strings.Replace(threadsTooWeak.Wrong, `stall = "150 bar"`, "", 1)), "threads-too-weak", "without bound: no-way-out says it")
}
