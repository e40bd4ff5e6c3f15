package title

// endStep is one step from what the phrases say to the ends of the part. The steps
// run in their order. The example is a line that reads otherwise without the step.
type endStep struct {
	name, example string
	apply         func(l *line, ends, rest []*phrase) []*phrase
}

// in makes a step of a function that only changes the ends it is given.
func in(change func(l *line, ends, rest []*phrase)) func(*line, []*phrase, []*phrase) []*phrase {
	return func(l *line, ends, rest []*phrase) []*phrase {
		change(l, ends, rest)
		return ends
	}
}

var endSteps = []endStep{
	{"the name of a garden hose adaptor is its hose end's", "3/4 MHT x 1/2 MIP brass garden hose adapter", in(func(_ *line, ends, _ []*phrase) { gardenName(ends) })},
	{"a hose's own bore is no end", "Rura 16x2", func(l *line, ends, rest []*phrase) []*phrase { return l.dropHoseBore(ends, rest) }},
	{"the thread of a cone that is said again is no further end", "Schottverschraubung 24° 10S, beidseitig M18x1,5 AG, PN 630", func(l *line, ends, _ []*phrase) []*phrase { return l.coneAgain(ends) }},
	{"a size that comes several times is several ends", `Y-Verteiler 3/4" IG x 2 x 3/4" AG mit Absperrhähnen`, func(l *line, ends, _ []*phrase) []*phrase { return l.repeated(ends) }},
	{"of a tee two sexes of one size are its run", "Tee 3/8 NPT male/female, branch 1/4 NPT female", func(l *line, ends, _ []*phrase) []*phrase { return l.runSexes(ends) }},
	{"words without a size hold for the ends that lack them", "Cap 3/8 BSPP c/w washer", in(func(l *line, ends, rest []*phrase) { l.overlay(ends, rest) })},
	{"a union nut beside a male is an end", "Pumpenanschluss 5/4 Zoll AG flachdichtend, Ü-Mutter", func(l *line, ends, rest []*phrase) []*phrase { return l.looseNut(ends, rest) }},
	{"words that landed on the wrong end move", "Espigão 3/4 x 20 mm", in(func(l *line, ends, _ []*phrase) { l.relocate(ends) })},
	{"the nut of a nut and tail is the thread's", `19mm nut and tail x 3/4" BSP`, in(func(l *line, ends, _ []*phrase) { l.nutOfTail(ends) })},
	{"a grip with a thread said behind it has both", "Цанга 1/2 (прямая, внешняя резьба)", func(l *line, ends, rest []*phrase) []*phrase { return l.gripAndThread(ends, rest) }},
	{"an adaptor of glued pipe has a thread and a socket", `Adaptador Macho 1/2" CPVC`, in(func(l *line, ends, _ []*phrase) { l.loneSocket(ends) })},
	{"a swivel by the part's name is the female's", "Swivel adaptor 3/8 BSPP M x 3/8 BSPP F", in(func(l *line, ends, _ []*phrase) { l.swivelOfPart(ends) })},
	{"the ring of a stud is on its male side", "Reducing coupling 1/4 M x 1/8 F BSPP ED", in(func(_ *line, ends, _ []*phrase) { studRing(ends) })},
	{"an end is what its own words make it", "片ニップル R1/2 溶接", in(func(l *line, ends, _ []*phrase) { l.ownWords(ends) })},
	{"a nominal size of copper pipe is its outside less an eighth", "Straight stop 1/2 nom comp x 3/8 OD comp", func(l *line, ends, _ []*phrase) []*phrase { return l.nominalSizes(ends) }},
	{"a size that is mentioned again is no further end", `4pcs 3/8" Male x 3/8" Male hex nipple, 3/8 inch NPT male (3/8", 4pcs)`, func(l *line, ends, _ []*phrase) []*phrase { return l.dropMentions(ends) }},
	{"a length is no end", `Niple galvanizado 1/2 x 3"`, func(l *line, ends, _ []*phrase) []*phrase { return l.dropLengths(ends) }},
	{"a nut has one thread", "9/16-18 JIC tube nut with sleeve, 3/8 tube", func(l *line, ends, _ []*phrase) []*phrase { return l.oneNut(ends) }},
	{"a bare size takes what its neighbour says", "Hex nipple 3/4 x 1/2 NPT", in(func(l *line, ends, _ []*phrase) { l.inherit(ends) })},
	{"a part with a thread and a tail has both", "Terminal JIC hembra 1/2 pulgada", func(l *line, ends, _ []*phrase) []*phrase { return l.withTail(ends) }},
	{"a size in millimetres is what the line calls tubes", "sok 22", in(func(l *line, ends, rest []*phrase) { l.nameTubes(ends, rest) })},
	{"a cam coupling has another end by its type", `Camlock type F 2"`, func(l *line, ends, _ []*phrase) []*phrase { return l.camOther(ends) }},
	{"a part has as many ends as its kind", "Tee 1/4 NPT female", func(l *line, ends, _ []*phrase) []*phrase { return l.multiply(ends) }},
	{"a glued part with brass in it has a thread", "CPVC tee brass 1/2", in(func(l *line, ends, _ []*phrase) { l.brassInsert(ends) })},
	{"a sex before the name of a branch tee is its branch's", "Male branch tee, 1/4 tube x 1/4 tube x 1/8 NPT", in(func(l *line, ends, _ []*phrase) { l.sexOfTee(ends) })},
	{"a sex that is not said is that of the nut or the kind", "Entrerosca 1", in(func(l *line, ends, _ []*phrase) { l.assignSexes(ends) })},
	{"the flat seal of a union is on its female side", `Raccord 2 pièces droit femelle 3/4" mâle 3/4" joint plat`, in(func(l *line, ends, _ []*phrase) { l.unionSeal(ends) })},
	{"a washer lies under no taper thread", "Adaptor 1/4 BSP male with bonded seal x 1/4 NPT female", in(func(l *line, ends, _ []*phrase) { l.washerOfTaper(ends) })},
	{"the washer of a part that goes through a wall lies on the wall", `Tank outlet 1" BSP male with washer`, in(func(l *line, ends, _ []*phrase) { l.wallWasher(ends) })},
	{"a family that is no end's contradicts them", "Elbow 1/2 NPT F x F 316, EN 10226", in(func(l *line, ends, _ []*phrase) { l.contradict(ends) })},
}

// pairRewrite moves words between two ends of a part. It runs for every two ends in
// both orders; the example is a line that reads otherwise without it.
type pairRewrite struct {
	name, example string
	when          func(e, o *phrase) bool
	then          func(e, o *phrase)
}

// pairPasses are the rewrites of pairs: each pass goes over all pairs once. None is about two ends that are only threads, as
// [phrase.moreThanThread] tells them.
var pairPasses = [][]pairRewrite{
	{
		{
			"a sex is the thread's and not the tube's", "Dış dişli dirsek 20x1/2",
			func(e, o *phrase) bool {
				return (e.millimetres() || (takesTube(e.end) || e.end == "TUBE") && o.fam != nil) && threadLike(o) && len(e.sexes) > 0 && len(o.sexes) == 0 && (o.end == "" || o.fam != nil)
			},
			func(e, o *phrase) { o.sexes, e.sexes = e.sexes, nil },
		},
	},
	{
		{
			"of a hose's bore and a unified thread the name of the flare is the thread's", `Manguera 1/2 JIC H 3/4-16`,
			func(e, o *phrase) bool {
				return e.hose && e.fig != nil && e.fig.kind == inchSize && dashWord(e.fam) && o.fig != nil && o.fig.kind == unSize && o.fam == nil && o.end == ""
			},
			func(e, o *phrase) {
				o.fam, e.fam = e.fam, nil
				if len(o.sexes) == 0 {
					o.sexes, e.sexes = e.sexes, nil
				}
				o.attr, e.attr, e.end, e.thread = o.attr|e.attr&(isSwivel|isNut), e.attr&^(isSwivel|isNut), "BORE", false
			},
		},
		{
			"the seat said behind a tail or a tube is that of the nut", `Tuerca loca 3/4 x espiga 19 junta plana`,
			func(e, o *phrase) bool {
				return (e.end == "BARB" || e.end == "TUBE" || e.end == "SOLDER") && e.attr&(isWasher|isFlat|isCone60) != 0 && e.attr&isNut == 0 && o.attr&isNut != 0 && o.attr&(isWasher|isFlat|isCone60) == 0
			},
			func(e, o *phrase) {
				o.attr |= e.attr & (isWasher | isFlat | isCone60)
				e.attr &^= isWasher | isFlat | isCone60
			},
		},
		{
			"a 60 degree cone is the BSP end's and not the flare's", `Adaptor 3/8 BSPP male x 9/16 JIC male 60 degree cone`,
			func(e, o *phrase) bool {
				return dashWord(e.fam) && e.attr&isCone60 != 0 && o.fam != nil && bspWord(o.fam) && o.fig != nil && o.end == ""
			},
			func(e, o *phrase) { e.attr, o.attr = e.attr&^isCone60, o.attr|isCone60 },
		},
		{
			"a thread that is named before a tube's size and again at the other end is the other's", `Tube end to female NPT adapter 1/2" tube x 3/8" FNPT`,
			func(e, o *phrase) bool {
				return e.end == "TUBE" && e.tubed && e.fam != nil && o.fam != nil && o.fam.value == e.fam.value && o.end == "" && e.fig != nil && e.fig.kind == inchSize
			},
			func(e, _ *phrase) { e.fam, e.fam2, e.sexes, e.thread = nil, nil, nil, false },
		},
		{
			"a sex before a tail's size is that of the thread named", "Espiga macho 3/4 x 1/2 NPT",
			func(e, o *phrase) bool {
				return e.end == "BARB" && e.endFirst && e.fam == nil && len(e.sexes) == 1 && o.fam != nil && o.end == "" && len(o.sexes) == 0 && o.fig != nil && o.attr&(isNut|isSwivel) == 0
			},
			func(e, o *phrase) { o.sexes, e.sexes, e.thread = e.sexes, nil, false },
		},
		{
			"a nut is the thread's and not the pressed or soldered pipe's", `Raccord écrou prisonnier à sertir 26x1"`,
			func(e, o *phrase) bool {
				return e.millimetres() && e.attr&isNut != 0 && notJudged[e.end] != "" && o.fig != nil && !o.millimetres() && o.bare() && o.attr&isNut == 0
			},
			func(e, o *phrase) {
				o.attr, e.attr, o.thread, e.thread = o.attr|e.attr, 0, true, false
			},
		},
		{
			"a sex is the thread's where a pressed or soldered pipe has its own millimetres", `Raccord cuivre à sertir femelle 1/2" Ø14`,
			func(e, o *phrase) bool {
				return e.fig != nil && e.fig.kind == inchSize && notJudged[e.end] != "" && e.end != "QC" && len(e.sexes) > 0 && e.fam == nil && o.millimetres() && !o.described() && (o.end == "" || o.round || o.pex || o.end == "LAYER" || o.end == e.end)
			},
			func(e, o *phrase) { o.end, e.end, e.thread = e.end, "", true },
		},
		{
			"a sex beside the millimetres is the inches' thread, and PEX the millimetres' pipe", `Łącznik prosty GZ 16x1/2" PEX`,
			func(e, o *phrase) bool {
				return e.millimetres() && len(e.sexes) > 0 && e.fam == nil && o.pex && o.end == "TUBE" && o.fig != nil && !o.millimetres() && !o.described()
			},
			func(e, o *phrase) {
				o.sexes, e.sexes, o.end, e.end, o.thread, e.pex = e.sexes, nil, "", "TUBE", true, true
			},
		},
		{
			"a sex and a socket that changed places change back", `Enlace recto macho latón 15 mm x 1/2" compresión`,
			func(e, o *phrase) bool {
				return e.millimetres() && len(e.sexes) > 0 && e.end == "" && o.fig != nil && !o.millimetres() && takesTube(o.end) && !o.described()
			},
			func(e, o *phrase) { o.sexes, e.sexes, o.end, e.end = e.sexes, nil, "", o.end },
		},
		{
			"of a tail said first the millimetres are the tail", "Espigão 3/4 x 20 mm",
			func(e, o *phrase) bool {
				return e.fig != nil && !e.millimetres() && e.end == "BARB" && e.endFirst && !e.described() && o.millimetres() && (o.bare() || o.hose && o.end == "BARB") && !o.comma
			},
			func(e, o *phrase) { o.end, e.end, e.thread = e.end, "", true },
		},
		{
			"the thread of an adaptor of glued pipe is the second size's", `UPVC FTA 1" x 3/4"`,
			func(e, o *phrase) bool {
				return e.end == "SOCKET" && e.endFirst && (e.thread || e.part != nil && e.part.traits&adaptor != 0) && e.fam == nil && len(e.sexes) == 1 && e.fig != nil && e.fig.kind == inchSize && o.bare() && o.fig != nil && o.fig.kind == inchSize
			},
			func(e, o *phrase) { o.sexes, o.thread, e.sexes, e.thread = e.sexes, true, nil, false },
		},
		{
			"a grip beside a barb is the other end's", `15mm x 1/2" hose barb connector pushfit`,
			func(e, o *phrase) bool {
				return e.barbed && e.also != "" && o.fig != nil && o.end == "" && !o.described()
			},
			func(e, o *phrase) { o.end, e.also = e.also, "" },
		},
		{
			"two sexes in one word are those of a hose's two sizes", `Hose FxM 3/8x1/2 60 cm`,
			func(e, o *phrase) bool {
				return e.hose && len(e.sexes) == 2 && e.fig != nil && e.fig.kind == inchSize && o.bare() && o.fig != nil && o.fig.kind == inchSize
			},
			func(e, o *phrase) { e.end, e.hose, e.thread, o.thread = "", false, true, true },
		},
		{
			"of a tap connector the inches are the tap's thread", `22mm x 3/4 tap connector comp`,
			func(e, o *phrase) bool {
				return (e.names(tapThread) || o.names(tapThread)) && e.fig != nil && e.fig.kind == inchSize && takesTube(e.end) && !e.described() && o.millimetres() && !o.described()
			},
			func(e, o *phrase) {
				if o.end == "" {
					o.end = e.end
				}
				e.end, e.thread = "", true
			},
		},
		{
			"of two fused sizes the inches with a sex said before are the thread", `tubo macho 25x3/4 fusion`,
			func(e, o *phrase) bool {
				return e.millimetres() && len(e.sexes) > 0 && (e.end == "SOCKET" || e.end == "" || e.end == "TUBE") && o.fig != nil && !o.millimetres() && o.end == "SOCKET" && !o.described()
			},
			func(e, o *phrase) { o.sexes, e.sexes, e.end, o.end, o.thread = e.sexes, nil, "SOCKET", "", true },
		},
		{
			"a grip said before inches and millimetres is the millimetres'", `Cotovelo compressão 3/8" 12 mm`,
			func(e, o *phrase) bool {
				return e.fig != nil && e.fig.kind == inchSize && (e.end == "PUSH" || e.end == "COMPRESSION") && e.endFirst && !e.described() && !e.tubed && o.millimetres() && !o.described() && (o.end == "" || o.end == "TUBE" || o.end == e.end)
			},
			func(e, o *phrase) { o.end, e.end = e.end, "" },
		},
		{
			"a pair of bore and outside is a thread, and the grip the pipe's", `Raccord PER à comp. F 15/21 - Ø16`,
			func(e, o *phrase) bool {
				return e.fig != nil && e.fig.kind == frenchSize && takesTube(e.end) && o.millimetres() && !o.described() && (o.end == "" || o.end == "TUBE")
			},
			func(e, o *phrase) { o.end, e.end, e.thread = e.end, "", true },
		},
		{
			"a word of the grip is the tube's and not the thread's", `Portagomma inox 3/8" M diam. 10 mm`,
			func(e, o *phrase) bool {
				return threadLike(e) && (o.end == "TUBE" || o.hose && o.end == "BARB" && !o.described()) &&
					(e.fam != nil && (e.end == "COMPRESSION" || e.end == "PUSH") || e.end == "BARB" && e.endFirst && e.described())
			},
			func(e, o *phrase) { o.end, e.end = e.end, "" },
		},
		{
			"the grip is the pipe's where the inches have a sex of a thread", `22mm PEX → ½" UK puserrusliitin`,
			func(e, o *phrase) bool {
				return e.fig != nil && !e.millimetres() && e.end == "COMPRESSION" && e.threaded && o.millimetres() && o.end == "TUBE" && !o.described()
			},
			func(e, o *phrase) { o.end, e.end = e.end, "" },
		},
		{
			"the pipe is the millimetres beside a thread", `Klemmfitting 32 mm x 1" AG PE-Rohr`,
			func(e, o *phrase) bool {
				return e.fig != nil && !e.millimetres() && e.end == "TUBE" && len(e.sexes) > 0 && o.millimetres() && (o.end == "" || takesTube(o.end))
			},
			func(e, _ *phrase) { e.end = "" },
		},
		{
			"of a tail with its nut the metric size is the nut's", `Somunlu hortum rakoru 1/2 M24x1,5`,
			func(e, o *phrase) bool {
				return e.nutOfTail() && e.fam == nil && o.sizeAlone() && (o.fig.kind == metricSize || o.fig.kind == coneSize)
			},
			func(e, o *phrase) { e.giveNut(o) },
		},
		{
			"of a tail with its nut the larger size is the thread of a flare or a flat face", `ORFS somunlu hortum rakoru 1/2 13/16`,
			func(e, o *phrase) bool {
				return e.nutOfTail() && flared(e.fam) && o.sizeAlone() && (o.fig.kind == inchSize || o.fig.kind == unSize) && o.fig.v > e.fig.v
			},
			func(e, o *phrase) {
				o.fam, e.fam = e.fam, nil
				e.giveNut(o)
			},
		},
		{
			"an end without a thread goes to the bare size", "Hosetail 316 3/4BSPTx20mm",
			func(e, o *phrase) bool {
				return e.fig != nil && !e.millimetres() && e.end != "" && e.described() && o.bare() && !o.names(nut) && o.fig != nil && o.fig.kind <= mmSize &&
					(o.millimetres() || e.end == "BARB" && e.endFirst)
			},
			func(e, o *phrase) { o.end, e.end = e.end, "" },
		},
	},
	{
		{
			"the sex of a female adaptor is not the hose's", `1/4" FNPT x 1/4" Hose ID Polypropylene Female Adapter`,
			func(e, o *phrase) bool {
				return e.hose && !e.endFirst && e.fam == nil && len(e.sexes) == 1 && o.fam != nil && o.sex() == e.sex()
			},
			func(e, _ *phrase) { e.sexes, e.end = nil, "BARB" },
		},
		{
			"a barb is the PEX pipe's and not the thread's", `1/2" PEX x 1/2" MIP adapter F1807 lead free brass`,
			func(e, o *phrase) bool {
				return e.fam != nil && e.end == "BARB" && o.pex && o.end == "TUBE" && !o.described()
			},
			func(e, o *phrase) { o.end, e.end = "BARB", "" },
		},
	},
}
