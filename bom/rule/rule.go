package rule

import (
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/duty"
	"handtight/bom/each"
	"handtight/bom/finding"
	"handtight/bom/source"
)

// Rule is one thing that a check looks for.
type Rule struct {
	Slug  string // words joined by hyphens
	Title string // what it says, in one sentence
	Why   string // why it matters and how to tell, in plain words
	Wrong string // a build fragment in which it is found

	mend  []string                                          // what makes it good: pieces of it, each with what stands in its place
	right string                                            // the fragment made good, where little of it stays
	block string                                            // the block of the example plant that the fragments stand in; "" for none
	plant string                                            // of example/, the plant whose block it is: "flushed", "watered" (from the sea to the tank), "damped", "recovered"; "": its high-pressure side alone
	harm  finding.Consequence                               // what comes of it; 0: what a bad joint does where it stands
	check func(*bom.System) []finding.Finding               // nil: found by the pass over the joints
	flows func(*bom.System, *duty.Result) []finding.Finding // rests on a flow
}

// Right is the wrong example made good.
func (r Rule) Right() string {
	if r.right != "" {
		return r.right
	}
	return strings.NewReplacer(r.mend...).Replace(r.Wrong)
}

// All lists the rules: joints first, then structure, pressure, and materials.
func All() []Rule {
	return []Rule{
		sameSex, threadDoesNotStart, threadTooSlack, pitchesDiffer, flankAnglesDiffer,
		parallelInTaper, taperInParallel, seatsDiffer, seatNotSaid, handsDiffer, flangesDiffer, nothingSeals, makeshiftJoint,
		endsOfDifferentSorts, barbAndBoreDiffer, endLeftOpen, endNotSaid,
		jointWept, closingPartMissing, sealantDiffers, measuredOtherwise, turnsFitNothing,
		nothingTurns, portOpen, intakeWithoutValve, brineIntoTank, brineIntoBilge, productPortClosed, productNoDrainWay,
		elementMissing, elementAndVesselDiffer, cartridgeAndHousingDiffer, noStrainer, noFineFilter, probeMissing, throttleIsQuickValve,
		pressureOverElement, itemNotPlaced, oneClampBelowWaterline, filtersOutOfOrder,
		underRated, ratingUnknown, ratedAboveStandard, threadsTooWeak, noWayOut,
		reliefMissing, reliefCutOff, reliefSetHigh, reliefSetLow, reliefMarginThin, reliefTooSmall,
		unloaderSetWrong, accumulatorPrecharge, accumulatorGas, accumulatorNoBleed, accumulatorCutOff,
		hoseMayCollapse, hoseTooShort, pressureNotSaid, flushRunsToSea, flushMissesMembrane, seaReachesHouse,
		houseWaterRuns, pumpGetsNoWater, reliefStandsOpen, membraneWithoutPressure, gaugeRange, gaugeMissing, supplyTooWeak, voltagesDiffer, valveShutsFast,
		partTooWarm, reliefDischarge, rigidOnPump, suctionTooFast,
		materialNotForSeawater, materialUnknown, galvanicPair, stainlessGalls,
		productNotForDrinking, chlorineOnMembrane,
		titleNotUsed, rateInverted,
		waterFreezes,
		pressureBelowOsmotic, pressureFarFromGood, productBelowWanted, productMoreThanPump, waterTooSalty, recoveryTooHigh, feedTooSmall, feedFlowOverElement, brineFlowLow, polarisationHigh, elementDropHigh, waterTooWarm, motorTooWeak, powerImpossible, currentOverSupply, cableTooThin, batteryTooSmall, pumpTooFast, engineRangeWide, feedPumpTooSmall, suctionNpsh, suctionLiftHigh, lineTooFast, lineLossHigh, hoseCorrugated, filterOverloaded, meterRange, productBackPressure, energyRecoveryMismatch, energyRecoveryStall, elementSizeUnknown, feedPumpNotSaid,
	}
}

// Find returns the rule of a slug.
func Find(slug string) (Rule, bool) {
	for _, r := range All() {
		if r.Slug == slug {
			return r, true
		}
	}
	return Rule{}, false
}

// Slugs lists the slugs of all rules, in their order.
func Slugs() []string {
	var out []string
	for _, r := range All() {
		out = append(out, r.Slug)
	}
	return out
}

// Check runs every rule and returns the findings, worst first.
//
// The rules read the build and write nothing, so they run at the same time as the flows, and as
// each other; what they found is put together in their order.
func Check(s *bom.System) []finding.Finding {
	var out, flows []finding.Finding
	each.Both(
		func() { flows = flowing(s, duty.Of(s)) },
		func() {
			out = append(joints(s), ran(func(r *Rule) []finding.Finding {
				if r.check == nil {
					return nil
				}
				return r.check(s)
			})...)
		})
	return finish(s, withoutRepeats(unexplained(s, append(out, flows...))))
}

// ran runs one thing of every rule, and gives all findings in the order of the rules.
func ran(run func(r *Rule) []finding.Finding) []finding.Finding {
	rules := All()
	found := make([][]finding.Finding, len(rules))
	each.Of(len(rules), func(i int) {
		found[i] = run(&rules[i])
		for k := range found[i] {
			found[i][k].Slug = rules[i].Slug
		}
	})
	return slices.Concat(found...)
}

// finish says what comes of each finding and what pressure is at stake, and sorts them.
func finish(s *bom.System, out []finding.Finding) []finding.Finding {
	harms := map[string]finding.Consequence{}
	for _, r := range All() {
		harms[r.Slug] = r.harm
	}
	for i := range out {
		f := &out[i]
		if f.Consequence == 0 {
			f.Consequence = harms[f.Slug]
		}
		for _, x := range append([]finding.Subject{f.Subject}, f.Also...) {
			if at := stake(s, x); at.Known && (!f.Stake.Known || at.Pressure > f.Stake.Pressure) {
				f.Stake = at
			}
			if harms[f.Slug] == 0 {
				f.Consequence = worseOf(f.Consequence, harmAt(s, x))
			}
		}
	}
	setCauses(s, out)
	finding.Sort(out)
	return out
}

// worseOf is the worse of two consequences, of which one may not be said yet.
func worseOf(a, b finding.Consequence) finding.Consequence {
	if a == 0 {
		return b
	}
	return min(a, b)
}

// at turns a mark of the build into a finding's place.
func at(m build.Mark) finding.Place { return place(m.Place()) }

func place(p source.Place) finding.Place {
	return finding.Place{File: p.File, Line: p.Line, Column: p.Column}
}
