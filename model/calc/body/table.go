package body

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"slabwright/model/unit"
)

// Dimension is a body dimension in the table.
type Dimension string

// The dimensions. "Above floor" is for somebody sitting at a seat as high as
// the hollow of the knee, so that the feet stand flat.
const (
	Popliteal       Dimension = "popliteal_height"              // hollow of the knee above the floor: the seat
	Knee            Dimension = "knee_height_sitting"           // top of the knee above the floor
	ThighClearance  Dimension = "thigh_clearance"               // thigh above the seat
	ElbowRest       Dimension = "elbow_rest_height"             // elbow above the seat
	ButtockKnee     Dimension = "buttock_knee_length"           // back to the front of the knee
	ButtockHollow   Dimension = "buttock_popliteal_length"      // back to the hollow of the knee
	HipBreadth      Dimension = "hip_breadth_sitting"           // widest, sitting
	FootLength      Dimension = "foot_length"                   // heel to toe
	BellyDepth      Dimension = "abdominal_depth_sitting"       // back to the front of the belly
	StandingElbow   Dimension = "elbow_height_standing_bent"    // elbow above the floor, standing, arm bent
	Elbow           Dimension = "elbow_above_floor_sitting"     // popliteal height + elbow rest height
	ThighTop        Dimension = "thigh_top_above_floor_sitting" // popliteal height + thigh clearance
	Eye             Dimension = "eye_above_floor_sitting"
	Head            Dimension = "head_above_floor_sitting"
	ElbowAboveThigh Dimension = "elbow_minus_thigh"            // the room that slab and clearances share
	BellyToKnee     Dimension = "abdomen_to_knee"              // depth that the knees take under a desk that touches the belly
	BellyToToe      Dimension = "abdomen_to_toe_upright_shank" // the same for the toes, shank upright
	GripReach       Dimension = "grip_reach_past_desk_edge"    // forward, from a desk edge at the belly
	Overhead        Dimension = "overhead_fingertip_above_floor_sitting"
	Shoulder        Dimension = "acromial_height" // top of the shoulder above the floor, standing
)

// Dimensions lists the dimensions of the table.
func Dimensions() []Dimension {
	return []Dimension{
		Popliteal, Knee, ThighClearance, ElbowRest, ButtockKnee, ButtockHollow, HipBreadth, FootLength, BellyDepth,
		StandingElbow, Elbow, ThighTop, Eye, Head, ElbowAboveThigh, BellyToKnee, BellyToToe, GripReach, Overhead, Shoulder,
	}
}

// sums are the dimensions made of two others, for mixing a person's own
// measure with an estimate. The fits themselves were made on sums per person.
var sums = map[Dimension]struct {
	first, second Dimension
	sign          float64
}{
	Elbow:           {Popliteal, ElbowRest, 1},
	ThighTop:        {Popliteal, ThighClearance, 1},
	ElbowAboveThigh: {ElbowRest, ThighClearance, -1},
	BellyToKnee:     {ButtockKnee, BellyDepth, -1},
}

// Names of the rows in the table.
const (
	men    = "M"
	women  = "F"
	pooled = "MF"
)

// group is the stature and mass of the people measured.
type group struct {
	stature, statureSD unit.Length
	mass, massSD       unit.Mass
}

// groups gives the lower and the upper group of each fit: ANSUR II means and
// standard deviations.
var groups = map[string][2]group{
	men:    {{1756.2, 68.6, 85.5, 14.2}, {1756.2, 68.6, 85.5, 14.2}},
	women:  {{1628.5, 64.2, 67.8, 11.0}, {1628.5, 64.2, 67.8, 11.0}},
	pooled: {{1628.5, 64.2, 67.8, 11.0}, {1756.2, 68.6, 85.5, 14.2}},
}

// fit is one row of the table, see ansur.csv.
type fit struct {
	n, a, b, s, mean, sxx float64
	a2, b2, c2, s2        float64
	p5, p50, p95          unit.Length
}

type key struct {
	row string
	dim Dimension
}

//go:embed ansur.csv
var ansur string

// fits reads the embedded table once.
var fits = sync.OnceValue(func() map[key]fit {
	r := csv.NewReader(strings.NewReader(ansur))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		panic(fmt.Sprintf("embedded body table: %v", err))
	}
	out := map[key]fit{}
	for _, row := range rows[1:] {
		v := make([]float64, len(row))
		for i, s := range row {
			if i < 2 || s == "" {
				continue
			}
			if v[i], err = strconv.ParseFloat(s, 64); err != nil {
				panic(fmt.Sprintf("embedded body table: %v", err))
			}
		}
		out[key{row[0], Dimension(row[1])}] = fit{
			n: v[2], a: v[3], b: v[4], s: v[5], mean: v[6], sxx: v[7],
			a2: v[8], b2: v[9], c2: v[10], s2: v[11],
			p5: unit.Length(v[12]), p50: unit.Length(v[13]), p95: unit.Length(v[14]),
		}
	}
	return out
})
