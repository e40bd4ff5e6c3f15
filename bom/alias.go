package bom

import (
	"handtight/bom/build"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/joint"
	"handtight/bom/order"
	"handtight/bom/rating"
	"handtight/bom/read"
	"handtight/bom/running"
	"handtight/bom/segment"
	"handtight/bom/state"
	"handtight/bom/wetting"
)

// The names of the stages, for those that import bom alone.
type (
	Build       = build.Build
	Circuit     = circuit.Circuit
	Collapse    = segment.Collapse
	Condition   = circuit.Condition
	Discharge   = circuit.Discharge
	Draw        = running.Draw
	Duty        = build.Duty
	FreePassage = build.FreePassage
	Graph       = graph.Graph
	Hold        = rating.Allowable
	Item        = build.Item
	Joint       = graph.Joint
	Line        = order.Line
	Link        = circuit.Link
	Load        = state.Load
	LostFlush   = running.LostFlush
	Mark        = build.Mark
	Need        = order.Need
	Node        = graph.Port
	Offer       = build.Offer
	Option      = build.Option
	Order       = order.Order
	Overload    = segment.Overload
	Part        = segment.Part
	Port        = build.Port
	PortRef     = build.PortRef
	Question    = joint.Question
	ReadOptions = read.Options
	Ratings     = rating.Ratings
	Reached     = circuit.Reached
	Reliefs     = circuit.Reliefs
	Risk        = order.Risk
	Run         = build.Run
	Running     = running.Running
	Segment     = segment.Segment
	SegmentView = segment.SegmentView
	Segments    = segment.Segments
	SpareWish   = build.SpareWish
	Standing    = running.Standing
	State       = state.State
	StateView   = segment.StateView
	States      = state.States
	Step        = build.Step
	Surge       = running.Surge
	Unit        = graph.Unit
	Unpressed   = running.Unpressed
	Vendor      = build.Vendor
	VendorOrder = order.VendorOrder
	Waters      = wetting.Waters
	Why         = order.Why
)

const (
	BatteryLimit   = build.BatteryLimit
	DeadEnd        = running.DeadEnd
	Flushed        = running.Flushed
	FullFlowFactor = circuit.FullFlowFactor
	HighPressure   = state.HighPressure
	PumpPulls      = rating.PumpPulls
	Stands         = running.Stands
)

var (
	LineAt       = order.LineAt
	OtherDrive   = build.OtherDrive
	Parse        = read.Parse
	Read         = read.Read
	ReadWith     = read.ReadWith
	ParseWith    = read.ParseWith
	Solve        = state.Solve
	StandsVacuum = rating.StandsVacuum
	WorstFirst   = segment.WorstFirst
)
