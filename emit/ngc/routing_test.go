package ngc_test

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/model"
	"barwright/compile/routing"
	"barwright/compile/routing/routingtest"
	"barwright/emit/ngc"
	"barwright/emit/ngc/replay"
)

func routingText(t testing.TB, r *model.Routing) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := ngc.WriteRouting(&b, shed, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestRoutingGolden(t *testing.T) {
	j := routingtest.Side()
	all, left := routing.Plan(&j.Part, &j.Request)
	if len(all) != 2 || len(left) != 1 || !left[0].Drill {
		t.Fatalf("%d programs and %v left, want one for each face and a hole left to the drill", len(all), left)
	}
	for i := range all {
		text := routingText(t, &all[i])
		golden(t, all[i].Name+".ngc", text)
		if err := replay.CheckRouting(text, &all[i]); err != nil {
			t.Error(err)
		}
	}
	var sheet bytes.Buffer
	if err := ngc.WriteSetup(&sheet, &model.Model{Parts: []model.Part{j.Part}, Routings: all}); err != nil {
		t.Fatal(err)
	}
	golden(t, "routings.txt", sheet.Bytes())
}

// Whatever is planned cuts what it says, in the simulator, and nothing else.
func TestRoutingsCutRight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := routingtest.Jobs().Draw(t, "job")
		all, _ := routing.Plan(&j.Part, &j.Request)
		for i := range all {
			var b bytes.Buffer
			if err := ngc.WriteRouting(&b, shed, &all[i]); err != nil {
				t.Fatal(err)
			}
			if err := replay.CheckRouting(b.Bytes(), &all[i]); err != nil {
				t.Fatal(err)
			}
		}
	})
}
