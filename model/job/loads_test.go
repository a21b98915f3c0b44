package job

import (
	"testing"

	"slabwright/model"
)

func TestReadLoads(t *testing.T) {
	data, j := readStudio(t)
	equal(t, "no loads", j.Loads, model.Loads{})
	told := string(data) + `
loads:
  person: 120 kg
  step: 2
  worktop: 80
  shelf: 60.5
  service_class: 2
  grade: D30
  things: [{name: arm, on: worktop, along: 90 cm, back: 80, mass: 11 kg, reach: 350}]
`
	j, mistakes := Read("job.yaml", []byte(told), testPresets)
	if len(mistakes) > 0 {
		t.Fatal(Text(mistakes))
	}
	equal(t, "place", len(j.Loads.Things), 1)
	j.Loads.Pos, j.Loads.Things[0].Pos = model.Pos{}, model.Pos{}
	equal(t, "loads", j.Loads, model.Loads{Person: 120, Step: 2, Worktop: 80, Shelf: 60.5, Service: 2, Grade: "D30",
		Things: []model.Thing{{Name: "arm", On: "worktop", Along: 900, Back: 80, Mass: 11, Reach: 350}}})
}
