package title

import (
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"
	"golang.org/x/text/width"
)

// A line in narrow kana is read as the same line in wide ones. The narrow ones are made with a library: a
// voiced sign is taken apart, and each part narrowed.
func TestNarrowKanaAreReadAsWideOnes(t *testing.T) {
	for _, wide := range []string{
		`ボールバルブ Rc1/2`, `ニップル R3/4`, `ソケット 1/2 メス`, `エルボ Rc 3/8`, `ホースニップル R1/4 x 9mm`, `チーズ 1/2`, `プラグ R1/2`, `ワンタッチ継手 8mm R1/4 オス`, `キャップ Rc1/2`, `ブッシング 3/4x1/2`, `ユニオン 1/2`,
	} {
		narrow := width.Narrow.String(norm.NFD.String(wide))
		require.NotEqual(t, wide, narrow)
		a, b := Read(wide), Read(narrow)
		require.Equal(t, brief(a.Ends), brief(b.Ends), narrow)
		require.Equal(t, a.Kind, b.Kind, narrow)
		require.NotEmpty(t, a.Ends, wide)
	}
}

// Places in the text as written stay right behind a sign that two narrow ones make.
func TestPlacesBehindNarrowKana(t *testing.T) {
	require.Equal(t, []string{"zwquv"}, Read(`ﾊﾞﾙﾌﾞ Rc1/2 zwquv`).Unread)
}
