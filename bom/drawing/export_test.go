package drawing

// Symbols lists every symbol that has a drawing of its own, in the table's order.
func Symbols() []Symbol {
	var out []Symbol
	for _, r := range symbolRows() {
		out = append(out, Symbol(r["kind"]))
	}
	return out
}

// SymbolWords says in words what each symbol of the table looks like.
func SymbolWords() map[string]string {
	out := map[string]string{}
	for _, r := range symbolRows() {
		out[r["kind"]] = r["words"]
	}
	return out
}
