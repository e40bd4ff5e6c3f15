package pressure

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"handtight/pressure/quantity"
)

type fittingRow struct {
	kind, title, sex, source, note string
	classes, materials, families   []string
	from, to, also                 size
	max                            printed
	toCelsius                      float64
	hasTo                          bool
	basis                          Basis
	status                         Status
}

var fittingRows = sync.OnceValue(func() []fittingRow {
	var out []fittingRow
	for _, r := range eachRow("fittings") {
		f := fittingRow{
			kind: r["kind"], title: r["title"], sex: r["sex"], source: r["source"], note: r["note"],
			classes: r.list("class"), materials: r.list("material"), families: r.list("family"),
			max: r.printed("max_bar", "max_psi"), basis: FittingClass, status: statusNamed(r["status"]),
		}
		switch r["basis"] {
		case "estimate":
			f.basis = Estimate
		case "claim":
			f.basis = Claim
		}
		f.from, _ = readSize(r["size_from"])
		f.to, _ = readSize(r["size_to"])
		f.also, _ = readSize(r["also_size"])
		f.toCelsius, f.hasTo = r.number("to_c")
		out = append(out, f)
	}
	return out
})

// FittingRating returns the rating of a fitting's end by its class.
//
// class is as people write it: "class 150", "3000 lb", "150#", "PN 16", "sch 80",
// "machined" for a machined instrument fitting; "" for the families whose standard
// rates by size alone (JIC, ORFS, ORB, ISO6149, 24L, 24S, SAE45, PUSH). material
// is in words, family one of the project's names ("NPT", "G", "JIC"; SOCKET for
// a cemented plain end), size as the standard writes it ("1/2", "-6", "12 mm").
// An empty material, family or size is unknown, and the lowest of all rules.
//
// The lowest row that fits rules. "150 lb" in stainless may be a light pattern, known
// only for 150 psi, so that it is rated lower than "class 150"; a fitting of ISO 4144 is
// a light pattern by any name. PN n is n bar at 20 C. What is worked out by the wall
// (class 2000, schedule 80 of 316) is an [Estimate], and of class 2000 no more than
// class 3000 has. Forged and machined fittings of duplex, super duplex, 904L and titanium
// go by their class in 316L and their own allowable stress. The steel figures of the family standards are carried to stainless (one
// table rates 316 and carbon steel alike) and halved for brass, as an [Estimate]. What
// makers claim of their sort of fitting is a [Claim]; see [FittingStandard].
// ok is false without a class, for an unknown one, and where no row fits.
//
// Source: the Source of the rating, from table/fittings.csv.
func FittingRating(class, material, family string, male bool, sizeText string) (Rating, bool) {
	return fittingRating(class, material, family, male, sizeText, true)
}

// FittingStandard is [FittingRating] without what makers claim of their sort of fitting:
// a claim tells nothing of a part that has a data sheet of its own.
//
// Source: as for [FittingRating].
func FittingStandard(class, material, family string, male bool, sizeText string) (Rating, bool) {
	return fittingRating(class, material, family, male, sizeText, false)
}

func fittingRating(class, material, family string, male bool, sizeText string, claims bool) (Rating, bool) {
	c, ok := readClass(class)
	if !ok {
		return Rating{}, false
	}
	want := fittingQuery{class: c, family: family, sex: "female", material: materialNamed(material), claims: claims}
	if male {
		want.sex = "male"
	}
	if want.size, want.sized = readSize(sizeText); !want.sized && strings.TrimSpace(sizeText) != "" && c.pn == 0 {
		return Rating{}, false
	}
	if want.material == "" && strings.TrimSpace(material) != "" {
		want.material = "another" // named, but in no table: only rows for any material
	}
	var pn Rating
	if c.pn > 0 {
		pn = pnRating(c.pn)
	}
	if len(c.names) == 0 && (c.pn > 0 || want.family == "") {
		return pn, c.pn > 0
	}
	r, found := want.byClass()
	if !found {
		return pn, c.pn > 0
	}
	return Lower(r, pn)
}

// byClass looks the class up, and what another metal has of a stainless or a steel figure.
func (q fittingQuery) byClass() (Rating, bool) {
	if r, found := q.lowest(); found {
		return q.noHeavier(r), true
	}
	if r, found := q.byStress(); found {
		return r, true
	}
	return q.fromSteel()
}

// stressed are the metals that forged and machined fittings are made of beside 316L, and
// whose own allowable stress is known.
var stressed = []string{"super duplex", "duplex", "904L", "titanium"}

// byStress rates a forged or a machined fitting of another metal by what its class has of
// 316L and by its own allowable stress: less where it may bear less, and never more, since
// the class is a name for the wall and for no more than its figure.
//
// Source: ASME B16.11: the rating is that of pipe of the class's schedule in the fitting's
// own material; ASME B31.3 304.1.2, where the pressure goes with the stress.
func (q fittingQuery) byStress() (Rating, bool) {
	own, known := AllowableStress(q.material)
	if !known || !slices.Contains(stressed, q.material) || !slices.ContainsFunc(q.class.names, func(n string) bool { return n != "" }) {
		return Rating{}, false
	}
	like := q
	like.material = "316L"
	base, _ := AllowableStress(like.material)
	if like.class.names = slices.DeleteFunc(slices.Clone(q.class.names), func(n string) bool { return !walled[n] }); len(like.class.names) == 0 {
		return Rating{}, false
	}
	r, found := like.lowest()
	if !found {
		return Rating{}, false
	}
	r = like.noHeavier(r)
	share := min(1, float64(own.Value/base.Value))
	r.Pressure *= quantity.Pressure(share)
	r.Text = fmt.Sprintf("%s; %s bears %.0f MPa and 316L %.0f, so that it holds %g of it", r.Text, q.material, own.Value.MPa(), base.Value.MPa(), share)
	r.Status = max(r.Status, own.Status)
	return r, true
}

// walled are the classes whose figure comes of a wall, and so goes with the metal's stress.
var walled = map[string]bool{"class 2000": true, "class 3000": true, "class 6000": true, "schedule 80": true, "machined": true}

// lighter are the classes of which the next heavier one is rated too: a wall that was
// worked out may come to more than the class above it is sold for.
var lighter = map[string]string{"class 2000": "class 3000"}

// noHeavier keeps an estimate of a class at or below what the next heavier class has.
func (q fittingQuery) noHeavier(r Rating) Rating {
	for _, name := range q.class.names {
		next := q
		next.class.names = []string{lighter[name]}
		heavier, ok := next.lowest()
		if lighter[name] == "" || !ok || heavier.Pressure >= r.Pressure {
			continue
		}
		r.Text = fmt.Sprintf("%s; no more than %s: %s", r.Text, lighter[name], heavier.Text)
		r.Pressure, r.Status = heavier.Pressure, max(r.Status, heavier.Status)
	}
	return r
}

type fittingQuery struct {
	class                 class
	material, family, sex string
	size                  size
	sized                 bool
	claims                bool // also what makers claim of a sort of fitting
}

func (q fittingQuery) lowest() (Rating, bool) {
	var best *fittingRow
	rows := fittingRows()
	for i := range rows {
		r := &rows[i]
		if !q.fits(r) {
			continue
		}
		if best == nil || r.max.inPSI() < best.max.inPSI() ||
			r.max.inPSI() == best.max.inPSI() && r.status < best.status {
			best = r
		}
	}
	if best == nil {
		return Rating{}, false
	}
	return best.rating(), true
}

func (q fittingQuery) fits(r *fittingRow) bool {
	if !q.class.means(r.classes) || r.kind == "union" && !q.class.union || r.basis == Claim && !q.claims {
		return false
	}
	if q.family != "" && len(r.families) > 0 && !slices.Contains(r.families, q.family) {
		return false
	}
	if r.sex != "" && r.sex != q.sex {
		return false
	}
	if q.sized && r.from.unit != 0 && !q.size.within(r.from, r.to) && !q.size.within(r.also, r.also) {
		return false
	}
	return q.madeOf(r)
}

// madeOf holds a row for any material good for all; an unknown material is good
// for every row of a class, but for no family standard, which is for steel.
func (q fittingQuery) madeOf(r *fittingRow) bool {
	if slices.Contains(r.materials, "any") {
		return true
	}
	if q.material == "" {
		return len(r.classes) > 0
	}
	return slices.ContainsFunc(stands(q.material), func(m string) bool { return slices.Contains(r.materials, m) })
}

// carried is what of a steel figure another metal is good for: 316 pipe ends are
// rated as carbon steel at every size, brass ones at about half of it (page "NPT
// pipe end pressure ratings", table 6); 316L and titanium by their allowable stress of 115
// over 138 MPa, and what may bear more than steel by no more than steel (table/stress.csv).
var carried = map[string]float64{
	"316": 1, "304": 1, "316L": 0.83, "stainless": 0.83, "brass": 0.5,
	"super duplex": 1, "duplex": 1, "904L": 1, "titanium": 0.83,
}

func (q fittingQuery) fromSteel() (Rating, bool) {
	share, ok := carried[q.material]
	if !ok || len(q.class.names) > 0 && !slices.Contains(q.class.names, "") {
		return Rating{}, false
	}
	steel := q
	steel.material = "steel"
	r, ok := steel.lowest()
	if !ok {
		return Rating{}, false
	}
	r.Text = fmt.Sprintf("%s, carried to %s at %g of it", r.Text, q.material, share)
	r.Pressure *= quantity.Pressure(share)
	r.Basis = Estimate
	if r.Status != Memory {
		r.Status = Judgement
	}
	return r, true
}

func (r *fittingRow) rating() Rating {
	text := r.title + ": " + r.max.figure(true)
	if r.hasTo {
		text += fmt.Sprintf(" at up to %g C", r.toCelsius)
	}
	if r.note != "" {
		text += "; " + r.note
	}
	if r.status == Memory {
		text += " (from memory)"
	}
	return Rating{Pressure: r.max.inPSI(), Basis: r.basis, Text: text, Source: sourceText(r.source), Status: r.status}
}

// CastClassTrap explains in one sentence that a class is not a pressure, against
// the pressure that a fitting must hold. What to buy instead is not said here: that hangs
// on the highest pressure that the fitting sees.
//
// Source: MSS SP-114 class 150, 300 psi to 65.6 C, as on the page "Heavy pattern vs light pattern".
func CastClassTrap(duty quantity.Pressure) string {
	r, _ := FittingRating("SP-114 class 150", "316", "NPT", true, "1/2")
	if duty <= r.Pressure {
		return fmt.Sprintf("Class 150 is a name and not a pressure: a cast 316 fitting of class 150 is rated %s in cold water, which holds %s, but a light pattern sold as 150 lb is known for 10.3 bar of steam only.", r.Pressure, duty)
	}
	return fmt.Sprintf("Class 150 is a name and not a pressure: the best cast 316 fitting of class 150 is rated %s in cold water, far less than the duty.", r.Pressure)
}
