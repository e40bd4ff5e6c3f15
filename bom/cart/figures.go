package cart

import (
	"strconv"
	"strings"

	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// Figures that a shop writes beside the ends. Each form is looked for only where a word of
// it stands, since most lines have few of them.
var (
	micronForm  = pattern.New(`(?i)([0-9]+(?:[.,][0-9]+)?)\s*(?:µm?|μm?|um|microns?|mikron|micras?|micron[is]|micrones|mic|mcr|mcn|мкм)(?:[^\pL]|$)`)
	scaleForm   = pattern.New(`(?i)(?:^|[^0-9.,/])0\s*(?:-|–|—|÷|/|\.\.\.?|…|to|bis|à|a|al|ad|tot|till|til|do|до)\s*([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa|бар)`)
	setForm     = pattern.New(`(?i)(?:set|eingestellt|ansprechdruck|öffnungsdruck|einstelldruck|taré|tarée|tarage|tarata|tarato|taratura|tarado|tarada|ajustad[oa]|calibrad[oa]|regulad[oa]|reglad[oa]|réglée?|impostat[oa]|regolat[oa]|ingesteld|afgesteld|preset|innstilt|inställd|ustawion\pL*)(?:\s+(?:a|à|at|to|op|auf|bei|su))?[^0-9]{0,12}?([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)`)
	fullForm    = pattern.New(`(?i)(?:full(?:y)?[ -](?:flow|open|lift)|voll(?:er)? (?:offen|geöffnet|öffnung|durchfluss)|pleine ouverture|pleinement ouverte?|plein débit|apertura (?:total|completa)|caudal total|abertura total|totalmente abert[ao]|tutta aperta|piena apertura|apertura totale|vol(?:ledig)? open|volledig geopend)[^0-9]{0,12}?([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)`)
	cutForm     = pattern.New(`(?i)(?:shut-?off|cut[- ]?(?:out|off)|cutoff|coupure|arrêt|taglio|arresto|corte|paro|abschaltdruck|ausschaltdruck|schaltet (?:ab|aus)|abschaltung|slår fra|isključivanj\pL*|isklop\pL*|vypínací tlak|vypíná|wyłącz\pL*|kikapcsol\pL*|oprire|отключ\pL*|выключ\pL*|bryter|katkaisu\pL*|kapanma|uitschakel\pL*|afslag)[^0-9]{0,14}?([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)`)
	cutBehind   = pattern.New(`(?i)(?:^|[^0-9.,])([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)\s*(?:cut-?off|shut-?off|cut-?out)\b`)
	boreForm    = pattern.New(`(?i)(?:^|[^0-9.,/x×-])([0-9]{1,2}(?:[.,][0-9]+)?)\s*mm(?:[^\pL]|$)`)
	inchBore    = pattern.New(`(?:^|[^0-9.,/x×-])([0-9](?:[ -][0-9]/[0-9]{1,2})?|[0-9]/[0-9]{1,2})\s*(?:"|″|”|''|in\b|inch\b|bore\b|(?i:zoll|pouces?|pollici|pulgadas?))`)
	nominalForm = pattern.New(`(?i)(?:^|[^\pL])[DN][NW]\s?-?([0-9]{1,2})(?:[^0-9]|$)`)
	dashForm    = pattern.New(`(?:^|[\s,(])-\s?(0?[2-9]|1[0-9]|2[0-4])(?:[\s,;)]|$)`)
	voltForm    = pattern.New(`(?i)(?:^|[^\pL0-9.,-])([0-9]{1,3}(?:[.,][0-9])?)(?:\s*/\s*([0-9]{1,3}))?\s*-?\s*v(?:olts?|dc|ac|cc|ca)?(?:[^\pL0-9]|$)`)
	flowForm    = pattern.New(`(?i)(?:^|[^0-9.,/])([0-9]+(?:[.,][0-9]+)?)(?:\s*(?:-|–|—|÷|to|bis|à|a|al)\s*([0-9]+(?:[.,][0-9]+)?))?\s*(ml/h|ml/mi?n|cc/min|l/mi?n|lpm|lt/mi?n|l\.?/min\.|litres?/min|liters?/min|l/h|l/hr|lph|litres?/h|liters?/h|(?:u\.?s\.?\s*)?gpm|gph|gal/min|gal/h|m3/h|m³/h)(?:[^\pL]|$)`)
	rangeForm   = pattern.New(`(?i)(?:^|[^0-9.,/-])([0-9]{1,3})\s*(?:-|–|—|÷|to|bis|à|a|al)\s*([0-9]{1,3})(?:\s*mm)?(?:[^0-9/]|$)`)
	rangeMM     = pattern.New(`(?i)(?:^|[^0-9.,/-])([0-9]{1,3})\s*(?:-|–|—|÷|to|bis|à|a|al)\s*([0-9]{1,3})\s*mm`)
	classForm   = pattern.New(`(?i)(?:^|[^\pL])(?:class|classe|klasse|clase|cl\.?|seri[ea]s?|série)\s*-?\s*([0-9]{3,4})(?:[^0-9]|$)|(?:^|[^0-9.,/])([0-9]{3,4})\s*(?:lbs?\b|#)|(?:^|[^\pL])(?:schedule|sched|sch)\.?\s*-?\s*(40|80|160)(?:[^0-9]|$)`)
	sizeForm    = pattern.New(`(?i)(?:^|[^0-9.,/])([2-8](?:[.,][0-9])?)\s*(?:"|″|”|in\b|inch|zoll)?\s*[x×*-]\s*(12|14|21|26|40)(?:[^0-9.,/]|[.,](?:[^0-9]|$)|$)|(?:^|[^0-9])(18|24|25|40|80)(12|14|21|26|40)(?:[^0-9]|$)`)
	tallForm    = pattern.New(`(?i)(?:^|[^0-9.,/x×-])(5|9[.,]?75|9 ?3/4|10|20|30|40)\s*(?:"|″|”|''|-?\s?in\b|-?\s?inch|-?\s?zoll|-?\s?pouces?|-?\s?pollici|-?\s?pulgadas?|-?\s?tum)|(?:^|[^0-9.,/x×-])(9)\s*(?:"|″|”|'')\s*3/4(?:[^0-9]|$)`)
	longForm    = pattern.New(`(?i)(?:^|[^0-9.,/x×-])([0-9]{3,4})\s*mm(?:[^\pL]|$)|(?:^|[^0-9.,/x×-])([0-9]{2,3})\s*cm(?:[^\pL]|$)|(?:^|[^0-9.,/x×-])([0-9]{2,3})\s*(?:"|″|”|in\b|inch\b|zoll\b)`)
)

// otherPressure is a pressure that is no rating: a vacuum, a setting, what a pump gives at
// most. The pressure of a test, and the one at which it bursts, are the title's to read.
var otherPressure = pattern.New(`(?i)(?:vacuum|vakuum|vide|dépression|vuoto|depressione|vac[ií]o|unterdruck|shut-?off|cut[- ]?(?:out|in|off)|cutoff|coupure|arrêt|taglio|arresto|corte|paro|isključivanj\pL*|isklop\pL*|vypínací tlak|vypíná|wyłącz\pL*|kikapcsol\pL*|oprire|отключ\pL*|выключ\pL*|katkaisu\pL*|uitschakel\pL*|set(?: at| to)?|eingestellt|tarag?[eé]?e?|tarat(?:[ao]|ura)|tarad[ao]|stall|full flow|head|förderdruck|abschaltdruck|ausschaltdruck|schaltet (?:ab|aus)|abschaltung|einstelldruck|ansprechdruck|opening|cracking|öffnungsdruck)\s*:?\s*(?:(?:pressure|druck|pression|pressione|presión)\s*)?(?:de |di |at |to |bei |à |a )?:?\s*-?[0-9]+(?:[.,][0-9]+)?\s*(?:bar|psi|mpa|kpa|kg/cm2)(?:\s*vacuum\b)?|(?:^|[^0-9\s])\s*[-−–](?:0[.,][0-9]{1,2}|1(?:[.,]0)?)\s*bar\b|(?:suction|aspiraci[oó]n|aspiration|aspirazione|aspiração|sucção|ansaugung|saugseitig|zuiging)\s*:?\s*(?:0[.,][0-9]{1,2}|1(?:[.,]0)?)\s*bar\b|-?[0-9]+(?:[.,][0-9]+)?\s*(?:bar|psi|mpa)\s*(?:vacuum|cut-?off|shut-?off|cut-?out)\b`)

// decimal reads a number with either sign; 0 for none.
func decimal(text string) float64 {
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil {
		return 0
	}
	return v
}

func figureIn(form *pattern.Pattern, text string) float64 {
	m := form.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	return decimal(m[1])
}

var perPressure = map[string]quantity.Pressure{"bar": quantity.Bar, "бар": quantity.Bar, "barg": quantity.Bar, "psi": quantity.PSI, "psig": quantity.PSI, "mpa": quantity.MPa}

func pressureIn(form *pattern.Pattern, text string) quantity.Pressure {
	m := form.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	return quantity.Pressure(decimal(m[1])) * perPressure[strings.ToLower(m[2])]
}

var perFlow = map[string]quantity.Flow{
	"l/min": quantity.LitrePerMinute, "lpm": quantity.LitrePerMinute, "l/h": quantity.LitrePerHour, "lph": quantity.LitrePerHour,
	"ml/h": quantity.LitrePerHour / 1000, "ml/min": quantity.LitrePerMinute / 1000, "cc/min": quantity.LitrePerMinute / 1000,
	"gpm": quantity.USGPM, "gph": quantity.USGPH, "m3/h": quantity.CubicMetrePerHour,
}

var flowUnit = strings.NewReplacer("ml/mn", "ml/min", "l/mn", "l/min", "lt/mn", "l/min", "litres", "l", "liters", "l", "litre", "l", "liter", "l", "lt/", "l/", "l./", "l/", "min.", "min", "l/hr", "l/h", "gal/min", "gpm", "gal/h", "gph", "³", "3")

// flowRange is what a part passes, from and to; both alike where one figure is said.
type flowRange struct{ from, to quantity.Flow }

func flowIn(text string) flowRange {
	m := flowForm.FindStringSubmatch(text)
	if m == nil {
		return flowRange{}
	}
	unit := perFlow[flowUnit.Replace(strings.ToLower(m[3]))]
	out := flowRange{quantity.Flow(decimal(m[1])) * unit, quantity.Flow(decimal(m[1])) * unit}
	if m[2] != "" {
		out.to = quantity.Flow(decimal(m[2])) * unit
	}
	return out
}

// voltsIn gives the voltages that a text names: one, or two as in 12/24 V.
func voltsIn(text string) [2]quantity.Voltage {
	m := voltForm.FindStringSubmatch(text)
	if m == nil {
		return [2]quantity.Voltage{}
	}
	return [2]quantity.Voltage{quantity.Voltage(decimal(m[1])), quantity.Voltage(decimal(m[2]))}
}

// current is the sort of current that words name beside a voltage; of 24 V AC/DC both.
type current uint8

const (
	direct current = 1 << iota
	alternating
)

func (c current) String() string { return [...]string{"", " DC", " AC", " AC/DC"}[c] }

var (
	directForm      = pattern.New(`(?i)[0-9]\s*-?\s*v(?:olts?)?\s*-?(?:ac\s*/\s*)?(?:dc|cc)(?:[^\pL]|$)|(?:^|[^\pL])(?:dc|gleichstrom|gleichspannung|(?:courant|corrente|corriente) contin\pL+|gelijkstroom|likstr[oö]m|jævnstrøm)(?:[^\pL]|$)`)
	alternatingForm = pattern.New(`(?i)[0-9]\s*-?\s*v(?:olts?)?\s*-?(?:ac|ca|~)(?:[^\pL]|$)|(?:50|60|50\s*/\s*60|50-60)\s*hz|(?:^|[^\pL])(?:ac|wechselstrom|wechselspannung|alternati[fv]\pL*|alterna|alternata|wisselstroom|växelström|vekselstrøm)(?:[^\pL]|$)`)
)

func currentIn(text string) current {
	var out current
	if directForm.MatchString(text) {
		out |= direct
	}
	if alternatingForm.MatchString(text) {
		out |= alternating
	}
	return out
}

// lowVoltage is the voltage up to which a boat's supply is a battery's, and so direct, where nothing says
// more (judgement: batteries of 12, 24 and 48 V).
const lowVoltage = 60 * quantity.Volt

// runsOn reports whether a part for one current runs on what the build has; what is not said is left open.
func (c current) runsOn(has current, v quantity.Voltage) bool {
	if has == 0 && v <= lowVoltage {
		has = direct
	}
	return c == 0 || has == 0 || c&has != 0
}

// span is a range of lengths, as of a clamp.
type span struct{ from, to quantity.Length }

func rangeIn(text string) span {
	m := rangeMM.FindStringSubmatch(text)
	if m == nil {
		if s := inchRange(text); s.to > 0 {
			return s
		}
		m = rangeForm.FindStringSubmatch(text)
	}
	if m == nil {
		m = slashForm.FindStringSubmatch(text)
	}
	if m == nil {
		m = crossForm.FindStringSubmatch(text)
	}
	if m == nil {
		return span{}
	}
	out := span{quantity.Length(decimal(m[1])), quantity.Length(decimal(m[2]))}
	if out.from >= out.to || out.from == 0 {
		return span{}
	}
	return out
}

// slashForm is a range of whole millimetres with a stroke, 8/14: its first figure is even, which
// that of an inch fraction is not.
var slashForm = pattern.New(`(?:^|[^0-9.,/x×-])([0-9]?[02468])\s*/\s*([0-9]{1,3})(?:[^0-9/"″”]|$)`)

// crossForm is a range with a cross, 12x22: no clamp has two sizes.
var crossForm = pattern.New(`(?:^|[^0-9.,/x×-])([0-9]{1,3})\s*[x×]\s*([0-9]{1,3})(?:[^0-9./"″”]|$)`)

// inchRange reads 11/16" - 1 1/4".
func inchRange(text string) span {
	m := inchSpan.FindStringSubmatch(text)
	if m == nil || !inchSign.MatchString(m[0]) && !(strings.Contains(m[1], "/") && strings.Contains(m[2], "/")) {
		return span{}
	}
	out := span{inchesOf(m[1]), inchesOf(m[2])}
	if out.from >= out.to || out.from == 0 {
		return span{}
	}
	return out
}

var inchSign = pattern.New(`(?i)["″”']|in\b|inch`)

var inchSpan = func() *pattern.Pattern {
	size := `([0-9]{1,2}[ -][0-9]{1,2}/[0-9]{1,2}|[0-9]{1,2}/[0-9]{1,2}|[0-9](?:\.[0-9]+)?)`
	sign := `\s*(?:"|″|”|''|in\b\.?|inch(?:es)?)`
	return pattern.New(`(?i)(?:^|[^0-9.,/-])` + size + `(?:` + sign + `)?\s*(?:-|–|—|÷|to|bis)\s*` + size + sign + `?`)
}()

// classIn gives the class of a fitting as package pressure reads it; "" for none.
func classIn(text, lower string) string {
	if !saysAny(lower, "cl", "kl", "lb", "#", "sch", "seri", "séri") {
		return ""
	}
	m := classForm.FindStringSubmatch(text)
	switch {
	case m == nil:
		return ""
	case m[1] != "":
		return "class " + m[1]
	case m[2] != "":
		return m[2] + " lb"
	}
	return "sch " + m[3]
}

// elementSize is that of a membrane element or of its vessel, in inches: 2.5 x 21.
type elementSize struct{ across, long float64 }

func elementIn(text string) elementSize {
	m := sizeForm.FindStringSubmatch(text)
	switch {
	case m == nil:
		return elementSize{}
	case m[1] != "":
		return elementSize{decimal(m[1]), decimal(m[2])}
	}
	return elementSize{decimal(m[3]) / 10, decimal(m[4])}
}

// tallIn is the nominal length of a filter cartridge or its housing, in inches.
func tallIn(text string) float64 {
	m := tallForm.FindStringSubmatch(text)
	if m == nil {
		m = byWidth.FindStringSubmatch(text)
	}
	if m == nil {
		return 0
	}
	inches := orWords(m[1], m[2])
	if strings.HasPrefix(inches, "9") {
		return 10 // the cartridge of a 10-inch housing is 9 3/4 inches long: common practice
	}
	return decimal(inches)
}

// byWidth is the length of a cartridge behind or before its width, both in inches: 2.5 x 10.
var byWidth = pattern.New(`(?i)(?:^|[^0-9.,/])(?:2[.,]5|2[.,]75|2[ -]1/2|4[.,]5|4[ -]1/2)\s*(?:"|″|”|in\b)?\s*[x×]\s*(5|9[.,]75|9 ?3/4|10|20|30|40)(?:[^0-9./]|$)|(?:^|[^0-9.,/])(10|20|30|40)\s*[x×]\s*(?:2[.,]5|2[.,]75|4[.,]5)(?:[^0-9/]|$)`)

// longIn is how long a hose is that is made up: in millimetres, centimetres or inches.
func longIn(text string) quantity.Length {
	m := longForm.FindStringSubmatch(text)
	if m == nil {
		if m = calledLong.FindStringSubmatch(text); m != nil {
			return quantity.Length(decimal(orWords(m[1], m[2])))
		}
		return 0
	}
	switch {
	case m[1] != "":
		return quantity.Length(decimal(m[1]))
	case m[2] != "":
		return quantity.Length(decimal(m[2])) * quantity.Centimetre
	}
	return quantity.Length(decimal(m[3])) * quantity.Inch
}

// calledLong is a bare figure that is called a length, in millimetres as workshops write it:
// 600 lg., L=900.
var calledLong = pattern.New(`(?i)(?:^|[^0-9.,/x×-])([0-9]{3,4})\s*(?:lg|lang|long|oal)\b|(?:^|[^\pL])(?:l|lg|länge|longueur|lengte|lunghezza|longitud|comprimento)\s*[=.:]?\s*([0-9]{3,4})(?:[^0-9.,/]|[.,](?:[^0-9]|$)|$)`)

// nominalBores are the bores of hoses by nominal size. Source: the sizes of ISO 4397 for
// hydraulic hose, as memory has them.
var nominalBores = map[string]quantity.Length{"5": 4.8, "6": 6.3, "8": 7.9, "10": 9.5, "12": 12.7, "16": 15.9, "19": 19, "20": 19, "25": 25.4, "31": 31.8, "38": 38.1}

// boreIn gives the bore of a hose: by its nominal size, its dash, millimetres, else inches
// that are not a thread's.
func boreIn(text, spec string) quantity.Length {
	if m := nominalForm.FindStringSubmatch(text); m != nil && nominalBores[m[1]] > 0 {
		return nominalBores[m[1]]
	}
	if spec != "" {
		if m := ownDash(text); m != nil {
			if n, err := strconv.Atoi(text[m[2]:m[3]]); err == nil {
				if bore, ok := pressure.BoreOfDash(pressure.Spec(spec), n); ok {
					return bore
				}
			}
		}
	}
	if v := figureIn(boreForm, text); v > 0 {
		return quantity.Length(v)
	}
	if m := calledBore.FindStringSubmatch(text); m != nil {
		return inchesOf(m[1])
	}
	for _, m := range inchBore.FindAllStringSubmatchIndex(text, -1) {
		if !ofThread.MatchString(text[m[1]:]) {
			return inchesOf(text[m[2]:m[3]])
		}
	}
	return 0
}

// ownDash finds the dash size of a hose itself: one before JIC or ORFS is that of an end.
func ownDash(text string) []int {
	for _, m := range dashForm.FindAllStringSubmatchIndex(text, -1) {
		if !dashOfEnd.MatchString(text[m[3]:]) {
			return m
		}
	}
	return nil
}

var dashOfEnd = pattern.New(`(?i)^\s*(?:m?f?jic|orfs|orb|an\b|sae\b|o-?ring)`)

// withoutDash takes a hose's own size out of its words.
func withoutDash(text string) string {
	if m := ownDash(text); m != nil {
		return text[:m[0]] + " " + text[m[3]:]
	}
	return text
}

// calledBore is a bare inch figure that is called a diameter: diam. 3/8.
var calledBore = pattern.New(`(?i)(?:^|[^\pL])(?:diam\.?|diam[eè]tre|diametro|diámetro|diâmetro|bore|di|ø)\s*:?\s*([1357]/(?:2|4|8|16)|1[ -][13]/[24])(?:[^0-9/]|$)`)

// ofThread tells an inch figure that belongs to a thread.
var ofThread = pattern.New(`(?i)^[^\pL0-9]{0,3}(?:[mf]?npt|bsp|g\b|r\b|jic|male|female|ag\b|ig\b)`)

// inchesOf reads 3/8, 1/2 and 1 1/4.
func inchesOf(text string) quantity.Length {
	total := 0.0
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' }) {
		top, bottom, cut := strings.Cut(part, "/")
		n := decimal(top)
		if d := decimal(bottom); cut && d > 0 {
			n /= d
		}
		total += n
	}
	return quantity.Length(total) * quantity.Inch
}
