package title

import (
	"handtight/pressure/quantity"
	"strings"
)

// heat keeps the highest temperature. One that a word or a sign for at ties to a pressure is kept with it: see [line.heatOfRating].
func (l *line) heat(f *figure, t quantity.Temperature) {
	if of := l.heatOfPressure(f); of != nil {
		l.tied = append(l.tied, tiedHeat{f, of, t})
		return
	}
	if !l.hasTemperature || t > l.temperature {
		l.temperature, l.hasTemperature = t, true
	}
}

// tiedHeat is a temperature at which a line says that a pressure holds.
type tiedHeat struct {
	degrees, pressure *figure
	at                quantity.Temperature
}

// heatOfRating gives the rating the temperature at which it holds, where the line says so: 100 bar @ 20 C, max temp 100 C. The pressure is not said of
// the others.
func (l *line) heatOfRating() {
	if len(l.tied) == 0 {
		return
	}
	of := l.tied[0]
	for _, t := range l.tied[1:] {
		if own := t.pressure == l.ratedBy; own && of.pressure != l.ratedBy || t.at < of.at && own == (of.pressure == l.ratedBy) {
			of = t
		}
	}
	l.temperature, l.hasTemperature = of.at, true
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f != of.degrees && (f.role == asCelsius || f.role == asFahrenheit) {
			f.role = asNothing
		}
	}
}

// heatOfPressure is the pressure right before degrees that a word or a sign for at ties to it; nil if there is none.
func (l *line) heatOfPressure(f *figure) *figure {
	k := indexToken(l.tokens, func(it *token) bool { return it.figure == f })
	if k < 1 {
		return nil
	}
	j, tied := k-1, strings.HasSuffix(strings.TrimRight(l.as[:l.at[l.tokens[k].from]], " "), "@")
	if word := &l.tokens[j]; word.figure == nil && atDegreesList.has(l.norm[word.from:word.to]) {
		j, tied = j-1, true
	}
	for j > 0 && l.tokens[j].figure == nil && l.tokens[j].word != nil && onlyUnit(l.tokens[j].word) {
		j--
	}
	if o := at(l.tokens, j).figure; tied && o != nil && (l.isPressure(j) || o.role == asRating || l.behindNominal(j)) {
		return o
	}
	return nil
}
