package read

import (
	"fmt"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// Words that people write where a figure is due.
var (
	fullVacuum = pattern.New(`(?i)^\s*(?:full|total|complete|perfect|100\s*%)(?:\s+vacuum)?\s*$`)
	anyNumber  = pattern.New(`\d`)
)

// readVacuum reads what a hose stands below the air's pressure.
func readVacuum(t *source.Table) *quantity.Pressure {
	if text, ok := t.Text("vacuum", "0.9 bar"); ok && fullVacuum.MatchString(text) {
		t.Fault("vacuum", fmt.Sprintf("`%s` is no figure", text), "write \"1 bar\" (29.5 inHg) if its data sheet says full vacuum: no pump can pull more")
		return nil
	}
	return take(t, "vacuum", "0.9 bar", quantity.ParsePressure)
}

// readSupply reads the voltage of the batteries or the mains.
func readSupply(t *source.Table) *quantity.Voltage {
	text, ok := t.Text("supply", "24 V")
	switch {
	case !ok || anyNumber.MatchString(text):
	case build.OtherDrive(text):
		t.Fault("supply", fmt.Sprintf("`%s` is no voltage", text), "leave `supply` out where an engine drives the pump, and write it as the pump's motor: motor = \"engine\"")
		return nil
	case build.NamesMains(text):
		t.Fault("supply", fmt.Sprintf("`%s` is no voltage", text), "write its volts, like \"230 V\"")
		return nil
	}
	return take(t, "supply", "24 V", quantity.ParseVoltage)
}
