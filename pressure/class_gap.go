package pressure

import (
	"fmt"
	"slices"
	"strings"
)

// ClassGap says in words why [FittingRating] knows no figure for an end: "class 3000 is of
// a standard for NPT threads, and says nothing of Rc". The arguments are those of
// FittingRating. It is "" where there is no class, where a figure is known, and where the
// class has rows for the thread, the material and the size, yet not for the sex.
//
// Source: the rows of table/fittings.csv.
func ClassGap(class, material, family string, male bool, size string) string {
	if _, known := FittingRating(class, material, family, male, size); known || strings.TrimSpace(class) == "" {
		return ""
	}
	c, ok := readClass(class)
	if !ok {
		if word := strings.TrimSpace(class); wholeForm.MatchString(word) {
			return fmt.Sprintf("`%s` is no class that is known: write \"class %s\"", word, word)
		}
		return fmt.Sprintf("`%s` is no class that is known", class)
	}
	rows := slices.DeleteFunc(rowsOf(c), func(r *fittingRow) bool { return r.kind == "union" && !c.union })
	if len(rows) == 0 {
		return fmt.Sprintf("%s stands in no table that is known", class)
	}
	on := keep(rows, func(r *fittingRow) bool {
		return family == "" || len(r.families) == 0 || slices.Contains(r.families, family)
	})
	if len(on) == 0 {
		return fmt.Sprintf("%s is of a standard for %s threads, and says nothing of %s", class, each(rows, families), family)
	}
	q := fittingQuery{class: c, material: materialNamed(material)}
	if q.material == "" && strings.TrimSpace(material) != "" {
		return fmt.Sprintf("`%s` is no material that the tables of %s know", material, class)
	}
	of := keep(on, q.madeOf)
	if len(of) == 0 {
		return fmt.Sprintf("%s is known in %s, and not in %s", class, each(on, func(r *fittingRow) []string { return r.materials }), q.material)
	}
	if s, sized := readSize(size); sized {
		of = keep(of, func(r *fittingRow) bool {
			return r.from.unit == 0 || s.within(r.from, r.to) || s.within(r.also, r.also)
		})
	}
	if len(of) == 0 {
		return fmt.Sprintf("%s is not known for the size %s", class, size)
	}
	return ""
}

func rowsOf(c class) []*fittingRow {
	var out []*fittingRow
	all := fittingRows()
	for i := range all {
		if c.means(all[i].classes) {
			out = append(out, &all[i])
		}
	}
	return out
}

func keep(rows []*fittingRow, good func(*fittingRow) bool) []*fittingRow {
	var out []*fittingRow
	for _, r := range rows {
		if good(r) {
			out = append(out, r)
		}
	}
	return out
}

// families of a row; NPTF goes by the name of NPT.
func families(r *fittingRow) []string {
	return slices.DeleteFunc(slices.Clone(r.families), func(f string) bool { return f == "NPTF" && slices.Contains(r.families, "NPT") })
}

// each lists what the rows hold in a column, each once: "NPT, R and Rc".
func each(rows []*fittingRow, column func(*fittingRow) []string) string {
	var all []string
	for _, r := range rows {
		for _, v := range column(r) {
			if !slices.Contains(all, v) {
				all = append(all, v)
			}
		}
	}
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}
