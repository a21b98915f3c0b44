package castor_test

import (
	"math"
	"testing"

	"slabwright/model/calc/castor"
)

// A table of 300 N, castors 30 mm in from the edge, its centre of gravity 200 mm
// inside their line. By hand, moments about that line: 300 x 200 / 30 = 2000 N
// on the edge; pushed at 500 mm 300 x 200 / 500 = 120 N.
func TestByHand(t *testing.T) {
	b := castor.Base{SetIn: 30, ToCentre: 200}
	if f, ok := b.Edge(300); !ok || math.Abs(f-2000) > 1e-9 {
		t.Errorf("edge %v, %v", f, ok)
	}
	if f := b.Push(300, 500); math.Abs(f-120) > 1e-9 {
		t.Errorf("push %v", f)
	}
	if f := castor.OnOne(900); math.Abs(f-300) > 1e-9 {
		t.Errorf("one castor %v", f)
	}
	if _, ok := (castor.Base{SetIn: 0, ToCentre: 200}).Edge(300); ok {
		t.Error("a table whose castors stand under its edge tips")
	}
}
