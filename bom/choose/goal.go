package choose

import (
	"fmt"
	"strings"
)

// Goal is what the best plan has least of.
type Goal uint8

// The goals.
const (
	Landed   Goal = iota + 1 // pieces without a price, then the landed cost
	Adaptors                 // adaptors, then as Landed
	Families                 // families of thread, then as Landed
)

var goalNames = map[Goal]string{Landed: "landed", Adaptors: "adaptors", Families: "families"}

// String gives the goal's word.
func (g Goal) String() string { return goalNames[g] }

// GoalNamed reads a goal's word.
func GoalNamed(text string) (Goal, error) {
	for g, name := range goalNames {
		if strings.EqualFold(text, name) {
			return g, nil
		}
	}
	return 0, fmt.Errorf("a plan is chosen for landed (the cost), adaptors or families, and not for %q", text)
}

// Weights put reasons one above the other in one whole number: no sum of the lower ones
// reaches one of the higher. Money counts in minor units.
const (
	piecesOver   int64 = 10_000_000_000 // 100 million of a currency with cents
	adaptorsOver       = 1000 * piecesOver
	familiesOver       = 1000 * adaptorsOver
	stopKept           = 100 * familiesOver
)

// cost is what pieces and adaptors count for under a goal.
func (g Goal) cost(p price, adaptors int) int64 {
	total := min(p.unpriced, 999)*piecesOver + min(p.money, piecesOver-1)
	if g == Adaptors {
		total += int64(min(adaptors, 999)) * adaptorsOver
	}
	return total
}
