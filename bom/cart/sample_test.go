package cart

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

var update = flag.Bool("update", false, "write the workbooks of testdata/carts anew")

const samples = "../../testdata/carts"

// bookRow is a row of a sample workbook: its cells, and whether it is struck out.
type bookRow struct {
	cells  []any
	struck bool
	hidden bool
}

// sampleBooks are the workbooks among the samples; what is wrong in them stands in
// testdata/carts/README.md.
var sampleBooks = map[string]func(*testing.T) *excelize.File{
	"pier.xlsx": func(t *testing.T) *excelize.File {
		return workbookOf(t, map[string][]bookRow{"Quote": {
			{cells: []any{"Pier Four Pump Supply, Norfolk (invented)"}},
			{cells: []any{"Quote 1180", "", "", "", "18 Nov 2026"}},
			{},
			{cells: []any{"SKU", "Item description", "Qty", "Unit price USD", "Amount USD"}},
			{cells: []any{"TRX-8-316", `Plunger pump, 316 head, 1/2" NPT female in, 3/8" NPT female out, 7 L/min, 100 bar`, 1, 1185.0, 1185.0}},
			{cells: []any{"TRX-SK", "Seal kit for the pump: packings and valves", 1, 96.5, 96.5}},
			{cells: []any{"RV-65", `Relief valve 1/4" NPT male x 3/8" NPT female, 316, set 65 bar, rated 140 bar`, 2, 214, 428}},
			{cells: []any{"PV-2521", `Pressure vessel 2.5 x 21, two 1/2" NPT female and one 1/4" NPT female, 1200 psi`, 1, 389, 389}},
			{cells: []any{"SW-2521", "Seawater membrane element 2.5 x 21", 1, 236, 236}},
			{cells: []any{"FM-100", "Panel flow meter, 5 to 65 L/h, 10 mm push-in, drinking water", 1, 72, 72}},
			{cells: []any{"TDS-IN", `Salinity probe, 1/4" NPT male, drinking water`, 1, 58, 58}},
			{cells: []any{"", "Total", "", "", 2464.5}},
		}})
	},
	"banchina.xlsx": func(t *testing.T) *excelize.File {
		return workbookOf(t, map[string][]bookRow{"Preventivo": {
			{cells: []any{"Banchina Sei, La Spezia (inventata)"}},
			{cells: []any{"Codice", "Descrizione", "Q.tà", "UM", "Prezzo unitario EUR"}},
			{cells: []any{"B-1", "Portagomma G 3/4 maschio x 19 mm, bronzo", 3, "pz", 6.9}},
			{cells: []any{"B-2", "Portagomma 3/8 NPT maschio x 13 mm, inox 316", "3 pz", "", "??"}},
			{cells: []any{"B-3", "Valvola a spillo 3/8 NPT femmina, inox 316, 20 bar", 1, "pz", 61.5}},
			{cells: []any{"B-4", "Valvola di ritegno 1/2 NPT maschio x 1/2 NPT maschio, bronzo", 0, "pz", 22.3}},
			{cells: []any{"B-5", "Manometro 0-100 bar, 1/4 NPT maschio, inox", 1, "pz", 31.2}, struck: true},
			{cells: []any{"B-6", "Guarnizione piana G 1/2, conf. 5 pz", 1, "conf", "0,00"}},
			{cells: []any{"B-7", "Raccordo 1/2 NPT maschio x 9/16-18 JIC femmina, inox 316", 3, "pz", 12.4}},
			{cells: []any{"B-8", "Fascetta inox 16-27", 4, "pz", 1.1}},
			{cells: []any{"B-9", "Nastro PTFE 12 mm x 12 m", 2, "rotolo", 2.2}},
			{cells: []any{"B-10", "Portagomma 1/2 NPT maschio x 13 mm, bronzo", 1, "pz", 8.6}, hidden: true},
		}, "Note": {{cells: []any{"Validità 30 giorni"}}}})
	},
	"muelle.xlsx": func(t *testing.T) *excelize.File {
		return workbookOf(t, map[string][]bookRow{"Presupuesto": {
			{cells: []any{"Muelle Norte, Vigo (inventado)", "", "", "", "", ""}},
			{cells: []any{"Referencia", "Descripción", "Cantidad", "Precio unitario", "Importe", "Moneda"}},
			{cells: []any{"HT-G34-19", "Racor espiga G 3/4 macho x 19 mm, bronce", 3, 6.35, 19.05, "EUR"}},
			{cells: []any{"M-2", "Racor espiga 1/2 NPT macho x 19 mm, inox 316", 1, 9.1, 19.1, "EUR"}},
			{cells: []any{"M-3", "Manguera de aspiración 20 mm, por metro", 5, 12.0, 60.0, "EUR"}},
			{cells: []any{"M-4", "Adaptador M22x1.5 macho x 1/2 NPT macho, inox 316", 1, 14.0, 14.0, "EUR"}},
		}})
	},
}

// workbookOf makes a workbook; the sheet with most rows comes first.
func workbookOf(t *testing.T, sheets map[string][]bookRow) *excelize.File {
	t.Helper()
	f := excelize.NewFile()
	strike, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Strike: true, Family: "Arial", Size: 10}})
	require.NoError(t, err)
	require.NoError(t, f.SetDocProps(&excelize.DocProperties{Creator: "example", LastModifiedBy: "example", Created: "2026-11-18T00:00:00Z", Modified: "2026-11-18T00:00:00Z"}))
	first := true
	for _, name := range []string{"Quote", "Preventivo", "Presupuesto", "Note"} {
		rows, ok := sheets[name]
		if !ok {
			continue
		}
		if first {
			require.NoError(t, f.SetSheetName("Sheet1", name))
			first = false
		} else {
			_, err := f.NewSheet(name)
			require.NoError(t, err)
		}
		for i, r := range rows {
			require.NoError(t, f.SetSheetRow(name, cellName(t, 1, i+1), &r.cells))
			if r.struck {
				require.NoError(t, f.SetCellStyle(name, cellName(t, 1, i+1), cellName(t, len(r.cells), i+1), strike))
			}
			if r.hidden {
				require.NoError(t, f.SetRowVisible(name, i+1, false))
			}
		}
	}
	return f
}

func cellName(t *testing.T, column, row int) string {
	t.Helper()
	name, err := excelize.CoordinatesToCellName(column, row)
	require.NoError(t, err)
	return name
}

func bytesOf(t *testing.T, f *excelize.File) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	return b.Bytes()
}

// The committed workbooks say what the code above says.
func TestSampleWorkbooksAreThoseOfTheCode(t *testing.T) {
	for name, make := range sampleBooks {
		t.Run(name, func(t *testing.T) {
			data := bytesOf(t, make(t))
			path := filepath.Join(samples, name)
			if *update {
				require.NoError(t, os.WriteFile(path, data, 0o644))
			}
			kept, err := os.ReadFile(path)
			require.NoError(t, err)
			want, err := Read(name, data, Options{})
			require.NoError(t, err)
			got, err := Read(name, kept, Options{})
			require.NoError(t, err)
			require.Equal(t, want, got)
		})
	}
}
