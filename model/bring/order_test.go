package bring_test

import (
	"fmt"
	"os"
	"testing"
	"time"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/job"
	"slabwright/presets"
)

func design(t testing.TB, preset string) *model.Design {
	t.Helper()
	data, err := os.ReadFile("../../presets/" + preset + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, bad := job.Read("job.yaml", data, presets.All())
	if len(bad) > 0 {
		t.Fatal(job.Text(bad))
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range presets.All() {
		if p.Name == j.Preset {
			d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
			d.Finish()
			return d
		}
	}
	t.Fatal("no preset")
	return nil
}

func TestLook(t *testing.T) {
	for _, name := range []string{"studio", "corner", "alcove"} {
		d := design(t, name)
		start := time.Now()
		s := bring.NewScene(d)
		o := s.Order()
		fmt.Println(name, time.Since(start))
		for i, w := range o {
			fmt.Printf("%2d %-24s %-8s looks %5d least %6.1f %s-%s %v\n", i+1, w.Part.ID, w.Verdict, w.Looks, float64(w.Least.Gap), w.Least.Part, w.Least.Near, w.Poses)
		}
	}
}
