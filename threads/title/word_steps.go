package title

import (
	"math/bits"
	"strings"
)

// wordStep lets the neighbours of a word decide what it means, before anything is made
// of it. The steps run in their order for each word. The example is a line that reads
// otherwise without the step; longest is the most bytes of a word that the step is about, 0 if of any.
type wordStep struct {
	name, example string
	longest       int
	first         string // the letters that its words begin with, in the one alphabet, by their bytes; "" if any
	classes       uint16 // the classes of which its words have one, by their bits; 0 if any word
	apply         func(l *line, k int)
}

// of is the set of some classes.
func of(classes ...wordClass) (out uint16) {
	for _, c := range classes {
		out |= 1 << c
	}
	return out
}

// tell applies the steps to the word at k.
func (l *line) tell(k int) {
	it := &l.tokens[k]
	about := stepsAbout(it.to-it.from, byteAt(l.norm, it.from))
	word, asked := it.word, stepsForClasses(it.word)
	for n := range about {
		for rest := about[n] & asked[n]; rest != 0; {
			at := bits.TrailingZeros64(rest)
			step := &wordSteps[64*n+at]
			if l.skip == "" || step.name != l.skip {
				step.apply(l, k)
			}
			if it.word != word {
				word, asked = it.word, stepsForClasses(it.word) // it has become another
			}
			rest = about[n] & asked[n] &^ (2<<at - 1)
		}
	}
}

// stepSet is a set of steps by their places, 64 to a number.
type stepSet [(len(wordSteps) + 63) / 64]uint64

// longWord is a word's length, in bytes, that no step with a limit is about.
const longWord = 24

// classCount is how many classes there are, with none.
const classCount = int(classNoise) + 1

// stepsOfLength are the steps that are about words of so many bytes, stepsOfLetter those that are about words with such a first
// letter, and stepsOfClass those that are about a class; those about any word are under 0, which is no class.
var stepsOfLength, stepsOfLetter, stepsOfClass = func() (length [longWord + 1]stepSet, letter [256]stepSet, class [classCount]stepSet) {
	for k, step := range wordSteps {
		in, bit := k/64, uint64(1)<<(k%64)
		for size := range length {
			if step.longest == 0 || size <= step.longest {
				length[size][in] |= bit
			}
		}
		for c := range letter {
			if step.first == "" || strings.IndexByte(step.first, byte(c)) >= 0 {
				letter[c][in] |= bit
			}
		}
		for c := range class {
			if step.classes&(1<<c) != 0 || step.classes == 0 && c == 0 {
				class[c][in] |= bit
			}
		}
	}
	return length, letter, class
}()

// stepsAbout are the steps that are about words of so many bytes and such a first letter.
func stepsAbout(size int, first byte) stepSet {
	out := stepsOfLength[min(size, longWord)]
	for n := range out {
		out[n] &= stepsOfLetter[first][n]
	}
	return out
}

// stepsForClasses are the steps that are about any word, or about a class that the word has.
func stepsForClasses(word *meanings) stepSet {
	out := stepsOfClass[0]
	if word == nil {
		return out
	}
	for has := word.has; has != 0; has &= has - 1 {
		class := &stepsOfClass[bits.TrailingZeros16(has)]
		for n := range out {
			out[n] |= class[n]
		}
	}
	return out
}

var wordSteps = [...]wordStep{
	{"MI before the part's name is what it is made of", "MI elbow 1/2 NPT female", 2, "m", of(classSex), (*line).malleableLetters},
	{"um without its points is an article", "um joelho fêmea 1/2", 2, "u", of(classAttr), (*line).articleUm},
	{"мама beside the word for an outside thread is the coupling's own", `быстросъём мама 1/4" наружная резьба`, 8, "", of(classSex), (*line).couplingSex},
	{"a sex that the line asks for is none that it says", "Muunnos 1/2 - M22x1,5, kumpi puoli uros", 0, "", of(classSex), (*line).whichSex},
	{"UN of a Croatian list is an inside thread", "Koljeno 3/8 UN", 2, "u", of(classFamily), (*line).insideLetters},
	{"MH and FH behind 3/4 are the threads of garden hose", "Wye, 3/4 MH, 3/4 MH, 3/4 FH", 2, "mf", 0, (*line).gardenLetters},
	{"K and B of a Hungarian list are outside and inside", `Szűkítő 1" K - 3/4" B`, 1, "kb", 0, (*line).hungarianLetters},
	{"the m of I'm is no male", `I'm short one 3/4" garden hose female swivel to 1/2" barb`, 1, "m", of(classSex), (*line).contraction},
	{"G before the number of a part is none of its size", "Kogelkraan 15x1/2 koppeling bt. g 0730055", 1, "g", of(classFamily), (*line).letterBeforeCode},
	{"co of a Vietnamese list is an elbow", `Co 1" ren ngoài`, 2, "c", 0, (*line).vietnameseElbow},
	{"Rp before thousands is money", "Keran 3/4 drat dalam @ Rp 65.000", 2, "r", of(classFamily), (*line).rupiah},
	{"h behind a whole number is hours, and a letter behind class is a class", "Nipple 1/4 NPT, 24 h", 1, "hfab", 0, (*line).hourOrClass},
	{"RG of Danish is a pipe thread", "Overgang 3/8 RG udv. - 3/8 NPT indv.", 2, "r", 0, (*line).danishPipe},
	{"collé beside a size or an x is glued", "Coude PVC 1/2 po, collé x fileté femelle NPT", 5, "c", 0, (*line).gluedFrench},
	{"PT before a price is a pack", "Cotovelo 1/2 F PT 2,30", 2, "p", 0, (*line).packLetters},
	{"M behind the number of a cable is metres", "Level sensor 1/8 NPT male cable 3M", 1, "m", 0, (*line).cableMetres},
	{"FS behind a measure is its full scale", "Sensor G1/4 100 bar FS", 4, "f", 0, (*line).fullScale},
	{"UN alone in its cell counts units", "Registro esfera 3/4 | UN", 3, "u", 0, (*line).unitCell},
	{"RH beside a left hand is a right-hand thread", "Hose, G3/8 LH nut one end, G3/8 RH nut other end", 4, "r", 0, (*line).rightHand},
	{"Hg behind inches is mercury", `Gauge -30"Hg 1/4 NPT`, 2, "h", 0, (*line).mercury},
	{"NPS before its size is the nominal pipe size", "Elbow NPS 1 F 150# screwed", 3, "n", 0, (*line).nominalPipe},
	{"a letter behind the price at the end of a receipt is the till's", "GARDEN HOSE ADPT 3/4MGHT X 1/2FIP BR  6.79 T", 1, "", 0, (*line).tillLetter},
	{"exterior behind a name that has its sex is out of doors", `Gas ball valve 1/2" FPT exterior`, 8, "e", 0, (*line).outdoors},
	{"int behind the word for a hose is its inside", `portagomma 3/4" M per tubo int. 20`, 9, "iøf", 0, (*line).insideOfHose},
	{"ga before a scale is a gauge", "GA PRESS 0-1500PSI 2-1/2 IN DIAL 1/4 NPT LM", 2, "g", 0, (*line).gaugeShort},
	{"L glued behind a thread's size is a left hand", "Adaptor G3/8L male x 1/4 NPT male", 1, "l", 0, (*line).leftLetter},
	{"est of Italian is a male", "Raccordo 1/2 est. x 3/8 int. gas conico", 4, "e", 0, (*line).italianOuter},
	{"the plug of an electric lead is no plug of a pipe", "pressure switch 1/4 BSPP, DIN 43650 plug", 6, "ps", 0, (*line).electricPlug},
	{"the nut with a bulkhead comes with it", "Wanddurchführung 10L mit Mutter, beidseitig M16x1,5 AG", 6, "m", 0, (*line).nutOfBulkhead},
	{"NPTF beside NPTM is a female", "1/2 NPTM x 1/2 NPTF nipple", 5, "n", 0, (*line).femaleNPT},
	{"a valve with its sort behind a comma is of that sort", "Valve, relief, brass, 1/2 NPT male, set 125 psi", 6, "v", 0, (*line).sortBehind},
	{"a seal that is not included is no end's", "Elbow 1/2 BSPP male x female, O-ring not included", 0, "", of(classAttr, classKind), (*line).notIncluded},
	{"dash before a number is the sign of it", "JIC male to 1/4 NPT male adaptor, dash 6", 4, "ds", 0, (*line).dashWordBefore},
	{"the taper of a plug cock is no thread's", "Seacock, bronze, taper plug type, 3/4in BSP female one side", 8, "t", 0, (*line).taperOfCock},
	{"a letter behind inches is a sex", `Muffe 3/4" i x 1/2" a`, 2, "iaзαθ", 0, (*line).germanLetter},
	{"one sign beside others not understood is a syllable", `子母扣接头 1/2`, 4, "", of(classSex, classKind), (*line).wideSyllable},
	{"fi before millimetres is a diameter", "Tlakoměr fi 100 G1/2", 2, "f", 0, (*line).diameterWord},
	{"В behind a voltage is volts", `Клапан 220В 1/2" НР`, 2, "в", 0, (*line).voltLetter},
	{"a grade behind letters and a hyphen is a code's number", `Elbow 1/2 NPT female QZX-2205`, 8, "", of(classMaterial), (*line).gradeOfCode},
	{"FG without a thread's name is a female that turns, or galvanised iron", `Codo FG 1"`, 2, "f", 0, (*line).galvanisedLetters},
	{"a quick coupling of a valve for reverse osmosis pushes in", "Válvula engate rápido 1/4 osmose reversa", 0, "", of(classEnd), (*line).osmosisCoupling},
	{"x mt at the end of a hose is by the metre", "Manguera transparente 3/4 x mt", 3, "m", 0, (*line).timesMetre},
	{"press beside the word for hose is crimped on", "3/8 hortum presli M18x1,5", 0, "", of(classEnd), (*line).crimpedHose},
	{"lik behind a number is of so many", "Mini vana 16lık 1/2 erkek", 4, "l", 0, (*line).turkishSuffix},
	{"H before a nipple is hex", "H Nipple 3/4\"", 1, "h", 0, (*line).hexLetter},
	{"clamp by itself is a clamp", "Clamp 1 1/4 inch", 5, "c", 0, (*line).clampByItself},
	{"IPS of a fused fitting is its outside", `2" tee IPS HDPE butt fusion`, 3, "i", 0, (*line).fusedIron},
	{"C that no size stands beside is no solder end", "Cap ferro 2\" classe 10 bl. C", 1, "c", 0, (*line).farC},
	{"A/A of Spanish lists is air conditioning", "Llave flare 3/8 bronce A/A minisplit", 3, "a", 0, (*line).airConditioning},
	{"clamp beside a fitting of stainless steel is a clamp ferrule", `Curva 90 inox 316 clamp 1 1/2"`, 5, "c", 0, (*line).clampWord},
	{"R before the number of a refrigerant is no thread", "AC flare nut 3/8 R410", 1, "", of(classFamily), (*line).refrigerant},
	{"pt. before a word is for", `Racord olandez 1" drept pt. pompa`, 2, "p", 0, (*line).forShort},
	{"mb behind a number is metres in Polish", "Wąż do wody 19 mm 8mb", 2, "m", 0, (*line).runningMetre},
	{"a ferrule beside the word for hose is one to crimp", `Ferrule - greasing hose 3/16"`, 8, "f", 0, (*line).hoseFerrule},
	{"the G of G.I is no thread", `G.Ired socket 1inchx3/4inch`, 1, "g", 0, (*line).ironLetter},
	{"outside and inside before a thread are its sex", "Adapter, outside G1/2 and inside M18x1.5", 7, "oi", 0, (*line).sideOfThread},
	{"lot before a number is a count", "Douille cannelée 1/2 mâle LOT 2", 4, "l", 0, (*line).lotOf},
	{"the flange of a seacock is its foot", "Seacock 3/4 NPS flanged", 0, "", of(classEnd), (*line).seacockFoot},
	{"hi before a comma greets", "Hi, nipple 1/2", 2, "h", 0, (*line).greeting},
	{"m behind the stroke of a price is by the metre", "Ball valve 1/2 NPT female $12/m", 2, "m", 0, (*line).perMetre},
	{"mm before a number is its unit", "Portagomma mm 19 - 3/4 maschio gas", 2, "m", 0, (*line).unitFirst},
	{"a stem beside the size of a tube plugs in", "Push-fit reducer 10mm stem to 8mm tube", 5, "s", 0, (*line).stemWord},
	{"tails that come with a valve are none of its ends", "Ball valve 1/2 BSP FF with 13mm hose tails", 0, "", of(classEnd), (*line).tailsWith},
	{"two nuts of a hose are one at each end", "Wąż 2SN 3/8 zakuty 2x DKOL 12L", 0, "", of(classAttr, classFamily), (*line).nutAtEachEnd},
	{"R2 of a hose with another thread is its grade", "Flexible 3/8 R2 JIC femelle 9/16", 1, "", of(classFamily), (*line).hoseGradeLetter},
	{"T glued to a fraction is a tube", "Male connector 1/4T x 1/4 MNPT", 1, "t", 0, (*line).tubeLetter},
	{"no glued to a whole number is a count", "Equal tee 15mm -40no", 3, "n", 0, (*line).numberOf},
	{"screw beside a fitting is its thread", `Ball valve 1/2" screw`, 5, "s", 0, (*line).screwWord},
	{"C before a hyphen and a number is a class", `Tubo PVC codo 3/4" C-10`, 1, "c", 0, (*line).classLetter},
	{"SW behind a size without a thread is a swivel or a socket to weld", `Manguito 1/4" NPT x 1/4" SW`, 2, "s", 0, (*line).swLetters},
	{"İD and DD behind a size are threads", `Kaplin dirsek 32x1" İD`, 2, "id", 0, (*line).turkishLetters},
	{"dış beside iç çap is an outside diameter", `Boru 6 mm dış / 4 mm iç çap`, 4, "d", 0, (*line).turkishOutside},
	{"the capital S beside an x is a slip end", "Adapter 3/4 S x FPT", 1, "s", 0, (*line).slipLetter},
	{"iç and dış stand before what they say", `1/2" iç dış redüksiyon`, 0, "", of(classFamily, classSex), (*line).turkish},
	{"socket beside an x is glued", "Adaptor 1/2 MNPT x socket", 6, "sbi", 0, (*line).socketWord},
	{"SO between sizes is soldered", "Terminal SO 1/2 x HI 1/2", 2, "s", 0, (*line).solderWord},
	{"m. before a word is with", "Nippel 1/2 m. O-Ring", 1, "m", 0, (*line).withWord},
	{"small letters that are words or names are no thread", `Registro p/ gas 1/2"`, 0, "", 0, (*line).smallWord},
	{"two letters in brackets behind a code are no sex", "Kupplung ISO 7241-A (AG) 1/2", 2, "", of(classSex), (*line).codeInBrackets},
	{"a count where an end is due is not understood", "1/2 MIP X PC", 0, "", of(classUnit), (*line).countAsEnd},
	{"a sex behind for may be the counterpart's", `Hurtigkobling til udvendig gevind G 1/2`, 0, "", of(classSex, classFamily), (*line).counterpart},
	{"a T glued to a digit is no tee", `Gauge 0 T0 21 bar 1/2" BSP male`, 1, "", of(classKind), (*line).typeLetter},
	{"letters glued to a part's number say nothing", "Straight -8 male ORFS x -10 male ORB FS9100-08-10", 4, "", of(classFamily, classSex, classAttr, classKind, classEnd), (*line).lettersOfNumber},
	{"the letter of a cam coupling is its type", `Camlock type B 2"`, 6, "abcdeft", 0, (*line).camLetter},
	{"f. before a German noun is for", "Tauchhülse G 1/2 f. Fühler", 1, "f", 0, (*line).forWord},
	{"m/m of a muffe is muffe to muffe", `Muffe 1/2" m/m`, 3, "m", 0, (*line).muffeLetters},
	{"ВН of a valve is inside and outside", `Кран шаровой 1/2 ВН`, 4, "в", 0, (*line).cyrillicPair},
	{"BB beside a cone is no sex", `Złączka BB 12L M18x1,5`, 2, "b", 0, (*line).coneLetters},
	{"m/ before a word is with", `Kuleventil 3/4" innv. m/sommerfuglhendel`, 1, "m", 0, (*line).withStroke},
	{"bolsa before a number is a bag", `Machón 3/4" bolsa 5 uds.`, 8, "b", 0, (*line).bagOf},
	{"UN behind a count is units", "UNIÃO INSTANTÂNEA 8MM (10UN)", 2, "", of(classFamily), (*line).unitsOf},
	{"SW before millimetres is a spanner's size", "Stutzen G 1/2 AG SW 27", 2, "s", 0, (*line).spannerWord},
	{"a G apart from its size is no thread", `Cople 3/4 150# G`, 1, "", of(classFamily), (*line).apartG},
	{"letters of a pressure are no thread", `Manometer 1/4" PT 25 bar`, 2, "p", 0, (*line).pressureLetters},
	{"MT beside a number of a hose is metres", "Tubo flessibile 1/2 MT 1,20", 2, "m", 0, (*line).metreWord},
	{"the M of 0.9M is metres", `Hose 1/2" 0.9M`, 1, "m", 0, (*line).metreLetter},
	{"pipe beside tube is a pipe's thread", `1/4" tube 1/8" pipe 90 degree`, 4, "p", 0, (*line).pipeThread},
	{"a letter behind a unit and a stroke is a unit", `Regulador 9kg/h 1/2" NPT`, 1, "", of(classSex), (*line).perLetter},
	{"K is a thread only before its size", "Штуцер 3/8 K-10A", 1, "k", 0, (*line).russianLetter},
	{"the flat face of a quick coupling is not its thread's", "Flat face quick coupling G 1/2 female", 0, "", of(classAttr), (*line).coupledFace},
	{"D before a bore is a nominal bore in Chinese", "铜内外螺纹球阀 d15", 1, "d", 0, (*line).chineseBore},
	{"what a pipe is for is no end", "PE-rør 10 mm til push-in", 0, "", of(classEnd), (*line).pipeFor},
	{"a between two sizes is an x", "Bucha redução galvanizada 2 a 1 1/2", 1, "a", 0, (*line).fromTo},
	{"names of other things are taken out", "Nipple 1/2 BSP EN 10242", 0, "", of(classGrade, classWord, classBefore), (*line).takeNamed},
	{"a word of a seal that is none is taken back", "KFE-Hahn 1/2\" Durchgang ohne Schlauchverschraubung", 0, "", 0, (*line).takeBack},
}
