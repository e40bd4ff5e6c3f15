package readings

import (
	"bytes"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

func TestHeadingsOfSeveralLanguages(t *testing.T) {
	for _, c := range []struct{ language, text string }{
		{"English", "date,feed pressure (bar),brine pressure (bar),product (L/h),salinity (mg/L),water temperature (C),before filters (bar),after filters (bar)\n2031-05-01,55,54.8,60.5,310,18,1.2,1.0\n"},
		{"German", "Datum;Hochdruck [bar];Soledruck [bar];Produktmenge [L/h];Salzgehalt [ppm];Wassertemperatur [C];Druck vor Filter [bar];Druck nach Filter [bar]\n01.05.2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"French", "Date;Haute pression (bar);Pression saumure (bar);Débit produit (L/h);Salinité (mg/L);Température de l'eau (C);Avant filtres (bar);Après filtres (bar)\n01/05/2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"Spanish", "Fecha\tAlta presión (bar)\tPresión de salmuera (bar)\tCaudal de producto (L/h)\tSalinidad (mg/L)\tTemperatura del agua (C)\tAntes de filtros (bar)\tDespués de filtros (bar)\n1/5/2031\t55\t54.8\t60.5\t310\t18\t1.2\t1.0\n"},
		{"Italian", "Data;Alta pressione (bar);Pressione salamoia (bar);Portata prodotto (L/h);Salinità (mg/L);Temperatura acqua (C);Prima dei filtri (bar);Dopo i filtri (bar)\n1/5/2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"Dutch", "Datum;Hoge druk (bar);Pekeldruk (bar);Productwater (L/h);Zoutgehalte (mg/L);Watertemperatuur (C);Voor filters (bar);Na filters (bar)\n1-5-2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"Portuguese", "Data;Alta pressão (bar);Pressão da salmoura (bar);Produção (L/h);Salinidade (mg/L);Temperatura da água (C);Antes dos filtros (bar);Depois dos filtros (bar)\n01/05/2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"Spanish, as another says it", "Fecha;Presión de trabajo (bar);Presión del concentrado (bar);Producción (L/h);Salinidad (mg/L);Temperatura (C);Antes del filtro (bar);Después del filtro (bar)\n1/5/2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"Italian, as another says it", "Data;Pressione di lavoro (bar);Pressione concentrato (bar);Produzione (L/h);Salinità (mg/L);Temperatura (C);Prima del filtro (bar);Dopo il filtro (bar)\n1/5/2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"Dutch, as another says it", "Datum;Werkdruk (bar);Concentraatdruk (bar);Productie (L/h);Zoutgehalte (mg/L);Temperatuur (C);Voor filter (bar);Na filter (bar)\n1-5-2031;55;54,8;60,5;310;18;1,2;1,0\n"},
		{"units of another kind", "date,feed pressure (psi),brine pressure (psi),product (gph),tds (ppm),sea temperature (F),before filters (psi),after filters (psi)\n2031-05-01,797.708,794.807,15.9824,310,64.4,17.405,14.504\n"},
	} {
		log, _, faults := Read("x.csv", []byte(c.text))
		require.NoError(t, faults.Err(), c.language)
		require.Len(t, log, 1, c.language)
		r := log[0]
		require.Equal(t, "2031-05-01", r.Date.Format("2006-01-02"), c.language)
		require.InDelta(t, 55, r.Feed.Value.Bar(), 0.01, c.language)
		require.InDelta(t, 54.8, r.Brine.Value.Bar(), 0.01, c.language)
		require.InDelta(t, 60.5, r.Product.Value.LitresPerHour(), 0.01, c.language)
		require.InDelta(t, 310, float64(r.Salt.Value), 1e-6, c.language)
		require.InDelta(t, 18, float64(r.Water.Value), 0.01, c.language)
		require.InDelta(t, 1.2, r.BeforeFilters.Value.Bar(), 0.001, c.language)
		require.InDelta(t, 1.0, r.AfterFilters.Value.Bar(), 0.001, c.language)
	}
}

func TestFaultsAllAtOnce(t *testing.T) {
	_, _, faults := Read("log.csv", []byte("date,product (L/h),water temperature (C)\n2031-05-01,sixty,18\nyesterday,60,18 bar\n2031-05-03,,\n"))
	require.Len(t, faults, 3)
	require.ErrorContains(t, faults.Err(), "log.csv line 2, column 2")
	require.ErrorContains(t, faults.Err(), "`yesterday` is no date")
	require.ErrorContains(t, faults.Err(), "log.csv line 3, column 3")
	_, _, faults = Read("log.csv", []byte("date,product,water (C)\n2031-05-01,60,18\n"))
	require.ErrorContains(t, faults.Err(), "has no unit")
	_, _, faults = Read("log.csv", []byte("a,b\n1,2\n"))
	require.ErrorContains(t, faults.Err(), "no line names a date")
	_, _, faults = Read("log.csv", []byte(""))
	require.Error(t, faults.Err())
}

func TestMonthFirstWhereADaySaysSo(t *testing.T) {
	log, _, faults := Read("x.csv", []byte("date,product (gph)\n5/1/2031,16\n5/23/2031,16\n"))
	require.NoError(t, faults.Err())
	require.Equal(t, "2031-05-01", log[0].Date.Format("2006-01-02"))
}

func TestEmptyIsNotZero(t *testing.T) {
	log, _, faults := Read("x.csv", []byte("\xef\xbb\xbfdate,product (L/h),feed pressure (bar)\n2031-05-01,-,\n\n2031-05-02,0,55\n"))
	require.NoError(t, faults.Err())
	require.False(t, log[0].Product.Read)
	require.False(t, log[0].Feed.Read)
	require.True(t, log[1].Product.Read)
}

// The same log as a workbook, with dates and numbers as the spreadsheet keeps them.
func TestWorkbook(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	require.NoError(t, f.SetSheetRow("Sheet1", "A1", &[]any{"Log of our plant"}))
	require.NoError(t, f.SetSheetRow("Sheet1", "A3", &[]any{"Date", "Product (L/h)", "Feed pressure (bar)", "Water temperature (C)"}))
	require.NoError(t, f.SetSheetRow("Sheet1", "A4", &[]any{time.Date(2031, 5, 1, 0, 0, 0, 0, time.UTC), 60.5, 55, 18}))
	require.NoError(t, f.SetSheetRow("Sheet1", "A5", &[]any{time.Date(2031, 5, 3, 0, 0, 0, 0, time.UTC), "sixty", 55}))
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	_, _, faults := Read("log.xlsx", b.Bytes())
	require.ErrorContains(t, faults.Err(), "log.xlsx line 5, column 2")
	require.NoError(t, f.SetCellValue("Sheet1", "B5", 61))
	b.Reset()
	require.NoError(t, f.Write(&b))
	log, _, faults := Read("log.xlsx", b.Bytes())
	require.NoError(t, faults.Err())
	require.Len(t, log, 2)
	require.Equal(t, "2031-05-01", log[0].Date.Format("2006-01-02"))
	require.InDelta(t, 60.5, log[0].Product.Value.LitresPerHour(), 1e-9)
	require.False(t, log[1].Water.Read)
	_, _, faults = Read("log.xlsx", []byte("PK broken"))
	require.Error(t, faults.Err())
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("date,product (L/h)\n2031-05-01,60\n"))
	f.Add([]byte("Datum;Produkt [L/h]\n1.5.31;6,5\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		log, _, faults := Read("x.csv", text)
		require.False(t, len(log) > 0 && len(faults) > 0)
	})
}

// A heading that is not understood is named, and so is never taken for read.
func TestAHeadingThatIsNotUnderstoodIsNamed(t *testing.T) {
	log, unused, faults := Read("x.csv", []byte("date,product (L/h),wibble (L/h),remarks,,water temperature (C)\n2031-05-01,60,61,windy,,18\n"))
	require.NoError(t, faults.Err())
	require.Len(t, log, 1)
	require.Equal(t, []string{"wibble (L/h)", "remarks"}, unused)
}
