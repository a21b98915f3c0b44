package cut

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"
	"time"

	"slabwright/model/unit"
)

func TestProbe(t *testing.T) {
	list := os.Getenv("PROBE")
	if list == "" {
		t.Skip()
	}
	var names []string
	json.Unmarshal([]byte(list), &names)
	for _, n := range names {
		data, _ := os.ReadFile("/work/shared/bench/value/" + n + ".json")
		var ins struct {
			Kerf   float64
			Sheets []struct{ Length, Width float64 }
			Items  []struct {
				Length, Width, Value float64
				Count                int
				Rotate               bool
			}
		}
		if err := json.Unmarshal(data, &ins); err != nil {
			t.Fatal(n, err)
		}
		var items []Item
		var value []float64
		var limit []int
		k := onGrid(unit.Length(ins.Kerf))
		all := []grid{onGrid(unit.Length(ins.Sheets[0].Length)) + k, onGrid(unit.Length(ins.Sheets[0].Width)) + k}
		for _, i := range ins.Items {
			items = append(items, Item{Length: unit.Length(i.Length), Width: unit.Length(i.Width), Turn: i.Rotate})
			value = append(value, i.Value)
			limit = append(limit, i.Count)
			all = append(all, onGrid(unit.Length(i.Length))+k, onGrid(unit.Length(i.Width))+k)
		}
		g := measure(all...)
		b := Effort{Steps: 50_000_000}.budget()
		start := time.Now()
		b.hear = func(p Progress) bool {
			if p.Steps%7 == 0 || true {
				fmt.Printf("   %v %.0f %.0f %d\n", time.Since(start).Round(time.Millisecond), p.Objective, p.Bound, p.Steps)
			}
			return time.Since(start) < 60*time.Second
		}
		q := mostOf(all[0]/g, all[1]/g, shapesOf(items, k, g), value, limit, b)
		fmt.Println(n, q.p.x.n(), q.p.y.n(), "have", q.have, "bound", q.bound, time.Since(start), "steps", b.spent)
	}
}
