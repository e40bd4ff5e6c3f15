package assign

import "cmp"

// Cost is what an assignment costs. Fields are compared in their order: one stop outweighs
// any number of missing pieces.
type Cost struct {
	Stops     int // places that nothing can join
	Missing   int // pieces to buy
	Questions int // joints and pieces that something must be asked of
	LeftOver  int // pieces of the bag that no place takes
	Length    int // pieces in all chains
	Apart     int // pieces between a branch and the end that it is to stand near
	Order     int // how far pieces stand from the order in which the bag names them; see Class.Rank
}

// Add is the sum of two costs.
func (c Cost) Add(d Cost) Cost {
	return Cost{c.Stops + d.Stops, c.Missing + d.Missing, c.Questions + d.Questions, c.LeftOver + d.LeftOver, c.Length + d.Length, c.Apart + d.Apart, c.Order + d.Order}
}

// Compare is below zero where c is the lesser cost.
func (c Cost) Compare(d Cost) int {
	return cmp.Or(cmp.Compare(c.Stops, d.Stops), cmp.Compare(c.Missing, d.Missing), cmp.Compare(c.Questions, d.Questions),
		cmp.Compare(c.LeftOver, d.LeftOver), cmp.Compare(c.Length, d.Length), cmp.Compare(c.Apart, d.Apart), cmp.Compare(c.Order, d.Order))
}

// Joint says what two ends make of each other.
type Joint uint8

// The sorts of joint.
const (
	No    Joint = iota // they do not join
	Joins              // they join
	Asks               // they join, and something must be asked
)

// Grade says whether a class may stand in a place.
type Grade uint8

// The grades.
const (
	May     Grade = iota // it may
	MayAsks              // it may, and something must be asked of it
	Refused              // it may not: its rating, its material, its use
)

// Cut is the count of a class that pieces are cut from: as many as are wanted, and none of
// them is left over.
const Cut = -1

// Class is pieces that are alike.
type Class struct {
	Count int   // or Cut
	Ends  []int // two, or more of a piece with branches: a tee, a cross, a manifold
	Gives bool  // it gives way, so that two fixed ends can be joined: a hose, a union, a swivel
	Rank  int   // place in the bag: where all else is equal, what the bag names early goes into the places named early
	Bends bool  // it may stand where the joint would do without: an elbow, a union, a hose that gives way
}

// Table says of each two ends of one sort of place how they join, and how many pieces could
// be bought to join them: 0 is none. All are symmetric; Joints[a*n+b] with n ends.
type Table struct {
	Joints []Joint
	Buy    []uint8
	Soft   []uint8 // pieces to buy of which one gives way; nil where none is known
}

// Place wants a chain from one end to another.
type Place struct {
	From   int   // an end; Branch: of a piece in one of Hosts
	To     int   // an end
	Hosts  []int // earlier places that may have the branch, the usual one first: each later one is a piece longer
	Table  int   // of Problem.Tables
	Grade  []Grade
	Seldom []bool // classes that it seldom has: chains with them are listed behind all others; nil for none
	Rank   int
	Near   Near
	Fixed  bool // both ends stand fast: a chain in which nothing gives way lacks a piece that does
	Stiff  int  // as how many pieces that one counts
	Lost   Cost // where no chain is made: what is to buy then, or a stop
}

// Near says at which end of a place its branches are to stand, where all else is equal.
type Near uint8

// The ends of a place.
const (
	Anywhere Near = iota
	AtFrom
	AtTo
)

// Branch is where a place starts at the branch of a piece in another place.
const Branch = -1

// Problem is a bag and the places for it.
type Problem struct {
	Ends    int
	Classes []Class
	Tables  []Table
	Places  []Place
	Longest int // pieces in one chain; 0: 9
	Steps   int // bound on steps; 0: 400,000
}

// Step is one piece of a chain.
type Step struct {
	Class   int   // of Problem.Classes
	In, Out int   // indices of its ends
	Buy     int   // pieces to buy between what comes before and it
	Soft    bool  // one of those gives way
	Sides   []int // indices of its branches
}

// Made is what becomes of a place.
type Made struct {
	OK     bool
	Chain  []Step
	Buy    int  // pieces to buy behind the last of the chain
	Soft   bool // one of those gives way
	Stiff  bool // both its ends stand fast, and nothing in the chain gives way: a piece that does is to buy
	Host   int  // place and step whose branch it starts at; -1 where it has its own end
	HostAt int
	Side   int // index of that branch among the ends of the step's class
}

// Answer is an assignment.
type Answer struct {
	Places []Made
	Left   []int // of each class: pieces left over
	Cost   Cost
	Proven bool // nothing is cheaper
	Bound  Cost // nothing is cheaper than this; Cost where it is proven
	Steps  int
}
