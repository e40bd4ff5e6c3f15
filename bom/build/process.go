package build

import "handtight/pressure/quantity"

// Process is what data sheets say of a part for the reckoning of flows, salt and power. A
// nil figure is not said.
type Process struct {
	Size     string // of an element or a vessel: "2540"
	Elements *int   // that a vessel holds

	Product      *quantity.Flow // of an element in its test
	Tolerance    *quantity.Share
	Rejection    *quantity.Share
	RejectionMin *quantity.Share
	Area         *quantity.Area
	TestPressure *quantity.Pressure
	TestSalt     *quantity.Concentration
	TestRecovery *quantity.Share
	Spacer       *quantity.Length
	MaxPressure  *quantity.Pressure
	MaxFlow      *quantity.Flow
	MinBrine     *quantity.Flow
	MaxRecovery  *quantity.Share
	MaxDrop      *quantity.Pressure
	MaxWater     *quantity.Temperature

	FlowAt          *quantity.Pressure // the pressure that a pump's flow is said at
	Speed           *quantity.Speed    // the rated one
	MotorSpeed      *quantity.Speed
	EngineSpeed     *quantity.Range[quantity.Speed]
	Pulley          *Pulleys
	Volumetric      *quantity.Share
	Efficiency      *quantity.Share
	MotorPower      *quantity.Power
	MotorCurrent    *quantity.Current
	MotorEfficiency *quantity.Share
	NPSH            *quantity.Length
	PlungerBore     *quantity.Length
	Stroke          *quantity.Length
	Plungers        *int

	Curve       []CurvePoint
	SelfPriming *quantity.Length
	Current     *quantity.Current

	Loss      *LossAt
	LossDirty *LossAt
	Kv        *quantity.Flow // at 1 bar
	Roughness *quantity.Length
	Corrugate bool
	MeterFrom *quantity.Range[quantity.Flow] // a flow meter's scale

	Height *quantity.Length // of a tank's water above the waterline; below zero under it

	Relieves  bool               // an unloader's maker says that it may be counted on as a relief
	Precharge *quantity.Pressure // of an accumulator's gas, with no water in it
	Gas       string             // "nitrogen", "air", "oxygen"; "" where it is not said

	Ratio    *quantity.Share // of an energy-recovery pump: rod area over piston area
	Leak     *quantity.Share
	Friction *quantity.Pressure
}

// Pulleys are the diameters of a belt's pulleys, in any one unit.
type Pulleys struct{ Motor, Pump float64 }

// CurvePoint is a point of a feed pump's curve.
type CurvePoint struct {
	Flow     quantity.Flow
	Pressure quantity.Pressure
}

// LossAt is a pressure that is lost at a flow.
type LossAt struct {
	Pressure quantity.Pressure
	Flow     quantity.Flow
}

// PowerSupply is what the electric power comes from. A nil figure is not said.
type PowerSupply struct {
	Battery     *quantity.Charge
	Usable      *quantity.Share
	Solar       *quantity.Power
	Sun         *quantity.Range[quantity.Duration]
	Inverter    *quantity.Share
	Cable       *quantity.Section
	CableLength *quantity.Length // there and back
	Alternator  *quantity.Current
	Breaker     *quantity.Current
	Place       Mark
}
