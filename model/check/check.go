// Package check holds the rules that a finished design is held against. One
// rule is one file; it registers nothing by itself but stands in the list All.
// Every rule gives findings with measured and required values, the assumption
// behind them, their source and a hint to mend them. A rule that lacks an input
// says "unknown" and names what to measure; it never passes.
package check

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/wire"
)

// Site is what a rule looks at. Params are the parameters of the preset that
// made the design; with them a hint can name the parameter to change.
type Site struct {
	Job    model.Job
	Room   *model.Room
	Design *model.Design
	Params []model.Param

	shapes shapes
	wires  wire.Plan
	bare   bool // verdicts without what would help, which takes longest
}

// Rule is one check. Fit tells that its margins are room between things, as
// opposed to wood or steel left in a part: only like margins are compared.
type Rule struct {
	ID    string
	Title string
	Basis string // standard, table or "common practice, no source"
	Why   string // what goes wrong when it fails, for `explain`
	Fit   bool
	Run   func(Site) []find.Finding
}

// All lists every rule in the order in which they run.
var All = []Rule{
	describedRule, surveyRule, suspectRule, uncheckedRule, nextRule, sightRule, faceRule, leavesRoom, overlap, wallGap, legUpRule, fitRule, cornerClash, seatRule, tipping,
	asCutRule,
	moistureRule, jointRule, borneRule, slotRule,
	anchorStrength, angleStrength, cleatStrength, screwStrength, rodStrength, castorRule,
	kneeSpace, elbowRule, surfaceHeight, buildUp, legWidth, chairRoom, headRoom, reachRule, screenRule, rollOutRule, shelfRoom, floorCeiling, obstacleRule, anchorRule,
	goesInRule, wayInRule, liftingRule,
	woodEdges, steelEdges, cleatEdges, naturalEdge, offerRule, massRule,
	cableWay, cableApart, cableFill, cableLength, cableKnees, lightDrop, lightSupply, grooveScrews, grooveStrength, toolAccess,
	sagRule, bendingRule, pressureRule, wobbleRule, liftRule,
}

// ByID gives the rule of that name, and whether there is one.
func ByID(id string) (Rule, bool) {
	if i := slices.IndexFunc(All, func(r Rule) bool { return r.ID == id }); i >= 0 {
		return All[i], true
	}
	return Rule{}, false
}

// Run runs every rule. A rule that breaks becomes a finding of its own: the
// others still run.
func Run(s Site) []find.Finding { return run(s, All) }

// Verdicts runs every rule like Run, but looks for no remedies, which takes
// longest: fewer hints, the same figures.
func Verdicts(s Site) []find.Finding {
	s.bare = true
	return Run(s)
}

func run(s Site, rules []Rule) []find.Finding {
	s.shapes = shapesOf(s.Design)
	s.wires = wire.Of(s.Design, s.Job.Wiring)
	parts := make([][]find.Finding, len(rules))
	var wait sync.WaitGroup
	for i, r := range rules {
		wait.Go(func() { parts[i] = runOne(r, s) })
	}
	wait.Wait()
	out := slices.Concat(parts...)
	for i := range out {
		fill(&out[i])
	}
	find.Sort(out)
	return out
}

func runOne(r Rule, s Site) (out []find.Finding) {
	defer func() {
		if p := recover(); p != nil {
			out = []find.Finding{{
				Rule: r.ID, Status: find.Broken, Title: r.Title, Basis: r.Basis,
				Why: fmt.Sprintf("This rule broke: %v", p),
				Fix: []find.Fix{{Text: "send us the job file and this line; the fault is ours"}},
			}}
		}
	}()
	out = r.Run(s)
	for i := range out {
		out[i].Rule = r.ID
		if out[i].Title == "" {
			out[i].Title = r.Title
		}
		if out[i].Basis == "" {
			out[i].Basis = r.Basis
		}
	}
	return out
}

// fill makes empty lists out of nil ones, so that the report has the same keys
// in every finding, and rounds numbers to a micrometre.
func fill(f *find.Finding) {
	if f.Parts == nil {
		f.Parts = []string{}
	}
	if f.Walls == nil {
		f.Walls = []string{}
	}
	if f.Assumed == nil {
		f.Assumed = []find.Assumption{}
	}
	if f.Fix == nil {
		f.Fix = []find.Fix{}
	}
	for _, q := range []**find.Quantity{&f.Measured, &f.Margin} {
		switch x := *q; {
		case x == nil:
		case math.IsNaN(x.Value) || math.IsInf(x.Value, 0):
			*q = nil // JSON has no such number
		default:
			x.Value, x.SD = round3(x.Value), round3(x.SD)
		}
	}
	if f.Required != nil {
		f.Required.Value, f.Required.High = round3(f.Required.Value), round3(f.Required.High)
	}
}

// at puts a place into a finding.
func at(v geom.Vec3) *[3]float64 {
	return &[3]float64{round3(float64(v.X)), round3(float64(v.Y)), round3(float64(v.Z))}
}

// round3 rounds to three decimals and never gives a negative zero.
func round3(x float64) float64 { return math.Round(x*1000)/1000 + 0 }

// unknown is the finding of a rule that lacks an input.
func unknown(why string, fix ...find.Fix) find.Finding {
	return find.Finding{Status: find.Unknown, Why: "Not known yet: " + why, Fix: fix}
}

// unbuilt is the finding for parts that have no solid, nil if all have one.
func unbuilt(d *model.Design) []find.Finding {
	var names []string
	for _, p := range d.Parts {
		if len(p.Bodies) == 0 {
			names = append(names, p.ID)
		}
	}
	if names == nil {
		return nil
	}
	f := unknown(fmt.Sprintf("%s could not be built, so nothing can be measured on it.", list(names)), hint("mend its description first"))
	f.Parts = names
	return []find.Finding{f}
}

const practice = "common practice, no source"
