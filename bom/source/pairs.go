package source

// Pairs reads a list of lists of two texts each. said is false when the key is missing; ok
// is false, and nothing is noted as a fault, when it holds anything else.
func (t *Table) Pairs(key string) (pairs [][2]string, said, ok bool) {
	t.tell(key, AsPairs, nil, false)
	v, said := t.get(key)
	if !said {
		return nil, false, false
	}
	list, ok := v.([]any)
	if !ok {
		return nil, true, false
	}
	for _, element := range list {
		row, ok := element.([]any)
		if !ok || len(row) != 2 {
			return nil, true, false
		}
		a, first := row[0].(string)
		b, second := row[1].(string)
		if !first || !second {
			return nil, true, false
		}
		pairs = append(pairs, [2]string{a, b})
	}
	return pairs, true, true
}
