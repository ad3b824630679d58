package table

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"

	"barwright/compile/model"
)

// Places that the bill's numbers are rounded to.
const (
	quantityPlaces = 3
	weightPlaces   = 2
)

// BillCSV writes the bill of a model. The last record, of section "total", has
// the cost of the lines that carry a price, and says how many do not.
func BillCSV(w io.Writer, m *model.Model) error {
	records := [][]string{{"section", "item", "text", "use", "quantity", "unit", "needed", "weight_kg", "price", "cost"}}
	for _, l := range m.Bill {
		price, cost := "", ""
		if l.Priced {
			price, cost = money(l.Price), money(l.Cost())
		}
		records = append(records, []string{
			plain(l.Section), plain(l.Item), plain(l.Text), plain(l.Use), known(l.Quantity, quantityPlaces), plain(l.Unit),
			plain(l.Needed), known(l.WeightKg, weightPlaces), price, cost,
		})
	}
	cost, unpriced := model.Total(m.Bill)
	records = append(records, []string{"total", "", lacking(unpriced), "", "", "", "", "", "", money(cost)})
	return write(w, records)
}

// lacking says how many lines carry no price.
func lacking(unpriced int) string {
	switch unpriced {
	case 0:
		return "every line carries a price"
	case 1:
		return "1 line carries no price and is not in it"
	}
	return strconv.Itoa(unpriced) + " lines carry no price and are not in it"
}

type bill struct {
	Format   int        `json:"barwright_bill"`
	Build    string     `json:"build"`
	Revision string     `json:"revision"`
	Lines    []billLine `json:"lines"`
	Total    billTotal  `json:"total"`
}

type billLine struct {
	Section  string       `json:"section"`
	Item     string       `json:"item"`
	Text     string       `json:"text"`
	Use      string       `json:"use"`
	Quantity *json.Number `json:"quantity"`
	Unit     string       `json:"unit"`
	Needed   string       `json:"needed"`
	WeightKg *json.Number `json:"weight_kg"`
	Price    *json.Number `json:"price"`
	Cost     *json.Number `json:"cost"`
}

type billTotal struct {
	Cost     json.Number `json:"cost"`
	Unpriced int         `json:"unpriced_lines"`
}

// billFormat is the version of the bill's JSON.
const billFormat = 1

// BillJSON writes the bill of a model. What is not known is null. It fails,
// beside where w does, for a number that JSON does not have.
func BillJSON(w io.Writer, m *model.Model) error {
	b := bill{Format: billFormat, Build: m.Build.Name, Revision: m.Build.Revision, Lines: []billLine{}}
	for _, l := range m.Bill {
		line := billLine{
			Section: l.Section, Item: l.Item, Text: l.Text, Use: l.Use, Unit: l.Unit, Needed: l.Needed,
		}
		if n := json.Number(known(l.Quantity, quantityPlaces)); n != "" {
			line.Quantity = &n
		}
		if kg := json.Number(known(l.WeightKg, weightPlaces)); kg != "" {
			line.WeightKg = &kg
		}
		if l.Priced {
			price, cost := json.Number(money(l.Price)), json.Number(money(l.Cost()))
			line.Price, line.Cost = &price, &cost
		}
		b.Lines = append(b.Lines, line)
	}
	cost, unpriced := model.Total(m.Bill)
	b.Total = billTotal{json.Number(money(cost)), unpriced}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(b); err != nil {
		return fmt.Errorf("bill: %w", err)
	}
	return nil
}
