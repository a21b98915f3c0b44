package cmd

import (
	"fmt"
	"strings"

	"slabwright/model"
)

var presetsVerb = verb{"presets", "", "the ready designs and their parameters", func(t *tool, args []string) int {
	o := t.flags("presets")
	if code, ok := t.parse(o, args, 0, "no arguments"); !ok {
		return code
	}
	for _, p := range t.presets {
		fmt.Fprintf(t.out, "%s: %s\n", p.Name, p.Help)
		for _, n := range p.Needs {
			fmt.Fprintf(t.out, "  wall %-18q %s\n", n.Wall, n.Help)
		}
		for _, q := range p.Params {
			fmt.Fprintf(t.out, "  %-22s %s (%s)\n", q.Name, q.Help, paramRange(q))
		}
		fmt.Fprintln(t.out)
	}
	return exitFine
}}

func paramRange(q model.Param) string {
	switch q.Kind {
	case model.LengthParam:
		return fmt.Sprintf("%s mm; %g to %g", q.Default, q.Min, q.Max)
	case model.CountParam:
		return fmt.Sprintf("%s; %g to %g", q.Default, q.Min, q.Max)
	case model.ChoiceParam:
		return fmt.Sprintf("%s; one of %s", q.Default, strings.Join(q.Choices, ", "))
	}
	return q.Default
}
