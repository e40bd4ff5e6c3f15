package cart

import (
	"fmt"
	"strings"

	"handtight/bom/money"
	"handtight/pressure/pattern"
)

var (
	countCell = pattern.New(`^(?:x\s*)?([0-9][0-9.,' ]*)\s*x?\s*([\pL.]*)$`)
)

// amount reads how many a line buys: from its column, else from its words.
func (b *builder) amount(l *Line, r *row) {
	l.Unit = unitOf(b.get(r, RoleUnit).text)
	if p := b.get(r, RolePack); p.text != "" {
		b.pack(l, p)
	}
	c := b.get(r, RoleQuantity)
	b.fromText(l, c.text == "")
	switch {
	case c.text == "" && !l.Counted && l.Length > 0 && edgeLength(l.Text):
		l.Amount, l.Counted, l.Unit, l.Length = l.Length, true, "m", 0 // Suction hose 19 mm, 1.5m
	case c.text == "" && !l.Counted && l.Doubt == "":
		l.Doubt = "the line says no quantity"
	case c.text == "":
	case unknown(c.text):
		l.Doubt = fmt.Sprintf("its quantity is %q", c.text)
	default:
		l.Amount, l.Counted = b.count(c, l)
		if !l.Counted && l.Doubt == "" {
			l.Doubt = fmt.Sprintf("its quantity %q is no plain number", c.text)
		}
	}
	b.smallUnits(l)
}

// pack reads how the shop sells: by 10, in bags of 5, by the metre.
func (b *builder) pack(l *Line, c cell) {
	var ok bool
	if l.Pack, ok = b.count(c, l); !ok {
		l.Pack, l.Bundle = packIn(c.text)
	}
	if l.Pack == 0 && l.Unit == "" {
		l.Unit = unitOf(c.text)
	}
}

// count reads a cell with a number and perhaps a unit: 2, 2x, 3 ea, 1.5m.
func (b *builder) count(c cell, l *Line) (money.Quantity, bool) {
	if c.number {
		return thousandths(c.text)
	}
	m := countCell.FindStringSubmatch(strings.ToLower(c.text))
	if m == nil || c.date {
		return 0, false
	}
	unit := unitOf(m[2])
	if m[2] != "" && unit == "" && m[2] != "x" {
		return 0, false
	}
	n, ok := b.numbers.number(m[1])
	if !ok {
		if n, ok = wholeOf(m[1]); !ok {
			l.Doubt = fmt.Sprintf("its quantity %q may be thousands or decimals", c.text)
			return 0, false
		}
	}
	if unit != "" {
		l.Unit = unit
	}
	return thousandths(n)
}

// wholeOf reads 2,000 and 2.000 as two where nothing tells the decimal sign and no boat takes
// two thousand: a count that ends in three zeros is how programs write a whole one.
func wholeOf(text string) (string, bool) {
	t := spacers.Replace(text)
	if len(t) > 4 && (t[len(t)-4] == ',' || t[len(t)-4] == '.') && strings.HasSuffix(t, "000") && len(t) <= 6 {
		return t[:len(t)-4], true
	}
	return "", false
}

// smallUnits turns centimetres, millimetres and feet into metres.
func (b *builder) smallUnits(l *Line) {
	switch l.Unit {
	case "cm":
		l.Amount, l.Unit = l.Amount/100, "m"
	case "mm":
		l.Amount, l.Unit = l.Amount/1000, "m"
	case "ft":
		l.Amount, l.Unit = l.Amount*3048/10_000, "m" // the international foot, 0.3048 m exactly
	}
}

// Quantity tells how much of something the line brings, counted in the unit that the
// build counts it in: "pc", "m" or "roll". offered is the offer's price of one, "" if
// none is known: it tells pieces from packs. how says what was multiplied; doubt says
// why it is not known.
func (l *Line) Quantity(unit, offered string) (q money.Quantity, how, doubt string) {
	switch {
	case !l.Counted:
		return 0, "", orWords(l.Doubt, "the line says no quantity")
	case unit == "m":
		return l.metres()
	case l.Unit == "m":
		return 0, "", "it is counted in metres, and the build counts pieces"
	case l.Amount%money.Piece != 0:
		return 0, "", fmt.Sprintf("%s pieces cannot be", l.Amount)
	case l.Pack <= money.Piece || unit == "roll":
		return l.Amount, "", ""
	}
	return l.packs(offered)
}

// packs tells packs from pieces. A unit that says pieces, or says nothing, is taken for
// pieces only where no pack can be meant, or where the price is that of one piece.
func (l *Line) packs(offered string) (money.Quantity, string, string) {
	if (l.Unit == "pc" || l.Unit == "") && l.Amount >= l.Pack && !l.Bundle {
		byPack, ok := quotient(l.Price, l.Pack.String())
		switch {
		case offered != "" && l.Price != "" && near(l.Price, offered):
			return l.Amount, "", ""
		case offered != "" && ok && near(byPack, offered):
		case l.Amount%l.Pack != 0:
			return l.Amount, "", ""
		default:
			return 0, "", fmt.Sprintf("a pack holds %s, and the line says %s: it may mean pieces or packs", l.Pack, l.Amount)
		}
	}
	if l.Amount > 100_000*money.Piece {
		return 0, "", "the quantity is beyond what a boat holds"
	}
	return l.Amount / money.Piece * l.Pack, fmt.Sprintf("%s packs of %s", l.Amount, l.Pack), ""
}

func orWords(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

func (l *Line) metres() (money.Quantity, string, string) {
	switch {
	case l.Unit == "m" || l.PerMetre:
		return l.Amount, "", ""
	case l.Length > 0 && l.Amount%money.Piece == 0 && l.Amount <= 10_000*money.Piece:
		return l.Amount / money.Piece * l.Length, fmt.Sprintf("%s x %s m", l.Amount, l.Length), ""
	case l.Length > 0:
		return 0, "", fmt.Sprintf("%s pieces of %s m cannot be", l.Amount, l.Length)
	}
	return 0, "", fmt.Sprintf("the line says %s, and not whether metres or pieces, or how long one is", l.Amount)
}
