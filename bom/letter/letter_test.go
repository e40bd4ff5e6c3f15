package letter

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Widths of letters as the metrics of the face have them (Core 14 AFM; Liberation Sans 1.07.4).
func TestAdvance(t *testing.T) {
	for r, want := range map[rune]int{' ': 278, '0': 556, '9': 556, 'i': 222, 'm': 833, 'W': 944, '@': 1015, '~': 584, 'é': 700, '…': 1000, '水': 1000} {
		require.Equal(t, want, Advance(r), string(r))
	}
}
