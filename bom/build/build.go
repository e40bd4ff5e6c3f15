package build

import (
	"math"
	"slices"
	"strings"

	"github.com/bojanz/currency"

	"handtight/bom/money"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Build is what a build file and its includes say, read and checked for its
// form: every name it uses exists, every quantity has its unit.
type Build struct {
	Name     string
	Currency string
	File     string   // as the user named it
	Files    []string // all files that were read, File first
	Duty     Duty
	Power    *PowerSupply // nil: no [power] section
	Spares   SpareWish
	Rates    money.Rates
	RateAt   map[string]Mark // where each rate stands, by code
	Vendors  []*Vendor
	Items    []*Item // items and hoses, in the order of the files
	Runs     []*Run
	Offers   []*Offer
	Options  []Option
	Plugged  []PortRef
	LeftOpen []PortRef
	Origin   string // the country that its parts were bought or made in; "" if not said
	Noted    []*JointNote
	Ends     []*EndNote
	Audited  *Audited // nil: no audit was recorded

	ByID map[string]*Item // by id
}

// Item finds an item or a hose by id.
func (b *Build) Item(id string) (*Item, bool) {
	i, ok := b.ByID[id]
	return i, ok
}

// Duty is what the build must do, and where. A nil figure is not said.
type Duty struct {
	Pressure *quantity.Pressure
	Product  *quantity.Flow
	Salinity *quantity.Salinity
	Water    *quantity.Temperature
	Space    *quantity.Temperature
	Supply   *quantity.Voltage
	Place    Mark

	Salinities   *quantity.Range[quantity.Salinity]    // Salinity is its upper end
	Waters       *quantity.Range[quantity.Temperature] // Water is its upper end
	Litres       *quantity.Volume                      // wanted a day
	Age          *quantity.Duration                    // of the elements
	Lift         *quantity.Length                      // of the pump above the water; below zero under it
	PressureTold bool                                  // nobody said the pressure: it is what an energy-recovery pump can come to
}

// SpareWish says how sure the crew wants to be, and for how long.
type SpareWish struct {
	Away       quantity.Duration
	Hours      quantity.Duration
	Confidence float64 // 0 to 1
	Spoil      float64 // chance that a fitting is spoiled while fitting
	Assumed    []string
}

// Vendor is a shop.
type Vendor struct {
	ID, Name, Currency string
	Language           string // that orders are written in, ISO 639-1: "de"; "" for English
	Terms              money.Terms
	Place              Mark
}

// Item is a thing you buy, or that the boat has; a hose is one too.
type Item struct {
	ID                      string
	Kind                    *catalog.Kind
	About                   string
	Origin                  string // the country that it was bought or made in; "" if not said: the build's
	Title                   string
	Ports                   []Port
	Material                string
	Rated                   *quantity.Pressure
	Class                   string // class of a fitting, or of the end fittings of a hose, as written
	Pipe                    string // of a hose cut from stock: the class of the stock, as written
	Spec                    string // hose standard, as written
	Bore                    *quantity.Length
	BoreText                string           // as written: a fraction of an inch is asked for as such
	Outside                 *quantity.Length // of a tube
	Wall                    *quantity.Length // of a pipe nipple and the like, for an estimate; of rigid tube
	Length                  *quantity.Length // of a hose
	BendRadius              *quantity.Length // the least that a hose may be bent to, by its data sheet
	Bend                    threads.Degrees  // what a hose turns in all on its way; 0 if not said
	Of                      string           // hose stock it is cut from
	bare                    *bare            // of a hose cut from stock: what it says itself; see [Item.CutFrom]
	Vacuum                  *quantity.Pressure
	Inside                  string             // the item whose contents this is
	Each                    int                // contents in one unit
	Life                    *quantity.Duration // planned change
	Fails                   *quantity.Duration // mean random life
	LifeByDate, FailsByDate bool               // the life is of the calendar, not of running hours
	Have                    money.Quantity
	Extra                   money.Quantity
	Set                     *quantity.Pressure // relief valve
	FullFlow                *quantity.Pressure
	Flow                    *quantity.Flow
	Shutoff                 *quantity.Pressure // feed pump
	Stall                   *quantity.Pressure // plunger pump
	Type                    string
	Motor                   string // of a pump: what drives it, as written
	Normal                  string // of a valve: "open", "shut", or "flush" where it is opened for the flush only
	Between                 string
	Holds                   string             // of a house supply: "product" where nothing but the plant's own water is in it
	Pressure                *quantity.Pressure // house supply
	Scale                   *quantity.Pressure // full scale of a gauge
	Micron                  *quantity.Length
	Process                 Process
	Free                    []FreePassage     // of kind passage
	Unread                  []string          // words of the title that were not understood
	NotUsed                 []threads.NotUsed // what the title states and no key takes
	Worded                  []Worded          // strengths that `about` or the words of an end state and no key says
	Carried                 []Carried         // keys that are read, and that nothing uses
	Place                   Mark
	Made                    []*catalog.Material // what its material names: see Materials
}

// Worded is one strength that the description of an item, or the words of one of its ends, states and no key of it says: a pressure, a
// class, or the standard of a hose. It rates nothing, and is held against what does.
type Worded struct {
	Text  string // the description or the words of an end that it stands in
	Words string
	Rated *quantity.Pressure
	Class string
	Spec  string
}

// Carried is a key of an item that is read and shown, and that nothing here weighs.
type Carried struct {
	Key, Value, Why string
	Note            bool // one may take it for weighed: a finding names it
	Place           Mark
}

// Materials lists the materials that the item's own text names, as [catalog.MaterialsIn]
// does. The list is shared and must not be changed.
func (i *Item) Materials() []*catalog.Material { return i.Made }

// MostPressure is the least that its sheet gives as the most it bears: `rated`, or of an element
// `max_pressure`; nil if neither is said.
func (i *Item) MostPressure() *quantity.Pressure {
	if p := i.Process.MaxPressure; p != nil && (i.Rated == nil || *p < *i.Rated) {
		return p
	}
	return i.Rated
}

// IsHose reports whether the item is a [[hose]].
func (i *Item) IsHose() bool { return i.Kind != nil && i.Kind.Is(catalog.Hose) }

// Port is where a unit of an item joins another.
type Port struct {
	Name string
	End  threads.EndReading
	Said bool // an end is given
	Text string
	Mark Mark

	Origin string // the country that the words of the end name, else the item's or the build's
	Unsure bool   // the words say that it is not known: "some 3/4 thread"
}

// PortIndex finds a port of the item by name; -1 if it has none.
func (i *Item) PortIndex(name string) int {
	for n := range i.Ports {
		if i.Ports[n].Name == name {
			return n
		}
	}
	return -1
}

// FreePassage is one passage of a kind that the build itself describes.
type FreePassage struct {
	From, To int
	Is       catalog.Flow
}

// Run is units in flow order.
type Run struct {
	Name  string
	Below bool // below the waterline
	Steps []Step
	Place Mark
}

// Step is one element of a run's path: an item with a label, entered and left by
// ports ("" if not said).
type Step struct {
	Text        string
	Item        *Item
	Label       string // "" for the bare unit, "+" for a new unit
	Entry, Exit string
	Place       Mark
}

// PortRef names a port of a unit: "vessel.spare".
type PortRef struct {
	Unit, Port string
	Place      Mark
}

// Offer is a shop's price for an item.
type Offer struct {
	Item   string
	Vendor *Vendor
	Code   string
	URL    string           // the shop's page of it, http or https; "" if not said
	Price  *currency.Amount // nil: not known, which is not free
	Per    string           // "m" for hose stock, else a piece
	Unit   string           // how the shop sells it: "roll", "bag"; "" for a piece
	Pack   money.Quantity
	// Lengths are the fixed lengths of hose stock that the shop sells, in mm; nil for
	// what is cut off the reel. Pack is then what every sum of them is a multiple of.
	Lengths []int
	Lead    *quantity.Duration
	Place   Mark
}

// Option names an alternative that the tool may choose between.
type Option struct {
	For, Item string
	Family    string // standard of its pipe threads, "NPT" or "BSP"; "" is read from its ends
	PerUnit   bool   // each unit of the item may be chosen by itself
	Place     Mark
}

// Mark is a place in a build file that is worked out only when asked for.
type Mark struct {
	table *source.Table
	key   string // "" for the table as a whole
	index int    // of an element of the key's list, or -1
}

// Key works out the place of a key of the table that the mark stands in.
func (m Mark) Key(key string) source.Place { return m.table.Place(key) }

// Place works out the file, line and column of the mark.
func (m Mark) Place() source.Place {
	switch {
	case m.table == nil:
		return source.Place{}
	case m.key == "":
		return m.table.Here()
	case m.index < 0:
		return m.table.Place(m.key)
	}
	return m.table.Place(m.key, m.index)
}

// Words gives a port's end as it was read, or as it was written where several
// readings are left; "an end not said" without either.
func (p *Port) Words() string {
	switch {
	case len(p.End.Candidates) == 1:
		return p.End.Candidates[0].String()
	case p.Text != "":
		return p.Text
	}
	return "an end not said"
}

// Metres is the length of a hose, in thousandths of a metre.
func (i *Item) Metres() money.Quantity { return money.Quantity(math.Round(i.Length.Millimetres())) }

// Question gathers what the shop must be asked about the item's ends.
func (i *Item) Question() string {
	var out []string
	for _, p := range i.Ports {
		if q := p.End.Question; q != "" {
			out = append(out, p.Name+": "+q)
		}
	}
	return strings.Join(out, " ")
}

// Ends gives the item's ends in full: "in: 1/2-14 NPT female; out: 3/8-18 NPT female".
func (i *Item) Ends() string {
	var out []string
	for k := range i.Ports {
		if p := &i.Ports[k]; p.Said {
			out = append(out, p.Name+": "+p.Words())
		}
	}
	return strings.Join(out, "; ")
}

// Has reports whether an end of the item may be of some sort.
func (i *Item) Has(sort func(threads.Family) bool) bool {
	for p := range i.Ports {
		for k := range i.Ports[p].End.Candidates {
			if sort(i.Ports[p].End.Candidates[k].Family) {
				return true
			}
		}
	}
	return false
}

// Exempt reports whether a port's pressure is not the item's business: the boat's
// own parts, and ports that its data sheet's rating does not speak for.
func (i *Item) Exempt(port int) bool {
	return i.Kind.Boats || !slices.Contains(i.Kind.Rates, port)
}

// MarkOf remembers where a table, a value or an element of a list stands.
func MarkOf(t *source.Table, key string, index ...int) Mark {
	m := Mark{table: t, key: key, index: -1}
	if len(index) > 0 {
		m.index = index[0]
	}
	return m
}

// OffersByItem lists the offers of each item, in the order of the files.
func (b *Build) OffersByItem() map[string][]*Offer {
	out := map[string][]*Offer{}
	for _, o := range b.Offers {
		out[o.Item] = append(out[o.Item], o)
	}
	return out
}
