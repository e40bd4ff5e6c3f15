package source

// As says as what a key is read. The zero value is invalid.
type As uint8

// What a key is read as.
const (
	AsAny    As = iota + 1 // only whether it is there
	AsText                 // a text
	AsAmount               // a text with a figure and its unit
	AsWord                 // one of a few texts
	AsTexts                // a list of texts
	AsPairs                // a list of lists of two texts
	AsBool                 // true or false
	AsWhole                // a whole number
	AsDate                 // a day
	AsWhen                 // a year, a month or a day: a number, a text or a day
	AsTable                // a table
	AsTables               // a list of tables
)

// Asked is one question that was put to a table, whether it had an answer or not.
type Asked struct {
	Table    Path // where the table stands, with the indices of lists
	Key      string
	As       As
	Example  string   // of what to write; "" for none
	Words    []string // of AsWord
	Required bool
}

// Listen tells every question that is put to the document from now on: what a reader asks
// is what a file may hold.
func (r *Reader) Listen(to func(Asked)) { r.listen = to }

func (t *Table) tell(key string, as As, hint []string, required bool) {
	if t.reader.listen != nil {
		t.reader.listen(Asked{Table: t.path(), Key: key, As: as, Example: example(hint), Required: required})
	}
}

// Amount notes, for who listens, that a text is read as a figure with its unit.
func (t *Table) Amount(key, hint string) { t.tell(key, AsAmount, []string{hint}, false) }

// Words notes, for who listens, that a text is read as one of a few words.
func (t *Table) Words(key string, words ...string) {
	if t.reader.listen != nil {
		t.reader.listen(Asked{Table: t.path(), Key: key, As: AsWord, Example: words[0], Words: words})
	}
}
