package draft

import (
	"fmt"

	"github.com/cockroachdb/apd/v3"
)

// perPiece is the price of one of a pack, exactly; false where it does not come out even.
func perPiece(price string, pack int) (string, bool) {
	d, _, err := apd.NewFromString(price)
	if err != nil || pack < 1 {
		return "", false
	}
	ctx := apd.BaseContext.WithPrecision(20)
	var out, r apd.Decimal
	cond, err := ctx.Quo(&out, d, apd.New(int64(pack), 0))
	if err != nil || cond.Inexact() {
		return "", false
	}
	if _, err := ctx.Quantize(&r, &out, -6); err != nil || r.Cmp(&out) != 0 {
		return "", false
	}
	out.Reduce(&out)
	if out.Exponent > -2 {
		if _, err := ctx.Quantize(&out, &out, -2); err != nil {
			return "", false
		}
	}
	return fmt.Sprintf("%f", &out), true
}
