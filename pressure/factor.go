package pressure

import "errors"

// Derated is the answer of one temperature table: a factor, or why there is none.
type Derated struct {
	Factor Factor
	Err    error
}

// LeastFactor returns what is left of a part that several tables speak of: the least of
// them. A table that ends before the temperature counts with what its end leaves.
// Errors: the first *RangeError, with [RangeError.AtMost] lowered to the least of all; the
// first *UnknownError where no table is known. Tables without an answer are passed over,
// and without any table it is 1.
func LeastFactor(all ...Derated) (Factor, error) {
	var least Factor
	var outside *RangeError
	var unknown error
	known := false
	for _, d := range all {
		f := d.Factor
		var beyond *RangeError
		switch {
		case errors.As(d.Err, &beyond):
			f = beyond.AtMost
			if outside == nil {
				outside = beyond
			}
		case d.Err != nil:
			if unknown == nil {
				unknown = d.Err
			}
			continue
		}
		if !known || f.Value < least.Value {
			least, known = f, true
		}
	}
	switch {
	case outside != nil:
		e := *outside
		e.AtMost = least
		return Factor{}, &e
	case unknown != nil && !known:
		return Factor{}, unknown
	case !known:
		return Factor{Value: 1}, nil
	}
	return least, nil
}
