package cart

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every phrase has one meaning, every row its source, and what is from memory is known.
func TestTablesOfWords(t *testing.T) {
	memory := 0
	for _, name := range []string{"headings.csv", "words.csv", "evidence.csv"} {
		for _, r := range readTable(name) {
			require.NotEmpty(t, r[len(r)-1], "%s: %v has no source", name, r)
			if strings.Contains(r[len(r)-1], "memory") {
				memory++
			}
		}
	}
	require.Equal(t, 60, memory, "rows with words that nobody looked up; look one up and lower this")
	for _, r := range readTable("headings.csv") {
		require.True(t, r[0] == string(RoleNone) || slices.Contains(roles(), Role(r[0])), "%s is no role", r[0])
	}
}

func TestHeadingsOfManyLanguages(t *testing.T) {
	for heading, want := range map[string]Role{
		"Description": RoleText, "Item description": RoleText, "Bezeichnung": RoleText, "Désignation": RoleText, "Descrizione": RoleText, "Descripción": RoleText,
		"Omschrijving": RoleText, "Benämning": RoleText, "Nazwa towaru": RoleText, "Наименование": RoleText, "品名": RoleText,
		"SKU": RoleCode, "Artikel-Nr.": RoleCode, "Référence": RoleCode, "Codice": RoleCode, "Código": RoleCode, "Part No.": RoleCode, "Артикул": RoleCode,
		"Qty": RoleQuantity, "QTY.": RoleQuantity, "Menge": RoleQuantity, "Qté": RoleQuantity, "Q.tà": RoleQuantity, "Cantidad": RoleQuantity, "Aantal": RoleQuantity, "Кол-во": RoleQuantity, "数量": RoleQuantity,
		"Unit": RoleUnit, "Einheit": RoleUnit, "U.M.": RoleUnit, "VPE": RolePack, "Pack size": RolePack, "Pack of": RolePack,
		"Unit price (NZD)": RolePrice, "Einzelpreis EUR": RolePrice, "PU HT (€)": RolePrice, "Prezzo unitario EUR": RolePrice, "Precio unitario": RolePrice, "Preis (Netto)": RolePrice, "Price a unit": RolePrice,
		"Line total": RoleTotal, "Gesamtpreis EUR": RoleTotal, "Montant HT (€)": RoleTotal, "Importe": RoleTotal,
		"Werkstoff": RoleMaterial, "Currency": RoleCurrency, "Gewinde": RoleSize, "Bemerkung": RoleStatus, "Unit price excl. VAT": RolePrice,
		"Pos.": RoleNone, "Hersteller": RoleNone, "MwSt.": RoleNone,
	} {
		role, _ := roleOf(heading)
		require.Equal(t, want, role, heading)
	}
	for _, sentence := range []string{"please note that all prices of this offer hold for thirty days", "", "???"} {
		role, _ := roleOf(sentence)
		require.Empty(t, role, sentence)
	}
}

func TestColumnsOfAPerson(t *testing.T) {
	got, err := ParseColumns("text=Was, quantity=3")
	require.NoError(t, err)
	require.Equal(t, Columns{RoleText: "Was", RoleQuantity: "3"}, got)
	for text, reason := range map[string]string{"text": "which column", "colour=1": "no part of a cart", "text=1,text=2": "twice", "text=": "which column", "": "which column"} {
		_, err := ParseColumns(text)
		require.ErrorContains(t, err, reason, text)
	}
}

func TestColumnsOverrideTheHeadings(t *testing.T) {
	data := []byte("Was,Wieviel,Description\nHose tail 1/2 NPT male x 13 mm barb,4,bought by K\n")
	c, err := Read("c.csv", data, Options{Columns: Columns{RoleText: "Was", RoleQuantity: "2"}})
	require.NoError(t, err)
	require.Equal(t, "Hose tail 1/2 NPT male x 13 mm barb", c.Lines[0].Text)
	require.Equal(t, "4", c.Lines[0].Amount.String())
	_, err = Read("c.csv", data, Options{Columns: Columns{RoleText: "Wie"}})
	require.ErrorContains(t, err, `there is no column "Wie"`)
}

func TestListsWithoutHeadingsAreReadByTheirTexts(t *testing.T) {
	c, err := Read("c.csv", []byte("1,Hose tail 1/2 NPT male x 13 mm barb,2\n2,2x Elbow 1/2 NPT female,9\n"), Options{})
	require.NoError(t, err)
	require.Len(t, c.Lines, 2, "no line is taken for headings")
	require.False(t, c.Lines[0].Counted, "a column that nobody named is not a quantity")
	require.Equal(t, "2", c.Lines[1].Amount.String(), "what the words say is")
	require.Contains(t, c.Notes[0], "no headings")
}

func TestPricesWithTaxStandBehindThoseWithout(t *testing.T) {
	for why, head := range map[string]string{
		"with tax first": "Bezeichnung;Menge;Preis (Brutto);Preis (Netto)\nBogen;1;11,90;10,00\n",
		"with tax last":  "Bezeichnung;Menge;Preis (Netto);Preis (Brutto)\nBogen;1;10,00;11,90\n",
	} {
		c, err := Read("c.csv", []byte(head), Options{})
		require.NoError(t, err)
		require.Equal(t, "10", c.Lines[0].Price, why)
	}
}
