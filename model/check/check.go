// Package check holds the rules that a finished design is held against. One
// rule is one file; it registers nothing by itself but stands in the list All.
// Every rule gives findings with measured and required values, the assumption
// behind them, their source and a hint to mend them.
package check

import (
	"fmt"
	"sync"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
)

// Site is what a rule looks at.
type Site struct {
	Job    model.Job
	Room   *model.Room
	Design *model.Design
}

// Rule is one check.
type Rule struct {
	ID    string
	Title string
	Basis string // standard, table or "common practice, no source"
	Why   string // what goes wrong when it fails, for `explain`
	Run   func(Site) []find.Finding
}

// All lists every rule in the order in which they run.
var All = []Rule{
	surveyRule, leavesRoom, overlap, wallGap, seatRule, cornerClash, kneeSpace,
	woodEdges, steelEdges, anchorRule, obstacleRule, shelfRoom, naturalEdge, massRule,
}

// ByID gives the rule of that name, and whether there is one.
func ByID(id string) (Rule, bool) {
	for _, r := range All {
		if r.ID == id {
			return r, true
		}
	}
	return Rule{}, false
}

// Run runs every rule. A rule that breaks becomes a finding of its own: the
// others still run.
func Run(s Site) []find.Finding {
	out := append([]find.Finding(nil), s.Design.Faults()...)
	parts := make([][]find.Finding, len(All))
	var wait sync.WaitGroup
	for i, r := range All {
		wait.Go(func() { parts[i] = runOne(r, s) })
	}
	wait.Wait()
	for _, p := range parts {
		out = append(out, p...)
	}
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
				Why: fmt.Sprintf("this rule broke: %v", p),
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
// in every finding.
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
}

// at puts a place into a finding.
func at(v geom.Vec3) *[3]float64 {
	return &[3]float64{round3(float64(v.X)), round3(float64(v.Y)), round3(float64(v.Z))}
}

func round3(x float64) float64 {
	return float64(int64(x*1000+copysign(0.5, x))) / 1000
}

func copysign(m, s float64) float64 {
	if s < 0 {
		return -m
	}
	return m
}

// unknown is the finding of a rule that lacks an input.
func unknown(why string, fix ...find.Fix) find.Finding {
	return find.Finding{Status: find.Unknown, Why: "not checked: " + why, Fix: fix}
}

// value makes a fix that sets a parameter.
func value(text, parameter string, v float64) find.Fix {
	return find.Fix{Text: text, Parameter: parameter, Value: &v}
}

const practice = "common practice, no source"
